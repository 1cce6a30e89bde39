"""Line voltage: kept apart from the 24 V side, switched in the hot lead, coloured as it must be."""

from __future__ import annotations

from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = ()
