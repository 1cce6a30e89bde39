"""The wire list: every lead from end to end, under the wire number it has on the drawings."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Literal, NamedTuple

from wirecheck.circuit.line_leads import line_leads
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.wire_numbers import wire_numbers
from wirecheck.lists.place import Place, place_of
from wirecheck.model.diagram import Lead, LeadRole
from wirecheck.model.quantity import Quantity

Voltage = Literal["line", "ignition", ""]
_IGNITION = frozenset({"ignition"})


class Wire(NamedTuple):
    """One lead.

    Attributes:
        place: its number in the list, from 1.
        number: its wire number; of a broken lead that joins nothing, those of both ends.
        start, end: where it lands, in the order typed.
        kind: how it was stated: a wire, a jumper, or a lead of a harness.
        colour, size, length: as typed, "" where nothing is; the length is that of this lead.
        run: first and last number in the list of the leads that share one length; None if it has
            one of its own, or none.
        run_length: that length, "" if there is none.
        cable: the cable it runs in.
        voltage: where it is not 24 V: at line voltage, or at that of the spark.
        remarks: what else was typed: ignition cable, rating, what was found wrong.
    """

    place: int
    number: str
    start: Place
    end: Place
    kind: Literal["wire", "jumper", "harness"]
    colour: str
    size: str
    length: str
    run: tuple[int, int] | None
    run_length: str
    cable: str
    voltage: Voltage
    remarks: tuple[str, ...]

    @property
    def length_words(self) -> str:
        """The length as a list prints it: a shared one stands at the first lead it holds for."""
        if self.run is None:
            return self.length
        first, last = self.run
        return f"{self.run_length} for {first}-{last}" if self.place == first else f"with {first}"


_KINDS: Mapping[LeadRole, Literal["wire", "jumper", "harness"]] = {
    LeadRole.WIRE: "wire",
    LeadRole.JUMPER: "jumper",
    LeadRole.PLUG: "harness",
}


def wires_of(nets: Nets) -> tuple[Wire, ...]:
    """List the leads in the order typed."""
    numbers, on_line = wire_numbers(nets), line_leads(nets)
    runs = _shared_runs(nets.diagram.leads)
    return tuple(
        _wire(nets, place, lead, numbers, runs, is_line=place - 1 in on_line)
        for place, lead in enumerate(nets.diagram.leads, 1)
    )


def _wire(  # noqa: PLR0913 - what all leads have in common is worked out once
    nets: Nets,
    place: int,
    lead: Lead,
    numbers: Mapping[int, str],
    runs: Mapping[int, tuple[int, int]],
    *,
    is_line: bool,
) -> Wire:
    diagram = nets.diagram
    run = runs.get(lead.run) if lead.shared_length else None
    length = _typed(lead, "length")
    return Wire(
        place=place,
        number=_number(nets, lead, numbers),
        start=place_of(diagram, lead.a),
        end=place_of(diagram, lead.b),
        kind=_KINDS[lead.role],
        colour=_typed(lead, "colour"),
        size=_typed(lead, "size"),
        length="" if run else length,
        run=run,
        run_length=length if run else "",
        cable=_typed(lead, "in"),
        voltage="line" if is_line else _spark_voltage(nets, lead),
        remarks=tuple(_remarks(lead)),
    )


def _shared_runs(leads: tuple[Lead, ...]) -> dict[int, tuple[int, int]]:
    """First and last place of the leads of each run that share one length."""
    runs: dict[int, tuple[int, int]] = {}
    for place, lead in enumerate(leads, 1):
        if lead.shared_length:
            runs[lead.run] = (runs.get(lead.run, (place, place))[0], place)
    return {run: ends for run, ends in runs.items() if ends[0] != ends[1]}


def _number(nets: Nets, lead: Lead, numbers: Mapping[int, str]) -> str:
    if "number" in lead.given:
        return _typed(lead, "number")
    return " / ".join(dict.fromkeys(numbers[nets.net(end)] for end in (lead.a, lead.b)))


def _spark_voltage(nets: Nets, lead: Lead) -> Voltage:
    specs = filter(None, (nets.diagram.spec(end) for end in (lead.a, lead.b)))
    return "ignition" if _IGNITION & {spec.circuit for spec in specs} else ""


def _typed(lead: Lead, name: str) -> str:
    given = lead.given.get(name)
    return str(given.value) if given else ""


def _remarks(lead: Lead) -> Iterator[str]:
    if "ignition-cable" in lead.given:
        yield "ignition cable"
    rating = lead.given.get("rating")
    if rating and isinstance(rating.value, Quantity):
        yield f"rated {rating.value}"
    if "capped" in lead.given:
        yield "capped"
    if "broken" in lead.given:
        yield "found broken"
    if "loose" in lead.given:
        yield f"found loose, {_typed(lead, 'loose')}"
    if "touches" in lead.given:
        yield f"found touching {_typed(lead, 'touches')}"
