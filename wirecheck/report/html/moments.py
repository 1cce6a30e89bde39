"""What is live at each moment of a call for heat: the volts of every lead, as computed.

The volts of a lead are those against the common of the supply that feeds it, which is the greatest
against any common; behind an open contact they are what a meter would show there.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final, NamedTuple

from wirecheck.circuit.instrument import Voltmeter
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Diagram, Terminal
from wirecheck.model.kind import SourceSpec
from wirecheck.sequence.cycles import Event, events
from wirecheck.sequence.run import Run
from wirecheck.sequence.trace import Rest

#: Under this a lead is not live: drops in commons, and what leaks through a coil (our choice).
LIVE_V: Final = 2.0
#: So many moments are stepped through; a control that tries for ever repeats itself long before.
MOST: Final = 40
#: Circuits in which no volts are computed.
_UNSOLVED: Final = frozenset({"ignition", "flame"})


class Moment(NamedTuple):
    """A moment of a call.

    Attributes:
        time_s: from the call.
        changes: what changes then, in words.
        phases: of each control, in words.
        volts: of each lead by its number; leads of the spark and the flame signal have none.
    """

    time_s: float
    changes: tuple[str, ...]
    phases: tuple[str, ...]
    volts: dict[int, float]


def moments(run: Run) -> tuple[Moment, ...]:
    """The moments of a run at which something changes, in order."""
    diagram, nets = run.diagram, Nets(run.diagram)
    meter = _LeadVolts(nets)
    found: list[Moment] = []
    for event in events(run.trace):
        rest = _rest_at(run.trace.rests, event.time_s) if isinstance(event, Event) else None
        if not isinstance(event, Event) or rest is None:
            continue
        changes = tuple(
            f"{each.track}: {each.state}{f' ({each.reason})' if each.reason else ''}"
            for each in event.changes
        )
        phases = tuple(
            f"{diagram.parts[part].name}: {phase}" for part, phase in rest.phases.items()
        )
        found.append(Moment(event.time_s, changes, phases, meter.at(rest)))
        if len(found) == MOST:
            break
    return tuple(found)


def _rest_at(rests: Sequence[Rest], time_s: float) -> Rest | None:
    """The state in which the circuit is left at a time."""
    before = [rest for rest in rests if rest.time_s <= time_s]
    return before[-1] if before else None


class _LeadVolts:
    """The volts of all leads, worked out once for each position of the contacts."""

    def __init__(self, nets: Nets) -> None:
        self._meter = Voltmeter(nets)
        self._commons = list(dict.fromkeys(_commons(nets)))
        self._net_of_lead = dict(_solved_leads(nets))
        self._ends = {nets.net(end): end for end in self._net_of_lead.values()}
        self._nets = nets
        self._known: dict[tuple[bool, ...], dict[int, float]] = {}

    def at(self, rest: Rest) -> dict[int, float]:
        positions = tuple(rest.closed.values())
        if positions not in self._known:
            by_net = {
                net: max((self._volts(rest, end, common) for common in self._commons), default=0.0)
                for net, end in self._ends.items()
            }
            self._known[positions] = {
                lead: round(by_net[self._nets.net(end)], 1)
                for lead, end in self._net_of_lead.items()
            }
        return self._known[positions]

    def _volts(self, rest: Rest, end: Terminal, common: Terminal) -> float:
        if self._nets.joined(end, common):
            return 0.0
        return self._meter.volts(rest.closed, end, common)


def _commons(nets: Nets) -> Iterator[Terminal]:
    """The side of each supply that its volts are told against."""
    for elements in nets.elements_of.values():
        yield from (each.b for each in elements if isinstance(each.spec, SourceSpec))


def _solved_leads(nets: Nets) -> Iterator[tuple[int, Terminal]]:
    """Leads in which volts are computed, each with an end."""
    diagram: Diagram = nets.diagram
    for number, lead in enumerate(diagram.leads):
        specs = [spec for spec in (diagram.spec(lead.a), diagram.spec(lead.b)) if spec]
        if lead.conducts and not any(spec.circuit in _UNSOLVED for spec in specs):
            yield number, lead.a
