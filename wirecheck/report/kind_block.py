"""A kind of part as a small block of letters with its terminals, for a terminal window.

Only plain ASCII is used: it looks the same in every window and in every mail.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import zip_longest

from wirecheck.model.kind import Kind
from wirecheck.parts.defaults import values_of
from wirecheck.parts.structure import structure_of

#: What stands for the terminals of a strip or plug, which has as many as are used.
NUMBERED = ("1", "2", "3", "...")


def terminal_names(kind: Kind) -> tuple[str, ...]:
    """Names of the terminals a part of this kind has if nothing more is said of it."""
    terminals = structure_of(kind, values_of(kind, {})).terminals
    names = tuple(name for name, spec in terminals.items() if not spec.inner)
    return names + (NUMBERED if kind.numbered else ())


def sides(names: Sequence[str]) -> tuple[Sequence[str], Sequence[str]]:
    """The terminals on the left and on the right of a block, top down."""
    half = (len(names) + 1) // 2
    return names[:half], names[half:]


def block_text(kind: Kind) -> list[str]:
    """Return the block, line by line."""
    left, right = sides(terminal_names(kind))
    margin = max(map(len, left), default=0)
    words = [kind.title, f"({kind.letters})"]
    room = max(map(len, words)) + 4
    edge = f"{' ' * (margin + 4)}+{'-' * room}+"
    rows = list(zip_longest(left, right, words, fillvalue=""))
    lines = [
        f"{name:>{margin}} {_stub(name)}|{inside:^{room}}|{_stub(other)} {other}".rstrip()
        for name, other, inside in rows
    ]
    return [edge, *lines, edge]


def _stub(name: str) -> str:
    return "---" if name else "   "
