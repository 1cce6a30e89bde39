"""The nets of random wiring are the connected components that scipy finds."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components

import wirecheck
from tests.language.drawn import wirings
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import EARTH, Diagram, Terminal


def joined(diagram: Diagram) -> list[tuple[Terminal, Terminal]]:
    """Everything that makes one conductor of two terminals, read off the model."""
    pairs = [(lead.a, lead.b) for lead in diagram.leads if "broken" not in lead.given]
    pairs += [(lead.a, EARTH) for lead in diagram.leads if "touches" in lead.given]
    pairs += [
        (Terminal(part.key, link.between[0]), Terminal(part.key, link.between[1]))
        for part in diagram.parts.values()
        for link in part.structure.links
    ]
    return pairs


@given(wirings())
def test_nets_are_connected_components(text: str) -> None:
    diagram = wirecheck.load_text(text).diagram
    nets = Nets(diagram)
    number = {terminal: at for at, terminal in enumerate(nets.net_of)}
    pairs = joined(diagram)
    rows = [number[a] for a, _ in pairs]
    columns = [number[b] for _, b in pairs]
    shape = (len(number), len(number))
    graph = coo_array((np.ones(len(pairs)), (rows, columns)), shape=shape)
    count, component = connected_components(graph, directed=False)
    assert count == len(nets.members)
    together = {(int(component[at]), nets.net_of[terminal]) for terminal, at in number.items()}
    assert len(together) == count
