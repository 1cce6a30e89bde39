"""Ohms with the power off: leads, contacts, coils, windings, each with one end taken off.

Taken off, nothing that lies beside it can be read for it.  The ignition cable is looked at, no
probe goes on it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import cast

from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import EARTH, Lead, LeadRole, Part, Terminal
from wirecheck.model.kind import LoadSpec, SourceSpec, SwitchSpec
from wirecheck.sequence.no_go import NoGo
from wirecheck.troubleshoot.modes import costs
from wirecheck.troubleshoot.reading import Reading, Stage

#: So many leads at one place make a star; and what each costs more, in minutes (common practice, no
#: source).
STAR = 3
EACH_MORE = 0.5
OFF = "Power and gas off"
OFF_CAUTION = "Power off at the disconnect and kept off; mark each lead taken off, put it back."
#: What proving it dead costs more, in minutes (common practice, no source).
LINE_MORE = 1.0
CAPACITY_CAUTION = "At line voltage in use: prove it dead before you touch it."


def power_off_readings(nets: Nets) -> Iterator[Reading]:
    """Every reading in ohms, in the order of the text."""
    no_go = NoGo(nets, Conduction(nets))
    for number, lead in enumerate(nets.diagram.leads):
        ends = (lead.a, lead.b)
        if lead.conducts and not any(no_go.forbids(end, volts=False) for end in ends):
            line = any(no_go.at_line_voltage(end) for end in ends)
            yield from _of_lead(nets, number, lead, line=line)
    for part, elements in nets.elements_of.items():
        for number, element in enumerate(elements):
            line = no_go.at_line_voltage(element.a)
            if isinstance(element.spec, SwitchSpec) and element.spec.moved_by != "control":
                yield _of_contact(element, number, line=line)
            elif _is_coil(element):
                yield _of_coil(element, number, line=line)
        drawn = nets.diagram.parts[part]
        if "winding" in drawn.kind.attributes:
            yield _of_windings(drawn)
    yield from _of_circuits(nets, no_go)
    yield from _of_stars(nets, no_go)


def _of_circuits(nets: Nets, no_go: NoGo) -> Iterator[Reading]:
    """From each hot conductor of a transformer to its common: a short lies on the one that reads 0.

    The transformer is taken off; what hangs on the conductor stays on.
    """
    conduction = Conduction(nets)
    for elements in nets.elements_of.values():
        for source in elements:
            if not isinstance(source.spec, SourceSpec) or not source.spec.fed_by:
                continue
            if not any(no_go.forbids(end, volts=False) for end in (source.a, source.b)):
                yield _of_circuit(nets, source, None)
            region = conduction.region(nets.net(source.a))
            for net, members in enumerate(nets.members):
                wired = [each for each in members if nets.is_wired(each) and each != source.a]
                if conduction.region(net) != region or not wired:
                    continue
                if not any(no_go.forbids(end, volts=False) for end in (*wired, source.b)):
                    yield _of_circuit(nets, source, wired[0])


def _of_circuit(nets: Nets, source: Element, point: Terminal | None) -> Reading:
    """From one conductor, or from the lead that was taken off with all callers calling."""
    show = nets.diagram.show
    if point is None:
        key, end, about = "calling", "that lead, the thermostats set to call,", "whole, calling"
    else:
        key, end, about = f"{point.part}.{point.name}", show(point), "whole"
    return _ohms(
        f"ohms:whole:{key}:{source.part.key}".casefold(),
        f"take the lead off at {show(source.a)} and read the ohms from {end} to "
        f"{show(source.b)}, everything else left on",
        "ohms",
        line=False,
        points=(point or source.a, source.b),
        about=about,
    )


def _of_stars(nets: Nets, no_go: NoGo) -> Iterator[Reading]:
    """Where many hot leads meet: which of them leads to the short, each taken off and read."""
    conduction = Conduction(nets)
    for elements in nets.elements_of.values():
        for source in elements:
            if not isinstance(source.spec, SourceSpec) or not source.spec.fed_by:
                continue
            region = conduction.region(nets.net(source.a))
            for point in nets.net_of:
                leads = nets.leads_at(point)
                if len(leads) < STAR or conduction.region(nets.net(point)) != region:
                    continue
                if not any(no_go.forbids(end, volts=False) for end in (point, source.b)):
                    yield _of_star(nets, source, point, leads)


def _of_star(nets: Nets, source: Element, point: Terminal, leads: list[int]) -> Reading:
    diagram = nets.diagram
    show = diagram.show
    reading = _ohms(
        f"ohms:star:{point.part}.{point.name}:{source.part.key}".casefold(),
        f"take all leads off at {show(point)} and read from the end of each to {show(source.b)}: "
        "which of them reads a short?",
        "ohms",
        line=False,
        points=(point, source.b),
        about="star",
    )
    named = [f"the lead {diagram.lead_name(diagram.leads[number])}" for number in leads]
    minutes = reading.cost + len(leads) * EACH_MORE
    return replace(reading, unit="", choices=("none of them", *named), cost=minutes)


def _ohms(  # noqa: PLR0913 - what a reading in ohms is made of
    key: str,
    ask: str,
    cost: str,
    *,
    line: bool,
    about: str,
    points: tuple[Terminal, ...] = (),
    lead: int | None = None,
    part: str = "",
) -> Reading:
    return Reading(
        key,
        "ohms",
        Stage.OFF,
        f"{OFF}: {ask}",
        "ohm",
        costs()[cost] + (LINE_MORE if line else 0.0),
        cautions=(OFF_CAUTION, *((CAPACITY_CAUTION,) if line else ())),
        points=points,
        lead=lead,
        part=part,
        about=about,
    )


def _of_lead(nets: Nets, number: int, lead: Lead, *, line: bool) -> Iterator[Reading]:
    show = nets.diagram.show
    near, far = (lead.b, lead.a) if lead.a == EARTH else (lead.a, lead.b)
    what = {LeadRole.JUMPER: "jumper", LeadRole.PLUG: "lead of the harness"}.get(lead.role, "lead")
    off = "pull the plug" if lead.role is LeadRole.PLUG else f"take the lead off at {show(near)}"
    to = "bare metal of the unit" if far == EARTH else show(far)
    yield _ohms(
        f"ohms:lead:{number}",
        f"{off} and read the continuity of the {what} from its end there to {to}",
        "lead-ohms",
        line=line,
        points=(near, far),
        lead=number,
        about="through",
    )
    if EARTH not in (near, far) and not nets.joined(near, EARTH):
        yield _ohms(
            f"ohms:metal:{number}",
            f"take off both ends of the {what} {nets.diagram.lead_name(lead)} and read from it to "
            "bare metal",
            "earth-ohms",
            line=line,
            points=(near, EARTH),
            lead=number,
            about="metal",
        )


def _is_coil(element: Element) -> bool:
    """A coil, an operator, a motor; electronics show no ohms that say anything."""
    spec = element.spec
    inner = ("electronics", "spark-coil", "amplifier")
    return isinstance(spec, LoadSpec) and spec.takes is not None and spec.type not in inner


def _of_contact(element: Element, number: int, *, line: bool) -> Reading:
    part = element.part
    several = len(part.structure.switches) > 1
    name = f"the contact {element.name} of {part.name}" if several else f"{part.name}"
    how = " at rest" if cast(SwitchSpec, element.spec).moved_by in ("coil", "motor") else ""
    return _ohms(
        f"ohms:contact:{part.key}:{number}",
        f"take a lead off {part.name} and read the continuity of {name}{how}",
        "ohms",
        line=line,
        points=(element.a, element.b),
        part=part.key,
        about=f"contact {number}",
    )


def _of_coil(element: Element, number: int, *, line: bool) -> Reading:
    part = element.part
    return _ohms(
        f"ohms:coil:{part.key}:{number}",
        f"take a lead off {part.name} and read the ohms of its {element.name or 'coil'}",
        "ohms",
        line=line,
        points=(element.a, element.b),
        part=part.key,
        about=f"coil {number}",
    )


def _of_windings(part: Part) -> Reading:
    return _ohms(
        f"ohms:windings:{part.key}",
        f"take the leads off {part.name} and read the continuity of each of its windings; the "
        "worst counts",
        "earth-ohms",
        line=True,
        part=part.key,
        about="windings",
    )
