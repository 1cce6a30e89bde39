"""The meter: what it shows across two terminals, with the power on and, in ohms, with it off."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from wirecheck.circuit.elimination import Elimination
from wirecheck.circuit.netlist import ElementKey, netlist
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.numbered import METER_OHM, Branch, Case, Circuit, SourceBranch
from wirecheck.model.diagram import OPEN_END, Diagram, Terminal

#: More than this a meter shows as open, and anything less is a path (common practice, no source).
OPEN_OHM = 5e6
#: What an ohmmeter finds in a winding of a transformer (common practice, no source): only that it
#: conducts matters here.
WINDING_OHM = 2.0
#: Less than this a bare conductor has not.
LEAST_OHM = 1e-6

#: Which contacts are closed.
Positions = Mapping[ElementKey, bool]


class Voltmeter:
    """A meter of `METER_OHM` on the powered circuit of one diagram.

    Attributes:
        circuit: that it is put on.
    """

    def __init__(self, nets: Nets) -> None:
        """Number the circuit."""
        self._net = net = netlist(nets)
        self.circuit = net.circuit
        self._solver = Elimination(net.circuit)
        # A bond through rust carries no current that could be relied on.
        self._bonds = [nets.elements_of[key.part][key.number].name == "solid" for key in net.bonds]

    def case(self, closed: Positions, a: Terminal, b: Terminal, *, power: bool = True) -> Case:
        """The circuit with the meter across two terminals."""
        flags = [closed[key] for key in self._net.switches]
        meter = Branch(*self.nodes(a, b), METER_OHM)
        return Case([*flags, *self._bonds], added=(meter,), supply=1.0 if power else 0.0)

    def nodes(self, a: Terminal, b: Terminal) -> tuple[int, int]:
        """The numbers of two terminals in the circuit."""
        return self._net.node_of[a], self._net.node_of[b]

    def volts(self, closed: Positions, a: Terminal, b: Terminal, *, power: bool = True) -> float:
        """What it shows, rms, with the contacts as they are."""
        volts = self._solver.solve(self.case(closed, a, b, power=power)).across(*self.nodes(a, b))
        return 0.0 if volts is None else abs(volts)


class Ohmmeter:
    """A meter on the circuit with every supply off.

    It sends direct current: a coil shows the resistive part of its impedance at most, windings and
    even poor bonds to the metal conduct, and so does everything that lies beside what is measured.
    """

    def __init__(self, nets: Nets) -> None:
        """Number the circuit without its sources."""
        self._net = net = netlist(nets)
        branches = [
            branch._replace(ohms=max(complex(branch.ohms).real, LEAST_OHM))
            for branch in net.circuit.branches
        ]
        branches += [
            Branch(winding.a, winding.b, WINDING_OHM) for winding, _flux in net.circuit.windings()
        ]
        self._circuit = Circuit(net.circuit.nodes, tuple(branches), net.circuit.switches)

    def ohms(
        self, closed: Positions, a: Terminal, b: Terminal, *, without: ElementKey | None = None
    ) -> float:
        """What it shows; inf where nothing conducts.

        Args:
            closed: which contacts are closed.
            a: where one probe is.
            b: where the other is.
            without: a load that is taken away, to see what lies beside it.
        """
        node_a, node_b = self._net.node_of[a], self._net.node_of[b]
        flags = [closed[key] for key in self._net.switches] + [True] * len(self._net.bonds)
        loads = self._net.loads
        cut = (loads[without],) if without is not None and without in loads else ()
        # One volt behind one ohm: the volts that arrive tell the ohms between the probes.
        circuit = self._circuit._replace(sources=(SourceBranch(node_a, node_b, 1.0, 1.0),))
        share = abs(Elimination(circuit).solve(Case(flags, cut=cut)).across(node_a, node_b) or 0.0)
        ohms = share / (1 - share) if share < 1 else math.inf
        return ohms if ohms < OPEN_OHM else math.inf


class LeadMeter:
    """A clamp around single leads of the powered circuit."""

    def __init__(self, nets: Nets) -> None:
        """Number the circuit with a branch for each lead."""
        self._net = net = netlist(nets, each_lead=True)
        self._solver = Elimination(net.circuit)
        self._bonds = [nets.elements_of[key.part][key.number].name == "solid" for key in net.bonds]

    def amps(self, closed: Positions, lead: int) -> float:
        """What it shows of a lead that conducts, rms.

        Args:
            closed: which contacts are closed.
            lead: its number.
        """
        flags = [closed[key] for key in self._net.switches]
        rest = self._solver.solve(Case([*flags, *self._bonds]))
        branch = self._net.circuit.branches[self._net.leads[lead]]
        return abs(rest.across(branch.a, branch.b) or 0.0) / abs(branch.ohms)


def with_leads_off(diagram: Diagram, terminal: Terminal) -> Diagram:
    """The diagram with every lead that lands on a terminal taken off there, its end in the air."""
    leads = []
    for number, lead in enumerate(diagram.leads):
        loose = loose_end(number)
        if lead.a == terminal:
            leads.append(lead._replace(a=loose))
        elif lead.b == terminal:
            leads.append(lead._replace(b=loose))
        else:
            leads.append(lead)
    return replace(diagram, leads=tuple(leads))


def loose_end(number: int) -> Terminal:
    """The end in the air of a lead that `with_leads_off` took off."""
    return Terminal(OPEN_END, f"meter {number}")
