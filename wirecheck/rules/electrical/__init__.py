"""Electrical: what volts, amperes, lengths and ratings say, by sums or by solving the circuit."""

from __future__ import annotations

from wirecheck.rules.electrical import (
    anticipator_setting_off,
    class_2_exceeded,
    coils_in_series,
    fuse_too_large,
    fuse_too_small,
    lead_overloaded,
    load_on_other_volts,
    load_volts_low,
    secondary_volts_high,
    transformer_overloaded,
)
from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = (
    (transformer_overloaded.RULE, transformer_overloaded.check),
    (secondary_volts_high.RULE, secondary_volts_high.check),
    (load_on_other_volts.RULE, load_on_other_volts.check),
    (load_volts_low.RULE, load_volts_low.check),
    (coils_in_series.RULE, coils_in_series.check),
    (fuse_too_small.RULE, fuse_too_small.check),
    (fuse_too_large.RULE, fuse_too_large.check),
    (class_2_exceeded.RULE, class_2_exceeded.check),
    (lead_overloaded.RULE, lead_overloaded.check),
    (anticipator_setting_off.RULE, anticipator_setting_off.check),
)
