"""Ladder symbols, drawn from lines, arcs and circles, each with its number in the standards.

`symbol` says what a symbol is and places it; the other modules hold the symbols by subject, and
`catalogue` lists them all.
"""
