"""What is on earth well enough to carry the current of a load."""

from __future__ import annotations

from wirecheck.model.diagram import Terminal
from wirecheck.rules.facts import Facts


def carries_current(facts: Facts, terminal: Terminal) -> bool:
    """Whether a conductor is on earth by leads or by metal that is firmly fixed to it.

    Rust carries the current of a fault, and nobody's motor.
    """
    return facts.net(terminal) in facts.once(_firmly_earthed)


def _firmly_earthed(facts: Facts) -> frozenset[int]:
    bonds = (
        element
        for part in facts.diagram.parts.values()
        if part.structure.bonds
        for element in facts.nets.elements_of[part.key]
        if element.type == "bond" and element.name == "solid"
    )
    return frozenset({facts.earth, *(bond.net_a for bond in bonds)})
