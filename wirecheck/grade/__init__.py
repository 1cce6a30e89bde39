"""Marks drawings of an exercise against keys: a fair mark, and a remark for every lost point."""
