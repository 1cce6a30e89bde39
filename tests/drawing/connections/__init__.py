"""Tests of the connection sheet."""
