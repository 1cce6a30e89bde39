"""What feeds what: the sources that can reach the two sides of a load."""

from __future__ import annotations

from itertools import combinations
from typing import NamedTuple, cast

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.model.kind import SourceSpec
from wirecheck.rules.facts import Facts

#: Two nets between which something lies.
Between = tuple[int, int]


class Feed(NamedTuple):
    """One source that may feed a load once contacts close.

    Attributes:
        source: its two terminals, hot side first.
        hot: net of the source's hot side, and of the side of the load it feeds.
        common: likewise; None where no lead brings the load's other side back.
        reversed: the load's first side is on the common of the source.
        windings: nets of the primary windings behind the source; one of them must be fed.
    """

    source: tuple[Terminal, Terminal]
    hot: Between
    common: Between | None
    reversed: bool
    windings: tuple[Between, ...]

    @property
    def straight(self) -> bool:
        """Whether the load's first side is on the hot side itself."""
        return self.hot[0] == self.hot[1] and not self.reversed

    @property
    def ways(self) -> tuple[Between, ...]:
        """What must conduct for the source to feed the load."""
        return (self.hot,) if self.common is None else (self.hot, self.common)


class _Ends(NamedTuple):
    terminals: tuple[Terminal, Terminal]
    hot: int
    common: int
    windings: tuple[Between, ...]


class Sources:
    """All sources of a diagram, by the regions their two sides reach."""

    def __init__(self, facts: Facts) -> None:
        """Sort them; linear in the parts."""
        self._facts = facts
        self._between: dict[Between, list[_Ends]] = {}
        self._by_hot: dict[int, list[_Ends]] = {}
        for elements in facts.nets.elements_of.values():
            drawn = [element for element in elements if element.type == "source"]
            for ends in _ends(facts, drawn):
                regions = (self._region(ends.hot), self._region(ends.common))
                self._between.setdefault(regions, []).append(ends)
                self._by_hot.setdefault(regions[0], []).append(ends)

    def feeds(self, load: Between) -> tuple[Feed, ...]:
        """Sources that may feed a load between two nets, its hot side named first.

        Where nothing brings the second side back to a source, those whose hot side reaches the
        first: a sketch may leave the common out.
        """
        a, b = load
        regions = (self._region(a), self._region(b))
        plain = [
            _feed(ends, (ends.hot, a), (ends.common, b)) for ends in self._between.get(regions, ())
        ]
        crossed = [
            _feed(ends, (ends.hot, b), (ends.common, a))._replace(reversed=True)
            for ends in self._between.get((regions[1], regions[0]), ())
        ]
        return tuple(plain or crossed) or tuple(
            _feed(ends, (ends.hot, a), None) for ends in self._by_hot.get(regions[0], ())
        )

    def _region(self, net: int) -> int:
        return self._facts.conduction.region(net)


def _feed(ends: _Ends, hot: Between, common: Between | None) -> Feed:
    return Feed(ends.terminals, hot, common, reversed=False, windings=ends.windings)


def _ends(facts: Facts, drawn: list[Element]) -> list[_Ends]:
    """The two sides of each source of a part; any two legs of a line supply are one too."""
    terminals: dict[int, Terminal] = {}
    windings: dict[Between, None] = {}
    for element in drawn:
        terminals.setdefault(element.net_a, element.a)
    for element in drawn:
        terminals.setdefault(element.net_b, element.b)
        for a, b in cast(SourceSpec, element.spec).fed_by:
            windings[facts.net(element.part.terminal(a)), facts.net(element.part.terminal(b))] = (
                None
            )
    return [
        _Ends((terminals[hot], terminals[common]), hot, common, tuple(windings))
        for hot, common in combinations(terminals, 2)
    ]
