"""A line on standard error that tells a waiting person how far long work has come."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator
from time import monotonic
from typing import TypeVar

#: Work that is done sooner needs no telling.
PATIENCE_S = 0.7
#: So often the line changes at most.
EVERY_S = 0.1

_Thing = TypeVar("_Thing")


def told(things: Iterable[_Thing], total: int, doing: str) -> Iterator[_Thing]:
    """Hand on the things one by one; on a terminal say how far it has come.

    Args:
        things: what is worked on.
        total: how many there will be.
        doing: what is done with them: ``checking``.
    """
    if sys.stderr is None or not sys.stderr.isatty():
        yield from things
        return
    started = shown = monotonic()
    for number, thing in enumerate(things, start=1):
        now = monotonic()
        if now - started > PATIENCE_S and now - shown > EVERY_S:
            shown = now
            _show(f"{doing} {number} of {total}")
        yield thing
    if shown != started:
        _show("")


def wipe() -> None:
    """Take the line away, before something else is printed where it stands."""
    if sys.stderr is not None and sys.stderr.isatty():
        _show("")


def _show(line: str) -> None:
    """Write over the line shown last."""
    sys.stderr.write(f"\r{line}\x1b[K")
    sys.stderr.flush()
