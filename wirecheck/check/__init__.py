"""Runs what is known about wrong wiring over one diagram, into one result."""
