"""Workmanship: leads to nowhere, empty terminals, colours, cables."""

from __future__ import annotations

from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = ()
