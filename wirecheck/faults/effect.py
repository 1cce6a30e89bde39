"""What a unit does with a fault: the properties it then breaks, the step at which a call fails.

The five classes: a *hazard* lets gas flow, or the ignition start, where it must not, in some
position of working switches.  A *latent loss* leaves all that in order, but takes a protection
away: a safety that cannot open any more, an earth whose loss lets one more fault do harm.
*Damage* shorts a supply or puts too many volts on a part.  *No heat*: a call does not light any
more.  *No effect*: nothing of that.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from enum import IntEnum
from functools import cached_property
from typing import Literal, NamedTuple

from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import EARTH, Diagram, Part
from wirecheck.properties.call_does_not_light import is_whole, steps
from wirecheck.properties.contacts import Contacts, Switch
from wirecheck.properties.gas import flows, trains
from wirecheck.properties.property import Broken
from wirecheck.properties.registry import DANGERS
from wirecheck.properties.states import States
from wirecheck.properties.unit import Unit, Whole
from wirecheck.properties.witness import plainest
from wirecheck.sequence.answers import View

Detected = Literal["at once", "at the next cycle", "not noticed"]

#: Properties that damage breaks, and not a hazard of gas.
_DAMAGE = ("short-in-some-position", "part-above-its-volts")
#: Properties about a safety or damper that does not do its work.
_PROTECTIONS = ("gas-with-a-safety-open", "gas-with-the-damper-shut")


class Class(IntEnum):
    """What a fault comes to; the greater, the worse."""

    NO_EFFECT = 0
    NO_HEAT = 1
    DAMAGE = 2
    LATENT = 3
    HAZARD = 4

    def __str__(self) -> str:
        """The words as printed."""
        return _WORDS[self]


_WORDS = {
    Class.NO_EFFECT: "no effect",
    Class.NO_HEAT: "no heat",
    Class.DAMAGE: "damage",
    Class.LATENT: "latent loss of a protection",
    Class.HAZARD: "hazard",
}


class Effect(NamedTuple):
    """What a fault comes to, when it is noticed, and why it is so."""

    severity: Class
    detected: Detected
    reason: str


#: Nothing comes of it.
NOTHING = Effect(Class.NO_EFFECT, "not noticed", "every position of the switches does the same")

#: Gas that flows, under the control's eye and past no safety, although nobody calls.
_UNCALLED = ("gas-with-no-call", "ignition-with-no-call")

#: A property and what it is about, to tell what a fault adds.
_Mark = tuple[str, tuple[str, ...]]


class Behaviour:
    """What one diagram, or a unit cut out of one, can be brought to do.

    All that can call do so together when looking for danger, each by itself when asking whether
    it works; zone valves open when they are fed.
    """

    def __init__(
        self,
        diagram: Diagram,
        stuck: Mapping[ElementKey, str],
        before: Behaviour | None = None,
    ) -> None:
        """Work out everything that effects are told from.

        Args:
            diagram: with the fault, if it is one of a lead.
            stuck: the contact that is stuck, if it is one of a contact.
            before: of the diagram without the fault; None: this is that diagram.
        """
        self.nets = Nets(diagram)
        self._stuck = stuck
        self.whole: Whole = Whole(self.nets, before=before.whole if before else None)
        self.units: list[Unit] = before.units if before else list(self.whole.units())
        self._dangers = [self._danger(unit) for unit in self.units]
        self.broken: dict[_Mark, tuple[Broken, States]] = {}
        for states in self._dangers:
            for _record, look in DANGERS:
                for each in look(states):
                    self.broken.setdefault((each.property.name, each.about), (each, states))

    @cached_property
    def calls(self) -> dict[tuple[str, str], tuple[str, bool]]:
        """For each control and caller the step at which that call alone fails, "" if none.

        The flag says whether a running burner stops of it, or only the next start fails.
        """
        return dict(self._lit())

    def _danger(self, unit: Unit) -> States:
        def stands(variable: Switch) -> bool:
            if variable.what == "call":
                return variable.name != ""
            part = self.whole.diagram.parts[variable.part]
            return variable.what == "blade" and part.family == "zone-valve"

        contacts = Contacts(self.whole, unit, fixed=stands, stuck=self._stuck, calls_together=True)
        return States(self.whole, unit, View.DANGER, contacts)

    def _lit(self) -> Iterator[tuple[tuple[str, str], tuple[str, bool]]]:
        for unit in self.units:
            contacts = Contacts(
                self.whole, unit, fixed=_is_no_call, stuck=self._stuck, dampers_follow=True
            )
            states = States(self.whole, unit, View.OPERATION, contacts)
            calls = [each for each in contacts.variable.values() if each.what == "call"]
            states.matter = 0
            for caller in dict.fromkeys(each for each in calls if not each.name):
                states.matter |= _alone(states, caller)
            settled = states.idle_first
            for control, valves in trains(self.whole, states):
                if control is None or not is_whole(states, control, valves):
                    continue
                gas = flows(valves, states, settled)
                every = list(steps(states, settled, control, gas))
                for caller in states.calls:
                    alone = _alone(states, caller)
                    failing = [n for n, (_w, table, _l) in enumerate(every) if not table & alone]
                    words = every[failing[0]][0] if failing else ""
                    yield (control.key, caller.part), (words, bool({0, 3, 4} & {*failing}))

    @property
    def has_line_ground(self) -> bool:
        """Whether the metal of the unit is on the ground of the line."""
        parts = self.nets.diagram.parts.values()
        return any(
            self.nets.joined(ground, EARTH)
            for part in parts
            for ground in part.with_role("line-ground")
        )

    def wrong(self) -> Iterator[str]:
        """What does not hold, in words: broken properties, calls that do not light."""
        for broken, _states in self.broken.values():
            yield broken.what
        for words, _stops in self.calls.values():
            if words:
                yield words

    # ---- for words -------------------------------------------------------------------------

    def volts(self, mark: _Mark) -> str:
        """The volts at the loads of a broken property, in the state that shows it."""
        broken, states = self.broken[mark]
        if not broken.loads:
            return ""
        state = plainest(states, broken.table)
        steady = states.solved(broken.settled, state)
        volts = {key: steady.load_volts.get(key, 0.0) for key in broken.loads}
        key = max(volts, key=lambda each: volts[each])
        element = self.whole.element(key)
        return f"{volts[key]:.1f} V at {element.part.name} {element.name}".rstrip()

    def shows_idle(self, mark: _Mark) -> bool:
        """Whether it shows with nobody calling."""
        broken, states = self.broken[mark]
        return bool(broken.table & states.no_call)


def _is_no_call(variable: Switch) -> bool:
    return variable.what in ("contact", "blade") or (
        variable.what == "call" and variable.name != ""
    )


def _alone(states: States, caller: Switch) -> int:
    table = states.contacts.on(caller)
    for other in dict.fromkeys(states.contacts.variable.values()):
        if other != caller and other.what == "call" and not other.name:
            table &= states.positions.but(states.contacts.on(other))
    return table


def effect(before: Behaviour, after: Behaviour, contact: Part | None) -> Effect:
    """What the change from one behaviour to the other comes to.

    Args:
        before: without the fault.
        after: with it.
        contact: the part whose own contact is stuck; None for a lead.
    """
    danger = dangerous_effect(before, after, contact)
    if danger is not None:
        return danger
    heat = _heat(before, after)
    if heat.severity is Class.NO_EFFECT and before.has_line_ground and not after.has_line_ground:
        reason = "the metal of the unit has lost its ground: a fault to it leaves it live"
        return Effect(Class.LATENT, "not noticed", reason)
    return heat


def dangerous_effect(before: Behaviour, after: Behaviour, contact: Part | None) -> Effect | None:
    """What the change comes to if it breaks a property of safety; None if it breaks none."""
    new = [mark for mark in after.broken if mark not in before.broken]
    gas = [mark for mark in new if mark[0] not in _DAMAGE]
    own = [m for m in gas if contact and m[0] in _PROTECTIONS and m[1][:1] == (contact.key,)]
    hazards = [mark for mark in gas if mark not in own]
    if any(mark[0] not in _UNCALLED for mark in hazards):
        return _hazard(after, next(m for m in hazards if m[0] not in _UNCALLED))
    if own:
        what = after.broken[own[0]][0].what
        reason = f"{_name(contact)} cannot open any more: {what}"
        return Effect(Class.LATENT, "not noticed", reason)
    if hazards:
        reason = f"{after.broken[hazards[0]][0].what}: only a limit stops it"
        return Effect(Class.LATENT, "at once", reason)
    damage = [mark for mark in new if mark[0] in _DAMAGE]
    if damage:
        idle = after.shows_idle(damage[0])
        when = "in standby" if idle else "on a call"
        reason = f"{after.broken[damage[0]][0].what} {when}"
        return Effect(Class.DAMAGE, "at once" if idle else "at the next cycle", reason)
    return None


def _name(part: Part | None) -> str:
    return part.name if part else ""


def _hazard(after: Behaviour, mark: _Mark) -> Effect:
    volts = after.volts(mark)
    what = after.broken[mark][0].what
    idle = after.shows_idle(mark) and mark[0] not in _PROTECTIONS
    unnoticed: Detected = "not noticed" if mark[0] in _PROTECTIONS else "at the next cycle"
    reason = f"{what}: {volts}" if volts else what
    return Effect(Class.HAZARD, "at once" if idle else unnoticed, reason)


def _heat(before: Behaviour, after: Behaviour) -> Effect:
    for key, (words, _stops) in before.calls.items():
        if words:
            continue
        now, stops = after.calls.get(key, ("the call reaches no control any more", True))
        if now:
            caller = after.nets.diagram.parts[key[1]].name
            many = len(before.calls) > 1
            reason = f"a call of {caller}: {now}" if many else now
            return Effect(Class.NO_HEAT, "at once" if stops else "at the next cycle", reason)
    return NOTHING
