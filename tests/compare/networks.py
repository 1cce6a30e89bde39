"""Diagrams of contact networks: one between a transformer and a lamp, from an expression.

A network is a contact, or several in series or in parallel.  ``"x"`` is a make contact of relay x,
``"x'"`` a break contact of it, and a number any switch, each of its own.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import count
from typing import Literal, NamedTuple

from wirecheck import load_text
from wirecheck.model.diagram import Diagram


class Composed(NamedTuple):
    """Networks in series or in parallel."""

    how: Literal["series", "parallel"]
    parts: tuple[Network, ...]


Network = str | Composed


def series(*parts: Network) -> Network:
    """One behind the other."""
    return Composed("series", parts)


def parallel(*parts: Network) -> Network:
    """One beside the other."""
    return Composed("parallel", parts)


def contacts(network: Network) -> Iterator[str]:
    """The contacts, in order."""
    if isinstance(network, str):
        yield network
    else:
        for part in network.parts:
            yield from contacts(part)


def drawn(network: Network | list[tuple[str, str, str]]) -> Diagram:
    """The diagram of a network, or of contacts each between two nodes ``hot``, ``load``, others.

    Relays get a coil switched by a thermostat of their own.
    """
    numbers = count()
    edges = (
        list(_edges(network, "hot", "load", numbers))
        if not isinstance(network, list)
        else ([(name, a, b) for a, b, name in network])
    )
    names = [name for name, _a, _b in edges]
    poles = Counter(name.rstrip("'") for name in names if not name[0].isdigit())
    lines = [
        "part xfmr is transformer",
        "part lit is lamp: 24 V, 2 VA",
        "wire xfmr.C to lit.2",
        "splice hot",
        "splice load",
        "wire xfmr.R to hot",
        "wire load to lit.1",
    ]
    for relay, several in poles.items():
        lines += [
            f"part {relay} is relay: poles {max(2, several)}",
            f"part stat-{relay} is thermostat",
            f"wire xfmr.R to stat-{relay} to {relay} to xfmr.C",
        ]
    used: Counter[str] = Counter()
    for node in dict.fromkeys(end for _name, *ends in edges for end in ends):
        if node not in ("hot", "load"):
            lines.append(f"splice {node}")
    for name, a, b in edges:
        if name[0].isdigit():
            lines += [f"part limit-{name} is high-limit", f"wire {a} to limit-{name} to {b}"]
            continue
        relay = name.rstrip("'")
        used[relay] += 1
        side = "NC" if name.endswith("'") else "NO"
        pole = f"{relay}.{used[relay]}"
        lines += [f"wire {a} to {pole}.COM", f"wire {pole}.{side} to {b}"]
    built = load_text("\n".join(lines) + "\n")
    assert not built.problems, built.problems[0].message
    return built.diagram


def _edges(network: Network, a: str, b: str, numbers: count[int]) -> Iterator[tuple[str, str, str]]:
    if isinstance(network, str):
        yield network, a, b
    elif network.how == "parallel":
        for part in network.parts:
            yield from _edges(part, a, b, numbers)
    else:
        nodes = [a, *(f"n{next(numbers)}" for _ in network.parts[1:]), b]
        for part, here, there in zip(network.parts, nodes, nodes[1:], strict=False):
            yield from _edges(part, here, there, numbers)


def series_parallel(size: int) -> list[Network]:
    """Every series-parallel network of so many switches, the order of those in series kept."""
    return [_numbered(shape, count()) for shape in _shapes(size)]


def _numbered(shape: Network, numbers: count[int]) -> Network:
    if isinstance(shape, str):
        return str(next(numbers))
    return Composed(shape.how, tuple(_numbered(part, numbers) for part in shape.parts))


def _shapes(size: int) -> list[Network]:
    if size == 1:
        return ["0"]
    return [*_series(size), *_parallel(size)]


def _series(size: int) -> Iterator[Network]:
    """Of two or more in series, none of them in series itself."""
    for sizes in _compositions(size):
        for parts in _choices([_lone(each, "series") for each in sizes]):
            yield Composed("series", parts)


def _parallel(size: int) -> Iterator[Network]:
    """Of two or more in parallel, whatever their order."""
    seen = set()
    for sizes in _compositions(size):
        for parts in _choices([_lone(each, "parallel") for each in sizes]):
            key = tuple(sorted(map(str, parts)))
            if key not in seen:
                seen.add(key)
                yield Composed("parallel", parts)


def _lone(size: int, how: str) -> list[Network]:
    return [each for each in _shapes(size) if isinstance(each, str) or each.how != how]


def _compositions(size: int) -> Iterator[tuple[int, ...]]:
    """Every way to write a number as a sum of two or more, in order."""
    for first in range(1, size):
        yield (first, size - first)
        for rest in _compositions(size - first):
            yield (first, *rest)


def _choices(options: list[list[Network]]) -> Iterator[tuple[Network, ...]]:
    if not options:
        yield ()
        return
    for first in options[0]:
        for rest in _choices(options[1:]):
            yield (first, *rest)
