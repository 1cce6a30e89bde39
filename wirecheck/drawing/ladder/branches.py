"""What a ladder draws between two nets: contacts, loads, windings, gaps."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal, NamedTuple

from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.kind import GapSpec, LoadSpec, SourceSpec, SwitchSpec

BranchType = Literal["switch", "load", "winding", "source", "bond", "gap"]

_SIGNAL_LOADS = ("spark-coil", "amplifier")
"""Loads of the high voltage and of the flame signal, which have a section of their own."""


class Branch(NamedTuple):
    """One thing between two nets.

    Attributes:
        number: its place in the order of the text.
        type: `winding` is a primary winding, a load of the circuit that feeds it; `bond` is
            metal of the appliance.
        name: of the contact, load or gap within its part; may be empty.
        part: the part it is in.
        a: its first terminal; current is thought to enter here unless the circuit says otherwise.
        b: its second terminal.
        net_a: the net of `a`.
        net_b: the net of `b`.
        spec: what the part library says of it; the source behind a winding.
    """

    number: int
    type: BranchType
    name: str
    part: Part
    a: Terminal
    b: Terminal
    net_a: int
    net_b: int
    spec: SwitchSpec | LoadSpec | SourceSpec | GapSpec | None

    @property
    def at_rail(self) -> bool:
        """Whether it belongs at the right end of a rung: a load, or the gap at a burner.

        What takes current inside a control stays in the control's block.
        """
        return self.type in {"load", "winding", "gap"} and self.part.family != "ignition-control"

    @property
    def is_signal(self) -> bool:
        """Whether it belongs to the high voltage or the flame signal."""
        signal_load = isinstance(self.spec, LoadSpec) and self.spec.type in _SIGNAL_LOADS
        return self.type == "gap" or signal_load

    @property
    def in_block(self) -> bool:
        """Whether its part is drawn as a block: an ignition control, or a burner."""
        return self.type != "bond" and self.part.family in {"ignition-control", "burner"}


def branches(nets: Nets) -> list[Branch]:
    """List every branch of the diagram in the order of the text."""
    found = [row for part in nets.diagram.parts.values() for row in _of_part(nets, part)]
    return [branch._replace(number=number) for number, branch in enumerate(found)]


def _of_part(nets: Nets, part: Part) -> Iterator[Branch]:
    wound: set[tuple[Terminal, Terminal]] = set()
    for element in nets.elements_of[part.key]:
        if element.type == "bond" and element.name == "none":
            continue
        name = f"{element.name} bond" if element.type == "bond" else element.name
        yield Branch(0, element.type, name, *element[2:])
        for winding in _windings(nets, element):
            if (winding.a, winding.b) not in wound:
                wound.add((winding.a, winding.b))
                yield winding


def _windings(nets: Nets, element: Element) -> Iterator[Branch]:
    """Yield the primary windings behind a source on which a lead lands."""
    if not isinstance(element.spec, SourceSpec):
        return
    part, pairs = element.part, element.spec.fed_by
    for first, second in pairs:
        a, b = part.terminal(first), part.terminal(second)
        if nets.is_wired(a) or (len(pairs) == 1 and nets.is_wired(b)):
            name = "primary" if len(pairs) == 1 else f"primary {first}"
            yield Branch(0, "winding", name, part, a, b, nets.net(a), nets.net(b), element.spec)
