"""Networks of switches taken apart into series and parallel, so that their order can be forgotten.

Two switches between the same two nets are in parallel; two with nothing else on the net between
them are in series.  Each such pair becomes one block, which is taken for a switch in its turn,
until nothing is left to join (after J. Valdes, R. Tarjan and E. Lawler, SIAM Journal on Computing
11, 1982; from memory).  A bridge stays as it is.  Blocks in series change places as switches in a
row do (`wirecheck.compare.rows`): in an ungrounded lead only.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from wirecheck.circuit.nets import Element
from wirecheck.compare.rows import rows
from wirecheck.compare.wired import Wired


@dataclass(frozen=True, eq=False)
class Block:
    """A switch, or several between two nets.

    Attributes:
        kind: how the blocks inside lie; ``switch`` for one switch.
        first, last: the nets it lies between.
        inside: the blocks it is made of.
        contact: the switch, if it is one.
    """

    kind: Literal["switch", "series", "parallel"]
    first: int
    last: int
    inside: tuple[Block, ...] = ()
    contact: Element | None = None


def blocks(wired: Wired) -> list[Block]:
    """The largest blocks of plain switches, those that no other block holds."""
    found = [
        Block("switch", wired.net_of[each.near], wired.net_of[each.far], (), each.contact)
        for row in rows(wired)
        for each in row.contacts
    ]
    contacts = {port for row in rows(wired) for each in row.contacts for port in each[1:]}
    free = [
        net not in wired.touches
        and net not in wired.grounded
        and not wired.is_open_ended(net)
        and contacts.issuperset(wired.ports_on(net))
        for net in range(len(wired.pins))
    ]
    while True:
        fewer = _in_series(_in_parallel(found), free)
        if len(fewer) == len(found):
            return fewer
        found = fewer


def _in_parallel(found: list[Block]) -> list[Block]:
    """The blocks with those made one that lie between the same two nets."""
    beside: dict[frozenset[int], list[Block]] = {}
    for block in found:
        beside.setdefault(frozenset((block.first, block.last)), []).append(block)
    return [
        some[0] if len(some) == 1 else _made_of("parallel", some[0].first, some[0].last, *some)
        for some in beside.values()
    ]


def _in_series(found: list[Block], free: list[bool]) -> list[Block]:
    """The blocks with those made one that meet on a net with nothing else on it."""
    at: dict[int, list[Block]] = {}
    for block in found:
        for net in (block.first, block.last):
            at.setdefault(net, []).append(block)
    left = dict.fromkeys(found)
    for net, some in at.items():
        meet = [block for block in some if block in left]
        if len(some) != 2 or len(meet) != 2 or not free[net] or meet[0] is meet[1]:
            continue
        one, other = meet
        ends = [each.first if each.last == net else each.last for each in (one, other)]
        if ends[0] == ends[1]:  # both between the same two nets: in parallel
            continue
        del left[one], left[other]
        left[_made_of("series", ends[0], ends[1], one, other)] = None
    return list(left)


def _made_of(kind: Literal["series", "parallel"], first: int, last: int, *blocks_: Block) -> Block:
    """A block of blocks; one of the same kind inside is taken apart again."""
    inside = (
        each for block in blocks_ for each in (block.inside if block.kind == kind else (block,))
    )
    return Block(kind, first, last, tuple(inside))
