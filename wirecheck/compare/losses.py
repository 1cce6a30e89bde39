"""What of one diagram's joins another one has not: the fewest units, each mistake told once.

A unit is one terminal joined to the rest of its net, or a net joined to metal; a net of n
terminals has n - 1, as it takes n - 1 leads.  What has come apart together is one unit lost, the
terminal of it nearest to the supply: what lies behind is wired right among itself.  Terminals
joined that belong apart are lost units too, unless a lead that is missing elsewhere on the same
net has just landed there.

(That diagrams are marked by smallest meaningful units: P. Thomas, N. Smith and K. Waugh, "Computer
assisted assessment of diagrams", ITiCSE 2007; from memory.)
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from wirecheck.compare.blocks import Blocks, Metal
from wirecheck.model.diagram import Terminal


class Apart(NamedTuple):
    """A terminal, with what came along, is not joined to the rest of its net.

    ``mate`` is the terminal of its net nearest to the supply; ``piece`` all that came along.
    """

    unit: Terminal
    mate: Terminal
    piece: frozenset[Terminal]


class OffMetal(NamedTuple):
    """A net is not joined to metal: earth, or the metal of a burner."""

    metal: Metal
    pins: tuple[Terminal, ...]


class Joined(NamedTuple):
    """Two nets are joined, or a net and metal, that belong apart."""

    some: tuple[Terminal, ...]
    others: tuple[Terminal, ...]
    at_metal: bool = False


Loss = Apart | OffMetal | Joined


def losses(first: Blocks, second: Blocks, rank: Mapping[Terminal, int]) -> tuple[Loss, ...]:
    """What is lost of the first in the second; empty if and only if the same is joined.

    Args:
        first: what should be joined.
        second: what is, by the same terminals.
        rank: the lower, the nearer to the supply.
    """
    return _Ledger(first, second, rank).losses()


class _Ledger:
    def __init__(self, first: Blocks, second: Blocks, rank: Mapping[Terminal, int]) -> None:
        self._first, self._second = first, second
        self._groups = {
            block: sorted(pins, key=rank.__getitem__) for block, pins in first.groups().items()
        }
        self._here = second.groups()

    def losses(self) -> tuple[Loss, ...]:
        split: list[Apart | OffMetal] = [*self._apart(), *self._off_metal()]
        joined = sorted(self._joined(), key=lambda each: each.at_metal)
        explained = _matched([self._explains(loss, joined) for loss in split], len(joined))
        left = [each for number, each in enumerate(joined) if number not in explained]
        return (*split, *left)

    def _apart(self) -> Iterator[Apart]:
        for pins in self._groups.values():
            pieces: dict[int, list[Terminal]] = {}
            for pin in pins:
                pieces.setdefault(self._second.of[pin], []).append(pin)
            for piece in list(pieces.values())[1:]:
                yield Apart(piece[0], pins[0], frozenset(piece))

    def _off_metal(self) -> Iterator[OffMetal]:
        for metal, block in sorted(self._first.touches):
            pins = self._groups.get(block, [])
            is_there = any((metal, self._second.of[pin]) in self._second.touches for pin in pins)
            if pins and not is_there:
                yield OffMetal(metal, tuple(pins))
        for pair in self._first.metal_pairs - self._second.metal_pairs:
            metal, other = sorted(pair)
            yield OffMetal(metal, (other,))

    def _joined(self) -> Iterator[Joined]:
        """One for each net too many in a block, and for each metal that does not belong to it."""
        for block, pins in sorted(self._here.items()):
            by_net: dict[int, list[Terminal]] = {}
            for pin in pins:
                by_net.setdefault(self._first.of[pin], []).append(pin)
            mains, *rest = sorted(by_net.values(), key=lambda some: -len(some))
            for some in rest:
                yield Joined(tuple(some), tuple(mains))
            for metal in sorted(m for m, where in self._second.touches if where == block):
                if not any((metal, net) in self._first.touches for net in by_net):
                    yield Joined(tuple(pins), (metal,), at_metal=True)
        for pair in sorted(map(sorted, self._second.metal_pairs - self._first.metal_pairs)):
            if not self._are_one_anyway(*pair):
                yield Joined((pair[0],), (pair[1],), at_metal=True)

    def _are_one_anyway(self, metal: Metal, other: Metal) -> bool:
        """Whether some net touches both: a lead between them joins nothing then."""
        blocks = ({b for m, b in self._second.touches if m == each} for each in (metal, other))
        return bool(set.intersection(*blocks))

    def _explains(self, loss: Apart | OffMetal, joined: Sequence[Joined]) -> list[int]:
        """Which joins a lead explains that is missing from a net and has landed elsewhere."""
        if isinstance(loss, Apart):
            nets = {self._first.of[loss.unit]}
        else:
            nets = {self._first.of[pin] for pin in loss.pins if pin in self._first.of}
        return [
            number
            for number, each in enumerate(joined)
            if (isinstance(loss, OffMetal) and loss.metal in (*each.some, *each.others))
            or any(self._has_piece(pin, nets) for pin in (*each.some, *each.others))
        ]

    def _has_piece(self, pin: Terminal, nets: set[int]) -> bool:
        block = self._second.of.get(pin)
        here = self._here.get(block, []) if block is not None else []
        return any(self._first.of[each] in nets for each in here)


def _matched(choices: Sequence[Sequence[int]], count: int) -> set[int]:
    """As many of the joins as can each be explained by a loss of its own."""
    taken: dict[int, int] = {}

    def place(loss: int, seen: set[int]) -> bool:
        for join in choices[loss]:
            if join not in seen:
                seen.add(join)
                if join not in taken or place(taken[join], seen):
                    taken[join] = loss
                    return True
        return False

    for loss in range(len(choices)):
        if len(taken) == count:
            break
        place(loss, set())
    return set(taken)
