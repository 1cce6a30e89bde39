"""Call and safety chain: thermostat and safeties between the hot side and the control."""

from __future__ import annotations

from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = ()
