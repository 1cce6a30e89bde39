"""Tests of the rules about vent dampers."""
