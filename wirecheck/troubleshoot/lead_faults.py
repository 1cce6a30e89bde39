"""The faults of leads: open, loose, on metal, landed on a neighbouring terminal.

The leads of flame signal and spark have modes of their own, for they fail more often than others,
and a resistance that a valve would not notice is one that a flame signal cannot pass.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

from wirecheck.circuit.companions import Companions
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import EARTH, Lead, Terminal, Value
from wirecheck.model.kind import FLAG_SET
from wirecheck.model.quantity import Quantity
from wirecheck.sequence.flame import terminal_of
from wirecheck.troubleshoot.alteration import Alteration
from wirecheck.troubleshoot.fault import Fault
from wirecheck.troubleshoot.modes import modes

Way = Literal["ground", "sense", "spark", ""]

#: What a corroded end in the way of the flame signal adds: so much that a signal of some
#: microamps falls below what is needed (common practice, no source).
POOR = Quantity(90.0, 90.0, "Mohm")
#: What a loose end in any other lead adds: so much that a coil does not pull in behind it (common
#: practice, no source).
LOOSE = Quantity(200.0, 200.0, "ohm")

_CIRCUITS_APART = ("ignition", "line")


def lead_faults(nets: Nets) -> Iterator[Fault]:
    """Every fault of every lead, in the order of the text."""
    ways = _ways(nets)
    for number, lead in enumerate(nets.diagram.leads):
        if lead.conducts:
            yield from _faults_of(nets, number, lead, ways.get(number, ""))


def _faults_of(nets: Nets, number: int, lead: Lead, way: Way) -> Iterator[Fault]:
    open_mode, poor_mode, earthed_mode = {
        "ground": ("ground-open", "ground-poor", "lead-earthed"),
        "sense": ("sense-open", "sense-poor", "sense-earthed"),
        "spark": ("spark-lead-open", "", "spark-lead-earthed"),
        "": ("lead-open", "lead-loose", "lead-earthed"),
    }[way]
    name = nets.diagram.lead_name(lead)

    def fault(mode: str, attribute: str, value: Value) -> Fault:
        return _fault(mode, number, lead, name, Alteration(found=((number, attribute, value),)))

    yield fault(open_mode, "broken", FLAG_SET)
    if way == "ground":
        # Rust between lead and burner: the lead itself measures like a good one.
        rust = Alteration(found=((number, "loose", POOR),))
        yield replace(_fault(poor_mode, number, lead, name, Alteration()), seems=rust)
    elif poor_mode:
        yield fault(poor_mode, "loose", POOR if way else LOOSE)
    if EARTH not in (lead.a, lead.b) and not nets.joined(lead.a, EARTH):
        yield fault(earthed_mode, "touches", "earth")
    if way != "spark":
        yield from _misplaced(nets, number, lead, name)


def _fault(  # noqa: PLR0913 - what a fault of a lead is made of
    mode: str,
    number: int,
    lead: Lead,
    name: str,
    alters: Alteration,
    *,
    end: str = "",
    there: str = "",
) -> Fault:
    stated = modes()[mode]
    return Fault(
        f"{mode}:{number}{end}",
        mode,
        stated.what.format(it=name, there=there),
        stated.repair.format(it=name, there=there),
        f"lead:{number}",
        stated.likelihood,
        lead.span,
        alters,
    )


def _misplaced(nets: Nets, number: int, lead: Lead, name: str) -> Iterator[Fault]:
    """Each end on the next terminal of the same device, in the order of the part library."""
    ends: tuple[tuple[Literal["a", "b"], Terminal], ...] = (("a", lead.a), ("b", lead.b))
    for end, terminal in ends:
        there = _neighbour(nets, terminal)
        if there is None or nets.joined(there, terminal):
            continue
        shown = nets.diagram.show(there)
        alters = Alteration(moved=((number, end, there),))
        yield _fault("lead-misplaced", number, lead, name, alters, end=end, there=shown)


def _neighbour(nets: Nets, terminal: Terminal) -> Terminal | None:
    """The next terminal on which a lead of the same sort can land by mistake; the last but one."""
    part = nets.diagram.parts.get(terminal.part)
    if part is None:
        return None
    specs = part.structure.terminals
    own = specs[terminal.name].circuit
    alike = [
        name
        for name, spec in specs.items()
        if not spec.inner
        and (spec.circuit == own or {spec.circuit, own}.isdisjoint(_CIRCUITS_APART))
    ]
    if len(alike) < 2:
        return None
    place = alike.index(terminal.name)
    return part.terminal(alike[place + 1] if place + 1 < len(alike) else alike[place - 1])


def _ways(nets: Nets) -> dict[int, Way]:
    """Which leads carry spark or flame signal; of two uses the one that fails first is named."""
    found: dict[int, Way] = {}
    companions = Companions(nets.diagram)
    uses: tuple[tuple[Way, str, str], ...] = (
        ("ground", "burner-ground", "burner-metal"),
        ("sense", "sense", "rod"),
        ("spark", "spark", "electrode"),
    )
    for control in nets.diagram.parts.values():
        burner = companions.of(control, "burner") if control.family == "ignition-control" else None
        if burner is None:
            continue
        for way, from_role, to_role in uses:
            a, b = terminal_of(control, from_role), terminal_of(burner, to_role)
            if a is not None and b is not None and nets.joined(a, b):
                for number in nets.path(a, b):
                    found[number] = way
    return found
