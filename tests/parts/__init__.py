"""The part library: its files, what parts have inside, and their attributes."""
