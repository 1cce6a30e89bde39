"""Finds the fewest changes of leads after which nothing of safety or operation is left."""
