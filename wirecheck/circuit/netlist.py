"""From a diagram to the numbered circuit that `wirecheck.circuit.solve` takes.

Nodes are the nets of the diagram, except where a lead has a resistance of its own (a stated
length, or found loose): there the net falls into several nodes with the lead between them.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Mapping
from typing import NamedTuple

from wirecheck.circuit.copper import lead_ohms
from wirecheck.circuit.found_wrong import SHORTED_OHM, condition
from wirecheck.circuit.nets import Element, Nets
from wirecheck.circuit.solve import Branch, Circuit, SourceBranch, Transformer, Winding
from wirecheck.model.diagram import EARTH, Lead, Part, Terminal, Value
from wirecheck.model.kind import LoadSpec, SourceSpec
from wirecheck.model.quantity import Quantity

#: Behind the supply's terminals, in ohm: some hundred amperes into a bolted short (common
#: practice, no source).
MAINS_OHM = 0.1
#: The bond of neutral and ground at the service, in ohm (common practice, no source).
SERVICE_BOND_OHM = 0.01
#: What a small transformer takes unloaded, in VA (common practice, no source).
EXCITING_VA = 3.0
#: A bond through screws and brackets where it is to be thought good, in ohm (common practice).
BOND_OHM = 0.1


class ElementKey(NamedTuple):
    """An element of a part: its place in `Nets.elements_of`."""

    part: str
    number: int


class Netlist(NamedTuple):
    """A circuit and what its numbers stand for.

    Attributes:
        circuit: to be solved.
        node_of: the node of each terminal; the earth is node 0.
        switches: the contact behind each switch of the circuit.
        loads: the branch of each load that takes current.
        leads: the branch of each lead with a resistance.
        bonds: the switch of each bond that may conduct, behind those of the contacts.
        series: the branch in series with each transformer secondary: its amperes are the load's.
    """

    circuit: Circuit
    node_of: dict[Terminal, int]
    switches: tuple[ElementKey, ...]
    loads: dict[ElementKey, int]
    leads: dict[int, int]
    bonds: dict[ElementKey, int]
    series: dict[ElementKey, int]


def netlist(nets: Nets, *, temperature_c: float = 20.0) -> Netlist:
    """Number the circuit of a diagram.

    Args:
        nets: of the diagram.
        temperature_c: of the copper of leads with a stated length.
    """
    resistive = {
        number: ohms
        for number, lead in enumerate(nets.diagram.leads)
        if lead.conducts and (ohms := _ohms(lead, nets, temperature_c)) > 0
    }
    node_of = _nodes(nets, set(resistive))
    builder = _Builder(node_of)
    for number, ohms in resistive.items():
        lead = nets.diagram.leads[number]
        builder.leads[number] = builder.branch(lead.a, lead.b, ohms)
    has_mains = any(part.family == "mains" for part in nets.diagram.parts.values())
    for part in nets.diagram.parts.values():
        for number, element in enumerate(nets.elements_of[part.key]):
            builder.add(ElementKey(part.key, number), element)
        builder.supply_bond(part)
        if not has_mains:
            builder.assume_powered(part)
    return builder.netlist()


def _ohms(lead: Lead, nets: Nets, temperature_c: float) -> float:
    """Resistance of one lead: its share of its run's copper, and what was found loose."""
    loose = lead.given.get("loose")
    found = loose.value.high_base if loose and isinstance(loose.value, Quantity) else 0.0
    length = lead.given.get("length")
    if length is None or not isinstance(length.value, Quantity):
        return found
    leads = nets.run_sizes[lead.run] if lead.shared_length else 1
    size = lead.given.get("size")
    gauge = size.value if size and isinstance(size.value, Quantity) else None
    return found + lead_ohms(gauge, length.value.high_base / leads, temperature_c)


def _nodes(nets: Nets, resistive: set[int]) -> dict[Terminal, int]:
    """Node numbers; the earth's is 0."""
    graph = nets.conductors
    if resistive:
        import networkx as nx

        graph = nx.Graph(graph)
        for number in resistive:
            lead = nets.diagram.leads[number]
            if graph.has_edge(lead.a, lead.b) and graph.edges[lead.a, lead.b].get("lead") == number:
                graph.remove_edge(lead.a, lead.b)
        groups = list(nx.connected_components(graph))
    else:
        groups = [set(members) for members in nets.members]
    groups.sort(key=lambda members: EARTH not in members)  # stable: only the earth moves
    return {terminal: number for number, members in enumerate(groups) for terminal in members}


class _Builder:
    """Collects the branches of a circuit."""

    def __init__(self, node_of: dict[Terminal, int]) -> None:
        self.node_of = node_of
        self.branches: list[Branch] = []
        self.switches: list[tuple[int, int]] = []
        self.contacts: list[ElementKey] = []
        self.sources: list[SourceBranch] = []
        self.transformers: list[Transformer] = []
        self.extra_nodes = 0
        self.loads: dict[ElementKey, int] = {}
        self.leads: dict[int, int] = {}
        self.bond_ends: dict[ElementKey, tuple[int, int]] = {}
        self.series: dict[ElementKey, int] = {}

    def branch(self, a: Terminal, b: Terminal, ohms: complex) -> int:
        self.branches.append(Branch(self.node_of[a], self.node_of[b], ohms))
        return len(self.branches) - 1

    def add(self, key: ElementKey, element: Element) -> None:
        a, b = self.node_of[element.a], self.node_of[element.b]
        if element.type == "switch":
            self.switches.append((a, b))
            self.contacts.append(key)
        elif element.type == "bond":
            if element.name != "none":
                self.bond_ends[key] = (a, b)
        elif isinstance(element.spec, LoadSpec):
            ohms = load_ohms(element.spec, element.part.values)
            if ohms is not None and condition(element) != "open":
                ohms = SHORTED_OHM if condition(element) == "shorted" else ohms
                self.loads[key] = self.branch(element.a, element.b, ohms)
        elif isinstance(element.spec, SourceSpec) and condition(element) != "open":
            if condition(element) == "shorted":
                self.branch(element.a, element.b, SHORTED_OHM)
            self._source(key, element, element.spec)

    def _source(self, key: ElementKey, element: Element, spec: SourceSpec) -> None:
        values = element.part.values
        volts = highest(values.get(spec.volts) if isinstance(spec.volts, str) else spec.volts)
        a, b = self.node_of[element.a], self.node_of[element.b]
        if element.part.family == "mains":
            phasor = cmath.rect(volts * spec.share, math.radians(spec.phase_deg))
            self.sources.append(SourceBranch(a, b, phasor, MAINS_OHM))
            return
        rise = highest(values.get(spec.regulation)) / 100 if spec.regulation else 0.0
        rating = highest(values.get(spec.rating)) if spec.rating else 0.0
        unloaded = volts * (1 + rise)
        behind = (unloaded - volts) * volts / rating if rating and rise else MAINS_OHM
        if not spec.fed_by:
            self.sources.append(SourceBranch(a, b, unloaded, behind))
            return
        inner = self._new_node()
        self.series[key] = len(self.branches)
        self.branches.append(Branch(inner, a, behind))
        rated = _all(values.get(spec.fed_volts)) if spec.fed_volts else []
        windings = [Winding(inner, b, unloaded)]
        for number, (first, second) in enumerate(spec.fed_by):
            turns = rated[min(number, len(rated) - 1)] if rated else 120.0
            part = element.part
            windings.append(
                Winding(
                    self.node_of[part.terminal(first)], self.node_of[part.terminal(second)], turns
                )
            )
        self.transformers.append(Transformer(tuple(windings), EXCITING_VA))

    def _new_node(self) -> int:
        self.extra_nodes += 1
        return max(self.node_of.values()) + self.extra_nodes

    def supply_bond(self, part: Part) -> None:
        """Neutral and ground are one at the service."""
        neutral, ground = part.with_role("line-neutral"), part.with_role("line-ground")
        if part.family == "mains" and neutral and ground:
            self.branch(neutral[0], ground[0], SERVICE_BOND_OHM)

    def assume_powered(self, part: Part) -> None:
        """A transformer in a sketch without mains is taken to be fed at its rated volts."""
        for spec in part.structure.sources:
            if spec.fed_by and spec.fed_volts:
                first, second = spec.fed_by[0]
                volts = _all(part.values.get(spec.fed_volts))[0]
                a, b = part.terminal(first), part.terminal(second)
                source = SourceBranch(self.node_of[a], self.node_of[b], volts, MAINS_OHM)
                self.sources.append(source)

    def netlist(self) -> Netlist:
        bonds = {}
        for key, ends in self.bond_ends.items():
            bonds[key] = len(self.switches)
            self.switches.append(ends)
        nodes = max(self.node_of.values()) + 1 + self.extra_nodes
        circuit = Circuit(
            nodes,
            tuple(self.branches),
            tuple(self.switches),
            tuple(self.sources),
            tuple(self.transformers),
        )
        return Netlist(
            circuit,
            self.node_of,
            tuple(self.contacts),
            self.loads,
            self.leads,
            bonds,
            self.series,
        )


def load_ohms(spec: LoadSpec, values: Mapping[str, Value]) -> complex | None:
    """Impedance of a load at its rated volts, in ohm; None if it takes no steady current.

    |Z| is V/I, V^2/VA or V^2 pf/W; its angle follows from the power factor, inductive.
    """
    if spec.volts is None or spec.takes is None:
        return None
    volts = highest(values.get(spec.volts) if isinstance(spec.volts, str) else spec.volts)
    taken = values.get(spec.takes)
    if not isinstance(taken, Quantity) or not taken.high_base or not volts:
        return None
    magnitude = {
        "amps": lambda amount: volts / amount,
        "volt-amps": lambda amount: volts**2 / amount,
        "watts": lambda amount: volts**2 * spec.power_factor / amount,
        "ohms": lambda amount: amount,
    }[taken.dimension](taken.high_base)
    return cmath.rect(magnitude, math.acos(spec.power_factor))


def _all(value: Value | float | None) -> list[float]:
    if isinstance(value, Quantity):
        return [value.high_base]
    if isinstance(value, tuple):
        return [each.high_base for each in value if isinstance(each, Quantity)]
    return [float(value)] if isinstance(value, (int, float)) else []


def highest(value: Value | float | None) -> float:
    """The highest amount of a value, in base units; 0 where there is none."""
    return max(_all(value), default=0.0)
