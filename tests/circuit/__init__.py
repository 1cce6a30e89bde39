"""Tests of the circuit floor."""
