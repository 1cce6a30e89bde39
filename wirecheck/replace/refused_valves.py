"""Valves and supplies that cannot take the place of those found: one function a reason."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.nearest import either
from wirecheck.model.quantity import Quantity
from wirecheck.parts.amounts import each_quantity
from wirecheck.parts.structure import MILLIVOLT_CIRCUIT_V
from wirecheck.replace.hookup import has_three_wires, is_pilot_system
from wirecheck.replace.request import Request
from wirecheck.replace.unit import SLOTS, Unit, is_millivolt


def seats(request: Request, _after: Unit) -> Iterator[str]:
    """A valve with one seat in the place of one with two."""
    for swap in request.swaps:
        if swap.old.values.get("seats") != "redundant" or swap.new.part.family != "gas-valve":
            continue
        if swap.new.part.values.get("seats") == "single-seat":
            yield (
                f"{swap.old.name} passes main gas only with both operators, the new valve with one:"
                " a redundant valve is replaced by a redundant one"
            )


def valve_volts(request: Request, after: Unit) -> Iterator[str]:
    """24 V where the pilot generator's millivolts are, and the other way round."""
    valve, old = request.incoming("valve"), request.unit.parts.get("valve")
    if valve is None or old is None:
        return
    if is_millivolt(valve.part) and not is_millivolt(old):
        yield (
            "the new valve works from a thermopile's millivolts, and this unit runs on 24 V: take a"
            " 24 V valve"
        )
    elif is_millivolt(old) and not is_millivolt(valve.part):
        if "supply" not in after.parts:
            yield (
                f"{old.name} works from a thermopile, so there is no 24 V: put a transformer in as"
                " well"
            )
        if "control" not in after.parts:
            yield (
                f"{old.name} holds its gas by the thermopile in the pilot flame; a 24 V valve"
                " without an ignition control would not: put a control and a pilot in as well"
            )


def made_for_millivolts(request: Request, after: Unit) -> Iterator[str]:
    """What carried the millivolts and is typed as made for them, once 24 V come."""
    old = request.unit.parts.get("valve")
    if old is None or not is_millivolt(old) or "control" not in after.parts:
        return
    coming = {swap.old.key for swap in request.swaps}
    for part in request.diagram.parts.values():
        volts = part.given.get("volts")
        if part.key in coming or part.family in SLOTS or volts is None:
            continue
        if any(each.high_base <= MILLIVOLT_CIRCUIT_V for each in each_quantity(volts.value)):
            yield (
                f"{part.name} is made for {volts.value}, and 24 V come to it: put a"
                f" {part.kind.title} for 24 V in as well"
            )


def standing_valve_kept(request: Request, _after: Unit) -> Iterator[str]:
    """A control on a valve that keeps its magnet: it never opens by the control's 24 V."""
    valve = request.unit.parts.get("valve")
    if request.incoming("control") is None or request.incoming("valve") is not None or not valve:
        return
    if valve.with_role("generator-hot"):
        volts = (
            "a millivolt valve is never reused on 24 V"
            if is_millivolt(valve)
            else ("it needs the thermocouple's heat at all times")
        )
        yield f"{valve.name} is a valve for a standing pilot: {volts}; put a valve in as well"


def operators(request: Request, after: Unit) -> Iterator[str]:
    """A pilot control and a valve without a pilot operator; a pilot operator and no control."""
    valve = after.parts.get("valve")
    if valve is None or valve.with_role("generator-hot"):
        return
    fed_past = request.incoming("valve") is not None or request.incoming("control") is not None
    if is_pilot_system(after) and not has_three_wires(after) and fed_past:
        yield (
            f"a control that lights a pilot needs a valve with a pilot operator of its own;"
            f" {valve.name} has one operator: take a three-wire valve"
        )
    if request.incoming("valve") and "control" not in after.parts and has_three_wires(after):
        yield (
            "a valve with a pilot operator needs a control that proves the pilot flame before the"
            " main operator opens, and none is drawn: put a control and a pilot burner in as well"
        )


def standing_pilot_lost(request: Request, after: Unit) -> Iterator[str]:
    """A valve that needs no thermocouple where nothing else proves the flame."""
    old, new = request.unit.parts.get("valve"), request.incoming("valve")
    if old is None or new is None or "control" in after.parts or is_millivolt(old):
        return
    holds = old.with_role("generator-hot") and not new.part.with_role("generator-hot")
    if holds and not new.part.with_role("pilot-operator"):
        yield (
            f"{old.name} shuts off all gas when its pilot is out; the new valve would not: take one"
            " for a standing pilot, or convert the unit with control, valve and pilot burner"
        )


def standing_pilot_comes(request: Request, after: Unit) -> Iterator[str]:
    """A valve or a generator for a standing pilot where a control lights the burner."""
    valve, generator = request.incoming("valve"), request.incoming("generator")
    control = after.parts.get("control")
    if valve and control and valve.part.with_role("generator-hot"):
        yield (
            "the new valve passes no gas without the heat of a standing pilot, and"
            f" {control.name} lights its burner on each call: take a valve without a thermocouple"
        )
    elif generator and not after.has_role("valve", "generator-hot"):
        title = generator.part.kind.title
        yield f"no valve here has a magnet that a {title} holds: leave it out"


def transformer_volts(request: Request, _after: Unit) -> Iterator[str]:
    """A transformer for other volts than the one that goes out."""
    for swap in request.swaps:
        if swap.old.family != "transformer":
            continue
        for name in ("primary", "secondary"):
            old, new = (each_quantity(p.values.get(name)) for p in (swap.old, swap.new.part))
            if not {each.low_base for each in old} & {each.low_base for each in new}:
                yield (
                    f"the {name} of {swap.old.name} is for {_volts(old)}, that of the new"
                    f" transformer for {_volts(new)}"
                )


def _volts(quantities: tuple[Quantity, ...]) -> str:
    return either([str(each) for each in quantities])
