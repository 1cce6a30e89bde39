"""Which numbers the text does not state, so that no rule of this chapter could judge them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecheck.model.diagram import Part
from wirecheck.model.finding import NotChecked
from wirecheck.model.nearest import both
from wirecheck.rules.facts import Facts

#: So many parts are named one by one.
_MOST_NAMED = 3


def unstated(facts: Facts) -> Iterator[NotChecked]:
    """Say in one sentence what was not judged for want of a number."""
    missing = [*_ratings(facts), *_lengths(facts), *_settings(facts)]
    if missing:
        yield NotChecked("volts and currents", f"not typed, and so not judged: {both(missing)}")


def _ratings(facts: Facts) -> Iterator[str]:
    devices = [*facts.of("transformer", "overcurrent")]
    unrated = [part for part in devices if "rating" not in part.given]
    if unrated:
        yield f"the rating of {_named(unrated)}"


def _lengths(facts: Facts) -> Iterator[str]:
    """Whether no lead of a 24 V circuit has a length; an ignition lead is not part of one."""
    cables = facts.diagram.cables.values()
    known = any("length" in cable.given for cable in cables) or any(
        "length" in lead.given and "ignition-cable" not in lead.given
        for lead in facts.diagram.leads
    )
    if facts.supplies and not known:
        yield "the length of any lead"


def _settings(facts: Facts) -> Iterator[str]:
    """Thermostats that may have an anticipator whose setting is not typed."""
    unset = [
        part
        for part in facts.of("thermostat")
        if part.values.get("power") == "mechanical" and "anticipator" not in part.given
    ]
    if unset:
        yield f"the anticipator setting of {_named(unset)}"


def _named(parts: Sequence[Part]) -> str:
    names = [part.name for part in parts]
    if len(names) > _MOST_NAMED:
        return both([*names[:_MOST_NAMED], f"{len(names) - _MOST_NAMED} more"])
    return both(names)
