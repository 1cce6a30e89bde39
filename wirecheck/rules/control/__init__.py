"""Ignition control: how it is set and mounted."""

from __future__ import annotations

from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = ()
