"""What is read in each stage: of the unit as a whole, and at each of its controls."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import chain

from wirecheck.meter import words
from wirecheck.meter.bench import Bench
from wirecheck.meter.call import Call
from wirecheck.meter.idle import Idle
from wirecheck.meter.ignition import Ignition
from wirecheck.meter.power_off import PowerOff
from wirecheck.meter.reading import Group, Reading, Stage
from wirecheck.meter.running import Running
from wirecheck.model.diagram import Part, Terminal
from wirecheck.sequence.control import Phase

_Told = set[tuple[Terminal, Terminal]]


def unit_group(bench: Bench, stage: Stage) -> Group:
    """What is read of the unit as a whole."""
    readings = {
        Stage.POWER_OFF: _off,
        Stage.IDLE: _idle,
        Stage.CALL: _called,
        Stage.RUN: _running,
    }.get(stage)
    if stage is not Stage.POWER_OFF and bench.never_powered:
        return Group("", (bench.never_powered,) if stage is Stage.IDLE else (), ())
    if stage is Stage.RUN and bench.never_gassed:
        return Group("", (bench.never_gassed,) if bench.controls else (), ())
    return Group("", (), tuple(readings(bench)) if readings else ())


def _off(bench: Bench) -> Iterator[Reading]:
    off = PowerOff(bench)
    yield from off.dead()
    yield from off.contacts()
    theirs = {
        (operator.a, operator.b)
        for control in bench.controls
        for operator, _feed in bench.operators(control)
    }
    for _key, load in bench.elements("load"):
        if load.name.endswith("operator") and (load.a, load.b) not in theirs:
            yield from off.coil(load)


def _idle(bench: Bench) -> Iterator[Reading]:
    rest = bench.runs.dry.idle()
    if rest:
        idle = Idle(bench, rest.closed)
        yield from idle.supply()
        yield from idle.own_calls()


def _called(bench: Bench) -> Iterator[Reading]:
    """Where no control is drawn, everything that has volts on a call."""
    rest = None if bench.controls else bench.runs.called(None)
    if rest:
        running = Running(bench, rest)
        yield from running.supply()
        yield from running.thermostats()
        yield from running.loads(set())
        yield from running.own_calls()


def _running(bench: Bench) -> Iterator[Reading]:
    rests = [rest for control in bench.controls if (rest := bench.runs.running(control))]
    if rests:
        rest = max(rests, key=lambda each: each.time_s)
        running = Running(bench, rest)
        yield from running.supply()
        yield from running.thermostats()
        yield from running.loads(_read_on_the_call(bench))
        yield from running.own_calls()


def _read_on_the_call(bench: Bench) -> _Told:
    """Ends of the coils that were read on the call, or with the damper."""
    told: _Told = set()
    for control in bench.controls:
        fed = bench.chain(control)
        if fed:
            told |= {(coil.a, coil.b) for coil, _fed in bench.chains.behind(fed)}
        damper = bench.damper(control)
        if damper:
            told |= {(load.a, load.b) for load in bench.nets.elements_of[damper.key]}
    return told


def control_groups(bench: Bench, stage: Stage) -> Iterator[Group]:
    """What is read at each control."""
    if stage is not Stage.POWER_OFF and bench.never_powered:
        return
    many = len(bench.controls) > 1
    for control in bench.controls:
        notes, readings = _AT_CONTROL[stage](bench, control)
        yield Group(control.name if many else "", notes, tuple(readings))


_Page = tuple[tuple[str, ...], Iterator[Reading]]


def _control_off(bench: Bench, control: Part) -> _Page:
    def readings() -> Iterator[Reading]:
        off = PowerOff(bench)
        for operator, _feed in bench.operators(control):
            yield from off.coil(operator)
        yield from off.burner_ground(control)
        yield from off.sense_lead(control)

    return (), readings()


def _control_idle(bench: Bench, control: Part) -> _Page:
    rest = bench.runs.dry.idle()
    if rest is None:
        return (), iter(())
    idle = Idle(bench, rest.closed)
    return (), chain(idle.control(control), idle.gas(control))


def _control_call(bench: Bench, control: Part) -> _Page:
    rest = bench.runs.called(control)
    if rest is None:
        return (words.why_not(bench, control),), iter(())
    return (words.call_note(bench, control),), Call(bench, rest.closed).control(control)


def _control_damper(bench: Bench, control: Part) -> _Page:
    damper = bench.damper(control)
    if damper is None:
        return (), iter(())
    rest = bench.runs.in_phase(control, Phase.DAMPER_OPENING)
    if rest is None:
        return (words.why_no_waiting(bench, control, damper),), iter(())
    at_control = Ignition(bench, control, rest.closed)
    return (words.damper_note(damper),), at_control.damper_opening(damper)


def _control_trial(bench: Bench, control: Part) -> _Page:
    rest = bench.runs.in_phase(control, Phase.TRIAL)
    if rest is None:
        return (words.why_not(bench, control),), iter(())
    at_control = Ignition(bench, control, rest.closed)
    damper = bench.damper(control)
    passed_on = at_control.damper_open(damper) if damper else iter(())
    return (words.trial_note(bench, control),), chain(passed_on, at_control.trial())


def _control_stopped(bench: Bench, control: Part) -> _Page:
    phase = bench.runs.stops_in(control)
    rest = bench.runs.in_phase(control, phase) if phase else None
    if phase is None or rest is None:
        return (words.why_never_stopped(bench, control),), iter(())
    arrived = Call(bench, rest.closed).arrived(control)
    at_valve = Ignition(bench, control, rest.closed).stopped()
    return (words.stop_note(control, phase),), chain(arrived, at_valve)


def _control_run(bench: Bench, control: Part) -> _Page:
    notes = []
    if bench.never_gassed:
        return (), iter(())
    rest = bench.runs.running(control)
    if rest is None:
        notes.append(words.why_not(bench, control))
    if bench.no_go.senses_by_spark_lead(control):
        notes.append(words.flame_note(bench, control))
    at_valve = Ignition(bench, control, rest.closed).run() if rest else iter(())
    lights = rest is not None or bench.runs.lights(control)
    signal = Ignition(bench, control, {}).flame_signal(proved=rest is not None)
    return tuple(notes), chain(at_valve, signal if lights else ())


_AT_CONTROL: dict[Stage, Callable[[Bench, Part], _Page]] = {
    Stage.POWER_OFF: _control_off,
    Stage.IDLE: _control_idle,
    Stage.CALL: _control_call,
    Stage.DAMPER_OPENING: _control_damper,
    Stage.TRIAL: _control_trial,
    Stage.STOPPED: _control_stopped,
    Stage.RUN: _control_run,
}
