"""Vent damper: its harness, its end switch and the shorting plug."""

from __future__ import annotations

from wirecheck.rules.damper import (
    damper_always_powered,
    damper_end_switch_jumpered,
    damper_found_bad,
    damper_held_open,
    damper_hot_switched,
    damper_lead_missing,
    damper_leads_exchanged,
    damper_plug_left_in,
    damper_plug_removed,
    proved_fed_from_hot,
    spill_switch_missing,
)
from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = (
    (damper_plug_left_in.RULE, damper_plug_left_in.check),
    (damper_plug_removed.RULE, damper_plug_removed.check),
    (damper_lead_missing.RULE, damper_lead_missing.check),
    (damper_leads_exchanged.RULE, damper_leads_exchanged.check),
    (damper_always_powered.RULE, damper_always_powered.check),
    (damper_hot_switched.RULE, damper_hot_switched.check),
    (proved_fed_from_hot.RULE, proved_fed_from_hot.check),
    (damper_end_switch_jumpered.RULE, damper_end_switch_jumpered.check),
    (damper_found_bad.RULE, damper_found_bad.check),
    (damper_held_open.RULE, damper_held_open.check),
    (spill_switch_missing.RULE, spill_switch_missing.check),
)
