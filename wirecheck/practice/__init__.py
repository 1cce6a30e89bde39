"""Exercises for those who learn: right diagrams with mistakes hidden in them, or without leads."""
