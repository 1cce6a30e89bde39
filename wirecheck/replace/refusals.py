"""Requests that cannot be met, each with its reason: one function a reason.

Each says why in the trade's words, and what would do.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wirecheck.model.diagram import Part
from wirecheck.model.nearest import either
from wirecheck.model.quantity import Quantity
from wirecheck.parts.amounts import each_quantity
from wirecheck.parts.structure import MILLIVOLT_CIRCUIT_V
from wirecheck.replace.hookup import has_three_wires, is_direct, is_pilot_system
from wirecheck.replace.landing import counterpart
from wirecheck.replace.plan import unit_after
from wirecheck.replace.request import Request
from wirecheck.replace.unit import SLOTS, Unit, is_millivolt

_DAMPER_ROLES = ("damper-hot", "damper-call", "damper-proved", "damper-common")


def refusals(request: Request) -> tuple[str, ...]:
    """Every reason why a request cannot be met; none if it can."""
    after = unit_after(request)
    return tuple(reason for refuse in _REFUSALS for reason in refuse(request, after))


def _pilot_type(request: Request, after: Unit) -> Iterator[str]:
    """A control made for one kind of pilot only, and a burner that is the other."""
    control, burner = request.incoming("control"), request.incoming("burner")
    made_for = control.part.given.get("pilot") if control else None
    drawn = burner.part.given.get("pilot") if burner else None
    old = request.unit.parts.get("burner")
    has = drawn.value if drawn else old.values.get("pilot") if old and burner is None else None
    if made_for and has and made_for.value != has and after.parts["burner"].with_role("electrode"):
        yield (
            f"the new control works with a {made_for.value} pilot, and"
            f" {after.parts['burner'].name} is {has}: take a control for a {has} pilot, or put a"
            f" {made_for.value} pilot burner in with it"
        )
    kept = request.unit.parts.get("control")
    needs = kept.given.get("pilot") if kept and control is None else None
    if burner and needs and drawn and needs.value != drawn.value and kept:
        yield (
            f"the new pilot is {drawn.value}, and {kept.name} is for a {needs.value} pilot: take a"
            f" {needs.value} pilot, or put a control for it in as well"
        )


def _damper_socket(request: Request, _after: Unit) -> Iterator[str]:
    """A damper on a control without a socket for it."""
    control, old = request.incoming("control"), request.unit.parts.get("control")
    if control is None or control.part.values.get("damper-socket") != "no":
        return
    wired = [
        end for end in (old.with_role(*_DAMPER_ROLES) if old else ()) if request.nets.is_wired(end)
    ]
    if wired:
        shown = request.diagram.show(wired[0])
        yield (
            f"a vent damper is on {shown}, and the new control has no damper socket: take a"
            " control with one"
        )
    if control.part.given.get("damper-plug"):
        yield "the new control has no damper socket, so there is no plug to fit or take out"


def _gas(request: Request, _after: Unit) -> Iterator[str]:
    """A control for another gas than the unit burns."""
    for swap in request.swaps:
        old, new = swap.old.given.get("gas"), swap.new.part.given.get("gas")
        if old and new and old.value != new.value:
            yield (
                f"the unit burns {_gas_name(str(old.value))}, and the new device is for"
                f" {_gas_name(str(new.value))}"
            )


def _gas_name(gas: str) -> str:
    return {"lp": "LP", "natural": "natural gas"}.get(gas, gas)


def _seats(request: Request, _after: Unit) -> Iterator[str]:
    """A valve with one seat in the place of one with two."""
    for swap in request.swaps:
        if swap.old.values.get("seats") != "redundant" or swap.new.part.family != "gas-valve":
            continue
        if swap.new.part.values.get("seats") == "single-seat":
            yield (
                f"{swap.old.name} passes main gas only with both operators, the new valve with one:"
                " a redundant valve is replaced by a redundant one"
            )


def _valve_volts(request: Request, after: Unit) -> Iterator[str]:
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


def _made_for_millivolts(request: Request, after: Unit) -> Iterator[str]:
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


def _millivolt_kept(request: Request, _after: Unit) -> Iterator[str]:
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


def _operators(request: Request, after: Unit) -> Iterator[str]:
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


def _standing_pilot_kept(request: Request, after: Unit) -> Iterator[str]:
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


def _standing_pilot_comes(request: Request, after: Unit) -> Iterator[str]:
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


def _electrode_without_control(request: Request, after: Unit) -> Iterator[str]:
    """A burner with an electrode, and nothing that would spark."""
    burner = request.incoming("burner")
    if burner and burner.part.with_role("electrode") and "control" not in after.parts:
        yield (
            "the new burner is lit by a spark, and no ignition control is drawn: put a control and"
            " a valve for it in as well"
        )


def _transformer_volts(request: Request, _after: Unit) -> Iterator[str]:
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


def _burner(request: Request, after: Unit) -> Iterator[str]:
    """A control and a burner of different systems."""
    burner = after.parts.get("burner")
    if burner is None or "control" not in after.parts:
        return
    name = burner.name
    coming = request.incoming("control") or request.incoming("burner")
    if coming is None:
        return
    if not burner.with_role("electrode"):
        yield f"{name} has no electrode: put a burner for the new control in as well"
    elif is_direct(after) and kind_of(burner) == "pilot-burner":
        yield (
            f"direct ignition lights the main burner itself; {name} is a pilot burner: put a direct"
            " burner, with electrode and rod, in as well"
        )
    elif is_pilot_system(after) and kind_of(burner) == "direct-burner":
        yield (
            f"the new control lights a pilot, and {name} is a burner with direct ignition: put a"
            " pilot burner in as well, or take a direct ignition control"
        )


def _adapter(request: Request, after: Unit) -> Iterator[str]:
    """An adapter on a pilot system, or on a valve that has nothing to tie."""
    if request.incoming("adapter") is None:
        return
    if is_pilot_system(after):
        yield (
            "an adapter ties the pilot and the main operator: on a pilot system main gas would"
            " flow before the pilot is proved; leave it out"
        )
    elif "valve" in after.parts and not has_three_wires(after):
        yield f"{after.parts['valve'].name} has one operator: there is nothing to tie together"


def _terminals(request: Request, _after: Unit) -> Iterator[str]:
    """A device outside the unit that lacks a terminal where a lead lands."""
    for swap in request.swaps:
        if swap.old.family in SLOTS and swap.old.family not in ("transformer", "mains"):
            continue
        for name in swap.old.structure.terminals:
            end = swap.old.terminal(name)
            if request.nets.is_wired(end) and counterpart(swap.old, end, swap.new.part) is None:
                yield (
                    f"a lead lands on {request.diagram.show(end)}, and the new device has no such"
                    " terminal"
                )


def kind_of(part: Part) -> str:
    """What a burner is, by its terminals: a kind of the user's own has another name."""
    return "pilot-burner" if "pilot" in part.kind.attributes else "direct-burner"


_REFUSALS: tuple[Callable[[Request, Unit], Iterator[str]], ...] = (
    _pilot_type,
    _damper_socket,
    _gas,
    _seats,
    _valve_volts,
    _made_for_millivolts,
    _millivolt_kept,
    _operators,
    _standing_pilot_kept,
    _standing_pilot_comes,
    _electrode_without_control,
    _transformer_volts,
    _burner,
    _adapter,
    _terminals,
)
