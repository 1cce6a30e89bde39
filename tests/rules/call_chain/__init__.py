"""Tests of the rules about the call and safety chain."""
