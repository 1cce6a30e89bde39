"""Common: what is on the hot side, what is on the common, and leads that are on earth instead."""

from __future__ import annotations

from wirecheck.rules.common import (
    call_fed_from_common,
    common_over_metal,
    control_common_missing,
    hot_and_common_exchanged,
    load_common_on_hot,
    switched_lead_earthed,
)
from wirecheck.rules.rule import Check, Rule

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = (
    (hot_and_common_exchanged.RULE, hot_and_common_exchanged.check),
    (control_common_missing.RULE, control_common_missing.check),
    (call_fed_from_common.RULE, call_fed_from_common.check),
    (load_common_on_hot.RULE, load_common_on_hot.check),
    (switched_lead_earthed.RULE, switched_lead_earthed.check),
    (common_over_metal.RULE, common_over_metal.check),
)
