"""The wiring language's grammar and its reference, installed as ``wirecheck.grammar``.

Holds data only; it is a package so that an editable install can find the folder.
"""
