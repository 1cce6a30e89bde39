"""Burner ground: the way back for spark and flame signal, from the burner's metal to the control."""

from __future__ import annotations

from wirecheck.rules.burner_ground import burner_ground_missing
from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = (
    (burner_ground_missing.RULE, burner_ground_missing.check),
)
