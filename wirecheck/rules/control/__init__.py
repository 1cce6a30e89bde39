"""Ignition control: how it is set, what it lights, and how it is mounted."""

from __future__ import annotations

from wirecheck.rules.control import (
    burner_of_another_system,
    control_mounted_terminals_up,
    direct_trial_too_long,
    lp_without_lockout,
    sparks_without_end,
    too_many_tries,
)
from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = (
    (lp_without_lockout.RULE, lp_without_lockout.check),
    (sparks_without_end.RULE, sparks_without_end.check),
    (direct_trial_too_long.RULE, direct_trial_too_long.check),
    (too_many_tries.RULE, too_many_tries.check),
    (burner_of_another_system.RULE, burner_of_another_system.check),
    (control_mounted_terminals_up.RULE, control_mounted_terminals_up.check),
)
