"""Ways from device to device: one lead, or several that joints put one behind the other.

A splice, or a terminal of a strip, on which just two leads land only lengthens a lead: whoever
moves the lead at its device leaves the joint as it is.
"""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Terminal


class Way(NamedTuple):
    """Leads one behind the other, and the two terminals between which they run."""

    leads: tuple[int, ...]
    start: Terminal
    end: Terminal


def ways(nets: Nets) -> list[Way]:
    """Every way, in the order in which the text first names one of its leads."""
    found: list[Way] = []
    seen: set[int] = set()
    for number, lead in enumerate(nets.diagram.leads):
        if number in seen:
            continue
        seen.add(number)
        behind, start = _followed(nets, number, lead.a, seen)
        ahead, end = _followed(nets, number, lead.b, seen)
        found.append(Way((*reversed(behind), number, *ahead), start, end))
    return found


def _followed(nets: Nets, number: int, end: Terminal, seen: set[int]) -> tuple[list[int], Terminal]:
    """The leads behind one end of a lead, and where the last of them lands."""
    passed: list[int] = []
    while (following := _next(nets, number, end)) is not None and following not in seen:
        number = following
        seen.add(number)
        passed.append(number)
        lead = nets.diagram.leads[number]
        end = lead.b if lead.a == end else lead.a
    return passed, end


def _next(nets: Nets, number: int, end: Terminal) -> int | None:
    """The one other lead at a joint; None if it is no joint, or holds more."""
    part = nets.diagram.parts.get(end.part)
    is_joint = end.part in nets.diagram.splices or (part is not None and part.family == "strip")
    others = [each for each in nets.leads_at(end) if each != number] if is_joint else []
    return others[0] if len(others) == 1 else None
