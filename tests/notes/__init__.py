"""Tests of installation notes."""
