"""Every rule, by name.  A family's package lists its own; a name used twice is refused here."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from wirecheck.rules import (
    burner_ground,
    call_chain,
    common,
    control,
    damper,
    electrical,
    ignition_leads,
    line_voltage,
    supply,
    valve,
    workmanship,
)
from wirecheck.rules.rule import Check, Rule

FAMILIES = (
    supply,
    common,
    line_voltage,
    call_chain,
    damper,
    control,
    ignition_leads,
    burner_ground,
    valve,
    electrical,
    workmanship,
)


class Registered(NamedTuple):
    """A rule and its function."""

    rule: Rule
    check: Check


def _register() -> Mapping[str, Registered]:
    rules: dict[str, Registered] = {}
    for family in FAMILIES:
        for rule, check in family.RULES:
            if rule.name in rules:
                message = f"two rules are called {rule.name}"
                raise ValueError(message)
            rules[rule.name] = Registered(rule, check)
    return MappingProxyType(rules)


#: In the order of the reference: by family, then as the family lists them.
RULES = _register()
