"""The part library and the reference tables, installed as ``wirecheck.shared``.

Holds data only; it is a package so that an editable install can find the folder.
"""
