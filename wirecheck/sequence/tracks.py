"""Names of the tracks of a trace: of the parts, and of what is watched at a burner."""

from __future__ import annotations

from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Part

#: Tracks of what comes from outside, and others that belong to no part.
CAUSES = ("power", "call", "gas supply")
UNIT = (*CAUSES, "spark", "pilot flame", "main flame", "flame signal")
MEDIA = {"combustion-air": "combustion air", "air": "moving air", "water": "moving water"}


def part_track(part: Part, name: str = "") -> str:
    """Name the track of a part, or of something in it, apart from those of the whole unit."""
    shown = name or part.name
    return f"{shown} (part)" if shown.casefold() in (*UNIT, *MEDIA.values()) else shown


def common_track(control: str) -> str:
    """Name the track of where a control has its common from."""
    return f"{control} common"


def track_of(name: str, control: str, *, many: bool) -> str:
    """Name the track of something at the burner of a control."""
    return f"{name} of {control}" if many else name


def load_track(nets: Nets, key: ElementKey) -> str:
    """Name the track of a load: its part's name, and its own where that says more."""
    element = nets.elements_of[key.part][key.number]
    return part_track(element.part, f"{element.part.name} {element.name}".strip())
