"""Ignition and sense leads that were found touching metal."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.hookup import Hookup, hookups


class Touching(NamedTuple):
    """A lead of a hookup found touching metal; ``ignition``: it carries the spark."""

    hookup: Hookup
    lead: int
    ignition: bool


def touching_metal(facts: Facts) -> Iterator[Touching]:
    """The leads of spark and sense found touching metal, but for those that are landed there."""
    found = [n for n, lead in enumerate(facts.diagram.leads) if "touches" in lead.given]
    if not found:
        return
    wired = facts.as_wired
    carried: dict[int, tuple[Hookup, bool]] = {}
    for hookup in wired.once(hookups):
        ends = ((hookup.spark, True), (hookup.electrode, True))
        senses = ((hookup.sense, False), (hookup.rod, False))
        for end, ignition in (*ends, *senses):
            if end is not None and not hookup.grounded(wired, end):
                carried.setdefault(wired.net(end), (hookup, ignition))
    for number in found:
        net = wired.net(facts.diagram.leads[number].a)
        if net in carried:
            yield Touching(carried[net][0], number, carried[net][1])
