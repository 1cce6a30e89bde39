"""Tests of the wiring language: from text to diagram and back."""
