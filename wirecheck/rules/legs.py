"""The line supply as the rules see it: which leg reaches where, and the volts between two legs."""

from __future__ import annotations

import cmath
import math
from collections.abc import Mapping
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal, Value
from wirecheck.model.kind import SourceSpec
from wirecheck.parts.amounts import each_quantity
from wirecheck.rules.facts import Facts


class Leg(NamedTuple):
    """A terminal of a source of line volts; ``hot`` unless it is the neutral."""

    terminal: Terminal
    hot: bool


class Legs:
    """The legs of every supply of line volts that is drawn; use it as ``facts.once(Legs)``."""

    def __init__(self, facts: Facts) -> None:
        """Linear in the parts."""
        self._facts = facts
        self._volts: dict[Terminal, complex] = {}
        self._at: dict[int, list[Leg]] = {}
        self._of_part: dict[str, list[Terminal]] = {}
        self.sources: list[Element] = []
        for elements in facts.nets.elements_of.values():
            for element in elements:
                end, source = facts.diagram.spec(element.a), element.spec
                if isinstance(source, SourceSpec) and end is not None and end.circuit == "line":
                    self.sources.append(element)
                    self._add(element, source)

    def _add(self, element: Element, spec: SourceSpec) -> None:
        size = rated_volts(element.part.values, spec.volts) * spec.share
        phase = cmath.rect(size, math.radians(spec.phase_deg))
        for terminal, volts in ((element.a, phase), (element.b, 0j)):
            if terminal not in self._volts:
                self._volts[terminal] = volts
                self._of_part.setdefault(terminal.part, []).append(terminal)
                area = self._facts.sides.area(terminal)
                self._at.setdefault(area, []).append(Leg(terminal, terminal == element.a))

    def at(self, terminal: Terminal) -> list[Leg]:
        """Legs that this conductor is on, or that reach it through contacts."""
        return self._at.get(self._facts.sides.area(terminal), [])

    def beside(self, leg: Terminal) -> tuple[Terminal, ...]:
        """The other legs of the same supply."""
        return tuple(other for other in self._of_part[leg.part] if other != leg)

    def is_hot(self, terminal: Terminal) -> bool:
        """Whether hot legs, and they alone, reach a terminal."""
        legs = self.at(terminal)
        return bool(legs) and all(leg.hot for leg in legs)

    def is_neutral(self, terminal: Terminal) -> bool:
        """Whether the neutral, and it alone, reaches a terminal."""
        legs = self.at(terminal)
        return bool(legs) and not any(leg.hot for leg in legs)

    def volts(self, a: Terminal, b: Terminal) -> float | None:
        """Nominal volts between two terminals; None where no supply or not one alone says it."""
        found = {
            round(abs(self._volts[one.terminal] - self._volts[other.terminal]), 6)
            for one in self.at(a)
            for other in self.at(b)
            if one.terminal.part == other.terminal.part
        }
        return found.pop() if len(found) == 1 else None


def rated_volts(values: Mapping[str, Value], volts: float | str) -> float:
    """Volts of a source: a number, or those of an attribute, of a list the highest."""
    if not isinstance(volts, str):
        return float(volts)
    return max((each.high_base for each in each_quantity(values.get(volts))), default=0.0)
