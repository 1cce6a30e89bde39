"""What a valve with its leads out of order does: in the trial, and once a flame is proved."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.rules.facts import Facts
from wirecheck.rules.valve.arrangement import Arrangement
from wirecheck.rules.valve.opening import RUN, TRIAL, Operator, operators


class Outcome(NamedTuple):
    """What comes of it, by the rule's fault, and the volts at the operators in a sentence."""

    fault: str
    volts: str


def outcome(facts: Facts, found: Arrangement) -> Outcome:
    """Work the two states out; safety counts an operator that may open as open."""
    trial, run = operators(facts, found, TRIAL), operators(facts, found, RUN)
    if len(trial) == 1:
        return Outcome("no-main-gas", f"The operator gets {_volts(run)}.")
    if found.direct:
        volts = f"The pilot and main operator get {_volts(trial)}."
        return Outcome(_of_direct(found, *trial), volts)
    volts = (
        f"The pilot and main operator get {_volts(trial)} in the trial, {_volts(run)} in the run."
    )
    return Outcome(_of_pilot_system(found, trial, run), volts)


def _of_direct(found: Arrangement, pilot: Operator, main: Operator) -> str:
    leaks = pilot.may_open and not main.opens and not found.redundant
    return "gas-at-pilot-outlet" if leaks else "no-main-gas"


def _of_pilot_system(
    found: Arrangement, trial: tuple[Operator, ...], run: tuple[Operator, ...]
) -> str:
    pilot, main = trial
    if main.may_open and (pilot.may_open or not found.redundant):
        return "main-gas-unproved"
    if not pilot.may_open:
        return "no-pilot-gas"
    pilot, main = run
    if main.may_open and not pilot.opens and not found.redundant:
        return "main-gas-without-pilot"
    return "no-main-gas"


def _volts(states: tuple[Operator, ...]) -> str:
    return " and ".join(f"{operator.volts:.0f} V" for operator in states)
