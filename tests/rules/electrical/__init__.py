"""The rules of this family beyond their own examples."""
