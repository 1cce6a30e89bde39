"""Tests of the model: text positions, quantities, names."""
