"""Contacts: which one is meant, what it is called, and whether it is a safety or makes a call."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final, cast

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.model.kind import SwitchSpec
from wirecheck.model.nearest import both
from wirecheck.rules.facts import Facts

#: A contact by its two terminals: no two contacts of a diagram share both.
ContactKey = tuple[Terminal, Terminal]

#: What moves contacts that decide whether heat is called for; the others only let a call through.
_CALL_MOVERS: Final = frozenset({"temperature", "coil", "motor"})


def key_of_contact(contact: Element) -> ContactKey:
    """What tells one contact from another."""
    return contact.a, contact.b


def switch(contact: Element) -> SwitchSpec:
    """What the part library says of a contact."""
    return cast(SwitchSpec, contact.spec)


def contacts(facts: Facts) -> Iterator[Element]:
    """Every contact of the diagram, part by part in the order of the text."""
    for elements in facts.nets.elements_of.values():
        for element in elements:
            if element.type == "switch":
                yield element


def is_safety(contact: Element) -> bool:
    """Whether it is there to stop the gas; a damper's end switch has rules of its own."""
    return switch(contact).safety and contact.part.family != "vent-damper"


def makes_call(contact: Element) -> bool:
    """Whether it decides that heat is called for: a thermostat, an operating control, a relay."""
    spec = switch(contact)
    if spec.safety or contact.part.family == "thermostat":
        return not spec.safety
    closes_on_call = spec.normal == "open" or spec.moved_by == "temperature"
    return closes_on_call and spec.moved_by in _CALL_MOVERS


def is_thermostat(contact: Element) -> bool:
    """Whether it is the heating contact of a thermostat."""
    return contact.part.family == "thermostat" and contact.name == "heat"


def sides(facts: Facts, contact: Element) -> tuple[Terminal, ...]:
    """Those of its two terminals on which a lead can land."""
    both_sides = (contact.a, contact.b)
    specs = [facts.diagram.spec(side) for side in both_sides]
    return tuple(
        side for side, spec in zip(both_sides, specs, strict=True) if spec and not spec.inner
    )


def is_drawn(facts: Facts, contact: Element) -> bool:
    """Whether a lead lands on every side of it on which one can."""
    return all(facts.is_wired(side) for side in sides(facts, contact))


def contact_name(facts: Facts, contact: Element) -> str:
    """A contact as people read it: the part's name, or which of its contacts."""
    part = contact.part
    if part.family == "relay":
        label = part.labels.get(contact.b.name)
        return f"{facts.show(contact.a)}..{label.text if label else contact.b.name}"
    if contact.name.endswith("switch"):
        return f"the {contact.name} of {part.name}"
    if len(part.structure.switches) == 1 or is_thermostat(contact):
        return part.name
    return f"the {contact.name} contact of {part.name}"


def in_text_order(some: Iterable[Element]) -> list[Element]:
    """Contacts in the order in which the text declares their parts."""
    return sorted(some, key=lambda contact: contact.part.span.start)


def names(facts: Facts, some: Iterable[Element]) -> str:
    """Several contacts as people read them, each once."""
    return both(list(dict.fromkeys(contact_name(facts, contact) for contact in some)))
