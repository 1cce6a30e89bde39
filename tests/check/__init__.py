"""Tests of the check as a whole."""
