"""Supply: transformers, what feeds them, what they feed, and where their secondary is earthed."""

from __future__ import annotations

from wirecheck.rules.rule import Check, Rule
from wirecheck.rules.supply import (
    common_on_another_hot,
    device_not_fed,
    fuse_in_common,
    hot_side_earthed,
    own_supply_tied,
    secondary_not_earthed,
    secondary_shorted,
    secondary_shorted_on_call,
    secondary_unused,
    transformers_in_parallel,
    wrong_primary_tap,
)

#: Every rule of the family with its function, in the order of the reference.
RULES: tuple[tuple[Rule, Check], ...] = (
    (device_not_fed.RULE, device_not_fed.check),
    (wrong_primary_tap.RULE, wrong_primary_tap.check),
    (secondary_unused.RULE, secondary_unused.check),
    (secondary_not_earthed.RULE, secondary_not_earthed.check),
    (hot_side_earthed.RULE, hot_side_earthed.check),
    (secondary_shorted.RULE, secondary_shorted.check),
    (secondary_shorted_on_call.RULE, secondary_shorted_on_call.check),
    (transformers_in_parallel.RULE, transformers_in_parallel.check),
    (own_supply_tied.RULE, own_supply_tied.check),
    (common_on_another_hot.RULE, common_on_another_hot.check),
    (fuse_in_common.RULE, fuse_in_common.check),
)
