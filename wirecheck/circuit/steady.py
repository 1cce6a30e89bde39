"""The circuit at rest in one position of its contacts, in plain numbers, each solved once.

The solvers know nodes and branches; here each answer is looked up by the element it belongs to,
and kept for the next time the contacts stand like that.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wirecheck.circuit.elimination import Elimination, Rest
from wirecheck.circuit.netlist import ElementKey, netlist
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.numbered import Case
from wirecheck.model.diagram import Terminal

_Pair = tuple[int, int]


class Steady(NamedTuple):
    """The circuit at rest, rms.

    Attributes:
        load_volts: across each load that takes current.
        contact_amps: through each contact; 0 through an open one.
        source_amps: through each transformer secondary.
        source_volts: across the terminals of each transformer secondary.
        watched_volts: between each watched pair of terminals; 0 where they share no conductor.
    """

    load_volts: Mapping[ElementKey, float]
    contact_amps: Mapping[ElementKey, float]
    source_amps: Mapping[ElementKey, float]
    source_volts: Mapping[ElementKey, float]
    watched_volts: tuple[float, ...]


class SteadyStates:
    """The steady states of one diagram.

    Attributes:
        contacts: the contacts whose positions tell one state from another, in order.
    """

    def __init__(
        self,
        nets: Nets,
        *,
        poor_bonds: bool,
        watched: Sequence[tuple[Terminal, Terminal]] = (),
    ) -> None:
        """Number the circuit.

        Args:
            nets: of the diagram.
            poor_bonds: whether poor bonds to the appliance's metal conduct; solid ones do.
            watched: pairs of terminals whose volts are wanted.
        """
        self._net = net = netlist(nets)
        self._circuit = Elimination(net.circuit)
        self.contacts = net.switches
        self._bonds = [
            poor_bonds or nets.elements_of[key.part][key.number].name == "solid"
            for key in net.bonds
        ]
        self._loads = [(key, net.circuit.branches[number][:2]) for key, number in net.loads.items()]
        windings = [winding for winding, _flux in net.circuit.windings()]
        self._sources = [(key, number, windings[number][:2]) for key, number in net.series.items()]
        self._watched = [(net.node_of[a], net.node_of[b]) for a, b in watched]
        self._solved: dict[tuple[object, ...], Steady] = {}

    def at(
        self,
        closed: tuple[bool, ...],
        *,
        power: bool = True,
        gone: frozenset[ElementKey] = frozenset(),
    ) -> Steady:
        """The circuit at rest.

        Args:
            closed: a flag for each of `contacts`.
            power: whether the supply is on.
            gone: loads and secondaries that are burnt out.
        """
        key = (closed, power, gone)
        if key not in self._solved:
            loads, series = self._net.loads, self._net.series
            case = Case(
                (*closed, *self._bonds),
                cut=tuple(sorted(loads[each] for each in gone if each in loads)),
                burnt=tuple(sorted(series[each] for each in gone if each in series)),
                supply=1.0 if power else 0.0,
            )
            self._solved[key] = self._read(self._circuit.solve(case), closed)
        return self._solved[key]

    def _read(self, rest: Rest, closed: tuple[bool, ...]) -> Steady:
        switches = zip(self.contacts, self._net.circuit.switches, closed, strict=False)
        return Steady(
            {key: _volts(rest, pair) for key, pair in self._loads},
            {
                key: _volts(rest, (switch.a, switch.b)) / switch.ohms if on else 0.0
                for key, switch, on in switches
            },
            {key: abs(rest.winding_amps[number]) for key, number, _pair in self._sources},
            {key: _volts(rest, pair) for key, _number, pair in self._sources},
            tuple(_volts(rest, pair) for pair in self._watched),
        )


def _volts(rest: Rest, pair: _Pair) -> float:
    """Rms volts of a pair of nodes; 0 where no conductor joins the two."""
    volts = rest.across(*pair)
    return abs(volts) if volts is not None else 0.0
