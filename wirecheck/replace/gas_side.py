"""What a replacement asks for on the gas side: tube, outlet, orifice, regulator (common practice).

No lead shows any of it. Whether a pilot burns, and which outlet of the valve passes gas at a call,
follows from the control and the valve; all else is for the rating plate and the manometer.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Part
from wirecheck.replace.hookup import has_three_wires, is_direct, is_pilot_system
from wirecheck.replace.request import Request
from wirecheck.replace.unit import Unit

_STANDING = "standing-pilot"


def gas_side(request: Request, after: Unit) -> tuple[str, ...]:
    """What is to be done to gas valve, pilot and burner, in sentences without a full stop.

    Args:
        request: with the devices that go in.
        after: the unit with them.
    """
    before = request.unit
    valve, burner = after.parts.get("valve"), after.parts.get("burner")
    new_valve = request.incoming("valve") is not None
    new_burner = request.incoming("burner") is not None
    converted = is_direct(before) != is_direct(after) or _stands(before) != _stands(after)
    if not (new_valve or new_burner or converted):
        return ()
    done: list[str] = []
    if is_direct(after):
        done += _no_pilot(request, after, changed=new_valve or converted)
    elif is_pilot_system(after) and valve is not None:
        pilot = burner.name if burner else "pilot"
        done.append(_pilot_tube(valve, pilot, unplugged=is_direct(before) and not new_valve))
        done += [_pilot_set(pilot)] if new_burner or converted else []
    elif valve is not None and new_valve:
        done.append(
            f"{valve.name}: connect the pilot tube to its pilot outlet, and to nothing else"
        )
    if new_burner and burner is not None and _stands(after):
        done.append(_orifice(burner, "pilot"))
    if new_burner and burner is not None and is_direct(after):
        done.append(_orifice(burner, "main"))
    if valve is not None and (new_valve or converted or is_direct(after)):
        done += _valve(valve, gas=_gas(after), is_new=new_valve)
    return (*done, _LEAK_TEST)


_LEAK_TEST = (
    "leak-test with soap solution every gas joint, plug and tube that was touched: up to the valve"
    " with the gas on before anything is lit, behind it while the burner burns"
)


def _stands(unit: Unit) -> bool:
    """Whether a pilot burns in it day and night."""
    burner = unit.parts.get("burner")
    return "generator" in unit.parts or (burner is not None and burner.family == _STANDING)


def _had_a_pilot(unit: Unit) -> bool:
    return is_pilot_system(unit) or _stands(unit)


def _no_pilot(request: Request, after: Unit, *, changed: bool) -> Iterator[str]:
    """A burner that is lit directly leaves no use for a pilot tube, and none for its outlet."""
    valve = after.parts.get("valve")
    if _had_a_pilot(request.unit):
        yield "pilot: take the old pilot burner out, with its orifice and the whole pilot tube"
    if not (changed and valve):
        return
    if has_three_wires(after):
        yield (
            f"{valve.name}: close its pilot outlet with the plug made for it: both operators open"
            " at every call now, and an outlet left open, or on the old tube, passes unlit gas"
        )
    else:
        yield f"{valve.name}: if it has a pilot outlet, close that with the plug made for it"


def _pilot_tube(valve: Part, pilot: str, *, unplugged: bool) -> str:
    """A pilot that is lit at every call hangs on the pilot outlet of the valve."""
    first = "take the plug out of its pilot outlet and run" if unplugged else "run"
    return (
        f"{valve.name}: {first} the pilot tube from its pilot outlet to {pilot}, and from no other"
        " tapping: gas must reach the pilot only when the pilot operator opens"
    )


def _pilot_set(pilot: str) -> str:
    """Orifice and aim of a pilot that goes in."""
    return (
        f"{pilot}: fit the pilot orifice for the gas that is there; aim and set the flame so that"
        " it lights the main burner without delay and wraps the tip of the flame rod; set electrode"
        " and rod by the maker's gauge"
    )


def _orifice(burner: Part, which: str) -> str:
    """Orifice of a burner that goes in."""
    return (
        f"{burner.name}: see that its {which} orifice is for the gas that is there and the input on"
        " the rating plate; set electrode and rod by the maker's gauge"
        if burner.family != _STANDING
        else f"{burner.name}: see that its pilot orifice is for the gas that is there"
    )


def _gas(unit: Unit) -> str:
    """The gas that is typed for the control, "" if none is."""
    control = unit.parts.get("control")
    typed = control.given.get("gas") if control else None
    if typed is None:
        return ""
    return "LP" if str(typed.value) == "lp" else str(typed.value)


def _valve(valve: Part, *, gas: str, is_new: bool) -> Iterator[str]:
    """A valve that goes in must suit the gas; its outlet pressure is set whatever went in."""
    if is_new:
        kind = f"{gas} gas, as typed for the control" if gas else "natural or LP"
        yield (
            f"{valve.name}: see that the new valve and its regulator are made for the gas that is"
            f" there ({kind}), for the inlet pressure and for the input of the burner; mount it"
            " with the flow arrow and the position its maker allows"
        )
    yield (
        f"{valve.name}: with the burner on, read its outlet pressure by manometer and set the"
        " regulator to the pressure on the rating plate; clock the gas meter where there is one"
    )
