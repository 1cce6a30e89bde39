"""Controls, burners and adapters that do not go together: one function a reason."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Part
from wirecheck.replace.hookup import has_three_wires, is_direct, is_pilot_system
from wirecheck.replace.request import Request
from wirecheck.replace.unit import Unit

_DAMPER_ROLES = ("damper-hot", "damper-call", "damper-proved", "damper-common")


def pilot_type(request: Request, after: Unit) -> Iterator[str]:
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


def damper_socket(request: Request, _after: Unit) -> Iterator[str]:
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


def gas(request: Request, _after: Unit) -> Iterator[str]:
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


def electrode_without_control(request: Request, after: Unit) -> Iterator[str]:
    """A burner with an electrode, and nothing that would spark."""
    burner = request.incoming("burner")
    if burner and burner.part.with_role("electrode") and "control" not in after.parts:
        yield (
            "the new burner is lit by a spark, and no ignition control is drawn: put a control and"
            " a valve for it in as well"
        )


def burner_of_another_system(request: Request, after: Unit) -> Iterator[str]:
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
    elif is_direct(after) and _kind_of(burner) == "pilot-burner":
        yield (
            f"direct ignition lights the main burner itself; {name} is a pilot burner: put a direct"
            " burner, with electrode and rod, in as well"
        )
    elif is_pilot_system(after) and _kind_of(burner) == "direct-burner":
        yield (
            f"the new control lights a pilot, and {name} is a burner with direct ignition: put a"
            " pilot burner in as well, or take a direct ignition control"
        )


def adapter(request: Request, after: Unit) -> Iterator[str]:
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


def _kind_of(part: Part) -> str:
    """What a burner is, by its terminals: a kind of the user's own has another name."""
    return "pilot-burner" if "pilot" in part.kind.attributes else "direct-burner"
