"""Tests of the exercises."""
