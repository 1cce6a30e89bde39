"""The meter sheet of one diagram: where the probes go, what is read there, what else would mean."""
