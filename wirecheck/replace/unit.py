"""The unit round a device: its control, gas valve, valve adapter, burner and pilot generator.

What belongs together is found over the leads that carry a signal of that unit alone: to the
operators of the valve, to electrode and rod, from the thermocouple. Commons, grounds and calls are
shared, and tell nothing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Part

Slot = Literal["control", "valve", "adapter", "burner", "generator", "supply", "line"]

#: What takes which place in a unit, by family.
SLOTS: Mapping[str, Slot] = {
    "ignition-control": "control",
    "gas-valve": "valve",
    "valve-adapter": "adapter",
    "burner": "burner",
    "standing-pilot": "burner",
    "pilot-generator": "generator",
    "transformer": "supply",
    "mains": "line",
}
_OF_THE_UNIT: tuple[Slot, ...] = ("control", "valve", "adapter", "burner", "generator")

_SIGNALS = frozenset(
    {
        *("pilot-valve", "main-valve", "valve-feed", "pilot-operator", "main-operator", "operator"),
        *("adapter-feed", "adapter-pilot", "adapter-main", "spark", "electrode", "sense", "rod"),
        *("generator-hot", "generator-common"),
    }
)


@dataclass(frozen=True)
class Unit:
    """What stands in each place of a unit; a place that is empty, or taken twice, is not there."""

    parts: Mapping[Slot, Part]

    def has_role(self, slot: Slot, role: str) -> bool:
        """Whether what stands there has a terminal of a role."""
        part = self.parts.get(slot)
        return bool(part and part.with_role(role))

    def with_parts(self, parts: Mapping[Slot, Part | None]) -> Unit:
        """The unit with other parts in some places, None for none."""
        merged: dict[Slot, Part | None] = {**self.parts, **parts}
        return Unit({slot: part for slot, part in merged.items() if part is not None})

    def slot_of(self, key: str) -> Slot | None:
        """The place in which a part stands."""
        return next((slot for slot, part in self.parts.items() if part.key == key), None)


def unit_of(nets: Nets, anchors: list[Part]) -> Unit:
    """The unit to which some parts belong; with no anchor, the only one that is drawn."""
    parts = nets.diagram.parts
    members = {part.key for part in anchors}
    waiting = list(anchors)
    while waiting:
        for other in _joined_to(nets, waiting.pop()):
            if other.key not in members:
                members.add(other.key)
                waiting.append(other)
    alone = all(
        sum(part.family == family for part in parts.values()) <= 1
        for family in ("ignition-control", "gas-valve")
    )
    found: dict[Slot, Part] = {}
    for slot in (*_OF_THE_UNIT, "supply", "line"):
        of_slot = [part for part in parts.values() if SLOTS.get(part.family) == slot]
        own = [part for part in of_slot if part.key in members]
        if not own and (alone or slot in ("supply", "line")):
            own = of_slot
        if len(own) == 1:
            found[slot] = own[0]
    if "valve" in found and is_millivolt(found["valve"]):
        found.pop("supply", None)  # a transformer that is drawn feeds something else
    return Unit(found)


def _joined_to(nets: Nets, part: Part) -> list[Part]:
    """Devices of a unit whose signal terminals are one conductor with this part's."""
    return [
        nets.diagram.parts[other.part]
        for terminal in part.with_role(*_SIGNALS)
        for other in nets.members[nets.net(terminal)]
        if other.part in nets.diagram.parts
        and SLOTS.get(nets.diagram.parts[other.part].family) in _OF_THE_UNIT
        and nets.diagram.parts[other.part].structure.terminals[other.name].role in _SIGNALS
    ]


def is_millivolt(valve: Part) -> bool:
    """Whether a valve works from the pilot generator alone."""
    specs = valve.structure.terminals
    return any(specs[each.name].circuit == "millivolt" for each in valve.with_role("operator"))
