"""The structure of a diagram as a graph that knows no names, and whether two are the same.

Nodes are parts, what is inside them (contacts, loads, sources), their terminals and the nets, each
labelled by what it is; so terminals that can be exchanged bear one label.  Switches in series whose
order matters to nobody are joined to one node instead of one another.

Two diagrams are wired alike if and only if the graphs are isomorphic.  Different hashes (the
refinement of labels after B. Weisfeiler and A. Leman, 1968; from memory) reject most that are not
at once; the rest is decided exactly (VF2++: A. Juttner and P. Madarasi, Discrete Applied
Mathematics 242, 2018; from memory).
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator
from typing import TypeAlias

import networkx as nx

from wirecheck.circuit.nets import Element
from wirecheck.compare.series_parallel import blocks
from wirecheck.compare.wired import Wired
from wirecheck.model.diagram import EARTH, Part, Terminal
from wirecheck.model.kind import LoadSpec, SwitchSpec

Label = tuple[Hashable, ...]
Pattern: TypeAlias = "nx.Graph[Hashable]"
_ROUNDS = 4


def what_it_is(part: Part) -> str:
    """The kind of a part in words, whatever a kind of the user's own is called."""
    return part.kind.title.removesuffix(f" ({part.kind.name})")


def pattern(wired: Wired) -> Pattern:
    """The graph of a diagram; every node has a ``label``."""
    graph: Pattern = nx.Graph()
    for metal in wired.metal:
        graph.add_node(metal, label=("metal", _role(wired, metal)))
    for pair in wired.metal_pairs:
        graph.add_edge(*pair)
    in_blocks = _add_blocks(graph, wired)
    for part in wired.parts():
        if wired.is_drawn(part):
            graph.add_node(part.key, label=("part", part.family, what_it_is(part)))
            _add_inside(graph, wired, part)
    for net, touched in wired.touches.items():
        graph.add_edges_from((_net(graph, net), each) for each in sorted(touched))
    for net in range(len(wired.pins)):
        for port in wired.ports_on(net):
            if port in graph and port not in in_blocks:
                graph.add_edge(port, _net(graph, net))
    return graph


def same_pattern(one: Pattern, other: Pattern) -> dict[Hashable, Hashable] | None:
    """Which node of the other graph each node of the first is; None if they are not the same."""
    if _counts(one) != _counts(other) or _hash(one) != _hash(other):
        return None
    found: dict[Hashable, Hashable] | None = nx.vf2pp_isomorphism(one, other, node_label="label")
    return found


def _counts(graph: Pattern) -> tuple[int, int]:
    return graph.number_of_nodes(), graph.number_of_edges()


def _hash(graph: Pattern) -> str:
    """The same for graphs that are the same."""
    words = nx.Graph(graph.edges)
    words.add_nodes_from((node, {"word": str(graph.nodes[node]["label"])}) for node in graph)
    return str(nx.weisfeiler_lehman_graph_hash(words, node_attr="word", iterations=_ROUNDS))


def _net(graph: Pattern, number: int) -> Hashable:
    node = ("net", number)
    graph.add_node(node, label=("net",))
    return node


def _add_blocks(graph: Pattern, wired: Wired) -> set[Terminal]:
    """Put in the blocks of switches; the terminals of their contacts."""
    inside: set[Terminal] = set()
    waiting = [
        (block, [_net(graph, block.first), _net(graph, block.last)]) for block in blocks(wired)
    ]
    while waiting:
        block, around = waiting.pop()
        node: Hashable = block
        if block.contact is not None:
            node = _element(block.contact)
            inside.update(wired.lead(end) for end in (block.contact.a, block.contact.b))
        else:
            graph.add_node(node, label=(block.kind,))
        graph.add_edges_from((node, each) for each in around)
        waiting += [(each, [node]) for each in block.inside]
    return inside


def _add_inside(graph: Pattern, wired: Wired, part: Part) -> None:
    for element in wired.nets.elements_of[part.key]:
        ends = [wired.lead(end) for end in (element.a, element.b) if wired.is_wired(end)]
        if element.type == "bond" or ends:
            node = _element(element)
            graph.add_node(node, label=_element_label(element))
            graph.add_edge(node, part.key)
            graph.add_edges_from((node, end) for end in ends)
    for name in part.structure.terminals:
        terminal = part.terminal(name)
        if wired.is_wired(terminal) and terminal not in wired.metal:
            port = wired.lead(terminal)
            graph.add_node(port, label=("port", *sorted(_roles(wired, port))))
            graph.add_edge(port, part.key)
        elif terminal in wired.metal:
            graph.add_edge(terminal, part.key)


def _roles(wired: Wired, port: Terminal) -> Iterator[str]:
    for terminal in wired.port(port):
        spec = wired.diagram.spec(terminal)
        if spec is not None and not spec.inner:
            yield f"{spec.role} {terminal.name}" if spec.each else spec.role


def _role(wired: Wired, metal: Terminal) -> str:
    spec = wired.diagram.spec(metal)
    return spec.role if spec and metal != EARTH else ""


def _element(element: Element) -> Hashable:
    return ("element", element.part.key, element.type, element.name, element.a, element.b)


def _element_label(element: Element) -> Label:
    spec, name = element.spec, element.name
    if isinstance(spec, SwitchSpec):
        name = name.rpartition(".")[2] if spec.per else name
        return ("switch", name, spec.normal, spec.running, spec.moved_by, spec.safety)
    return (element.type, name, spec.type if isinstance(spec, LoadSpec) else "")
