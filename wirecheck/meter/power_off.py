"""Readings with the power off: that it is off, and what only an ohmmeter tells."""

from __future__ import annotations

import math
from collections.abc import Iterator

import networkx as nx

from wirecheck.circuit.figures import ohms_words
from wirecheck.circuit.instrument import Ohmmeter, loose_end, with_leads_off
from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Element, Nets
from wirecheck.meter.bench import Bench
from wirecheck.meter.chains import name_of
from wirecheck.meter.reading import Probe, Reading, Wrong
from wirecheck.model.diagram import EARTH, Part, Terminal
from wirecheck.model.kind import SwitchSpec
from wirecheck.sequence.flame import terminal_of

_DEAD = (Wrong("any volts", "it is not off, or a second supply feeds it: stop, find it, open it"),)


class PowerOff:
    """The unit without power, leads taken off where something beside them would mislead."""

    def __init__(self, bench: Bench) -> None:
        """The unit with all its leads on."""
        self._bench = bench
        self._off = bench.runs.dry.works.off
        self._meters: dict[Terminal | None, Ohmmeter] = {None: Ohmmeter(bench.nets)}

    def dead(self) -> Iterator[Reading]:
        """That nothing feeds it any more."""
        for source in self._bench.supplies():
            pairs = (self._bench.primary(source), (source.a, source.b))
            for red, black in filter(None, pairs):
                yield from self._bench.volts(self._off, red, black, _DEAD, power=False)
        for red, black in self._bench.own_calls():
            yield from self._bench.volts(self._off, red, black, _DEAD, power=False)

    # ---- contacts and coils ------------------------------------------------------------------

    def contacts(self) -> Iterator[Reading]:
        """Fuses and safeties, each by itself."""
        for key, contact in self._bench.elements("switch"):
            if self._is_read(contact):
                yield from self._contact(key, contact)

    def _is_read(self, contact: Element) -> bool:
        spec, part = contact.spec, contact.part
        if not isinstance(spec, SwitchSpec) or part.family == "ignition-control":
            return False
        if spec.moved_by == "overcurrent":
            return not self._bench.no_go.at_line_voltage(contact.a)
        needs_power = any(load.type == "electronics" for load in part.structure.loads)
        return spec.safety and not needs_power

    def _contact(self, key: ElementKey, contact: Element) -> Iterator[Reading]:
        opened = {**self._off, key: False}
        for lifted in (None, contact.a, contact.b):
            if math.isinf(self._meter(lifted).ohms(opened, contact.a, contact.b)):
                value = self._meter(lifted).ohms(self._off, contact.a, contact.b)
                wrong = _contact_wrong(contact, closed=self._off[key])
                hold = f"hold {name_of(contact)} in" if _is_at_door(contact) else ""
                how = "; ".join(filter(None, (hold, self._taking_off(lifted))))
                yield from self._ohms((contact.a, contact.b), value, wrong, how)
                return

    def coil(self, coil: Element) -> Iterator[Reading]:
        """One operator of a gas valve."""
        key = self._bench.key_of(coil)
        name = f"{coil.part.name} {coil.name}".strip()
        for lifted in (None, coil.a, coil.b):
            meter = self._meter(lifted)
            if math.isinf(meter.ohms(self._off, coil.a, coil.b, without=key)):
                value = meter.ohms(self._off, coil.a, coil.b)
                wrong = (
                    Wrong("open (OL)", f"the coil of {name} is open"),
                    Wrong("near 0 ohm", f"the coil of {name} is shorted; it takes the fuse too"),
                )
                behind = " or less: the maker's figure holds" if 1 <= value < math.inf else ""
                how = self._taking_off(lifted)
                yield from self._ohms((coil.a, coil.b), value, wrong, how, behind)
                return

    def _taking_off(self, lifted: Terminal | None) -> str:
        return f"take the lead off {self._bench.show(lifted)}" if lifted else ""

    def _ohms(
        self,
        ends: tuple[Terminal, Terminal],
        value: float,
        wrong: tuple[Wrong, ...],
        how: str,
        behind: str = "",
    ) -> Iterator[Reading]:
        red, black = ends
        if any(self._bench.no_go.forbids(end, volts=False) for end in ends):
            return
        yield Reading(
            0,
            "ohms",
            self._bench.probe(red),
            self._bench.probe(black),
            how,
            value,
            f"{ohms_words(value)}{behind}",
            wrong,
            line_voltage=self._bench.line_voltage(self._off, red, black),
        )

    def _meter(self, lifted: Terminal | None) -> Ohmmeter:
        if lifted not in self._meters and lifted is not None:
            self._meters[lifted] = Ohmmeter(Nets(with_leads_off(self._bench.diagram, lifted)))
        return self._meters[lifted]

    # ---- leads of the burner -----------------------------------------------------------------

    def burner_ground(self, control: Part) -> Iterator[Reading]:
        """The way back of spark and flame signal."""
        for ground, metal in self._ends(control, "burner-ground", "burner-metal"):
            wrong = (
                Wrong("open (OL)", "this lead is broken or off at the burner: no flame is proved"),
                Wrong("over 1 ohm, or it wanders", "rust or a loose crimp: clean both ends"),
            )
            yield from self._lead(ground, metal, wrong, metal)

    def sense_lead(self, control: Part) -> Iterator[Reading]:
        """The lead of a separate flame rod: that it reaches the rod, and no metal."""
        if self._bench.no_go.senses_by_spark_lead(control):
            return
        for sense, rod in self._ends(control, "sense", "rod"):
            whole = (
                Wrong("open (OL)", "this lead is broken or off at the rod: no flame is proved"),
                Wrong("over 1 ohm, or it wanders", "a bad crimp or a loose rod terminal"),
            )
            yield from self._lead(sense, rod, whole, rod)
            clear = (
                Wrong(
                    "any reading",
                    "the rod touches metal, its porcelain is cracked, or this lead is chafed",
                ),
            )
            burner = self._bench.companions.of(control, "burner")
            metal = burner.with_role("burner-metal") if burner else ()
            yield from self._lead(sense, rod, clear, metal[0] if metal else EARTH)

    def _ends(self, control: Part, ours: str, its: str) -> Iterator[tuple[Terminal, Terminal]]:
        burner = self._bench.companions.of(control, "burner")
        here = terminal_of(control, ours)
        there = terminal_of(burner, its) if burner else None
        if here is not None and there is not None:
            yield here, there

    def _lead(
        self, here: Terminal, there: Terminal, wrong: tuple[Wrong, ...], black: Terminal
    ) -> Iterator[Reading]:
        """A lead between two terminals, off at the first: from its end to where black goes."""
        number = self._leaves_by(here, there)
        ends = (here, there, black)
        if number is None or any(self._bench.no_go.forbids(end, volts=False) for end in ends):
            return
        shown = self._bench.show(here)
        red = Probe(here, f"end of the lead taken off {shown}", number)
        value = self._meter(here).ohms(self._off, loose_end(number), black)
        how = f"take the lead off {shown}"
        yield Reading(
            0, "ohms", red, self._bench.probe(black), how, value, ohms_words(value), wrong
        )

    def _leaves_by(self, here: Terminal, there: Terminal) -> int | None:
        """The lead at the one terminal that is to reach the other, broken or not."""
        drawn: nx.Graph[Terminal] = nx.Graph(self._bench.nets.conductors)
        leads = self._bench.diagram.leads
        drawn.add_edges_from(
            (lead.a, lead.b, {"lead": number})
            for number, lead in enumerate(leads)
            if not lead.conducts
        )
        if not nx.has_path(drawn, here, there) or here == there:
            return None
        second = nx.shortest_path(drawn, here, there)[1]
        number = drawn.edges[here, second].get("lead")
        return number if isinstance(number, int) else None


def _is_at_door(contact: Element) -> bool:
    """Say whether the open door, with the meter inside, opens this contact too."""
    return isinstance(contact.spec, SwitchSpec) and contact.spec.moved_by == "door"


def _contact_wrong(contact: Element, *, closed: bool) -> tuple[Wrong, ...]:
    """What it means that a contact does not stand as it should, which is closed or open."""
    spec, name = contact.spec, name_of(contact)
    if isinstance(spec, SwitchSpec) and spec.moved_by == "overcurrent":
        return (Wrong("open (OL)", f"{name} is blown: find the short before a new one goes in"),)
    if closed and _is_at_door(contact):
        means = f"{name} is open though held in: replace it, never bridge it"
        return (Wrong("open (OL)", means),)
    if closed:
        means = f"{name} is open: find out why; reset or replace it, never bridge it"
        return (Wrong("open (OL)", means),)
    return (Wrong("near 0 ohm", f"{name} is stuck closed: it proves nothing, replace it"),)
