"""Tests of wirecheck/faults/."""
