"""Tests of the ladder sheet."""
