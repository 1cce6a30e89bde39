"""The terminal cross-reference: every terminal, its label, its wire number and where it leads."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from wirecheck.circuit.nets import Nets
from wirecheck.circuit.wire_numbers import wire_numbers
from wirecheck.lists.place import Place, place_of
from wirecheck.model.diagram import EARTH, Terminal


class Landing(NamedTuple):
    """A lead that lands on a terminal: its place in the wire list, and where its other end is."""

    wire: int
    other: Place
    colour: str


class ListedTerminal(NamedTuple):
    """A terminal of a device, a splice, or the unit's earth.

    Attributes:
        at: the terminal.
        about: what it is for, in the words of the part library.
        number: the wire number of its net, "" where no lead lands on that.
        landings: the leads on it, in the order typed.
        inside: other terminals of the same device that are one conductor with it by links inside.
    """

    at: Place
    about: str
    number: str
    landings: tuple[Landing, ...]
    inside: tuple[str, ...]


def terminals_of(nets: Nets) -> tuple[ListedTerminal, ...]:
    """List the terminals: devices in the order typed, then splices, then the earth."""
    numbers = wire_numbers(nets)
    return tuple(_listed(nets, terminal, numbers) for terminal in _terminals(nets))


def _terminals(nets: Nets) -> Iterator[Terminal]:
    for part in nets.diagram.parts.values():
        for name, spec in part.structure.terminals.items():
            if not spec.inner:
                yield part.terminal(name)
    yield from (Terminal(key, "") for key in nets.diagram.splices)
    if nets.is_wired(EARTH):
        yield EARTH


def _listed(nets: Nets, terminal: Terminal, numbers: Mapping[int, str]) -> ListedTerminal:
    diagram = nets.diagram
    spec = diagram.spec(terminal)
    landings = []
    for number in nets.leads_at(terminal):
        lead = diagram.leads[number]
        other = lead.b if lead.a == terminal else lead.a
        colour = lead.given.get("colour")
        landings.append(
            Landing(number + 1, place_of(diagram, other), str(colour.value) if colour else "")
        )
    return ListedTerminal(
        at=place_of(diagram, terminal),
        about=spec.about if spec else _ABOUT[terminal == EARTH],
        number=numbers.get(nets.net(terminal), ""),
        landings=tuple(landings),
        inside=tuple(_joined_inside(nets, terminal)),
    )


_ABOUT = {True: "the unit's earth", False: "joint"}


def _joined_inside(nets: Nets, terminal: Terminal) -> Iterator[str]:
    """Terminals of the same device joined to one by links, factory ones and plugs."""
    part = nets.diagram.parts.get(terminal.part)
    if part is None:
        return
    links = [link.between for link in part.structure.links]
    found, waiting = {terminal.name}, [terminal.name]
    while waiting:
        here = waiting.pop()
        for pair in links:
            if here in pair:
                waiting += {*pair} - found
                found |= {*pair}
    for name, spec in part.structure.terminals.items():
        if name in found and name != terminal.name and not spec.inner:
            yield place_of(nets.diagram, part.terminal(name)).label or name
