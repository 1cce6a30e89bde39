"""Where the line-voltage circuit and the 24 V circuit meet."""

from __future__ import annotations

from typing import Final, NamedTuple

from wirecheck.model.diagram import Terminal
from wirecheck.model.structure import Structure
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.line_voltage.fan_limit_link_left_in import LINK
from wirecheck.rules.sides import Trace

#: What a device takes line volts in by.
_PRIMARY: Final = frozenset({"line-hot", "line-neutral"})


class Crossing(NamedTuple):
    """A way from a terminal of the line to one of the 24 V circuit, by leads and contacts.

    ``only_24_v``: the line does not reach it, so that a device made for the line is on 24 V.
    """

    trace: Trace
    only_24_v: bool


def crossings(facts: Facts) -> tuple[Crossing, ...]:
    """One for each area that holds terminals of both; use it as ``facts.once(crossings)``.

    A way through the factory link of a fan-and-limit control has a rule of its own.
    """
    found = []
    circuits = facts.once(_Circuits)
    for area in mixed_areas(facts):
        starts, goals = circuits.line[area], set(circuits.low[area])
        trace = facts.sides.search(starts, goals.__contains__)
        if trace is not None and trace.leads and LINK not in trace.links:
            sides = facts.sides
            has_24_v = bool(sides.hot_beyond(trace.end) or sides.common_beyond(trace.end))
            found.append(Crossing(trace, has_24_v and not _is_at_line_volts(facts, starts)))
    return tuple(found)


def mixed_areas(facts: Facts) -> tuple[int, ...]:
    """The areas with terminals of both circuits; use it as ``facts.once(mixed_areas)``."""
    circuits = facts.once(_Circuits)
    return tuple(area for area in circuits.line if area in circuits.low)


class _Circuits:
    """The wired terminals of the line and of the 24 V circuit, by area."""

    def __init__(self, facts: Facts) -> None:
        self.line: dict[int, list[Terminal]] = {}
        self.low: dict[int, list[Terminal]] = {}
        names: dict[Structure, list[tuple[str, dict[int, list[Terminal]]]]] = {}
        circuits = {"line": self.line, "24V": self.low}
        for part in facts.diagram.parts.values():
            if part.structure not in names:
                specs = part.structure.terminals.items()
                names[part.structure] = [
                    (name, circuits[spec.circuit])
                    for name, spec in specs
                    if spec.circuit in circuits
                ]
            for name, areas in names[part.structure]:
                terminal = part.terminal(name)
                if facts.is_wired(terminal):
                    areas.setdefault(facts.sides.area(terminal), []).append(terminal)


def _is_at_line_volts(facts: Facts, terminals: list[Terminal]) -> bool:
    """Whether a supply reaches them, or a primary that some supply left out of a sketch feeds."""
    if facts.once(Legs).at(terminals[0]):
        return True
    return any(facts.role(terminal) in _PRIMARY for terminal in terminals)
