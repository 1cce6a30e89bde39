"""Tests of marking."""
