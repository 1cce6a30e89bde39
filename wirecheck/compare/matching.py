"""Which part of one diagram is which of the other: by name, else by kind and wiring."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Mapping
from typing import Literal, NamedTuple

import networkx as nx

from wirecheck.compare.pattern import what_it_is
from wirecheck.compare.wired import Wired
from wirecheck.model.diagram import EARTH, Part, Terminal

#: Names agree, the kinds too: no wiring says more than that.
_ROUNDS = 3
#: A part of the same kind is the likelier one, be it wired worse.
_SAME_KIND = 1000

How = Literal["name", "kind and wiring", "structure"]


class Pair(NamedTuple):
    """Two parts that are one and the same, by their keys, and what says so."""

    one: str
    other: str
    how: How


def by_structure(mapping: Mapping[Hashable, Hashable], one: Wired) -> tuple[Pair, ...]:
    """The pairs that an isomorphism of the patterns gives."""
    return tuple(
        Pair(part.key, str(mapping[part.key]), "structure")
        for part in one.parts()
        if part.key in mapping
    )


def by_name(one: Wired, other: Wired) -> tuple[Pair, ...]:
    """Parts of one name and family are one; the others are matched by kind and wiring."""
    theirs = {part.key: part for part in other.parts()}
    pairs = [
        Pair(part.key, part.key, "name")
        for part in one.parts()
        if part.key in theirs and _agree(part, theirs[part.key])
    ]
    return _with_the_rest(one, other, pairs)


def by_wiring(one: Wired, other: Wired) -> tuple[Pair, ...]:
    """All parts are matched by kind and wiring, whatever they are called."""
    return _with_the_rest(one, other, [])


def _agree(part: Part, their: Part) -> bool:
    """Whether two parts of one name can be one: of a kind, or at least with the same terminals."""
    if part.family != their.family:
        return False
    return what_it_is(part) == what_it_is(their) or bool(
        part.structure.terminals.keys() & their.structure.terminals.keys()
    )


def _with_the_rest(one: Wired, other: Wired, pairs: list[Pair]) -> tuple[Pair, ...]:
    """Match what is left, a round at a time: what is matched says more about its neighbours."""
    for _round in range(_ROUNDS):
        taken, theirs = {pair.one for pair in pairs}, {pair.other for pair in pairs}
        left = [part for part in one.parts() if part.key not in taken]
        right = [part for part in other.parts() if part.key not in theirs]
        if not left or not right:
            break
        names = {pair.one: number for number, pair in enumerate(pairs)}
        their_names = {pair.other: number for number, pair in enumerate(pairs)}
        found = _assigned(
            {part.key: (part, _neighbours(one, part, names)) for part in left},
            {part.key: (part, _neighbours(other, part, their_names)) for part in right},
        )
        if not found:
            break
        certain = [pair for pair, is_certain in found if is_certain]
        pairs = [*pairs, *(certain or [pair for pair, _certain in found])]
    order = {part.key: number for number, part in enumerate(one.parts())}
    return tuple(sorted(pairs, key=lambda pair: order[pair.one]))


_Known = dict[str, tuple[Part, Counter[Hashable]]]


def _assigned(left: _Known, right: _Known) -> list[tuple[Pair, bool]]:
    """The pairs with the most in common; those are certain that nothing else comes near."""
    graph: nx.Graph[tuple[int, str]] = nx.Graph()
    weights: dict[tuple[str, str], int] = {}
    for key, (part, beside) in left.items():
        for their_key, (their, theirs) in right.items():
            if part.family == their.family and (
                what_it_is(part) == what_it_is(their) or _agree(part, their)
            ):
                weight = 1 + 2 * sum((beside & theirs).values())
                weight += _SAME_KIND if what_it_is(part) == what_it_is(their) else 0
                weights[key, their_key] = weight
                graph.add_edge((0, key), (1, their_key), weight=weight)
    matched = nx.max_weight_matching(graph, maxcardinality=True)
    ordered = sorted(tuple(sorted(edge)) for edge in matched)
    best = [(a[1], b[1]) for a, b in ordered]
    return [(Pair(a, b, "kind and wiring"), _is_certain(weights, a, b)) for a, b in best]


def _is_certain(weights: Mapping[tuple[str, str], int], a: str, b: str) -> bool:
    """Whether no other pair of either part weighs as much."""
    rivals = (weight for (one, other), weight in weights.items() if (one == a) != (other == b))
    return all(weight < weights[a, b] for weight in rivals)


def _neighbours(wired: Wired, part: Part, names: Mapping[str, int]) -> Counter[Hashable]:
    """What each terminal of a part is joined to: matched parts by number, others by kind."""
    beside: Counter[Hashable] = Counter()
    for name, spec in part.structure.terminals.items():
        terminal = part.terminal(name)
        if terminal not in wired.net_of or not wired.is_wired(terminal):
            continue
        net = wired.net_of[terminal]
        for port in wired.ports_on(net):
            if port.part != part.key:
                beside[spec.role, *_seen(wired, port, names)] += 1
        for metal in wired.touches.get(net, ()):
            seen = ("earth",) if metal == EARTH else _seen(wired, metal, names)
            beside[spec.role, *seen] += 1
    return beside


def _seen(wired: Wired, port: Terminal, names: Mapping[str, int]) -> tuple[Hashable, ...]:
    spec = wired.diagram.spec(port)
    role = spec.role if spec else ""
    if port.part in names:
        return names[port.part], role
    return what_it_is(wired.diagram.parts[port.part]), role
