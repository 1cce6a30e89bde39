"""Workmanship: leads and terminals as such, what was found bad, colours and cables."""

from __future__ import annotations

from wirecheck.rules.rule import Check, Rule
from wirecheck.rules.workmanship import (
    both_leads_on_one_side,
    bridged_in_passing,
    cable_colour_twice,
    cable_overfilled,
    green_lead_misused,
    lead_does_nothing,
    lead_found_bad,
    lead_not_landed,
    loose_end,
    needed_terminal_empty,
    one_colour_both_sides,
    part_found_bad,
    part_not_wired,
)

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = (
    (part_not_wired.RULE, part_not_wired.check),
    (needed_terminal_empty.RULE, needed_terminal_empty.check),
    (both_leads_on_one_side.RULE, both_leads_on_one_side.check),
    (bridged_in_passing.RULE, bridged_in_passing.check),
    (lead_not_landed.RULE, lead_not_landed.check),
    (loose_end.RULE, loose_end.check),
    (lead_does_nothing.RULE, lead_does_nothing.check),
    (lead_found_bad.RULE, lead_found_bad.check),
    (part_found_bad.RULE, part_found_bad.check),
    (one_colour_both_sides.RULE, one_colour_both_sides.check),
    (green_lead_misused.RULE, green_lead_misused.check),
    (cable_overfilled.RULE, cable_overfilled.check),
    (cable_colour_twice.RULE, cable_colour_twice.check),
)
