"""What a look tells: leads on their terminals, switches, fuses, the gas cock."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Part
from wirecheck.troubleshoot.modes import costs
from wirecheck.troubleshoot.reading import Reading, Stage

LANDED = ("all as drawn", "one has landed elsewhere")
GAS = ("there is gas", "there is none")
OPENED = ("good", "blown or tripped")
SWITCHED = ("on", "off")


def looks(nets: Nets) -> Iterator[Reading]:
    """Every look, part by part."""
    parts = nets.diagram.parts.values()
    if any(part.family == "gas-valve" for part in parts):
        yield _look(
            "gas",
            "Look whether the gas cocks are open, and read the pressure at the inlet of the valve",
            GAS,
        )
    for part in parts:
        if sum(nets.is_wired(part.terminal(name)) for name in part.structure.terminals) > 1:
            ask = f"Power off: compare the leads at {part.name} with the drawing, one by one"
            yield _look("landed", ask, LANDED, part)
        if part.family == "overcurrent":
            yield _look("opened", f"Look at {part.name}: has it opened?", OPENED, part)
        elif part.family == "hand-switch":
            yield _look("switched", f"Look at {part.name}: is it on?", SWITCHED, part)


def _look(about: str, ask: str, choices: tuple[str, ...], part: Part | None = None) -> Reading:
    key = part.key if part else ""
    return Reading(
        ":".join(filter(None, ("look", about, key))),
        "look",
        Stage.OFF,
        ask,
        "",
        costs()["look"] / (1 if about == "landed" else 2),
        choices,
        part=key,
        about=about,
    )
