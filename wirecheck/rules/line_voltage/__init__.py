"""Line voltage: apart from 24 V, switched in the hot lead, grounded, and in its own colours."""

from __future__ import annotations

from wirecheck.rules.line_voltage import (
    both_speeds_fed,
    fan_contact_cut_off,
    fan_limit_link_left_in,
    fed_ahead_of_switch,
    fed_over_both_throws,
    line_and_24_volts_joined,
    line_and_neutral_reversed,
    line_lead_colour,
    line_shorted,
    mains_ground_not_earthed,
    motor_always_on,
    speed_not_wired,
    switch_in_neutral,
)
from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = (
    (line_and_24_volts_joined.RULE, line_and_24_volts_joined.check),
    (fan_limit_link_left_in.RULE, fan_limit_link_left_in.check),
    (line_and_neutral_reversed.RULE, line_and_neutral_reversed.check),
    (switch_in_neutral.RULE, switch_in_neutral.check),
    (fed_ahead_of_switch.RULE, fed_ahead_of_switch.check),
    (line_shorted.RULE, line_shorted.check),
    (both_speeds_fed.RULE, both_speeds_fed.check),
    (fed_over_both_throws.RULE, fed_over_both_throws.check),
    (speed_not_wired.RULE, speed_not_wired.check),
    (fan_contact_cut_off.RULE, fan_contact_cut_off.check),
    (motor_always_on.RULE, motor_always_on.check),
    (mains_ground_not_earthed.RULE, mains_ground_not_earthed.check),
    (line_lead_colour.RULE, line_lead_colour.check),
)
