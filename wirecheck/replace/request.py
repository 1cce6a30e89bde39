"""What is asked for: which new device takes the place of which old one, and what just goes in."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Diagram, Part, key_of
from wirecheck.model.nearest import both, either
from wirecheck.replace.device import Device
from wirecheck.replace.unit import SLOTS, Slot, Unit, is_millivolt, unit_of

#: What a device that goes in beside others is called where it has no name.
_USUAL_NAMES: Mapping[Slot, str] = {
    "control": "control",
    "valve": "valve",
    "adapter": "adapter",
    "burner": "burner",
    "generator": "generator",
    "supply": "xfmr",
    "line": "line",
}


class CannotReplaceError(Exception):
    """A request that cannot be met; each of ``reasons`` is a sentence for the technician."""

    def __init__(self, reasons: Sequence[str]) -> None:
        super().__init__("; ".join(reasons))
        self.reasons = tuple(reasons)


@dataclass(frozen=True)
class Swap:
    """A new device in the place of an old one, under its name."""

    old: Part
    new: Device


@dataclass(frozen=True)
class Request:
    """What is asked for.

    Attributes:
        nets: of the diagram as found.
        unit: the unit round the devices that are replaced.
        swaps: new devices in the place of old ones.
        fitted: new devices that go in beside what is there, by their place.
    """

    nets: Nets
    unit: Unit
    swaps: tuple[Swap, ...]
    fitted: Mapping[Slot, Device]

    @property
    def diagram(self) -> Diagram:
        """The diagram as found."""
        return self.nets.diagram

    def incoming(self, slot: Slot) -> Device | None:
        """The new device for a place of the unit."""
        for swap in self.swaps:
            if SLOTS.get(swap.old.family) == slot and swap.old is self.unit.parts.get(slot):
                return swap.new
        return self.fitted.get(slot)


def request_of(nets: Nets, offered: Sequence[Device], replaced: str | None) -> Request:
    """Find the place of every new device.

    Args:
        nets: of the diagram as found.
        offered: the new devices.
        replaced: name of the part that a single new device replaces, if that was said.

    Raises:
        CannotReplaceError: the place of one is not clear, or there is none.
    """
    if not offered:
        raise CannotReplaceError(["no new device is named: a kind, or a file with its parts"])
    named = _named(nets.diagram, offered, replaced)
    anchors = list(named.values()) or _only_of_their_family(nets.diagram, offered)
    unit = unit_of(nets, anchors)
    swaps, fitted, reasons = list[Swap](), dict[Slot, Device](), list[str]()
    for number, device in enumerate(offered):
        old = named.get(number) or _in_the_unit(unit, device) or _only_one(nets.diagram, device)
        slot = SLOTS.get(device.part.family)
        if old is None and slot and _may_be_added(nets.diagram, unit, device, anchors):
            name = free_name(nets.diagram, device.name or _USUAL_NAMES[slot])
            fitted[slot] = device.called(name)
        elif old is None:
            reasons.append(_no_place(nets.diagram, device))
        elif any(swap.old is old for swap in swaps):
            reasons.append(f"two of the new devices would replace {old.name}; name one")
        else:
            swaps.append(Swap(old, device.called(old.name)))
    if reasons:
        raise CannotReplaceError(reasons)
    return Request(nets, unit, tuple(swaps), fitted)


def _named(diagram: Diagram, offered: Sequence[Device], replaced: str | None) -> dict[int, Part]:
    """The old part of each new device that says which it replaces, by the new one's number."""
    if replaced is not None:
        old = diagram.parts.get(key_of(replaced))
        if old is None:
            known = both([part.name for part in diagram.parts.values()])
            raise CannotReplaceError([f"no part is called “{replaced}”; there are {known}"])
        if len(offered) > 1:
            raise CannotReplaceError(
                ["several devices go in: name each in its file as the part that it replaces"]
            )
        _refuse_other_family(old, offered[0])
        return {0: old}
    named = {}
    for number, device in enumerate(offered):
        old = diagram.parts.get(key_of(device.name))
        if old is not None and _same_place(old, device.part):
            named[number] = old
    return named


def _refuse_other_family(old: Part, device: Device) -> None:
    if not _same_place(old, device.part):
        raise CannotReplaceError(
            [f"{old.name} is a {old.kind.title}; a {device.part.kind.title} cannot replace it"]
        )


def _same_place(old: Part, new: Part) -> bool:
    slot = SLOTS.get(new.family)
    return old.family == new.family or (slot is not None and slot == SLOTS.get(old.family))


def _alike(diagram: Diagram, device: Device) -> list[Part]:
    """Old parts that a new device could replace."""
    return [part for part in diagram.parts.values() if _same_place(part, device.part)]


def _only_of_their_family(diagram: Diagram, offered: Sequence[Device]) -> list[Part]:
    """Old parts that are the only ones that a new device could replace."""
    found = []
    for device in offered:
        alike = _alike(diagram, device)
        if len(alike) == 1 and SLOTS.get(device.part.family) not in ("supply", "line"):
            found += alike
    return found


def _in_the_unit(unit: Unit, device: Device) -> Part | None:
    slot = SLOTS.get(device.part.family)
    return unit.parts.get(slot) if slot else None


def _only_one(diagram: Diagram, device: Device) -> Part | None:
    """The only old part that a device outside the unit could replace."""
    alike = _alike(diagram, device) if device.part.family not in SLOTS else []
    return alike[0] if len(alike) == 1 else None


def _may_be_added(diagram: Diagram, unit: Unit, device: Device, anchors: list[Part]) -> bool:
    """Whether a device can go in beside what is there: no other could be the one it replaces.

    Where the unit is known, what stands in other units is none of them.
    """
    slot = SLOTS.get(device.part.family)
    if slot is None or slot in unit.parts:
        return False
    valve = unit.parts.get("valve")
    if slot in ("supply", "line") and not (valve and is_millivolt(valve)):
        return not _alike(diagram, device)
    return bool(anchors) or not _alike(diagram, device)


def _no_place(diagram: Diagram, device: Device) -> str:
    alike = [part.name for part in _alike(diagram, device)]
    title = device.part.kind.title
    if not alike:
        return f"no {title} is drawn that the new one could replace"
    return (
        f"it is not clear which {title} goes out: {either(alike)}; say it with --part, or name the"
        " new device as the one it replaces"
    )


def free_name(diagram: Diagram, name: str) -> str:
    """A name that no part, splice or kind of the diagram has."""
    taken = {*diagram.parts, *diagram.splices, *diagram.kinds, "earth", "open", "unknown"}
    return next(free for free in _names(name) if key_of(free) not in taken)


def _names(name: str) -> Iterator[str]:
    yield name
    number = 2
    while True:
        yield f"{name}-{number}"
        number += 1
