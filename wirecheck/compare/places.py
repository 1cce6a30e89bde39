"""Where a switch stands, in words, and which leads a difference is about."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterable
from itertools import pairwise

from wirecheck.circuit.nets import Element
from wirecheck.compare.rows import Row, rows
from wirecheck.compare.wired import Wired
from wirecheck.model.diagram import Terminal


def place_of(wired: Wired, contact: Element) -> str:
    """Where a switch stands: ``in the common lead, between xfmr.C and box.COM``."""
    if not wired.is_wired(contact.a) and not wired.is_wired(contact.b):
        return "wired to nothing"
    if not wired.is_live(contact):
        return "wired at one side only"
    if wired.net_of[contact.a] == wired.net_of[contact.b]:
        return "bridged: both its sides are one conductor"
    for row in rows(wired):
        for number, placed in enumerate(row.contacts):
            if placed.contact is contact:
                return _in_row(wired, row, number)
    ends = sorted(_far_ends(wired, contact.a)[:1] + _far_ends(wired, contact.b)[:1])
    names = " and ".join(map(wired.diagram.show, ends))
    return f"between {names}" if len(ends) == 2 else "on a lead that goes nowhere"


def _in_row(wired: Wired, row: Row, number: int) -> str:
    """The lead a row stands in, and what is beside the switch there."""
    ends = _far_ends(wired, row.contacts[0].near), _far_ends(wired, row.contacts[-1].far)
    if not all(ends):
        return "on a lead that goes nowhere"
    from_supply, to_load = (side[0] for side in ends)
    is_turned = _is_supply(wired, to_load) and not _is_supply(wired, from_supply)
    names = [placed.contact.part.name for placed in row.contacts]
    if is_turned:
        from_supply, to_load = to_load, from_supply
        names.reverse()
        number = len(names) - 1 - number
    lead = _lead_word(wired, row)
    behind = names[number + 1 :]
    if behind:
        return f"{lead}, ahead of {behind[0]}"
    if number:
        return f"{lead}, behind {names[number - 1]}"
    show = wired.diagram.show
    return f"{lead}, between {show(from_supply)} and {show(to_load)}"


def _lead_word(wired: Wired, row: Row) -> str:
    specs = [wired.diagram.spec(end) for net in (row.first, row.last) for end in wired.pins[net]]
    is_line = any(spec is not None and spec.circuit == "line" for spec in specs)
    if not row.commutes:
        return "in the neutral" if is_line else "in the common lead"
    return "in the line lead" if is_line else "in the hot lead"


def _far_ends(wired: Wired, port: Terminal) -> list[Terminal]:
    """The other terminals on the net of a switch's side, a supply first."""
    ends = [each for each in wired.ports_on(wired.net_of[port]) if each.part != port.part]
    return sorted(ends, key=lambda end: not _is_supply(wired, end))


def _is_supply(wired: Wired, end: Terminal) -> bool:
    return wired.diagram.parts[end.part].family in ("transformer", "mains")


# ---- leads ---------------------------------------------------------------------------------


def leads_out_of(
    wired: Wired, piece: Iterable[Terminal], is_beyond: Callable[[Terminal], bool]
) -> tuple[int, ...]:
    """The leads that join a group of terminals to the nearest terminal beyond it.

    Only leads, splices and strips are followed, and links inside devices; none if nothing is there.
    """
    conductors = wired.nets.conductors
    starts = [end for pin in sorted(piece) for end in wired.port(pin) if end in conductors]
    came: dict[Terminal, Terminal] = {start: start for start in starts}
    waiting = deque(starts)
    while waiting:
        here = waiting.popleft()
        if is_beyond(here):
            return _leads_back(wired, came, here)
        if here in wired.metal and here not in starts:
            continue
        for there in conductors[here]:
            if there not in came:
                came[there] = here
                waiting.append(there)
    return ()


def _leads_back(wired: Wired, came: dict[Terminal, Terminal], end: Terminal) -> tuple[int, ...]:
    way = [end]
    while came[way[-1]] != way[-1]:
        way.append(came[way[-1]])
    numbers = []
    for here, there in pairwise(reversed(way)):
        number = wired.nets.conductors.edges[here, there].get("lead")
        if number is not None:
            numbers.append(number)
    return tuple(numbers)
