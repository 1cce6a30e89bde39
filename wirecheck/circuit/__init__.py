"""Nets and electricity: which terminals are one conductor, and what lies between the nets."""
