"""Burner ground: the way back for spark and flame signal, from burner to control."""

from __future__ import annotations

from wirecheck.rules.burner_ground import (
    burner_ground_missing,
    burner_ground_on_wrong_terminal,
    burner_ground_through_contact,
    burner_ground_to_cabinet,
)
from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = (
    (burner_ground_missing.RULE, burner_ground_missing.check),
    (burner_ground_on_wrong_terminal.RULE, burner_ground_on_wrong_terminal.check),
    (burner_ground_to_cabinet.RULE, burner_ground_to_cabinet.check),
    (burner_ground_through_contact.RULE, burner_ground_through_contact.check),
)
