"""The circuit solved with everything on that can be on together: volts and amperes.

Contacts stand as in a healthy burner that runs, or as in a unit called on to cool.  What was found
wrong with a coil or a joint is left out: other rules say that, and what follows from it is no
mistake of its own.  The circuit is linear, so with the line low all volts are low alike.
"""

from __future__ import annotations

from typing import Final

from wirecheck.circuit.elimination import Elimination
from wirecheck.circuit.netlist import netlist
from wirecheck.circuit.numbered import Case, Switch
from wirecheck.circuit.stages import Stage, positions
from wirecheck.model.diagram import Terminal
from wirecheck.rules.electrical.loads import Taker
from wirecheck.rules.facts import Facts

#: The line at its lowest, as a share of its nominal volts (common practice, no source).
WEAK_LINE: Final = 0.9
#: A load with so much of its rated volts takes current in earnest.
ON: Final = 0.2


class Solved:
    """The solved circuit of one diagram with its contacts in one position.

    Attributes:
        net: the circuit; every lead is a branch of it.
    """

    def __init__(self, facts: Facts, stage: Stage, called: tuple[str, ...]) -> None:
        """Solve it.

        Args:
            facts: of the diagram.
            stage: in which contacts stand, but for those of thermostats.
            called: contacts of thermostats that are closed, by name.
        """
        nets = facts.nets
        self.net = net = netlist(nets, as_found=False, each_lead=True)
        flags = []
        for key, on in zip(net.switches, positions(nets, net.switches, stage), strict=True):
            element = nets.elements_of[key.part][key.number]
            flags.append(element.name in called if element.part.family == "thermostat" else on)
        solid = [nets.elements_of[key.part][key.number].name == "solid" for key in net.bonds]
        self._contacts: dict[tuple[str, int], tuple[Switch, bool]] = {
            key: (net.circuit.switches[number], on)
            for number, (key, on) in enumerate(zip(net.switches, flags, strict=True))
        }
        self._rest = Elimination(net.circuit).solve(Case((*flags, *solid)))

    def volts(self, a: Terminal, b: Terminal) -> float:
        """Between two terminals, the line at its nominal volts; 0 where nothing joins them."""
        found = self._rest.across(self.net.node_of[a], self.net.node_of[b])
        return abs(found) if found is not None else 0.0

    def load_v(self, taker: Taker) -> float:
        """Across a load."""
        return self.volts(taker.element.a, taker.element.b)

    def is_on(self, taker: Taker) -> bool:
        """Whether a load takes current in earnest."""
        return self.load_v(taker) > ON * taker.rated_v

    def contact_amps(self, key: tuple[str, int]) -> float:
        """Through a contact, by its part and its place in it; 0 if it is open."""
        switch, closed = self._contacts[key]
        across = self._rest.across(switch.a, switch.b) if closed else 0.0
        return abs(across or 0.0) / switch.ohms

    def lead_amps(self, number: int) -> float:
        """In a lead, by its number; 0 if it does not conduct."""
        branch = self.net.leads.get(number)
        if branch is None:
            return 0.0
        a, b, ohms = self.net.circuit.branches[branch]
        return abs(self._rest.across(a, b) or 0.0) / abs(ohms)

    def lead_ohms(self, number: int) -> float:
        """Of a lead that conducts."""
        return abs(self.net.circuit.branches[self.net.leads[number]].ohms)


class Running(Solved):
    """The burner runs and the fan too, called for by hand; use it as ``facts.once(Running)``."""

    def __init__(self, facts: Facts) -> None:
        """Solve it once."""
        super().__init__(facts, Stage.RUN, ("heat", "fan"))


class Cooling(Solved):
    """A call for cooling, and no burner; use it as ``facts.once(Cooling)``."""

    def __init__(self, facts: Facts) -> None:
        """Solve it once."""
        super().__init__(facts, Stage.CALL, ("cool", "fan"))
