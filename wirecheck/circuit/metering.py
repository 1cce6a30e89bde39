"""What a voltmeter shows, and which supplies have no reference to earth.

A meter is `METER_OHM` between two points.  So it shows the full volts across an open contact with a
coil behind it, and nothing on a net that nothing feeds or against an island that floats.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from wirecheck.circuit.netlist import ElementKey, Netlist
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.numbered import METER_OHM, Branch, Case
from wirecheck.circuit.solve import Solution, Solver
from wirecheck.model.diagram import Terminal

if TYPE_CHECKING:
    from numpy.typing import NDArray


def meter_volts(
    net: Netlist, cases: Sequence[Case], pairs: Sequence[tuple[Terminal, Terminal]]
) -> NDArray[np.float64]:
    """What a meter shows between two terminals, rms.

    Args:
        net: the circuit.
        cases: the states it is read in.
        pairs: where the probes go.

    Returns:
        (cases, pairs) volts.
    """
    ends = [(net.node_of[a], net.node_of[b]) for a, b in pairs]
    probed = [
        case._replace(added=(*case.added, Branch(a, b, METER_OHM)))
        for case in cases
        for a, b in ends
    ]
    solution = Solver(net.circuit).solve(probed)
    rows = np.arange(len(probed))
    a, b = np.array(ends * len(cases), dtype=np.int64).reshape(-1, 2).T
    volts: NDArray[np.float64] = np.abs(solution.volts[rows, a] - solution.volts[rows, b])
    return volts.reshape(len(cases), len(ends))


def without_earth(nets: Nets, net: Netlist, solution: Solution, case: int) -> dict[ElementKey, str]:
    """Supplies that no conductor joins to the earth in a solved case, each said in words."""
    found = {}
    for key in (*net.series, *net.sources):
        element = nets.elements_of[key.part][key.number]
        if solution.island[case, net.node_of[element.a]] != 0:
            whose = f"the {element.name} of {element.part.name}"
            found[key] = f"{whose} has no reference to earth: its volts against earth mean nothing"
    return found
