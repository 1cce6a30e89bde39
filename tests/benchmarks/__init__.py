"""Speed, told as ratios that a slower machine does not change.

``python -m tests.benchmarks`` measures, prints a table and exits 1 if a bound is broken.
"""
