"""Gas valve: which output of the ignition control drives which operator."""

from __future__ import annotations

from wirecheck.rules.rule import Check, Rule
from wirecheck.rules.valve import (
    millivolt_valve_on_control_circuit,
    operators_not_tied,
    pilot_and_main_tied,
    standing_pilot_valve_kept,
    valve_fed_past_control,
    valve_lead_astray,
    valve_lead_missing,
    valve_leads_out_of_order,
    valve_on_two_controls,
)

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = (
    (valve_fed_past_control.RULE, valve_fed_past_control.check),
    (valve_on_two_controls.RULE, valve_on_two_controls.check),
    (pilot_and_main_tied.RULE, pilot_and_main_tied.check),
    (operators_not_tied.RULE, operators_not_tied.check),
    (valve_leads_out_of_order.RULE, valve_leads_out_of_order.check),
    (valve_lead_missing.RULE, valve_lead_missing.check),
    (valve_lead_astray.RULE, valve_lead_astray.check),
    (millivolt_valve_on_control_circuit.RULE, millivolt_valve_on_control_circuit.check),
    (standing_pilot_valve_kept.RULE, standing_pilot_valve_kept.check),
)
