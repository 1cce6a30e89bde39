"""Every property, and what of them a diagram breaks."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.properties import (
    call_does_not_light,
    gas_past_the_control,
    gas_with_a_safety_open,
    gas_with_no_call,
    gas_with_the_damper_shut,
    main_gas_unproved,
    part_above_its_volts,
    short_in_some_position,
    spark_on_other_leads,
    spark_with_no_call,
)
from wirecheck.properties.contacts import Contacts, Switch
from wirecheck.properties.property import Broken, Look, Property
from wirecheck.properties.states import States
from wirecheck.properties.unit import Unit, Whole
from wirecheck.properties.witness import plainest
from wirecheck.sequence.answers import View

#: What somebody can be hurt by, looked at for danger: what may happen is taken to.
DANGERS: tuple[tuple[Property, Look], ...] = tuple(
    (module.PROPERTY, module.broken)
    for module in (
        gas_with_a_safety_open,
        gas_with_the_damper_shut,
        gas_with_no_call,
        main_gas_unproved,
        gas_past_the_control,
        spark_with_no_call,
        part_above_its_volts,
        short_in_some_position,
        spark_on_other_leads,
    )
)
#: Whether it works, looked at for that: what may happen is taken not to.
WORKINGS: tuple[tuple[Property, Look], ...] = (
    (call_does_not_light.PROPERTY, call_does_not_light.broken),
)
#: All of them, by name.
PROPERTIES = {record.name: record for record, _look in (*DANGERS, *WORKINGS)}


class Looked(NamedTuple):
    """One unit, looked at.

    Attributes:
        states: of the unit, as looked at for what is broken.
        broken: the properties that do not hold, the worst first.
        bounded: what was not gone through, with the reason; empty if every state was.
    """

    states: States
    broken: tuple[Broken, ...]
    bounded: tuple[str, ...]


def dangerous(whole: Whole, unit: Unit) -> States:
    """A unit looked at for danger, in every position of its switches."""
    return States(whole, unit, View.DANGER, Contacts(whole, unit))


def working(whole: Whole, unit: Unit) -> States:
    """A unit looked at for whether it works: its calls and its control go through all states.

    Everything else stands as in a running burner; dampers and zone valves follow their motors.
    """
    return States(
        whole, unit, View.OPERATION, Contacts(whole, unit, fixed=_stands_still, dampers_follow=True)
    )


def _stands_still(variable: Switch) -> bool:
    return variable.what in ("contact", "blade") or (
        variable.what == "call" and variable.name != ""
    )


def look(whole: Whole, unit: Unit) -> Looked:
    """Look at one unit."""
    danger = dangerous(whole, unit)
    states, found = danger, [each for _record, look_at in DANGERS for each in look_at(danger)]
    if not found:
        states = working(whole, unit)
        found = [each for _record, look_at in WORKINGS for each in look_at(states)]
    told = [each._replace(state=plainest(states, each.table)) for each in found]
    return Looked(states, tuple(told), tuple(_bounds(whole, danger)))


def look_at_all(whole: Whole) -> Iterator[Looked]:
    """Look at every unit of a diagram."""
    for unit in whole.units():
        yield look(whole, unit)


def _bounds(whole: Whole, states: States) -> Iterator[str]:
    held = states.contacts.held
    if held:
        names = ", ".join(whole.diagram.parts[each.part].name for each in held)
        yield (
            f"{len(states.positions.variables)} independent switches of one unit were put into "
            f"every position; taken as in a running burner were {names}"
        )
    if states.bounded:
        yield states.bounded
