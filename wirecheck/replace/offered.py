"""The new devices of a request: the parts of a diagram, or a kind with what is typed behind it."""

from __future__ import annotations

from wirecheck.language.load import load_text
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Problem
from wirecheck.replace.device import Device, device_of
from wirecheck.replace.request import CannotReplaceError


def devices_of(diagram: Diagram) -> list[Device]:
    """The parts of a diagram that states new devices."""
    return [device_of(part) for part in diagram.parts.values()]


def leads_among(diagram: Diagram) -> list[Problem]:
    """What a diagram that states new devices must not have: leads of its own."""
    message = "here the new devices are stated, and no leads: those come from the old diagram"
    statements = dict.fromkeys(lead.statement for lead in diagram.leads)
    return [Problem(message, span) for span in statements]


def device_typed(text: str) -> Device:
    """A device by what stands behind ``is``: ``gas-valve-2-wire: 0.4 A``.

    Raises:
        CannotReplaceError: there is no such kind, or it does not take what is typed.
    """
    built = load_text(f"part device is {text}\n", "--with")
    parts = list(built.diagram.parts.values())
    if built.problems or len(parts) != 1:
        why = built.problems[0].message if built.problems else "name one kind"
        raise CannotReplaceError([why])
    return device_of(parts[0]).called("")
