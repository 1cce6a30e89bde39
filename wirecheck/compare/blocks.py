"""Which terminals of two diagrams are joined, said in the same terms, so that they can be set off.

A block holds the terminals that leads join.  Where a row of switches has another order in the
second diagram, and that matters to nobody, its blocks are laid out in the order of the first.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from wirecheck.compare.rows import Placed, Row, rows
from wirecheck.compare.wired import Wired
from wirecheck.model.diagram import Terminal

Metal = Terminal


@dataclass(frozen=True)
class Blocks:
    """Which terminals are joined.

    Attributes:
        of: the number of the block of each terminal.
        touches: which metal touches which block.
        metal_pairs: metal joined by a lead of its own.
    """

    of: Mapping[Terminal, int]
    touches: frozenset[tuple[Metal, int]]
    metal_pairs: frozenset[frozenset[Metal]]

    def without(self, one: Terminal, other: Terminal) -> Blocks:
        """The same with what stands between two terminals taken for a lead, and left out."""
        joined = self.joining(self.of[one], self.of[other])
        of = {pin: block for pin, block in joined.of.items() if pin not in (one, other)}
        return Blocks(of, joined.touches, joined.metal_pairs)

    def joining(self, kept: int, gone: int) -> Blocks:
        """The same with two blocks made one."""
        of = {pin: kept if block == gone else block for pin, block in self.of.items()}
        touches = frozenset((m, kept if block == gone else block) for m, block in self.touches)
        return Blocks(of, touches, self.metal_pairs)

    def groups(self) -> dict[int, list[Terminal]]:
        """The terminals of each block."""
        found: dict[int, list[Terminal]] = {}
        for pin, block in self.of.items():
            found.setdefault(block, []).append(pin)
        return found


def blocks_of(wired: Wired, rank: Mapping[Terminal, int]) -> Blocks:
    """The blocks of the first diagram, their terminals in the order of a ranking."""
    return Blocks(
        {pin: wired.net_of[pin] for pin in rank},
        frozenset((metal, net) for net, some in wired.touches.items() for metal in some),
        frozenset(wired.metal_pairs),
    )


def blocks_like(wired: Wired, first: Wired, rank: Mapping[Terminal, int]) -> Blocks:
    """The blocks of the second diagram by the terminals of the first, its rows in that order.

    A terminal that it does not have is in a block of its own.
    """
    of: dict[Terminal, int] = {}
    own = len(wired.pins)
    for pin in rank:
        of[pin] = wired.net_of.get(pin, own)
        own += pin not in wired.net_of
    metal = set(first.metal)
    touches = {(each, net) for net, some in wired.touches.items() for each in some if each in metal}
    for row in rows(wired):
        if row.commutes:
            own = _lay_out(of, row, first, own)
    pairs = frozenset(pair for pair in wired.metal_pairs if pair <= metal)
    return Blocks(of, frozenset(touches), pairs)


def turned_loads(wired: Wired, first: Wired) -> dict[Terminal, Terminal]:
    """Loads with no right way round that suit better the other way: each end to the other one."""
    turned: dict[Terminal, Terminal] = {}
    for part in first.parts():
        loads = part.structure.loads
        if len(loads) != 1 or part.key not in wired.diagram.parts:
            continue
        a, b = map(part.terminal, loads[0].between)
        specs = [first.diagram.spec(end) for end in (a, b)]
        if len({spec.role if spec else "" for spec in specs}) > 1:
            continue
        if a not in wired.net_of or b not in wired.net_of:
            continue
        straight = _agreement(wired, first, a, a) + _agreement(wired, first, b, b)
        if _agreement(wired, first, a, b) + _agreement(wired, first, b, a) > straight:
            turned |= {a: b, b: a}
    return turned


def _agreement(wired: Wired, first: Wired, pin: Terminal, where: Terminal) -> int:
    """How many neighbours of a terminal in the first are joined to one in the second."""
    beside = first.ports_on(first.net_of[first.lead(pin)])
    block = wired.net_of[where]
    return sum(wired.net_of.get(each) == block for each in beside if each.part != pin.part)


def _lay_out(of: dict[Terminal, int], row: Row, first: Wired, own: int) -> int:
    """Give the contacts of a row the order and the way round that they have in the first."""
    ordered, turned = _as_in_first(of, row, first)
    ends = (row.last, row.first) if turned else (row.first, row.last)
    inner = list(range(own, own + len(ordered) - 1))
    chain = [ends[0], *inner, ends[1]]
    for number, placed in enumerate(ordered):
        for pin, block in ((placed.near, chain[number]), (placed.far, chain[number + 1])):
            if pin in of:
                of[pin] = block
    return own + len(inner)


def _as_in_first(of: Mapping[Terminal, int], row: Row, first: Wired) -> tuple[list[Placed], bool]:
    """The contacts of a row in the first's order and way round, and whether the row is turned."""
    theirs = rows(first)
    place: dict[Terminal, tuple[int, int, Placed]] = {}
    for number, other in enumerate(theirs):
        for position, placed in enumerate(other.contacts):
            for pin in (placed.near, placed.far):
                place[pin] = number, position, placed
    known = [place[each.near] for each in row.contacts if each.near in place]
    main = _most([number for number, *_ in known])
    in_row = [each for each in row.contacts if each.near in place]
    if main is None or len(in_row) < len(row.contacts):
        return list(row.contacts), False
    mine = theirs[main]
    ordered = [each[2] for each in sorted(known, key=lambda each: (each[0] != main, *each[:2]))]
    own = {pin for placed in ordered for pin in (placed.near, placed.far)}
    ways = [
        (first.net_of[ordered[0].near], first.net_of[ordered[-1].far]),
        (mine.first, mine.last),
    ]
    straight, turned = (
        [_overlap(of, first, a, x, own) + _overlap(of, first, b, y, own) for a, b in ways]
        for x, y in ((row.first, row.last), (row.last, row.first))
    )
    return ordered, turned > straight


def _most(numbers: Iterable[int]) -> int | None:
    some = list(numbers)
    return max(some, key=lambda number: (some.count(number), -number), default=None)


def _overlap(
    of: Mapping[Terminal, int], first: Wired, net: int, block: int, but: set[Terminal]
) -> int:
    return sum(of.get(pin) == block for pin in first.ports_on(net) if pin not in but)
