"""The ignition control as a state machine, driven by what arrives at its terminals."""

from __future__ import annotations

from enum import Enum
from typing import NamedTuple

from wirecheck.model.diagram import Part
from wirecheck.model.quantity import Quantity

#: Seconds from the first flame signal to the end of the spark and the opening of the main gas, and
#: from the loss of the signal to the closing of the main gas (common practice, no source).
PROOF_S = 1.0
FLAME_FAILURE_S = 1.0
#: Seconds without power after which a lockout is forgotten (common practice, no source).
LOCKOUT_CLEARS_S = 5.0

#: Reasons of a control that has lost its power, or has a call but no power for the ignition;
#: whoever sees the circuit knows the true ones.
UNPOWERED = "no power reaches the ignition any more"
NOT_PASSED_ON = "the call is there, but it is not passed on to the ignition"


class Phase(Enum):
    """Where a control stands.

    IDLE until a call; DAMPER_OPENING while the call is there but not passed on; then TRIAL, and
    with a flame signal PROVING, and RUN.  A trial that ends unproved leads to WAIT (on a direct
    system the purge) and a further trial, or to LOCKOUT, as the control is built.  A flame lost in
    RUN leads to TRIAL, on a direct system to WAIT.  HELD: a flame signal before a trial, so no
    start.  Losing power leads back to IDLE from everywhere; a lockout survives a short loss.
    """

    IDLE = "idle"
    DAMPER_OPENING = "damper-opening"
    TRIAL = "trial"
    PROVING = "proving"
    RUN = "run"
    WAIT = "wait"
    LOCKOUT = "lockout"
    HELD = "held"


class Inputs(NamedTuple):
    """What arrives: a call at its terminals, power at its electronics, a flame signal."""

    call: bool
    powered: bool
    flame: bool


class Outputs(NamedTuple):
    """What it does: the contact that feeds the first gas, that of the main gas, the spark."""

    first_gas: bool
    main_gas: bool
    spark: bool


_OUTPUTS = {
    Phase.TRIAL: Outputs(first_gas=True, main_gas=False, spark=True),
    Phase.PROVING: Outputs(first_gas=True, main_gas=False, spark=True),
    Phase.RUN: Outputs(first_gas=True, main_gas=True, spark=False),
}
OFF = Outputs(first_gas=False, main_gas=False, spark=False)


class ControlMachine:
    """One control.  `step` is called whenever an input changes or `deadline_s` has come."""

    def __init__(self, part: Part) -> None:
        """Start in standby."""
        self.part = part
        self.is_direct = not part.with_role("main-valve")
        self.phase = Phase.IDLE
        self.deadline_s: float | None = None
        self._trial_ends_s = 0.0
        self._lost_power_s: float | None = None
        self._tries_left = 0
        self._steps = {
            Phase.IDLE: self._start,
            Phase.DAMPER_OPENING: self._start,
            Phase.TRIAL: self._in_trial,
            Phase.PROVING: self._proving,
            Phase.RUN: self._running,
            Phase.WAIT: self._waiting,
            Phase.LOCKOUT: self._locked,
            Phase.HELD: self._held,
        }

    @property
    def outputs(self) -> Outputs:
        """What it does in its phase."""
        return _OUTPUTS.get(self.phase, OFF)

    def step(self, now_s: float, inputs: Inputs) -> str | None:
        """Take one transition, if one is due; its reason, or None if nothing is due.

        Called again until it answers None: two transitions can fall on one moment.
        """
        if not inputs.powered:
            return self._without_power(now_s, inputs)
        self._lost_power_s = None
        return self._steps[self.phase](now_s, inputs)

    def give_up(self) -> None:
        """Fall back to standby, whatever it was doing."""
        self._go(Phase.IDLE, None, "")

    def _go(self, phase: Phase, deadline_s: float | None, reason: str) -> str:
        self.phase, self.deadline_s = phase, deadline_s
        return reason

    def _due(self, now_s: float) -> bool:
        return self.deadline_s is not None and now_s >= self.deadline_s - 1e-9

    def _seconds(self, name: str, default: float) -> float:
        value = self.part.values.get(name)
        return value.high_base if isinstance(value, Quantity) else default

    def _without_power(self, now_s: float, inputs: Inputs) -> str | None:
        if self.phase is Phase.LOCKOUT:
            if self._lost_power_s is None:
                self._lost_power_s = now_s
                self.deadline_s = now_s + LOCKOUT_CLEARS_S
            if not self._due(now_s):
                return None
            return self._go(Phase.IDLE, None, "without power long enough: the lockout is forgotten")
        if inputs.call and self.phase is not Phase.DAMPER_OPENING:
            return self._go(Phase.DAMPER_OPENING, None, NOT_PASSED_ON)
        if not inputs.call and self.phase is not Phase.IDLE:
            return self._go(Phase.IDLE, None, UNPOWERED)
        return None

    def _start(self, now_s: float, inputs: Inputs) -> str | None:
        self._tries_left = self._tries()
        return self._try(now_s, inputs, "the call has reached the ignition: gas and spark")

    def _tries(self) -> int:
        tries = self.part.values.get("tries")
        return tries if isinstance(tries, int) else 1

    def _try(self, now_s: float, inputs: Inputs, reason: str) -> str:
        if inputs.flame:
            return self._go(Phase.HELD, None, "a flame signal is there before the trial: no start")
        self._tries_left -= 1
        if self.part.values.get("retry") == "none":
            return self._go(Phase.TRIAL, None, reason)
        self._trial_ends_s = now_s + self._seconds("trial", 90.0)
        return self._go(Phase.TRIAL, self._trial_ends_s, reason)

    def _in_trial(self, now_s: float, inputs: Inputs) -> str | None:
        if inputs.flame:
            return self._go(Phase.PROVING, now_s + PROOF_S, "the flame signal is there")
        if not self._due(now_s):
            return None
        if self.is_direct:
            if self._tries_left > 0:
                purge = now_s + self._seconds("purge", 30.0)
                return self._go(Phase.WAIT, purge, "no flame proved in the trial: purge")
        elif self.part.values.get("retry") != "lockout":
            wait = now_s + self._seconds("wait", 300.0)
            return self._go(Phase.WAIT, wait, "no flame proved in the trial: wait")
        return self._go(Phase.LOCKOUT, None, "no flame proved in the trial: lockout")

    def _proving(self, now_s: float, inputs: Inputs) -> str | None:
        if not inputs.flame:
            ends = None if self.part.values.get("retry") == "none" else self._trial_ends_s
            return self._go(Phase.TRIAL, ends, "the flame signal is gone again")
        if not self._due(now_s):
            return None
        main = "" if self.is_direct else ", main gas on"
        return self._go(Phase.RUN, None, f"the flame is proved: spark off{main}")

    def _running(self, now_s: float, inputs: Inputs) -> str | None:
        if inputs.flame:
            self.deadline_s = None
            return None
        if self.deadline_s is None:
            self.deadline_s = now_s + FLAME_FAILURE_S
            return None
        if not self._due(now_s):
            return None
        self._tries_left = self._tries()
        if self.is_direct:
            purge = now_s + self._seconds("purge", 30.0)
            return self._go(Phase.WAIT, purge, "the flame signal was lost: gas off, purge")
        return self._try(now_s, inputs, "the flame signal was lost: main gas off, a new trial")

    def _waiting(self, now_s: float, inputs: Inputs) -> str | None:
        if not self._due(now_s):
            return None
        return self._try(now_s, inputs, "the wait is over: another trial")

    def _locked(self, _now_s: float, _inputs: Inputs) -> str | None:
        self.deadline_s = None
        return None

    def _held(self, now_s: float, inputs: Inputs) -> str | None:
        return None if inputs.flame else self._start(now_s, inputs)
