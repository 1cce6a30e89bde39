"""What a diagram does, and where its volts get: a judge of a mistake that knows no rule.

Everything comes from the simulation and from the nets, as a technician would find out who works
the unit and then meters every terminal:

* the unit is run: a call for heat from all that can call and from each alone, no call, a call for
  cooling and for the fan, each safety, hand switch and fuse open; looked at in both views;
* volts that are where they must not be: the line on the 24 V circuit or on metal, the ignition
  voltage on anything but its lead, a supply shorted in some position of the contacts, the hot side
  of a secondary on earth, a device left hot with its switch off;
* protection that nobody sees missing: the ground of the line, a common that comes back through
  the burner ground.

Two diagrams for which it gives the same do the same; the first word of what differs says what.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Iterator, Mapping
from typing import cast

import networkx as nx

from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import EARTH, Diagram, Part, Terminal
from wirecheck.model.kind import SourceSpec, SwitchSpec
from wirecheck.sequence.answers import View
from wirecheck.sequence.script import Script, Stimulus, heat_call
from wirecheck.sequence.simulator import Simulation
from wirecheck.sequence.trace import Trace

#: What a diagram does and where its volts get, by what was looked at.
Behaviour = Mapping[str, Hashable]

#: Seconds of a call in which everything happens that will happen, and of what follows it.
_CALL_S, _AFTER_S = 200.0, 40.0
_FAMILIES_TO_OPEN = frozenset({"safety-switch", "hand-switch", "overcurrent"})
_PROVING = frozenset({"air", "flow", "pressure"})
_HARM = frozenset({"blows", "trips", "burns out", "destroyed", "chatters"})


def behaviour(diagram: Diagram) -> Behaviour:
    """What the diagram does and where its volts get."""
    nets = Nets(diagram)
    return dict((*_runs(nets), *_volts(nets)))


def differences(one: Behaviour, other: Behaviour) -> list[str]:
    """What was looked at and differs."""
    return [name for name in {**one, **other} if one.get(name) != other.get(name)]


# ---- the unit is run ---------------------------------------------------------------------------


def _runs(nets: Nets) -> Iterator[tuple[str, Hashable]]:
    call = heat_call(length_s=_CALL_S, watch_s=_AFTER_S)
    for view in View:
        yield f"call, {view.value}", _history(_run(nets, call, view))
        yield f"no call, {view.value}", _harm(_run(nets, Script((), 0.0, 30.0), view))
    no_gas = heat_call(length_s=_CALL_S, watch_s=_AFTER_S, gas=False)
    yield "call, gas off", _history(_run(nets, no_gas, View.DANGER))
    thermostats = [part for part in nets.diagram.parts.values() if part.family == "thermostat"]
    for stat in thermostats if len(thermostats) > 1 else ():
        alone = heat_call(length_s=_CALL_S, watch_s=_AFTER_S, calling=(stat.key,))
        yield f"call of {stat.name} alone", _history(_run(nets, alone, View.OPERATION))
    for stat in thermostats:
        yield from _other_calls(nets, stat)
    for contact in _to_open(nets):
        name = f"{contact.part.name} {contact.name}".strip()
        yield f"{name} open", _harm(_run(nets, _opening(nets, contact), View.DANGER))


def _other_calls(nets: Nets, stat: Part) -> Iterator[tuple[str, Hashable]]:
    """Calls for the fan, and for cooling, which nobody may notice but by gas or harm."""
    for name in (switch.name for switch in stat.structure.switches if switch.name != "heat"):
        closed = Stimulus(0.0, "position", "closed", stat.key, name)
        for view in View:
            run = _run(nets, Script((closed,), -10.0, 30.0), view)
            what = _harm(run) if name == "cool" else _history(run)
            yield f"{name} of {stat.name}, {view.value}", what
        call = heat_call(length_s=_CALL_S, watch_s=_AFTER_S)
        both = call._replace(stimuli=(closed._replace(time_s=-5.0), *call.stimuli))
        yield f"heat and {name} of {stat.name}", _history(_run(nets, both, View.OPERATION))


def _opening(nets: Nets, contact: Element) -> Script:
    """A call with a contact open and every other that proves air or water stuck closed."""
    opened = Stimulus(-5.0, "position", "open", contact.part.key, contact.name)
    stuck = tuple(
        Stimulus(-5.0, "position", "closed", other.part.key, other.name)
        for other in _switches(nets)
        if cast(SwitchSpec, other.spec).moved_by in _PROVING and other.part is not contact.part
    )
    call = heat_call(length_s=100.0, watch_s=20.0)
    return call._replace(stimuli=(*stuck, opened, *call.stimuli))


def _to_open(nets: Nets) -> Iterator[Element]:
    for contact in _switches(nets):
        if cast(SwitchSpec, contact.spec).safety or contact.part.family in _FAMILIES_TO_OPEN:
            yield contact


def _switches(nets: Nets) -> Iterator[Element]:
    for elements in nets.elements_of.values():
        yield from (each for each in elements if each.type == "switch")


def _run(nets: Nets, script: Script, view: View) -> Trace:
    return Simulation(nets, script, view).run()


def _history(trace: Trace) -> Hashable:
    """Every track with its states and when they began; the microamps of a flame left out."""
    return tuple(
        sorted(
            (track, tuple((round(each.time_s), each.state) for each in trace.of(track)))
            for track in trace.tracks
            if "flame signal" not in track
        )
    )


def _harm(trace: Trace) -> Hashable:
    """Gas that flows, and what is destroyed."""
    flames = [t for t in trace.tracks if "flame" in t and "signal" not in t]
    gas = [t for t in flames if any(each.state not in ("off", "") for each in trace.of(t))]
    operators = [t for t in trace.tracks if "operator" in t and trace.ever(t, "on")]
    harm = {(each.track, each.state) for each in trace.changes if each.state in _HARM}
    return tuple(sorted(gas)), tuple(sorted(operators)), tuple(sorted(harm))


# ---- every terminal is metered -----------------------------------------------------------------


def _volts(nets: Nets) -> Iterator[tuple[str, Hashable]]:
    sources = _sources(nets)
    line = [each for each in sources if _circuit(nets, each.a) == "line"]
    secondaries = [each for each in sources if _circuit(nets, each.a) == "24V"]
    for pulled_in in (False, True):
        relays = "relays in" if pulled_in else "relays out"
        where = _Joined(nets, _closed(nets, pulled_in=pulled_in))
        yield f"line on 24 V, {relays}", _line_on_24_v(nets, where)
        yield f"line on metal, {relays}", _line_on_metal(nets, where)
        yield f"left hot, {relays}", _left_hot(nets, line, pulled_in=pulled_in)
        yield (
            f"shorts, {relays}",
            frozenset((s.part.key, s.name) for s in sources if where(s.a) == where(s.b)),
        )
    yield "hot side earthed", frozenset(s.part.key for s in secondaries if nets.joined(s.a, EARTH))
    yield "ignition voltage", _strangers(nets, ("spark",), ("ignition",))
    yield "flame signal", _strangers(nets, ("sense", "rod"), ("ignition", "flame"))
    yield "line ground", _line_ground(nets)
    everything = _Joined(nets, _switches(nets))
    yield "common by leads", _common_by_leads(nets, everything, secondaries)


def _sources(nets: Nets) -> list[Element]:
    return [
        element
        for elements in nets.elements_of.values()
        for element in elements
        if isinstance(element.spec, SourceSpec)
    ]


def _circuit(nets: Nets, terminal: Terminal) -> str:
    spec = nets.diagram.spec(terminal)
    return spec.circuit if spec else ""


def _closed(nets: Nets, *, pulled_in: bool) -> list[Element]:
    """The contacts that are closed if every one is that can be, all relays in or none."""
    found = []
    for contact in _switches(nets):
        spec = cast(SwitchSpec, contact.spec)
        if spec.coil is None or (spec.normal == "open") == pulled_in:
            found.append(contact)
    return found


class _Joined:
    """Which nets are one conductor with some contacts closed."""

    def __init__(self, nets: Nets, contacts: Iterable[Element]) -> None:
        self._nets = nets
        self._sets: nx.utils.UnionFind[int] = nx.utils.UnionFind()
        for contact in contacts:
            self._sets.union(contact.net_a, contact.net_b)

    def __call__(self, terminal: Terminal) -> int:
        return int(self._sets[self._nets.net(terminal)])


def _line_on_24_v(nets: Nets, where: _Joined) -> Hashable:
    """Terminals of the other circuits that a wired one of the line is joined to.

    Behind a winding or a motor a lead of the line is as live as before it.
    """
    line = {where(end) for end in _wired(nets, "line")}
    low = _wired(nets, "24V", "ignition", "flame")
    return frozenset(end for end in low if where(end) in line)


def _line_on_metal(nets: Nets, where: _Joined) -> Hashable:
    """Wired terminals of the line that earth or the metal of a burner is joined to."""
    metal = {where(EARTH), *(where(end) for end in _with_role(nets, "burner-metal"))}
    return frozenset(end for end in _wired(nets, "line") if where(end) in metal)


def _wired(nets: Nets, *circuits: str) -> list[Terminal]:
    return [end for end in nets.net_of if nets.is_wired(end) and _circuit(nets, end) in circuits]


def _with_role(nets: Nets, *roles: str) -> list[Terminal]:
    parts = nets.diagram.parts.values()
    return [terminal for part in parts for terminal in part.with_role(*roles)]


def _left_hot(nets: Nets, line: list[Element], *, pulled_in: bool) -> Hashable:
    """Loads of the line with an end on a hot leg, for each switch or fuse that is open."""
    closed = _closed(nets, pulled_in=pulled_in)
    hot = {source.a for source in line}
    loads = [
        element
        for elements in nets.elements_of.values()
        for element in elements
        if element.type == "load" and _circuit(nets, element.a) == "line"
    ]
    primaries = [
        (part.key, part.terminal(name))
        for part in nets.diagram.parts.values()
        for source in part.structure.sources
        for pair in source.fed_by
        for name in pair
    ]
    ends = [*((x.part.key, end) for x in loads for end in (x.a, x.b)), *primaries]
    found = []
    for contact in closed:
        if contact.part.family in _FAMILIES_TO_OPEN:
            where = _Joined(nets, (each for each in closed if each is not contact))
            legs = {where(end) for end in hot}
            found.append(
                (contact.part.key, frozenset(key for key, end in ends if where(end) in legs))
            )
    return frozenset(found)


def _strangers(nets: Nets, roles: tuple[str, ...], circuits: tuple[str, ...]) -> Hashable:
    """Terminals joined to those of some roles that are not made for their circuits."""
    own = {nets.net(terminal) for terminal in _with_role(nets, *roles)}
    return frozenset(
        terminal
        for terminal, net in nets.net_of.items()
        if net in own and _circuit(nets, terminal) not in (*circuits, "")
    )


def _line_ground(nets: Nets) -> Hashable:
    """Ground terminals of the line that are on earth."""
    grounds = _with_role(nets, "line-ground")
    return frozenset(ground for ground in grounds if nets.joined(ground, EARTH))


def _common_by_leads(nets: Nets, where: _Joined, secondaries: list[Element]) -> Hashable:
    """Controls with the common of what feeds their call, and not through the metal of a burner."""
    metal = set(_with_role(nets, "burner-metal"))
    wires = nets.conductors.subgraph(set(nets.conductors) - metal)
    return frozenset(
        com.part
        for com in _with_role(nets, "control-common")
        for call in nets.diagram.parts[com.part].with_role("call")
        for source in secondaries
        if where(source.a) == where(call) and nx.has_path(wires, com, source.b)
    )
