"""Why a claim does not hold: what the run noted, what the control does, what stands open."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from typing import Final

from wirecheck.check.claim_moments import Moment
from wirecheck.check.claim_readings import LEAST_A
from wirecheck.check.claim_signals import NotSimulatedError, Seen, Signals, noted
from wirecheck.circuit.nets import Nets
from wirecheck.model.claim import Claim, State, Subject
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.kind import GapSpec
from wirecheck.model.nearest import both
from wirecheck.sequence.contacts import Contact
from wirecheck.sequence.control import Phase
from wirecheck.sequence.tracks import part_track
from wirecheck.sequence.why import NO_VOLTS, Reasons
from wirecheck.sequence.why import Moment as Circuit

#: What a control that gives no gas does instead, by its phase.
_RESTS: Final = {
    Phase.IDLE.value: "nothing calls for heat",
    Phase.DAMPER_OPENING.value: "the control waits for the damper",
    Phase.WAIT.value: "the control rests between trials",
    Phase.LOCKOUT.value: "the control is locked out",
    Phase.HELD.value: "the control sees a flame before the trial and does not start",
}
_PROVED_FIRST: Final = "main gas comes only once the flame is proved"
#: Of a direct system, whose wait is the purge.
_PURGES: Final = "the control purges between trials"
_SPARKS_NOT: Final = "the control sparks only in the trial"
_STAYS: Final = "nothing opens it in this call"
#: So many contacts are named.
_MOST_NAMED: Final = 3


class ClaimReasons:
    """Looks for the reason in the runs of one diagram."""

    def __init__(self, nets: Nets, signals: Signals) -> None:
        """Note nothing yet."""
        self._nets = nets
        self._signals = signals

    # ---- states ------------------------------------------------------------------------------

    def of_state(self, state: State, seen: Seen, moment: Moment) -> str:
        """Why something is not in the state claimed."""
        if seen.reason:
            return seen.reason
        subject = state.subject
        if seen.on:
            return self._on(subject, moment)
        return self._off(subject, moment)

    def _on(self, subject: Subject, moment: Moment) -> str:
        if subject.signal == "contact":
            return self._closed(subject, moment)
        try:
            control = self._signals.control(subject)
        except NotSimulatedError:
            return ""
        if subject.signal in ("phase", "call", "load", "blade"):
            return ""
        return noted(part_track(control), moment)[1]

    def _off(self, subject: Subject, moment: Moment) -> str:
        signal = subject.signal
        if signal == "contact":
            return self._opened(subject, moment)
        if signal == "load":
            coils = moment.run.simulation.plant.coils.elements.items()
            found = [e for key, e in coils if (key.part, e.name) == (subject.part, subject.name)]
            loads = found or [e for key, e in coils if key.part == subject.part]
            return self._unfed(loads[0].a, loads[0].b, moment) if loads else ""
        if signal == "blade":
            part = self._nets.diagram.parts[subject.part]
            motors = [e for e in self._nets.elements_of[part.key] if e.name == "motor"]
            return self._unfed(motors[0].a, motors[0].b, moment) if motors else ""
        return self._of_burner(subject, moment)

    def _of_burner(self, subject: Subject, moment: Moment) -> str:
        """Why spark, valve or flame of a control is off."""
        try:
            control = self._signals.control(subject)
        except NotSimulatedError:
            return self._of_valve(subject, moment)
        if subject.signal in ("phase", "call"):
            return noted(part_track(control), moment)[1]
        if subject.signal == "spark":
            return self.rests(control, moment, is_main=False) or _SPARKS_NOT
        is_main = subject.signal.startswith("main") and bool(control.with_role("main-valve"))
        waits = self.rests(control, moment, is_main=is_main)
        if waits:
            return waits
        if subject.signal.endswith("valve"):
            return self._of_valve(subject, moment)
        return self._no_flame(subject, moment)

    def _no_flame(self, subject: Subject, moment: Moment) -> str:
        if subject.signal == "flame-signal":
            machine, burner = self._signals.machine(subject, moment)
            if burner.flame_path.reason:
                return burner.flame_path.reason
            return "no flame burns" if not machine.is_direct else "the burner is not lit"
        name = "main flame" if subject.signal == "main-flame" else "pilot flame"
        return noted(self._signals.track(name, subject), moment)[1]

    def _of_valve(self, subject: Subject, moment: Moment) -> str:
        coils = moment.run.simulation.plant.coils
        for key in self._signals.operators(subject, moment):
            element = coils.elements[key]
            volts = moment.rest.steady.load_volts.get(key, 0.0)
            if volts > NO_VOLTS:
                return f"only {volts:.1f} V reach it"
            return self._unfed(element.a, element.b, moment)
        return ""

    def rests(self, control: Part, moment: Moment, *, is_main: bool) -> str:
        """What a control does that gives no gas; "" if it gives it in this phase."""
        phase = moment.rest.phases[control.key]
        if phase == Phase.IDLE.value and moment.called:
            return noted(part_track(control), moment)[1]
        if is_main and phase in (Phase.TRIAL.value, Phase.PROVING.value):
            return _PROVED_FIRST
        return _rests(control, phase)

    def _opened(self, subject: Subject, moment: Moment) -> str:
        keys = self._signals.contacts(subject, moment)
        contacts = moment.run.simulation.plant.contacts
        opened = [
            each for each in contacts if each.key in keys and not moment.rest.closed[each.key]
        ]
        if not opened or opened[0].spec.moved_by == "coil":
            acts = moment.run.simulation.plant.coils
            names = [each.spec.coil or "" for each in opened]
            coils = [key for each in opened for key in acts.keys(each.part, each.spec.coil or "")]
            return f"its {names[0]} is {self._signals.load_word(coils[0], moment)}" if coils else ""
        words = self._reasons(moment).opened(opened)
        return "" if words.endswith("stands open") else words

    def _closed(self, subject: Subject, moment: Moment) -> str:
        """Why a contact is closed, if it is that of a safety: a call does not open it."""
        keys = self._signals.contacts(subject, moment)
        meant = [each for each in moment.run.simulation.plant.contacts if each.key in keys]
        return _STAYS if meant and all(each.spec.safety for each in meant) else ""

    # ---- readings ----------------------------------------------------------------------------

    def of_reading(self, claim: Claim, value: float, moment: Moment) -> str:
        """Why volts or amperes are not what is claimed."""
        if claim.bounds is None or claim.ends is None:
            return ""
        a, b = claim.ends
        too_few = value < claim.bounds.low
        if claim.about == "amps":
            return self._of_amps(a, b, value, moment) if too_few else ""
        return self._no_volts(a, b, value, moment) if too_few else self._volts(a, b, moment)

    def _volts(self, a: Terminal, b: Terminal, moment: Moment) -> str:
        across = self._open_contact(a, b, moment)
        if across:
            return f"{self._reasons(moment).opened([across])}, with volts behind it"
        return self._fed(a, b, moment)

    def _no_volts(self, a: Terminal, b: Terminal, value: float, moment: Moment) -> str:
        if value > NO_VOLTS:
            return ""
        joins = self._closed_between(a, b, moment)
        if joins is not None:
            return _joined(joins, alone=a.part == b.part)
        return self._kept_off(a, b, moment) or self._unfed(a, b, moment)

    def _fed(self, a: Terminal, b: Terminal, moment: Moment) -> str:
        """What the control does that feeds one of two terminals."""
        for control, _is_main in self._fed_by(a, b):
            reason = noted(part_track(control), moment)[1]
            if reason:
                return reason
        return ""

    def _kept_off(self, a: Terminal, b: Terminal, moment: Moment) -> str:
        """What a control that feeds one of two terminals does in this phase."""
        for control, is_main in self._fed_by(a, b):
            waits = self.rests(control, moment, is_main=is_main)
            if waits:
                return waits
        return ""

    def _fed_by(self, a: Terminal, b: Terminal) -> Iterator[tuple[Part, bool]]:
        """The controls whose gas outputs lie on one of two nets, and whether it is the main's."""
        nets = {self._nets.net(a), self._nets.net(b)}
        for part in self._nets.diagram.parts.values():
            if part.family == "ignition-control":
                for roles, is_main in (
                    (("main-valve",), True),
                    (("pilot-valve", "valve-feed"), False),
                ):
                    if any(self._nets.net(end) in nets for end in part.with_role(*roles)):
                        yield part, is_main

    def _of_amps(self, a: Terminal, b: Terminal, value: float, moment: Moment) -> str:
        spec = self._nets.diagram.spec(a)
        flame = spec is not None and (spec.role == "sense" or _is_flame(self._nets, a, b))
        if flame and value > 0:
            return ""
        if flame:
            shown = self._nets.diagram.show(a)
            return self._no_flame(Subject("flame-signal", a.part, "", shown), moment)
        if value >= LEAST_A:
            return ""
        across = self._open_contact(a, b, moment)
        if across:
            return self._reasons(moment).opened([across])
        for element in self._nets.elements_of[a.part]:
            if element.type == "load" and {element.a, element.b} == {a, b}:
                return self._kept_off(a, b, moment) or self._unfed(a, b, moment)
        return self._stopped(moment)

    def _stopped(self, moment: Moment) -> str:
        """Why no current runs: nothing calls, or what the control waits for."""
        for control, phase in moment.rest.phases.items():
            part = self._nets.diagram.parts[control]
            if _rests(part, phase):
                return noted(part_track(part), moment)[1] or _rests(part, phase)
        return ""

    # ---- the circuit at a moment -------------------------------------------------------------

    def _unfed(self, a: Terminal, b: Terminal, moment: Moment) -> str:
        words = self._reasons(moment).unfed(a, b, self._circuit(moment))
        return "" if words.startswith("too few volts") else words

    def _reasons(self, moment: Moment) -> Reasons:
        """What can be said of a moment, with those calling that called then."""
        plant = moment.run.simulation.plant
        called = noted("call", moment)[0] == "on"
        plant.calling = set(plant.callers) if called else set()
        return Reasons(self._nets, plant)

    def _circuit(self, moment: Moment) -> Circuit:
        rest = moment.rest
        closed = tuple(rest.closed.values())
        return Circuit(rest.time_s, closed, rest.steady, frozenset(), power=True)

    def _open_contact(self, a: Terminal, b: Terminal, moment: Moment) -> Contact | None:
        nets = {self._nets.net(a), self._nets.net(b)}
        for each in moment.run.simulation.plant.contacts:
            element = self._nets.elements_of[each.key.part][each.key.number]
            if {element.net_a, element.net_b} == nets and not moment.rest.closed[each.key]:
                return each
        return None

    def _closed_between(self, a: Terminal, b: Terminal, moment: Moment) -> list[str] | None:
        """Names of the parts whose closed contacts join two terminals; None if none do."""
        start, goal = self._nets.net(a), self._nets.net(b)
        beside: dict[int, list[tuple[int, str]]] = {}
        for each in moment.run.simulation.plant.contacts:
            element = self._nets.elements_of[each.key.part][each.key.number]
            if moment.rest.closed[each.key]:
                beside.setdefault(element.net_a, []).append((element.net_b, each.part.name))
                beside.setdefault(element.net_b, []).append((element.net_a, each.part.name))
        ways: dict[int, list[str]] = {start: []}
        waiting = deque([start])
        while waiting and goal not in ways:
            net = waiting.popleft()
            for there, name in beside.get(net, ()):
                if there not in ways:
                    ways[there] = [*ways[net], name]
                    waiting.append(there)
        return ways.get(goal)


def _joined(contacts: list[str], *, alone: bool) -> str:
    """Why two terminals have no volts between them."""
    names = list(dict.fromkeys(contacts))
    if not names:
        return "they are one conductor"
    if alone and len(names) == 1:
        return f"{names[0]} is closed: no volts stay across it"
    return f"{both(names[:_MOST_NAMED])} {'are' if len(names) > 1 else 'is'} closed between them"


def _rests(control: Part, phase: str) -> str:
    if phase == Phase.WAIT.value and not control.with_role("main-valve"):
        return _PURGES
    return _RESTS.get(phase, "")


def _is_flame(nets: Nets, a: Terminal, b: Terminal) -> bool:
    return any(
        isinstance(element.spec, GapSpec) and {element.a, element.b} == {a, b}
        for element in nets.elements_of[a.part]
    )
