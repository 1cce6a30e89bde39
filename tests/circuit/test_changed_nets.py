"""Nets worked out from those before are those of the changed diagram itself."""

from __future__ import annotations

import random

import pytest

from tests.benchmarks.campaign import example
from wirecheck.circuit.nets import Nets
from wirecheck.correct.candidates import Candidates
from wirecheck.correct.rewired import Rewired
from wirecheck.model.diagram import Terminal


def conductors(nets: Nets) -> set[frozenset[Terminal]]:
    return {frozenset(members) for members in nets.members}


def elements(nets: Nets) -> list[tuple[object, ...]]:
    return [
        (key, each.name, frozenset(nets.members[each.net_a]), frozenset(nets.members[each.net_b]))
        for key, inside in nets.elements_of.items()
        for each in inside
    ]


@pytest.mark.parametrize("name", ["boiler-with-vent-damper", "workshop-heater-one-rod"])
def test_one_change_after_the_other(name: str) -> None:
    chance = random.Random(5)  # noqa: S311 - nothing secret
    right = Rewired.nothing_changed(example(name).diagram)
    changes = list(Candidates(right))
    for _walk in range(30):
        state = right
        for _step in range(3):
            state = state.after(
                chance.choice(changes if state is right else list(Candidates(state)))
            )
            known, anew = state.nets, Nets(state.diagram)
            assert conductors(known) == conductors(anew)
            assert all(known.members)
            assert {known.net_of[end] for end in anew.net_of} == set(range(len(known.members)))
            assert all(end in known.members[net] for end, net in known.net_of.items())
            assert elements(known) == elements(anew)


def test_what_was_before_stays_as_it_was() -> None:
    right = Rewired.nothing_changed(example("workshop-heater-one-rod").diagram)
    before = conductors(right.nets), elements(right.nets), dict(right.nets.net_of)
    for change in list(Candidates(right))[::7]:
        assert right.after(change).nets.members
    assert (conductors(right.nets), elements(right.nets), right.nets.net_of) == before
