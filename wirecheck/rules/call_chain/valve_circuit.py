"""Contacts between an ignition control and its gas valve, where none belongs."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Part, Terminal
from wirecheck.rules.call_chain.contacts import ContactKey, is_safety, key_of_contact
from wirecheck.rules.facts import Facts

#: Roles at the control and at the valve that plain leads should join.
_CIRCUITS = (
    (("main-valve", "pilot-valve", "valve-feed"), ("main-operator", "pilot-operator", "operator")),
    (("valve-common",), ("operator-common",)),
)


class AtValve(NamedTuple):
    """A safety between two terminals that a plain lead should join."""

    contact: Element
    output: Terminal
    operator: Terminal


class ValveCircuit:
    """The safeties of a diagram that stand between a control and its valve."""

    def __init__(self, facts: Facts) -> None:
        """Look at every control and its valve."""
        self._facts = facts.as_wired
        self.safeties: dict[ContactKey, AtValve] = {}
        for control in self._facts.of("ignition-control"):
            valve = self._facts.companion(control, "gas-valve")
            if valve is not None:
                for found in self._between(control, valve):
                    self.safeties.setdefault(key_of_contact(found.contact), found)

    def _between(self, control: Part, valve: Part) -> Iterator[AtValve]:
        for outputs, operators in _CIRCUITS:
            landed = control.with_role(*outputs)
            straight = {self._facts.net(output) for output in landed}
            for operator in valve.with_role(*operators):
                if self._facts.net(operator) not in straight:
                    for output in landed:
                        yield from self._on_the_way(control, output, operator)

    def _on_the_way(self, control: Part, output: Terminal, operator: Terminal) -> Iterator[AtValve]:
        way = self._facts.conduction.way(self._facts.net(output), self._facts.net(operator))
        if all(contact.part is not control for contact in way.contacts):
            for contact in way.contacts:
                if is_safety(contact):
                    yield AtValve(contact, output, operator)
