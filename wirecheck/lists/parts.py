"""The parts list: every device, splice and cable, and how much wire of each sort it takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from wirecheck.circuit.nets import Nets
from wirecheck.circuit.resistances import lead_length_m
from wirecheck.lists.wires import Wire
from wirecheck.model.diagram import (
    Attributes,
    Cable,
    Diagram,
    Lead,
    Part,
    Splice,
    Value,
    key_of,
)
from wirecheck.model.kind import AttributeSpec
from wirecheck.model.quantity import UNITS, Quantity
from wirecheck.parts.amounts import each_quantity
from wirecheck.parts.library import cable_attributes, splice_attributes

Specs = Mapping[str, AttributeSpec]


class ListedPart(NamedTuple):
    """A device, a splice or a cable.

    Attributes:
        place: its number in the list, from 1.
        name: as first typed.
        what: what it is, in plain words.
        kind: its kind in the part library or of the user's own; "splice" and "cable" else.
        ratings: what was typed for it, ``secondary 24 V``.
        taken: what was taken as given, as the text does not say it.
        leads: how many lead ends land on it; of a cable, how many leads run in it.
    """

    place: int
    name: str
    what: str
    kind: str
    ratings: tuple[str, ...]
    taken: tuple[str, ...]
    leads: int


class WireNeed(NamedTuple):
    """How much wire of one sort the diagram takes, cables left out.

    Attributes:
        sort: ``red, 18 AWG`` or ``ignition cable``; "" where nothing is typed.
        leads: how many leads are of it.
        length: of those whose length is stated, in the unit of the first; "" if of none.
        unstated: leads without a length.
    """

    sort: str
    leads: int
    length: str
    unstated: int


def parts_of(nets: Nets) -> tuple[ListedPart, ...]:
    """List devices, splices and cables, each in the order typed."""
    return tuple(row._replace(place=place) for place, row in enumerate(_rows(nets), 1))


def _rows(nets: Nets) -> Iterator[ListedPart]:
    diagram = nets.diagram
    landed: dict[str, int] = {}
    for lead in diagram.leads:
        for end in (lead.a, lead.b):
            landed[end.part] = landed.get(end.part, 0) + 1
    for part in diagram.parts.values():
        yield _device(part, landed.get(part.key, 0))
    for splice in diagram.splices.values():
        yield _splice(splice, landed.get(splice.key, 0))
    for cable in diagram.cables.values():
        yield _cable(diagram, cable)


def _device(part: Part, leads: int) -> ListedPart:
    specs = part.kind.attributes
    taken = tuple(
        _words(name, value, specs) for name, value in part.values.items() if name not in part.given
    )
    ratings = _given(part.given, specs)
    return ListedPart(0, part.name, part.kind.title, part.kind.name, ratings, taken, leads)


def _splice(splice: Splice, leads: int) -> ListedPart:
    joint = splice.given.get("joint")
    what = f"splice, {joint.value}" if joint else "splice"
    rest = {name: given for name, given in splice.given.items() if name != "joint"}
    return ListedPart(0, splice.name, what, "splice", _given(rest, splice_attributes()), (), leads)


def _cable(diagram: Diagram, cable: Cable) -> ListedPart:
    run_in = (lead.given["in"].value for lead in diagram.leads if "in" in lead.given)
    count = sum(key_of(str(name)) == cable.key for name in run_in)
    what = f"cable, {cable.conductors} conductors of {cable.gauge_awg:g} AWG"
    return ListedPart(
        0, cable.name, what, "cable", _given(cable.given, cable_attributes()), (), count
    )


def _given(given: Attributes, specs: Specs) -> tuple[str, ...]:
    return tuple(_words(name, attribute.value, specs) for name, attribute in given.items())


def _words(name: str, value: Value, specs: Specs) -> str:
    if specs[name].flag:
        return name
    taps = each_quantity(value)
    if len(taps) > 1:
        return f"{name} {'/'.join(f'{tap.low:g}' for tap in taps)} {taps[0].unit}"
    return f"{name} {value}" if not taps else f"{name} {taps[0]}"


def wire_needs(nets: Nets, wires: tuple[Wire, ...]) -> tuple[WireNeed, ...]:
    """Add up the leads of each sort that run in no cable."""
    sorts: dict[str, list[int]] = {}
    for number, wire in enumerate(wires):
        if not wire.cable:
            sorts.setdefault(_sort(wire), []).append(number)
    return tuple(_need(nets, sort, numbers) for sort, numbers in sorts.items())


def _sort(wire: Wire) -> str:
    ignition = "ignition cable" if "ignition cable" in wire.remarks else ""
    return ", ".join(filter(None, [ignition, wire.colour, wire.size]))


def _need(nets: Nets, sort: str, numbers: list[int]) -> WireNeed:
    leads = [nets.diagram.leads[number] for number in numbers]
    lengths = [length for lead in leads if (length := lead_length_m(nets, lead))]
    unit = next((unit for lead in leads if (unit := _unit(lead))), "")
    total = sum(lengths) / UNITS[unit.casefold()].factor if unit else 0.0
    return WireNeed(
        sort, len(leads), f"{total:.4g} {unit}" if unit else "", len(leads) - len(lengths)
    )


def _unit(lead: Lead) -> str:
    """The unit its length was typed in."""
    typed = lead.given.get("length")
    return typed.value.unit if typed and isinstance(typed.value, Quantity) else ""
