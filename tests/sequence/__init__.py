"""Tests of the sequence: whole runs, told to the second."""
