"""Leads with a terminal of the hot side at one end and one of the common at the other."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from wirecheck.model.diagram import LeadRole
from wirecheck.rules.facts import Facts

#: What terminals that are always hot are for, and those of the common.
_FED: Final = frozenset(
    {
        "secondary-hot", "control-hot", "damper-hot", "probe-hot",
        "thermostat-feed", "thermostat-cool-feed",
    }
)  # fmt: skip
_COMMON: Final = frozenset(
    {
        "secondary-common", "control-common", "valve-common", "operator-common", "damper-common",
        "thermostat-common", "probe-common", "adapter-common", "adapter-valve-common",
        "burner-ground",
    }
)  # fmt: skip
#: What those are for that are hot on a call.
_CALLED: Final = frozenset(
    {
        "thermostat-heat", "thermostat-cool", "thermostat-fan", "probe-out", "call",
        "pilot-valve", "main-valve", "valve-feed", "pilot-operator", "main-operator", "operator",
        "adapter-feed", "adapter-pilot", "adapter-main", "damper-call", "damper-proved",
    }
)  # fmt: skip


def mismatched(facts: Facts, leads: Iterable[int], *, on_call: bool = False) -> int | None:
    """The one that joins hot to common by what its two terminals are for; jumpers first.

    Args:
        facts: of the diagram.
        leads: numbers of leads on a way from one side to the other.
        on_call: whether terminals that a call makes hot count as hot.
    """
    hot = _FED | _CALLED if on_call else _FED
    found = []
    for number in leads:
        lead = facts.diagram.leads[number]
        roles = {facts.role(lead.a), facts.role(lead.b)}
        if roles & hot and roles & _COMMON:
            found.append(number)
    jumpers = (n for n in found if facts.diagram.leads[n].role is LeadRole.JUMPER)
    return next(jumpers, found[0] if found else None)
