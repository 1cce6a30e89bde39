"""All lists of a checked diagram."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.check.engine import Checked
from wirecheck.lists.parts import ListedPart, WireNeed, parts_of, wire_needs
from wirecheck.lists.terminals import ListedTerminal, terminals_of
from wirecheck.lists.wires import Wire, wires_of


class Lists(NamedTuple):
    """The wire list, the parts list with the wire it takes, and the terminal cross-reference."""

    checked: Checked
    wires: tuple[Wire, ...]
    parts: tuple[ListedPart, ...]
    needs: tuple[WireNeed, ...]
    terminals: tuple[ListedTerminal, ...]


def lists_of(checked: Checked) -> Lists:
    """List what a diagram has, as drawn: right or wrong."""
    nets = checked.nets
    wires = wires_of(nets)
    return Lists(checked, wires, parts_of(nets), wire_needs(nets, wires), terminals_of(nets))
