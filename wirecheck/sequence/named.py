"""Contacts and thermostats as people name them: ``limit``, ``fan.limit at 60 s``."""

from __future__ import annotations

from wirecheck.model.diagram import Diagram, Part, key_of
from wirecheck.model.nearest import nearest
from wirecheck.parts.attributes import parse_quantity
from wirecheck.sequence.script import Opening


class NotThereError(ValueError):
    """The diagram has nothing of that name, or not what was asked for; says so in words."""


def opening(diagram: Diagram, text: str) -> Opening:
    """A contact that is to open: ``part``, ``part.contact``, either with ``at 60 s`` behind.

    Raises:
        NotThereError: there is no such part or contact, or the time cannot be read.
    """
    name, at, time = text.rpartition(" at ")
    if not at:
        return Opening(*_contact(diagram, text.strip()))
    return Opening(*_contact(diagram, name.strip()), seconds(time))


def caller(diagram: Diagram, text: str) -> str:
    """Key of a thermostat, or of an operating control, that is to call.

    Raises:
        NotThereError: there is no such part, or it calls for nothing.
    """
    part = _part(diagram, text.strip())
    if part.family not in ("thermostat", "operating-control"):
        raise NotThereError(f"{part.name} is a {part.kind.title}: it calls for no heat")
    return part.key


def seconds(text: str) -> float:
    """A time as typed, in seconds: ``90 s``, ``5 min``; a bare number counts seconds.

    Raises:
        NotThereError: it is no time.
    """
    bare = text.strip()
    quantity = parse_quantity(f"{bare} s" if bare.replace(".", "", 1).isdigit() else bare)
    if quantity is None or quantity.dimension != "time":
        raise NotThereError(f"“{bare}” is no time; write it like 90 s or 5 min")
    return quantity.high_base


def _contact(diagram: Diagram, text: str) -> tuple[str, str]:
    """Part key and contact name; "" for every contact of the part."""
    name, dot, contact = text.partition(".")
    part = _part(diagram, name if dot and key_of(text) not in diagram.parts else text)
    switches = part.structure.switches
    if not switches:
        raise NotThereError(f"{part.name} is a {part.kind.title}: it has no contact to open")
    if not contact or part.key == key_of(text):
        return part.key, ""
    named = {key_of(spec.name): spec.name for spec in switches if spec.name}
    if key_of(contact) not in named:
        known = ", ".join(named.values()) or "one without a name"
        raise NotThereError(f"{part.name} has no contact “{contact}”; it has {known}")
    return part.key, named[key_of(contact)]


def _part(diagram: Diagram, name: str) -> Part:
    part = diagram.parts.get(key_of(name))
    if part is not None:
        return part
    near = nearest(name, [each.name for each in diagram.parts.values()])
    hint = f"; did you mean {near}?" if near else ""
    raise NotThereError(f"there is no part “{name}”{hint}")
