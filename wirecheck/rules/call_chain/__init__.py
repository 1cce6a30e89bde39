"""Call and safety chain: thermostat and safeties between the hot side and the control."""

from __future__ import annotations

from wirecheck.rules.call_chain import (
    call_and_hot_exchanged,
    call_cannot_arrive,
    call_from_another_terminal,
    call_in_common,
    call_not_fed,
    call_on_the_hot_terminal,
    end_switch_on_zone_supply,
    end_switches_in_series,
    hot_straight_to_call,
    probe_leads_exchanged,
    relay_contact_inverted,
    relay_contact_jumpered,
    relay_cuts_itself_off,
    safety_at_the_valve,
    safety_bypassed,
    safety_in_common,
    safety_jumpered,
    safety_not_in_chain,
    safety_stuck_closed,
    switch_jumpered,
    thermostat_bypassed,
    thermostat_not_in_call,
    zone_motor_always_on,
)
from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = (
    (hot_straight_to_call.RULE, hot_straight_to_call.check),
    (call_and_hot_exchanged.RULE, call_and_hot_exchanged.check),
    (call_on_the_hot_terminal.RULE, call_on_the_hot_terminal.check),
    (call_in_common.RULE, call_in_common.check),
    (call_not_fed.RULE, call_not_fed.check),
    (call_cannot_arrive.RULE, call_cannot_arrive.check),
    (call_from_another_terminal.RULE, call_from_another_terminal.check),
    (thermostat_not_in_call.RULE, thermostat_not_in_call.check),
    (thermostat_bypassed.RULE, thermostat_bypassed.check),
    (relay_contact_inverted.RULE, relay_contact_inverted.check),
    (relay_contact_jumpered.RULE, relay_contact_jumpered.check),
    (relay_cuts_itself_off.RULE, relay_cuts_itself_off.check),
    (switch_jumpered.RULE, switch_jumpered.check),
    (zone_motor_always_on.RULE, zone_motor_always_on.check),
    (end_switch_on_zone_supply.RULE, end_switch_on_zone_supply.check),
    (end_switches_in_series.RULE, end_switches_in_series.check),
    (probe_leads_exchanged.RULE, probe_leads_exchanged.check),
    (safety_jumpered.RULE, safety_jumpered.check),
    (safety_stuck_closed.RULE, safety_stuck_closed.check),
    (safety_bypassed.RULE, safety_bypassed.check),
    (safety_not_in_chain.RULE, safety_not_in_chain.check),
    (safety_at_the_valve.RULE, safety_at_the_valve.check),
    (safety_in_common.RULE, safety_in_common.check),
)
