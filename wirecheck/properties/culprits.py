"""Of the leads that carry what must not be, those that only bring trouble."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.switching import holds
from wirecheck.model.diagram import EARTH, Diagram
from wirecheck.properties.property import Broken
from wirecheck.properties.registry import look_at_all
from wirecheck.properties.states import States
from wirecheck.properties.unit import Whole
from wirecheck.properties.witness import plainest


def culprits(states: States, broken: Broken, leads: Iterable[int]) -> list[int]:
    """The leads without which the property holds, and everything runs that ran with them.

    A lead that belongs somewhere else is none: without it something does not run.  Nor is one to
    earth, whatever current it carries.
    """
    whole = states.whole
    names, running = _broken(whole) - {broken.property.name}, set(_running(states))
    found = []
    for number in leads:
        if EARTH in whole.diagram.leads[number][:2]:
            continue
        without = _without(whole.diagram, number)
        if _broken(without) <= names:
            still = {key for looked in look_at_all(without) for key in _running(looked.states)}
            if running <= still:
                found.append(number)
    return found


def _without(diagram: Diagram, number: int) -> Whole:
    leads = (*diagram.leads[:number], *diagram.leads[number + 1 :])
    return Whole(Nets(replace(diagram, leads=leads, _shown={})))


def _broken(whole: Whole) -> set[str]:
    return {each.property.name for looked in look_at_all(whole) for each in looked.broken}


def _running(states: States) -> Iterator[ElementKey]:
    """The loads that act while the burner runs."""
    state = plainest(states, states.positions.always)
    return (key for key, acts in states.idle_first.acts.items() if holds(acts, state))
