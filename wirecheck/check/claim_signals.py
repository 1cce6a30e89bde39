"""Whether something is on or off, open or closed, at a moment of a run."""

from __future__ import annotations

from collections.abc import Callable
from typing import ClassVar, Final, NamedTuple

from wirecheck.check.claim_moments import Moment
from wirecheck.circuit.companions import Companions
from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Nets
from wirecheck.model.claim import Signal, State, Subject
from wirecheck.model.diagram import Part
from wirecheck.sequence.answers import OPENS, View
from wirecheck.sequence.burner import BURNING, BurnerState
from wirecheck.sequence.control import ControlMachine
from wirecheck.sequence.simulator import CALL_V
from wirecheck.sequence.tracks import load_track, part_track, track_of


class Seen(NamedTuple):
    """What is seen of a subject.

    Attributes:
        on: it is surely on (a contact closed, a valve or damper open).
        off: it is surely off; a damper on its way is neither.
        word: for people.
        reason: why, if the run noted it; "" if not.
    """

    on: bool
    off: bool
    word: str
    reason: str = ""


#: The words for on and off in each manner of speaking.
_MANNERS: Final = (("on", "off"), ("lit", "out"), ("open", "closed"))
#: What the runs call a state that is plainly on or off.
_PLAIN: Final = frozenset({"on", "off", "open", "closed", "shut"})


def in_the_words_of(state: State, seen: Seen) -> str:
    """What is seen, in the words in which the state was claimed."""
    if seen.word not in _PLAIN or not (seen.on or seen.off):
        return seen.word
    on, off = next(pair for pair in _MANNERS if state.word in pair)
    if (on, off) == _MANNERS[2] and state.subject.signal == "contact":
        on, off = off, on
    return on if seen.on else off


class NotSimulatedError(Exception):
    """Why there is no telling; in words."""


class Signals:
    """Looks at the signals of one diagram."""

    def __init__(self, nets: Nets) -> None:
        """Note what goes with what."""
        self._nets = nets
        self._companions = Companions(nets.diagram)
        families = [part.family for part in nets.diagram.parts.values()]
        self._many = families.count("ignition-control") > 1

    def holds(self, state: State, moment: Moment) -> bool:
        """Whether something is in a state; what is not simulated is in none."""
        try:
            seen = self.look(state.subject, moment)
        except NotSimulatedError:
            return False
        return seen.on if state.on else seen.off

    def look(self, subject: Subject, moment: Moment) -> Seen:
        """What is seen of it.

        Raises:
            NotSimulatedError: the run does not tell.
        """
        return self._looks[subject.signal](self, subject, moment)

    # ---- a control and its burner ------------------------------------------------------------

    def control(self, subject: Subject) -> Part:
        """The control that a signal belongs to.

        Raises:
            NotSimulatedError: none does.
        """
        part = self._nets.diagram.parts[subject.part]
        if part.family == "ignition-control":
            return part
        for control in self._nets.diagram.parts.values():
            if control.family == "ignition-control":
                beside = self._companions.all_of(control, part.family)
                if part in beside:
                    return control
        raise NotSimulatedError(f"no ignition control is drawn that goes with {part.name}")

    def machine(self, subject: Subject, moment: Moment) -> tuple[ControlMachine, BurnerState]:
        """The control as it ran, and its burner."""
        control = self.control(subject)
        simulation = moment.run.simulation
        pairs = zip(simulation.machines, simulation.burners, strict=True)
        return next(pair for pair in pairs if pair[0].part is control)

    def track(self, name: str, subject: Subject) -> str:
        """The track of something at the burner."""
        return track_of(name, self.control(subject).name, many=self._many)

    def _spark(self, subject: Subject, moment: Moment) -> Seen:
        word, reason = noted(self.track("spark", subject), moment)
        on = word == "on"
        return Seen(on, not on, "off" if word == "none" else word or "off", reason)

    def _flame(self, subject: Subject, moment: Moment) -> Seen:
        is_pilot = subject.signal == "pilot-flame"
        if is_pilot and not self.control(subject).with_role("main-valve"):
            raise NotSimulatedError(f"{self.control(subject).name} lights no pilot")
        name = "pilot flame" if is_pilot else "main flame"
        word, reason = noted(self.track(name, subject), moment)
        on = word == BURNING
        return Seen(on, not on, word or "off", reason)

    def _flame_signal(self, subject: Subject, moment: Moment) -> Seen:
        word, reason = noted(self.track("flame signal", subject), moment)
        _machine, burner = self.machine(subject, moment)
        view = moment.run.simulation.view
        on = word == "false" or (word != "0 uA" and burner.flame_path.answer.counts(view))
        return Seen(on, not on, word or "off", reason)

    def _call(self, subject: Subject, moment: Moment) -> Seen:
        machines = [each.part for each in moment.run.simulation.machines]
        volts = moment.rest.steady.watched_volts[machines.index(self.control(subject))]
        on = volts >= OPENS * CALL_V
        return Seen(on, not on, "on" if on else "off")

    def _phase(self, subject: Subject, moment: Moment) -> Seen:
        phase = moment.rest.phases[subject.part]
        on = phase == subject.name
        return Seen(on, not on, f"in {phase}")

    # ---- valves, loads, contacts -------------------------------------------------------------

    def operators(self, subject: Subject, moment: Moment) -> list[ElementKey]:
        """The valve operators that a signal means.

        Raises:
            NotSimulatedError: none is there.
        """
        part = self._nets.diagram.parts[subject.part]
        coils = moment.run.simulation.plant.coils
        is_pilot = subject.signal == "pilot-valve"
        if part.family == "gas-valve":
            names = ("pilot operator",) if is_pilot else ("main operator", "operator")
            found = [key for name in names for key in coils.keys(part, name)]
        else:
            _machine, burner = self.machine(subject, moment)
            if burner.gas_train.unclear:
                raise NotSimulatedError(burner.gas_train.unclear)
            mains = part.with_role("main-valve") or part.with_role("valve-feed")
            found = [
                key
                for key, feed in burner.gas_train.operators(part, coils)
                if (feed in mains) != is_pilot
            ]
        if not found:
            raise NotSimulatedError(f"{subject.shown} has no operator here")
        return found

    def _valve(self, subject: Subject, moment: Moment) -> Seen:
        return self._loads(self.operators(subject, moment), moment)

    def _load(self, subject: Subject, moment: Moment) -> Seen:
        coils = moment.run.simulation.plant.coils
        found = [
            key
            for key, element in coils.elements.items()
            if key.part == subject.part and subject.name in ("", element.name)
        ]
        if not found:
            raise NotSimulatedError(f"{subject.shown} takes no current here")
        seen = [self._loads([key], moment) for key in found]
        return next((each for each in seen if each.on), seen[0])

    def _loads(self, keys: list[ElementKey], moment: Moment) -> Seen:
        """Several loads that act together: for danger one of them is enough."""
        seen = [self._one_load(key, moment) for key in keys]
        if moment.run.simulation.view is View.DANGER:
            return next((each for each in seen if each.on), seen[0])
        return next((each for each in seen if not each.on), seen[0])

    def load_word(self, key: ElementKey, moment: Moment) -> str:
        """Whether a load acts, in a word."""
        return self._one_load(key, moment).word

    def _one_load(self, key: ElementKey, moment: Moment) -> Seen:
        track = load_track(self._nets, key)
        if track not in moment.run.trace.tracks:  # electronics, which nobody sees act
            coils = moment.run.simulation.plant.coils
            volts = moment.rest.steady.load_volts.get(key, 0.0)
            on = volts >= OPENS * coils.rated_v[key]
            return Seen(on, not on, "on" if on else "off")
        word, reason = noted(track, moment)
        is_danger = moment.run.simulation.view is View.DANGER
        on = word == "on" or (is_danger and word in ("may", "chatters"))
        return Seen(on, not on, "not surely on" if word == "may" else word, reason)

    def contacts(self, subject: Subject, moment: Moment) -> list[ElementKey]:
        """The contacts that a subject means."""
        contacts = moment.run.simulation.plant.contacts
        return [
            each.key
            for each in contacts
            if each.key.part == subject.part and each.spec.name == subject.name
        ]

    def _contact(self, subject: Subject, moment: Moment) -> Seen:
        closed = [moment.rest.closed[key] for key in self.contacts(subject, moment)]
        if not closed:
            raise NotSimulatedError(f"{subject.shown} has no contact here")
        on = all(closed)
        return Seen(on, not any(closed), "closed" if on else "open")

    def _blade(self, subject: Subject, moment: Moment) -> Seen:
        part = self._nets.diagram.parts[subject.part]
        word, reason = noted(part_track(part), moment)
        return Seen(word == "open", word == "shut", word, reason)

    _looks: ClassVar[dict[Signal, Callable[[Signals, Subject, Moment], Seen]]] = {
        "spark": _spark,
        "pilot-flame": _flame,
        "main-flame": _flame,
        "flame-signal": _flame_signal,
        "pilot-valve": _valve,
        "main-valve": _valve,
        "call": _call,
        "phase": _phase,
        "blade": _blade,
        "load": _load,
        "contact": _contact,
    }


def noted(track: str, moment: Moment) -> tuple[str, str]:
    """State of a track at a moment and its last reason; "" before its first."""
    state, reason = "", ""
    for change in moment.run.trace.of(track):
        if change.time_s > moment.time_s:
            break
        if change.state != state:
            state, reason = change.state, change.reason
        else:
            reason = change.reason or reason
    return state, reason
