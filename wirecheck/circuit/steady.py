"""The circuit at rest in one position of its contacts, in plain numbers, each solved once.

`wirecheck.circuit.solve` works on arrays; here each answer is looked up by the element it
belongs to, and kept for the next time the contacts stand like that.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wirecheck.circuit.netlist import ElementKey, netlist
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.solve import CLOSED_OHM, Case, Solution, solve
from wirecheck.model.diagram import Terminal

Indices = NDArray[np.int64]


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
        self.contacts = net.switches
        self._bonds = [
            poor_bonds or nets.elements_of[key.part][key.number].name == "solid"
            for key in net.bonds
        ]
        self._loads = tuple(net.loads)
        ends = [nets.elements_of[key.part][key.number] for key in (*net.loads, *net.series)]
        pairs = [(net.node_of[each.a], net.node_of[each.b]) for each in ends]
        pairs += [(net.node_of[a], net.node_of[b]) for a, b in watched]
        self._pairs = _indices(pairs)
        self._switches = _indices(net.circuit.switches[: len(net.switches)])
        self._sources = tuple(net.series)
        self._behind = tuple(net.circuit.branches[branch] for branch in net.series.values())
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
            branch_of = {**self._net.loads, **self._net.series}
            cut = tuple(sorted(branch_of[each] for each in gone))
            case = Case([*closed, *self._bonds], cut=cut, supply=1.0 if power else 0.0)
            solution = solve(self._net.circuit, [case])
            self._solved[key] = self._read(solution, np.array(closed, dtype=bool), gone)
        return self._solved[key]

    def _read(
        self, solution: Solution, closed: NDArray[np.bool_], gone: frozenset[ElementKey]
    ) -> Steady:
        volts = _volts(solution, self._pairs)
        loads, sources = len(self._loads), len(self._sources)
        amps = np.where(closed, np.array(_volts(solution, self._switches)) / CLOSED_OHM, 0.0)
        behind = _volts(solution, _indices([(each.a, each.b) for each in self._behind]))
        source_amps = {
            key: 0.0 if key in gone else drop / abs(branch.ohms)
            for key, drop, branch in zip(self._sources, behind, self._behind, strict=True)
        }
        return Steady(
            dict(zip(self._loads, volts[:loads], strict=True)),
            dict(zip(self.contacts, amps.tolist(), strict=True)),
            source_amps,
            dict(zip(self._sources, volts[loads : loads + sources], strict=True)),
            tuple(volts[loads + sources :]),
        )


def _indices(pairs: Sequence[tuple[int, int]]) -> Indices:
    return np.array(pairs, dtype=np.int64).reshape(-1, 2)


def _volts(solution: Solution, pairs: Indices) -> list[float]:
    """Rms volts of each pair; 0 where no conductor joins the two."""
    volts = np.abs(solution.across(pairs[:, 0], pairs[:, 1])[0])
    result: list[float] = np.nan_to_num(volts).tolist()
    return result
