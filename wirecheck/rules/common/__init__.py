"""Common: what goes straight back to the transformer, and what was landed on the wrong side."""

from __future__ import annotations

from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = ()
