"""What a replacement comes to before a lead is moved: devices in and out, links and plugs set."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import NamedTuple

from wirecheck.model.diagram import Part
from wirecheck.replace.device import Device
from wirecheck.replace.gas_side import gas_side
from wirecheck.replace.hookup import has_three_wires, is_direct
from wirecheck.replace.request import Request, Swap, free_name
from wirecheck.replace.unit import Slot, Unit, is_millivolt

#: What a device takes over from the one it replaces, as it tells of the appliance.
_OF_THE_APPLIANCE = ("gas", "bond")
_DAMPER_ROLES = ("damper-hot", "damper-call", "damper-proved", "damper-common")
_CARRIES_THE_CALL = ("thermostat", "safety-switch", "operating-control", "hand-switch")
_LINK_FOR: Mapping[str, str] = {"one-rod": "fitted", "two-rod": "cut"}


class Task(NamedTuple):
    """Something to do at a device besides moving leads."""

    part: str
    words: str


@dataclass(frozen=True)
class Plan:
    """What goes in and out.

    Attributes:
        request: with every device as it is set in its place.
        after: the unit with the new devices.
        out: old parts that come out and are replaced by none.
        tasks: links to cut, plugs to fit.
        gas_side: what is to be done to valve, pilot and burner that no lead shows.
        settings: part, attribute and value of what is typed otherwise for a device that stays.
    """

    request: Request
    after: Unit
    out: tuple[Part, ...]
    tasks: tuple[Task, ...]
    gas_side: tuple[str, ...]
    settings: tuple[tuple[str, str, str], ...] = ()


def planned(request: Request) -> Plan:
    """Complete a request: the adapter a valve needs, what comes out, how links and plugs stand."""
    request = _with_adapter(request)
    pilot = _pilot(request)
    damper = _is_damper_drawn(request)
    tasks: list[Task] = []
    swaps = []
    for swap in request.swaps:
        device = _inherited(swap)
        device = _set(device, pilot, tasks, damper=damper, typed=swap.old.given)
        swaps.append(replace(swap, new=device))
    fitted = {
        slot: _set(device, pilot, tasks, damper=False, typed={})
        for slot, device in request.fitted.items()
    }
    settled = replace(request, swaps=tuple(swaps), fitted=fitted)
    tasks += _millivolt_checks(settled)
    out = tuple(_out(settled))
    kept = request.unit.parts.get("control") if request.incoming("control") is None else None
    settings: list[tuple[str, str, str]] = []
    if kept and kept.values.get("sense-link") not in (None, _LINK_FOR[pilot]):
        tasks.append(Task(kept.name, _kept_link_words(kept, pilot)))
        if "sense-link" in kept.given:
            settings.append((kept.key, "sense-link", _LINK_FOR[pilot]))
    after = unit_after(settled, out)
    return Plan(settled, after, out, tuple(tasks), gas_side(settled, after), tuple(settings))


def unit_after(request: Request, out: tuple[Part, ...] = ()) -> Unit:
    """The unit with the new devices."""
    parts: dict[Slot, Part | None] = {
        slot: None for part in out if (slot := request.unit.slot_of(part.key))
    }
    for swap in request.swaps:
        slot = request.unit.slot_of(swap.old.key)
        if slot:
            parts[slot] = swap.new.part
    parts.update({slot: device.part for slot, device in request.fitted.items()})
    return request.unit.with_parts(parts)


# ---- devices in and out ------------------------------------------------------------------------


def _with_adapter(request: Request) -> Request:
    """A direct control drives a three-wire valve over an adapter, unless leads tie it already."""
    before, after = request.unit, unit_after(request)
    needed = is_direct(after) and has_three_wires(after) and "adapter" not in after.parts
    if not needed or (is_direct(before) and _is_tied(request)):
        return request
    name = free_name(request.diagram, "adapter")
    fitted = {**request.fitted, "adapter": Device(name, "valve-adapter", {}, {})}
    return replace(request, fitted=fitted)


def _is_tied(request: Request) -> bool:
    """Whether both operators of the valve as found are one conductor."""
    valve = request.unit.parts.get("valve")
    operators = valve.with_role("pilot-operator", "main-operator") if valve else ()
    return len(operators) == 2 and request.nets.joined(*operators)


def _out(request: Request) -> Iterator[Part]:
    """What the new devices have no use for."""
    after = unit_after(request)
    adapter, generator = request.unit.parts.get("adapter"), request.unit.parts.get("generator")
    if adapter and not (is_direct(after) and has_three_wires(after)):
        yield adapter
    if generator and not after.has_role("valve", "generator-hot"):
        yield generator


def _millivolt_checks(request: Request) -> Iterator[Task]:
    """What carried millivolts and will carry 24 V."""
    valve, supply = request.unit.parts.get("valve"), request.fitted.get("supply")
    if valve is None or not is_millivolt(valve) or supply is None:
        return
    feed = "feed its primary behind the unit's own disconnect switch and fuse or breaker"
    yield Task(supply.name, f"{supply.name}: {feed}: line voltage is for licensed people")
    for part in request.diagram.parts.values():
        if part.family in _CARRIES_THE_CALL:
            words = f"{part.name}: see that it is made for 24 V; one for millivolts may not be"
            yield Task(part.name, words)


# ---- how it is set -----------------------------------------------------------------------------


def _inherited(swap: Swap) -> Device:
    """The new device with what the old one told of the appliance."""
    device = swap.new
    for name in _OF_THE_APPLIANCE:
        typed = swap.old.given.get(name)
        if typed and name in device.part.kind.attributes and name not in device.attributes:
            device = device.with_attribute(name, str(typed.value))
    return device


def _pilot(request: Request) -> str:
    """The pilot that will stand there: as the new burner, the one drawn, or the control has it."""
    burner, control = request.incoming("burner"), request.incoming("control")
    said = [device.part.given.get("pilot") for device in (burner, control) if device]
    drawn = [request.unit.parts.get(slot) for slot in ("burner", "control")]
    told = [attribute.value for attribute in said if attribute]
    told += [part.values["pilot"] for part in drawn if part and "pilot" in part.values]
    return str(next(iter(told), "two-rod"))


def _is_damper_drawn(request: Request) -> bool:
    """Whether a lead lands on a damper terminal of the control."""
    control = request.unit.parts.get("control")
    ends = control.with_role(*_DAMPER_ROLES) if control else ()
    return any(request.nets.is_wired(end) for end in ends)


def _set(
    device: Device, pilot: str, tasks: list[Task], *, damper: bool, typed: Mapping[str, object]
) -> Device:
    """A device with pilot, sense link and damper plug as they must be; what to do goes to tasks."""
    known = device.part.kind.attributes
    wanted = {}
    if "pilot" in known and set(known["pilot"].choices) == set(_LINK_FOR):
        wanted["pilot"] = pilot
    if "sense-link" in known:
        wanted["sense-link"] = _LINK_FOR[pilot]
        tasks.append(Task(device.name, _link_words(device, pilot)))
    if "damper-plug" in known and device.part.values.get("damper-socket") != "no":
        wanted["damper-plug"] = "removed" if damper else "fitted"
        tasks.append(Task(device.name, _plug_words(device, damper=damper)))
    for name, value in wanted.items():
        if name in device.attributes or name in typed or name == "pilot":
            device = device.with_attribute(name, value)
    return device


def _kept_link_words(control: Part, pilot: str) -> str:
    """What becomes of the sense link of a control that stays, when another pilot comes."""
    if pilot == "two-rod":
        return f"{control.name}: cut the sense link: the new pilot has its own flame rod"
    return f"{control.name}: fit the sense link anew: the one rod of the new pilot also senses"


def _link_words(device: Device, pilot: str) -> str:
    stands = device.part.given.get("sense-link")
    given = str(stands.value) if stands else ""
    if pilot == "two-rod":
        if given == "cut":
            return f"{device.name}: the sense link is cut, as a pilot with a separate rod needs it"
        return (
            f"{device.name}: cut the sense link of the new control: the pilot has its own flame rod"
        )
    if given == "cut":
        return (
            f"{device.name}: fit the sense link of the new control: the one rod sparks and senses"
        )
    return f"{device.name}: leave the sense link in place: the one rod sparks and senses"


def _plug_words(device: Device, *, damper: bool) -> str:
    stands = device.part.given.get("damper-plug")
    given = str(stands.value) if stands else ""
    if damper:
        return f"{device.name}: take the shorting plug out of the damper socket: a damper goes in"
    if given == "removed":
        return f"{device.name}: fit the shorting plug in the damper socket: there is no damper"
    return f"{device.name}: leave the shorting plug in the damper socket: there is no damper"
