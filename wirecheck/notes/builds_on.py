"""Which blocks come before a block that builds on them, in which order, each once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice
from typing import Final, NamedTuple

from wirecheck.model.finding import Problem
from wirecheck.model.nearest import both, nearest
from wirecheck.notes.document import Block

#: Blocks that one may build on, those that they build on included.
MOST_BELOW: Final = 200
_MOST_NAMED: Final = 8
#: So many names are compared with one that no block has.
_MOST_COMPARED: Final = 200


class Together(NamedTuple):
    """A block with those it builds on.

    Attributes:
        block: the block itself.
        below: what it builds on, each once, what comes first first.
        incomplete: something it builds on is not there, so names may be missing.
    """

    block: Block
    below: tuple[Block, ...]
    incomplete: bool


class Order(NamedTuple):
    """Every block of a document with those it builds on, and what is wrong with that."""

    together: tuple[Together, ...]
    problems: tuple[Problem, ...]


def order_of(blocks: Sequence[Block]) -> Order:
    """Find what each block builds on; a block may stand above or below those that build on it."""
    ordering = _Ordering(blocks)
    together = tuple(ordering.together(block) for block in blocks)
    return Order(together, (*ordering.problems, *_never_used(blocks)))


class _Ordering:
    def __init__(self, blocks: Sequence[Block]) -> None:
        self.problems: list[Problem] = []
        self.named: dict[str, Block] = {}
        for block in blocks:
            if block.name is None:
                continue
            first = self.named.setdefault(block.name.key, block)
            if first is not block:
                line = first.opening.line
                message = f"a block is called {block.name.text} already, in line {line}"
                self.problems.append(Problem(message, block.name.span))
        self.known = {id(block): self._known(block) for block in blocks}

    def _known(self, block: Block) -> tuple[Block, ...]:
        """The blocks that a block names and that are there; the others are problems."""
        found = []
        for name in block.on:
            below = self.named.get(name.key)
            if below is not None:
                found.append(below)
                continue
            known = islice(self.named.values(), _MOST_COMPARED)
            names = [each.name.text for each in known if each.name]
            near = nearest(name.text, names)
            there = f"names here: {both(names[:_MOST_NAMED])}" if names else "no block has a name"
            hint = f"did you mean {near}?" if near else there
            message = f"no block of this document is called “{name.text}”; {hint}"
            self.problems.append(Problem(message, name.span, near))
        return tuple(found)

    def together(self, block: Block) -> Together:
        """The block with all that it builds on, depth first as it is typed."""
        below: dict[int, Block] = {}
        incomplete = self._is_incomplete(block)
        way: list[tuple[Block, Iterator[Block]]] = [(block, iter(self.known[id(block)]))]
        on_way = {id(block)}
        while way:
            above, rest = way[-1]
            each = next(rest, None)
            if each is None:
                way.pop()
                on_way.discard(id(above))
                if above is not block:
                    below[id(above)] = above
            elif id(each) in on_way:
                ring = [step for step, _rest in way]
                if each is block and min(ring, key=_place) is block:  # told once
                    self._ring(ring)
                incomplete = True
            elif id(each) not in below:
                if len(below) + len(way) > MOST_BELOW:
                    message = f"this block builds on more than {MOST_BELOW} others"
                    self.problems.append(Problem(message, block.opening))
                    return Together(block, tuple(below.values()), incomplete=True)
                incomplete |= self._is_incomplete(each)
                on_way.add(id(each))
                way.append((each, iter(self.known[id(each)])))
        return Together(block, tuple(below.values()), incomplete)

    def _is_incomplete(self, block: Block) -> bool:
        return block.lost or len(self.known[id(block)]) < len(block.on)

    def _ring(self, way: Sequence[Block]) -> None:
        names = [block.name.text for block in (*way, way[0]) if block.name]
        if len(names) > _MOST_NAMED:
            names[_MOST_NAMED // 2 : -_MOST_NAMED // 2] = ["…"]
        message = f"the blocks build on each other in a ring: {' on '.join(names)}"
        closing = next(name for name in way[-1].on if self.named.get(name.key) is way[0])
        self.problems.append(Problem(message, closing.span))


def _place(block: Block) -> int:
    return block.opening.start


def _never_used(blocks: Sequence[Block]) -> Iterator[Problem]:
    """A piece that nothing builds on is checked nowhere, which nobody would notice."""
    used = {name.key for block in blocks for name in block.on}
    for block in blocks:
        if block.piece and (block.name is None or block.name.key not in used):
            message = "no block builds on this piece, so it was not checked: leave piece out"
            yield Problem(message, block.opening)
