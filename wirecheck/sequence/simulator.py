"""Runs a diagram through a script: the circuit settles, the controls step, gas burns or does not.

At every moment in which something is due, the circuit comes to rest; then gas, spark and flame are
worked out and the controls take their transitions, until they rest too.  Then time jumps to the
next thing due.
"""

from __future__ import annotations

from functools import lru_cache

from wirecheck.circuit.companions import Companions
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.steady import SteadyStates
from wirecheck.model.diagram import Part, Terminal
from wirecheck.sequence.answers import OPENS, View
from wirecheck.sequence.burner import BurnerState
from wirecheck.sequence.callers import callers
from wirecheck.sequence.control import NOT_PASSED_ON, UNPOWERED, ControlMachine, Inputs, Phase
from wirecheck.sequence.flame import flame_path
from wirecheck.sequence.gas import GasTrain
from wirecheck.sequence.plant import Plant
from wirecheck.sequence.recorder import BY_METAL, Recorder
from wirecheck.sequence.script import Script, Stimulus
from wirecheck.sequence.settle import CircuitAtRest
from wirecheck.sequence.spark import spark_path
from wirecheck.sequence.trace import Rest, Trace
from wirecheck.sequence.tracks import common_track, load_track, part_track
from wirecheck.sequence.travel import INSTANT_S
from wirecheck.sequence.why import NO_VOLTS, Reasons

#: Transitions of one control in one moment after which it counts as chattering.
MOST_TRANSITIONS = 12
#: Moments after which a run ends however much is still due.
MOST_MOMENTS = 20_000
#: Rated volts of the call.
CALL_V = 24.0


class Simulation:
    """One run of one diagram."""

    def __init__(self, nets: Nets, script: Script, view: View = View.OPERATION) -> None:
        """Prepare the run; `run` carries it out."""
        self.nets = nets
        self.script = script
        self.view = view
        self.machines = [ControlMachine(part) for part in _controls(nets)]
        states = _steady_states(nets, view)
        self.plant = Plant(nets, states.contacts, view, callers(nets))
        self.trace = Trace(script.starts_s, script.until_s)
        self.recorder = Recorder(nets, self.plant, self.trace, len(self.machines))
        self.circuit = CircuitAtRest(nets, self.plant, states, self.recorder.note)
        self.reasons = Reasons(nets, self.plant)
        self.companions = Companions(nets.diagram)
        self.burners = [self._burner(machine.part) for machine in self.machines]
        self._called: set[str] = set()
        self._pending = list(script.stimuli)

    def _burner(self, control: Part) -> BurnerState:
        drawn = sum(part.family == "gas-valve" for part in self.nets.diagram.parts.values())
        return BurnerState(
            control,
            GasTrain(control, self.companions, drawn),
            spark_path(self.nets, control),
            flame_path(self.nets, control, dirty=self.script.dirty_rods),
            self.plant.coils,
            false_flame=self.script.false_flame,
        )

    def run(self) -> Trace:
        """Run the script to its end."""
        self.recorder.note("power", "on")
        self.recorder.note("call", "off")
        for machine in self.machines:
            self.recorder.note(part_track(machine.part), machine.phase.value)
        for _moment in range(MOST_MOMENTS):
            self._apply_stimuli()
            self._rest()
            due_s = self._next_due()
            if due_s is None or due_s > self.script.until_s:
                return self.trace
            self.recorder.now_s = due_s
        self.trace.cut(self.now_s)
        return self.trace

    @property
    def now_s(self) -> float:
        """The time, in seconds from the call."""
        return self.recorder.now_s

    # ---- one moment ------------------------------------------------------------------------

    def _apply_stimuli(self) -> None:
        while self._pending and self._pending[0].time_s <= self.now_s + INSTANT_S:
            self._apply(self._pending.pop(0))

    def _apply(self, stimulus: Stimulus) -> None:
        on = stimulus.state == "on"
        if stimulus.what == "call":
            self._called = self._called | {stimulus.part} if on else self._called - {stimulus.part}
            everybody = "" in self._called
            self.plant.calling = set(self.plant.callers if everybody else self._called)
            self.recorder.note("call", "on" if self._called else "off")
        elif stimulus.what == "position":
            self.plant.forced[stimulus.part, stimulus.contact] = stimulus.state
            part = self.nets.diagram.parts[stimulus.part]
            name = part_track(part, f"{part.name} {stimulus.contact}".strip())
            self.recorder.note(name, stimulus.state or "as usual", "put so from outside")
        elif stimulus.what == "power":
            self.circuit.power = on
            self.recorder.note("power", stimulus.state)
        elif stimulus.what == "gas":
            for burner in self.burners:
                burner.gas_supply = on
            self.recorder.note("gas supply", stimulus.state)
        else:
            for burner in self.burners:
                burner.blow_out()

    def _rest(self) -> None:
        """Let circuit, flames and controls come to rest."""
        taken = dict.fromkeys(self.machines, 0)
        while True:
            heat = self._heat()
            self.circuit.settle(self.now_s, heat=heat)
            self.recorder.plant(self.circuit.moment.closed)
            moved = False
            for machine, burner in zip(self.machines, self.burners, strict=True):
                burner.settle(self.now_s, machine.outputs)
                self.recorder.burner(burner, machine)
                if taken[machine] < MOST_TRANSITIONS and self._step(machine, burner):
                    moved, taken[machine] = True, taken[machine] + 1
                    if taken[machine] == MOST_TRANSITIONS:
                        self._chatters(machine)
            if not moved and heat == self._heat():
                break
        self._note_waits()
        self._keep()

    def _heat(self) -> bool:
        return any(burner.main.burning for burner in self.burners)

    def _step(self, machine: ControlMachine, burner: BurnerState) -> bool:
        before = machine.phase, machine.deadline_s
        reason = machine.step(self.now_s, self._inputs(machine, burner))
        self.plant.outputs[machine.part.key] = machine.outputs
        if reason is not None:
            if reason == UNPOWERED:
                reason = self._no_power(machine.part)
            elif reason == NOT_PASSED_ON:
                reason = self._not_passed_on(machine.part)
            self.recorder.note(part_track(machine.part), machine.phase.value, reason)
        return (machine.phase, machine.deadline_s) != before

    def _inputs(self, machine: ControlMachine, burner: BurnerState) -> Inputs:
        powered = self.plant.coils.acts(machine.part, "electronics")
        called = self._call_volts(machine.part) >= OPENS * CALL_V
        return Inputs(called or powered, powered, burner.flame_signal)

    def _chatters(self, machine: ControlMachine) -> None:
        machine.give_up()
        self.plant.outputs[machine.part.key] = machine.outputs
        reason = "what it switches on pulls its own volts away"
        self.recorder.note(part_track(machine.part), "chatters", reason)

    # ---- reasons ---------------------------------------------------------------------------

    def _no_power(self, control: Part) -> str:
        if not self.circuit.power:
            return "the power is off"
        if self.plant.callers and not self._called:
            return "the call has ended"
        return self._unfed(control)

    def _unfed(self, control: Part) -> str:
        hot, common = _call_terminals(control)
        shown = self.nets.diagram.show(hot)
        volts = self._call_volts(control)
        if volts > NO_VOLTS:
            return f"only {volts:.1f} V at {shown}, it needs {OPENS * CALL_V:.0f} V"
        return f"no {CALL_V:g} V at {shown}: {self.reasons.unfed(hot, common, self.circuit.moment)}"

    def _call_volts(self, control: Part) -> float:
        """Volts of the call at a control."""
        place = [machine.part for machine in self.machines].index(control)
        return self.circuit.moment.steady.watched_volts[place]

    def _not_passed_on(self, control: Part) -> str:
        damper = self.companions.of(control, "vent-damper")
        return self.reasons.not_passed_on(control, damper, self.circuit.moment)

    def _note_waits(self) -> None:
        """Say what a control that has not started waits for, and why gas that is due is missing."""
        for machine, burner in zip(self.machines, self.burners, strict=True):
            part = machine.part
            if machine.outputs.first_gas:
                self._note_missing_gas(machine, burner)
                if self.reasons.returns_by_metal(part, self.circuit.moment):
                    self.recorder.note(common_track(part.name), BY_METAL)
            if machine.phase is Phase.IDLE and self._called:
                self.recorder.note(part_track(part), "idle", self._unfed(part))
            elif machine.phase is Phase.DAMPER_OPENING:
                self.recorder.note(part_track(part), machine.phase.value, self._not_passed_on(part))

    def _note_missing_gas(self, machine: ControlMachine, burner: BurnerState) -> None:
        """Say of a flame that is to burn now why it has no gas."""
        if not burner.gas_supply or burner.gas_train.unclear:
            reason = burner.gas_train.unclear or "the gas is off"
            self.recorder.flame(burner, machine, reason, main=machine.is_direct)
            return
        control, coils = machine.part, self.plant.coils
        common = control.with_role("valve-common")[0]
        for key, feed in burner.gas_train.operators(control, coils):
            is_due = machine.outputs.main_gas or feed not in control.with_role("main-valve")
            if is_due and not coils.acting[key]:
                reason = self.reasons.unopened(feed, common, key, self.circuit.moment)
                self.recorder.load(key, reason)
                main = feed in control.with_role("main-valve", "valve-feed")
                whose = f"{load_track(self.nets, key)}: {reason}"
                self.recorder.flame(burner, machine, whose, main=main)

    def _keep(self) -> None:
        contacts = self.plant.contacts
        closed = {
            each.key: flag for each, flag in zip(contacts, self.circuit.moment.closed, strict=True)
        }
        phases = {machine.part.key: machine.phase.value for machine in self.machines}
        self.trace.rests.append(Rest(self.now_s, phases, closed, self.circuit.moment.steady))

    # ---- time ------------------------------------------------------------------------------

    def _next_due(self) -> float | None:
        due = [stimulus.time_s for stimulus in self._pending[:1]]
        due += [m.deadline_s for m in self.machines if m.deadline_s is not None]
        due += [b.deadline_s for b in self.burners if b.deadline_s is not None]
        arrival_s = self.plant.next_arrival_s(self.now_s)
        if arrival_s is not None:
            due.append(arrival_s)
        return min((time_s for time_s in due if time_s > self.now_s + INSTANT_S), default=None)


@lru_cache(maxsize=4)
def _steady_states(nets: Nets, view: View) -> SteadyStates:
    """What all runs of one diagram solve; kept for the diagrams run last."""
    watched = [_call_terminals(control) for control in _controls(nets)]
    return SteadyStates(nets, poor_bonds=view is View.DANGER, watched=watched)


def _controls(nets: Nets) -> list[Part]:
    return [part for part in nets.diagram.parts.values() if part.family == "ignition-control"]


def _call_terminals(control: Part) -> tuple[Terminal, Terminal]:
    """Where the call arrives, and the common it arrives against."""
    return control.with_role("call")[0], control.with_role("control-common")[0]
