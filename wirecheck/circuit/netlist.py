"""From a diagram to the numbered circuit that the solvers take.

Nodes are the nets of the diagram, except where a lead has a resistance of its own (a length, or
found loose): there the net falls into several nodes with the lead between them.
"""

from __future__ import annotations

import cmath
import math
from typing import NamedTuple

from wirecheck.circuit.found_wrong import SHORTED_OHM, Condition, condition
from wirecheck.circuit.nets import Element, Nets
from wirecheck.circuit.numbered import (
    CLOSED_OHM,
    Branch,
    Circuit,
    SourceBranch,
    Switch,
    Transformer,
    Winding,
)
from wirecheck.circuit.ratings import amounts, highest, load_ohms
from wirecheck.circuit.resistances import lead_resistances, number_nodes
from wirecheck.circuit.supplies import (
    EXCITING_VA,
    MAINS_OHM,
    SERVICE_BOND_OHM,
    Behind,
    source_behind,
)
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.kind import LoadSpec, SourceSpec

__all__ = ["ElementKey", "Netlist", "highest", "load_ohms", "netlist"]

#: A bond to the appliance's metal through screws and brackets, where it conducts at all, in ohm
#: (common practice, no source).
BOND_OHM = 0.1
#: No winding is made for less.
LEAST_V = 1e-3


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
        series: the winding that is each transformer secondary.
        sources: the source of each supply that no drawn transformer feeds.
    """

    circuit: Circuit
    node_of: dict[Terminal, int]
    switches: tuple[ElementKey, ...]
    loads: dict[ElementKey, int]
    leads: dict[int, int]
    bonds: dict[ElementKey, int]
    series: dict[ElementKey, int]
    sources: dict[ElementKey, int]


def netlist(
    nets: Nets, *, temperature_c: float = 20.0, as_found: bool = True, each_lead: bool = False
) -> Netlist:
    """Number the circuit of a diagram.

    Args:
        nets: of the diagram.
        temperature_c: of the copper of leads with a known length.
        as_found: with the coils, windings and joints that were found wrong; else as if all of
            these were well.
        each_lead: every lead is a branch of its own, so that the current in it is known; one of
            no known length has the resistance of a closed contact.
    """
    resistive = lead_resistances(nets, temperature_c, as_found=as_found)
    if each_lead:
        conducting = (n for n, lead in enumerate(nets.diagram.leads) if lead.conducts)
        resistive = {**dict.fromkeys(conducting, CLOSED_OHM), **resistive}
    builder = _Builder(nets, number_nodes(nets, resistive), as_found=as_found)
    for number, ohms in resistive.items():
        lead = nets.diagram.leads[number]
        builder.leads[number] = builder.branch(lead.a, lead.b, ohms)
    parts = nets.diagram.parts.values()
    has_mains = any(part.family == "mains" for part in parts)
    for part in parts:
        for number, element in enumerate(nets.elements_of[part.key]):
            builder.add(ElementKey(part.key, number), element)
        builder.supply_bond(part)
        if not has_mains:
            builder.assume_powered(part)
    return builder.netlist()


class _Builder:
    """Collects the branches of a circuit."""

    def __init__(self, nets: Nets, node_of: dict[Terminal, int], *, as_found: bool) -> None:
        self.nets = nets
        self.as_found = as_found
        self.node_of = node_of
        self.nodes = max(node_of.values()) + 1
        self.branches: list[Branch] = []
        self.switches: list[Switch] = []
        self.contacts: list[ElementKey] = []
        self.source_branches: list[SourceBranch] = []
        self.transformers: list[Transformer] = []
        self.windings = 0
        self.loads: dict[ElementKey, int] = {}
        self.leads: dict[int, int] = {}
        self.bond_switches: dict[ElementKey, Switch] = {}
        self.series: dict[ElementKey, int] = {}
        self.sources: dict[ElementKey, int] = {}
        self._powered: set[frozenset[int]] = set()

    def branch(self, a: Terminal, b: Terminal, ohms: complex) -> int:
        self.branches.append(Branch(self.node_of[a], self.node_of[b], ohms))
        return len(self.branches) - 1

    def add(self, key: ElementKey, element: Element) -> None:
        a, b = self.node_of[element.a], self.node_of[element.b]
        if element.type == "switch":
            self.switches.append(Switch(a, b))
            self.contacts.append(key)
        elif element.type == "bond":
            if element.name != "none":
                self.bond_switches[key] = Switch(a, b, BOND_OHM)
        else:
            self._load_or_source(key, element, condition(element) if self.as_found else "well")

    def _load_or_source(self, key: ElementKey, element: Element, found: Condition) -> None:
        if found == "open":
            return
        if isinstance(element.spec, LoadSpec):
            ohms = load_ohms(element.spec, element.part.values)
            if ohms is not None:
                ohms = SHORTED_OHM if found == "shorted" else ohms
                ohms = ohms if abs(ohms) > CLOSED_OHM else CLOSED_OHM  # a rating nothing has
                self.loads[key] = self.branch(element.a, element.b, ohms)
        elif isinstance(element.spec, SourceSpec):
            if found == "shorted":
                self.branch(element.a, element.b, SHORTED_OHM)
            self._source(key, element, element.spec)

    def _source(self, key: ElementKey, element: Element, spec: SourceSpec) -> None:
        behind = source_behind(element.part, spec)
        a, b = self.node_of[element.a], self.node_of[element.b]
        if spec.fed_by:
            self._transformer(key, element.part, spec, behind)
            return
        phasor = cmath.rect(behind.unloaded_v * spec.share, math.radians(spec.phase_deg))
        self.sources[key] = len(self.source_branches)
        self.source_branches.append(SourceBranch(a, b, phasor, behind.ohms))

    def _transformer(self, key: ElementKey, part: Part, spec: SourceSpec, behind: Behind) -> None:
        """Half of the impedance lies in the secondary, half in each primary winding."""
        a, b = (self.node_of[part.terminal(name)] for name in spec.between)
        turns = max(behind.unloaded_v, LEAST_V)
        windings = [Winding(a, b, turns, behind.ohms / 2)]
        rated = amounts(part.values.get(spec.fed_volts)) if spec.fed_volts else []
        for number, pair in enumerate(spec.fed_by):
            primary = max(rated[min(number, len(rated) - 1)], LEAST_V) if rated else 120.0
            first, second = (self.node_of[part.terminal(name)] for name in pair)
            ohms = behind.ohms / 2 * (primary / turns) ** 2
            windings.append(Winding(first, second, primary, ohms))
        self.series[key] = self.windings
        self.windings += len(windings)
        self.transformers.append(Transformer(tuple(windings), EXCITING_VA))

    def supply_bond(self, part: Part) -> None:
        """Neutral and ground are one at the service."""
        neutral, ground = part.with_role("line-neutral"), part.with_role("line-ground")
        if part.family == "mains" and neutral and ground:
            self.branch(neutral[0], ground[0], SERVICE_BOND_OHM)

    def assume_powered(self, part: Part) -> None:
        """A transformer in a sketch without mains is taken to be fed at its rated volts.

        Primaries on the same two leads are fed once, whichever way round each is.
        """
        for spec in part.structure.sources:
            if spec.fed_by and spec.fed_volts:
                first, second = (part.terminal(name) for name in spec.fed_by[0])
                pair = frozenset((self.nets.net_of[first], self.nets.net_of[second]))
                if pair not in self._powered:
                    self._powered.add(pair)
                    volts = amounts(part.values.get(spec.fed_volts))[0]
                    a, b = self.node_of[first], self.node_of[second]
                    self.source_branches.append(SourceBranch(a, b, volts, MAINS_OHM))

    def netlist(self) -> Netlist:
        bonds = {key: len(self.switches) + number for number, key in enumerate(self.bond_switches)}
        circuit = Circuit(
            self.nodes,
            tuple(self.branches),
            (*self.switches, *self.bond_switches.values()),
            tuple(self.source_branches),
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
            self.sources,
        )
