"""Tests of the lists."""
