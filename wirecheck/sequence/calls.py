"""The moments at which readings are taken, from simulated calls for heat.

One call is run with the gas shut, one with the gas on, and one for each contact that is to stand
open.  The first two are run once more as whoever looks for danger must see them, weak coils acting
and rusty metal conducting: what burns out or blows then must not be put under power.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable

from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Part
from wirecheck.model.quantity import Quantity
from wirecheck.sequence.answers import View
from wirecheck.sequence.burner import BURNING
from wirecheck.sequence.chain import chain
from wirecheck.sequence.control import Phase
from wirecheck.sequence.dangers import Scene, dangers
from wirecheck.sequence.script import CALL_LENGTH_S, Opening, Script, heat_call
from wirecheck.sequence.simulator import Simulation
from wirecheck.sequence.story import Story, first
from wirecheck.sequence.trace import Rest
from wirecheck.sequence.verdict import outcome

#: What ends all measuring: the circuit is not what it was.
_BREAKS = ("burns out", "destroyed", "blows", "trips")


class Run:
    """One simulated call.

    Attributes:
        script: what happens in it.
        simulation: that ran.
        off: which contacts are closed with the power off and no call.
        trace: of the run.
        breaks: what burns out or blows in it, in words; "" if nothing does.
        breaks_s: when; inf if nothing does.
        chatters: names of what never comes to rest in it.
    """

    def __init__(self, nets: Nets, script: Script, view: View = View.OPERATION) -> None:
        """Run the script."""
        self.script = script
        self.simulation = simulation = Simulation(nets, script, view)
        plant = simulation.plant
        at_rest = plant.positions(script.starts_s)
        self.off = {each.key: flag for each, flag in zip(plant.contacts, at_rest, strict=True)}
        self.trace = simulation.run()
        broken = next((each for each in self.trace.changes if each.state in _BREAKS), None)
        self.breaks = f"{broken.track} {_verb(broken.state)}: {broken.reason}" if broken else ""
        self.breaks_s = broken.time_s if broken else math.inf
        self.chatters = tuple(
            dict.fromkeys(each.track for each in self.trace.changes if each.state == "chatters")
        )

    def rests(self, until_s: float) -> list[Rest]:
        """How it stands at rest, up to the end of the call and to some time, in order."""
        ends_s = max(each.time_s for each in self.script.stimuli)
        return [rest for rest in self.trace.rests if rest.time_s < min(until_s, ends_s)]


class Call:
    """A call as it is measured: what works in it, as long as nothing can break.

    Attributes:
        works: the run for its values.
        breaks: what can burn out or blow in it, in words; "" if nothing can.
    """

    def __init__(self, nets: Nets, script: Script) -> None:
        """Run it, and run it for danger."""
        self.works = Run(nets, script)
        self.endangers = Run(nets, script, View.DANGER)
        broken = min(self.works, self.endangers, key=lambda run: run.breaks_s)
        self.breaks = broken.breaks
        self._rests = self.works.rests(broken.breaks_s)

    def first(self, fits: Callable[[Rest], bool]) -> Rest | None:
        """The first rest of the call that fits."""
        return next((rest for rest in self._rests if rest.time_s >= 0 and fits(rest)), None)

    def last(self, fits: Callable[[Rest], bool]) -> Rest | None:
        """The last one."""
        found = (rest for rest in reversed(self._rests) if rest.time_s >= 0 and fits(rest))
        return next(found, None)

    def idle(self) -> Rest | None:
        """The last rest before the call."""
        return next((rest for rest in reversed(self._rests) if rest.time_s < 0), None)


class Runs:
    """The runs of one diagram.

    Attributes:
        controls: the ignition controls, in the order of the text.
        dry: a call with the gas shut.
        wet: a call with the gas on.
    """

    def __init__(self, nets: Nets) -> None:
        """Run both."""
        self._nets = nets
        parts = nets.diagram.parts.values()
        self.controls = [part for part in parts if part.family == "ignition-control"]
        length_s = length_without_gas_s(self.controls)
        self.dry = Call(nets, heat_call(length_s=length_s, gas=False))
        self.wet = Call(nets, heat_call())
        arrivals = [rest.time_s for each in self.controls if (rest := self.called(each))]
        self._arrives_s = max(arrivals, default=CALL_LENGTH_S)

    def opened(self, part: Part, contact: str) -> Rest | None:
        """A call in which one contact stands open from the first; None if something breaks."""
        script = heat_call(
            length_s=self._arrives_s + 1,
            gas=False,
            opened=(Opening(part.key, contact),),
            watch_s=0,
        )
        run = Run(self._nets, script)
        return None if run.breaks else run.rests(math.inf)[-1]

    # ---- how it ends -------------------------------------------------------------------------

    def sentence(self, control: Part) -> str:
        """How a call ends for a control, with the gas on."""
        return outcome(self._story(control, self.wet.works)).sentence

    def lights(self, control: Part) -> bool:
        """Whether the flame that a control senses burns at some time of a call."""
        return first(self._story(control, self.wet.works).first_flame, BURNING) is not None

    def dangers(self) -> tuple[str, ...]:
        """What is dangerous in a call with the gas on, in sentences."""
        run, many = self.wet.endangers, len(self.controls) > 1
        found = [
            danger.sentence
            for control in self.controls
            for danger in dangers(
                Scene(
                    self._nets,
                    run.script,
                    run.trace,
                    self._story(control, run),
                    chain(self._nets, control) if many else None,
                )
            )
        ]
        return tuple(dict.fromkeys(found))

    def _story(self, control: Part, run: Run) -> Story:
        return Story(run.trace, control, many=len(self.controls) > 1)

    # ---- moments -----------------------------------------------------------------------------

    def called(self, control: Part | None) -> Rest | None:
        """The call has reached a control, or has done all it does; with no control, the latter."""
        if control is not None:
            found = self.dry.first(lambda rest: rest.phases[control.key] != Phase.IDLE.value)
            if found:
                return found
        return None if self.dry.breaks else self.dry.last(lambda _rest: True)

    def in_phase(self, control: Part, *phases: Phase) -> Rest | None:
        """A control is in one of these phases, with the gas shut."""
        values = [phase.value for phase in phases]
        return self.dry.first(lambda rest: rest.phases[control.key] in values)

    def stops_in(self, control: Part) -> Phase | None:
        """In which phase it is after its trials with the gas shut; None if they never end."""
        for phase in (Phase.LOCKOUT, Phase.WAIT):
            if self.in_phase(control, phase):
                return phase
        return None

    def running(self, control: Part) -> Rest | None:
        """A control runs, and everything that starts later has started."""
        return self.wet.last(lambda rest: rest.phases[control.key] == Phase.RUN.value)


def _verb(state: str) -> str:
    return "is destroyed" if state == "destroyed" else state


def length_without_gas_s(controls: Iterable[Part]) -> float:
    """How long a call with the gas shut lasts, if every try is to be seen to its end; seconds."""
    return max([CALL_LENGTH_S, *(_all_tries_s(part) for part in controls)])


def _all_tries_s(control: Part) -> float:
    """How long a control tries with the gas shut, until it waits or locks out, and longer."""
    tries = control.values.get("tries")
    count = tries if isinstance(tries, int) else 1
    seconds = sum(_seconds(control, name) for name in ("trial", "purge"))
    return count * seconds + CALL_LENGTH_S


def _seconds(control: Part, name: str) -> float:
    value = control.values.get(name)
    return value.high_base if isinstance(value, Quantity) else 0.0
