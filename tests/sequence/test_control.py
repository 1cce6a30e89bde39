"""Every transition of the control, one by one, by what arrives at its terminals."""

from __future__ import annotations

import pytest

from tests.sequence.heater import DIRECT, HEATER, changed, diagram
from wirecheck.sequence.control import (
    NOT_PASSED_ON,
    OFF,
    UNPOWERED,
    ControlMachine,
    Inputs,
    Outputs,
    Phase,
)

DEAD = Inputs(call=False, powered=False, flame=False)
CALLED = Inputs(call=True, powered=False, flame=False)
POWERED = Inputs(call=True, powered=True, flame=False)
FLAME = Inputs(call=True, powered=True, flame=True)

FIRST_GAS_AND_SPARK = Outputs(first_gas=True, main_gas=False, spark=True)
BOTH_GASES = Outputs(first_gas=True, main_gas=True, spark=False)


def machine(attributes: str = "", text: str = HEATER) -> ControlMachine:
    kind = "two-rod\npart valve" if text == HEATER else "purge 30 s"
    if attributes:
        text = changed(text, (kind, kind.replace("\n", f", {attributes}\n", 1)))
    return ControlMachine(diagram(text).parts["box"])


def driven(box: ControlMachine, *steps: tuple[float, Inputs]) -> Phase:
    """Step a machine through times and inputs, each until it rests; the phase it comes to."""
    for now_s, inputs in steps:
        while box.step(now_s, inputs) is not None:
            pass
    return box.phase


TRIAL = (0.0, POWERED)
PROVING = (5.0, FLAME)
RUN = (6.0, FLAME)

#: What was done, and the phase that follows.
TRANSITIONS: list[tuple[str, list[tuple[float, Inputs]], Phase]] = [
    ("nothing", [(0, DEAD)], Phase.IDLE),
    ("a call that is not passed on", [(0, CALLED)], Phase.DAMPER_OPENING),
    ("the damper's call ends", [(0, CALLED), (5, DEAD)], Phase.IDLE),
    ("the damper proves", [(0, CALLED), (15, POWERED)], Phase.TRIAL),
    ("a call", [TRIAL], Phase.TRIAL),
    ("a trial nearly over", [TRIAL, (89.9, POWERED)], Phase.TRIAL),
    ("a trial over", [TRIAL, (90, POWERED)], Phase.WAIT),
    ("a flame", [TRIAL, PROVING], Phase.PROVING),
    ("a flame that goes out at once", [TRIAL, PROVING, (5.5, POWERED)], Phase.TRIAL),
    ("a flame proved", [TRIAL, PROVING, RUN], Phase.RUN),
    ("a flame lost for less than a second", [TRIAL, PROVING, RUN, (9, POWERED), (9.5, FLAME)],
     Phase.RUN),
    ("a flame lost", [TRIAL, PROVING, RUN, (9, POWERED), (10, POWERED)], Phase.TRIAL),
    ("a wait nearly over", [TRIAL, (90, POWERED), (389, POWERED)], Phase.WAIT),
    ("a wait over", [TRIAL, (90, POWERED), (390, POWERED)], Phase.TRIAL),
    ("a wait over with a flame signal", [TRIAL, (90, POWERED), (390, FLAME)], Phase.HELD),
    ("a flame signal before the trial", [(0, FLAME)], Phase.HELD),
    ("that goes away", [(0, FLAME), (3, POWERED)], Phase.TRIAL),
    ("held, and the call ends", [(0, FLAME), (3, DEAD)], Phase.IDLE),
    ("the call ends in the trial", [TRIAL, (3, DEAD)], Phase.IDLE),
    ("the call ends in run", [TRIAL, PROVING, RUN, (9, DEAD)], Phase.IDLE),
    ("the call ends in the wait", [TRIAL, (90, POWERED), (100, DEAD)], Phase.IDLE),
    ("the damper loses its proof in run", [TRIAL, PROVING, RUN, (9, CALLED)], Phase.DAMPER_OPENING),
]  # fmt: skip


@pytest.mark.parametrize(
    ("steps", "phase"), [each[1:] for each in TRANSITIONS], ids=[each[0] for each in TRANSITIONS]
)
def test_transition(steps: list[tuple[float, Inputs]], phase: Phase) -> None:
    assert driven(machine(), *steps) is phase


OUTPUTS = {
    Phase.IDLE: OFF,
    Phase.DAMPER_OPENING: OFF,
    Phase.TRIAL: FIRST_GAS_AND_SPARK,
    Phase.PROVING: FIRST_GAS_AND_SPARK,
    Phase.RUN: BOTH_GASES,
    Phase.WAIT: OFF,
    Phase.LOCKOUT: OFF,
    Phase.HELD: OFF,
}


@pytest.mark.parametrize("phase", Phase)
def test_what_it_does_in_each_phase(phase: Phase) -> None:
    box = machine()
    box.phase = phase
    assert box.outputs == OUTPUTS[phase]


def test_an_unending_trial_never_ends() -> None:
    assert driven(machine("retry none"), TRIAL, (1e6, POWERED)) is Phase.TRIAL


def test_an_unending_trial_goes_on_after_a_flame_that_goes_out() -> None:
    steps = TRIAL, PROVING, (5.5, POWERED), (1e6, POWERED)
    assert driven(machine("retry none"), *steps) is Phase.TRIAL


def test_a_trial_interrupted_by_a_short_flame_ends_when_it_would_have() -> None:
    assert driven(machine(), TRIAL, PROVING, (5.5, POWERED), (90, POWERED)) is Phase.WAIT


LOCKED = TRIAL, (90.0, POWERED)


@pytest.mark.parametrize(
    ("steps", "phase"),
    [
        ([(1000, POWERED)], Phase.LOCKOUT),
        ([(1000, FLAME)], Phase.LOCKOUT),
        ([(100, DEAD), (104.9, DEAD), (104.9, POWERED)], Phase.LOCKOUT),
        ([(100, DEAD), (104, POWERED), (106, DEAD), (110, DEAD)], Phase.LOCKOUT),
        ([(100, DEAD), (105, DEAD)], Phase.IDLE),
        ([(100, DEAD), (105, DEAD), (105, POWERED)], Phase.TRIAL),
        ([(100, CALLED), (105, CALLED)], Phase.DAMPER_OPENING),
    ],
)
def test_lockout_is_cleared_only_by_some_seconds_without_power(
    steps: list[tuple[float, Inputs]], phase: Phase
) -> None:
    assert driven(machine("retry lockout"), *LOCKED, *steps) is phase


def test_direct_ignition_counts_its_tries_anew_after_a_run() -> None:
    box = machine(text=DIRECT)
    lost = (100.0, POWERED), (101.0, POWERED)
    assert driven(box, TRIAL, PROVING, RUN, *lost) is Phase.WAIT
    assert driven(box, (131, POWERED)) is Phase.TRIAL
    assert driven(box, (138, POWERED), (168, POWERED)) is Phase.TRIAL
    assert driven(box, (175, POWERED), (205, POWERED)) is Phase.TRIAL
    assert driven(box, (212, POWERED)) is Phase.LOCKOUT


def test_the_reasons_are_those_of_the_transitions() -> None:
    box = machine()
    assert box.step(0, CALLED) == NOT_PASSED_ON
    assert box.step(15, POWERED) == "the call has reached the ignition: gas and spark"
    assert box.step(20, FLAME) == "the flame signal is there"
    assert box.step(21, FLAME) == "the flame is proved: spark off, main gas on"
    assert box.step(30, POWERED) is None
    assert box.step(31, POWERED) == "the flame signal was lost: main gas off, a new trial"
    assert box.step(121, POWERED) == "no flame proved in the trial: wait"
    assert box.step(130, DEAD) == UNPOWERED
