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

Two diagrams for which it gives the same do the same; the name of what differs says what.  Each
thing is looked at when it is asked for; a run that cannot differ from another is not run again.
"""

from __future__ import annotations

from collections.abc import Collection, Hashable, Iterable, Iterator
from functools import cached_property
from typing import cast

from tests.benchmarks.metered import FAMILIES_TO_OPEN, Look, switches, volts
from tests.benchmarks.same_runs import circuit, without_idle
from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import Diagram, Part
from wirecheck.model.kind import SwitchSpec
from wirecheck.sequence.answers import View
from wirecheck.sequence.script import Script, Stimulus, heat_call
from wirecheck.sequence.simulator import Simulation
from wirecheck.sequence.trace import Trace
from wirecheck.sequence.tracks import part_track

#: Seconds of a call in which everything happens that will happen, and of what follows it.
_CALL_S, _AFTER_S = 200.0, 40.0
_PROVING = frozenset({"air", "flow", "pressure"})
_HARM = frozenset({"blows", "trips", "burns out", "destroyed", "chatters"})


class Behaviour:
    """What a diagram does and where its volts get.

    Attributes:
        metered: names of what is looked at with no run.
        run: names of what is looked at in a run.
    """

    def __init__(self, diagram: Diagram) -> None:
        """Nothing is looked at before it is asked for."""
        self._nets = Nets(diagram)
        self._traces: dict[tuple[Script, View], Trace] = {}
        self._seen: dict[str, Hashable] = {}
        runs, metered = dict(self._runs()), dict(volts(self._nets))
        self._looks: dict[str, Look] = {**runs, **metered}
        self.metered, self.run = tuple(metered), tuple(runs)

    def __getitem__(self, name: str) -> Hashable:
        """What is seen; None if there is nothing to be looked at by that name."""
        if name not in self._seen:
            look = self._looks.get(name)
            self._seen[name] = look() if look else None
        return self._seen[name]

    @cached_property
    def circuit(self) -> Hashable:
        """What decides how it runs."""
        return circuit(self._nets)

    # ---- the unit is run -------------------------------------------------------------------

    def _runs(self) -> Iterator[tuple[str, Look]]:
        call = heat_call(length_s=_CALL_S, watch_s=_AFTER_S)
        for view in View:
            yield f"call, {view.value}", self._history(call, view)
            yield f"no call, {view.value}", self._harm(Script((), 0.0, 30.0), view)
        no_gas = heat_call(length_s=_CALL_S, watch_s=_AFTER_S, gas=False)
        yield "call, gas off", self._history(no_gas, View.DANGER)
        parts = self._nets.diagram.parts.values()
        thermostats = [part for part in parts if part.family == "thermostat"]
        for stat in thermostats if len(thermostats) > 1 else ():
            alone = heat_call(length_s=_CALL_S, watch_s=_AFTER_S, calling=(stat.key,))
            yield f"call of {stat.name} alone", self._history(alone, View.OPERATION)
        for stat in thermostats:
            yield from self._other_calls(stat)
        for contact in _to_open(self._nets):
            name = f"{contact.part.name} {contact.name}".strip()
            yield f"{name} open", self._harm(_opening(self._nets, contact), View.DANGER)

    def _other_calls(self, stat: Part) -> Iterator[tuple[str, Look]]:
        """Calls for the fan, and for cooling, which nobody may notice but by gas or harm."""
        for name in (switch.name for switch in stat.structure.switches if switch.name != "heat"):
            closed = Stimulus(0.0, "position", "closed", stat.key, name)
            look = self._harm if name == "cool" else self._history
            for view in View:
                yield f"{name} of {stat.name}, {view.value}", look(Script((closed,), -10, 30), view)
            call = heat_call(length_s=_CALL_S, watch_s=_AFTER_S)
            both = call._replace(stimuli=(closed._replace(time_s=-5.0), *call.stimuli))
            yield f"heat and {name} of {stat.name}", self._history(both, View.OPERATION)

    def _history(self, script: Script, view: View) -> Look:
        put = {part_track(part, f"{part.name} {contact}") for part, contact in self._put(script)}
        return lambda: _history(self._trace(script, view), put)

    def _put(self, script: Script) -> Iterator[tuple[Part, str]]:
        for each in script.stimuli:
            if each.what == "position":
                yield self._nets.diagram.parts[each.part], each.contact

    def _harm(self, script: Script, view: View) -> Look:
        return lambda: _harm(self._trace(script, view))

    def _trace(self, script: Script, view: View) -> Trace:
        key = without_idle(self._nets, script), view
        if key not in self._traces:
            self._traces[key] = Simulation(self._nets, *key).run()
        return self._traces[key]


class Judge:
    """Judges diagrams by what one that is right does."""

    def __init__(self, right: Diagram) -> None:
        """Look at the right one as far as the others ask for it."""
        self._right = Behaviour(right)
        self._first_in_a_run: dict[Hashable, str] = {self._right.circuit: ""}

    def first_difference(self, diagram: Diagram) -> str:
        """One thing that a diagram does otherwise, or ""; of several the quickest found."""
        other = Behaviour(diagram)
        metered = self._first(other, (*self._right.metered, *other.metered))
        if metered:
            return metered
        if other.circuit not in self._first_in_a_run:
            runs = (*self._right.run, *other.run)
            self._first_in_a_run[other.circuit] = self._first(other, runs)
        return self._first_in_a_run[other.circuit]

    def _first(self, other: Behaviour, names: Iterable[str]) -> str:
        return next((name for name in names if self._right[name] != other[name]), "")

    def differences(self, diagram: Diagram) -> list[str]:
        """Everything that a diagram does otherwise."""
        return differences(self._right, Behaviour(diagram))


def behaviour(diagram: Diagram) -> Behaviour:
    """What the diagram does and where its volts get."""
    return Behaviour(diagram)


def differences(one: Behaviour, other: Behaviour) -> list[str]:
    """What differs of all that is looked at."""
    alike = one.circuit == other.circuit
    runs = () if alike else (*one.run, *other.run)
    names = dict.fromkeys((*runs, *one.metered, *other.metered))
    return [name for name in names if one[name] != other[name]]


def _opening(nets: Nets, contact: Element) -> Script:
    """A call with a contact open and every other that proves air or water stuck closed."""
    opened = Stimulus(-5.0, "position", "open", contact.part.key, contact.name)
    stuck = tuple(
        Stimulus(-5.0, "position", "closed", other.part.key, other.name)
        for other in switches(nets)
        if cast(SwitchSpec, other.spec).moved_by in _PROVING and other.part is not contact.part
    )
    call = heat_call(length_s=100.0, watch_s=20.0)
    return call._replace(stimuli=(*stuck, opened, *call.stimuli))


def _to_open(nets: Nets) -> Iterator[Element]:
    for contact in switches(nets):
        if cast(SwitchSpec, contact.spec).safety or contact.part.family in FAMILIES_TO_OPEN:
            yield contact


def _history(trace: Trace, put: Collection[str]) -> Hashable:
    """Every track with its states and when they began; not the microamps of a flame, nor ``put``.

    Args:
        trace: of a run.
        put: tracks of the contacts that were put so from outside.
    """
    return tuple(
        sorted(
            (track, tuple((round(each.time_s), each.state) for each in trace.of(track)))
            for track in trace.tracks
            if "flame signal" not in track and track not in put
        )
    )


def _harm(trace: Trace) -> Hashable:
    """Gas that flows, and what is destroyed."""
    flames = [t for t in trace.tracks if "flame" in t and "signal" not in t]
    gas = [t for t in flames if any(each.state not in ("off", "") for each in trace.of(t))]
    operators = [t for t in trace.tracks if "operator" in t and trace.ever(t, "on")]
    harm = {(each.track, each.state) for each in trace.changes if each.state in _HARM}
    return tuple(sorted(gas)), tuple(sorted(operators)), tuple(sorted(harm))
