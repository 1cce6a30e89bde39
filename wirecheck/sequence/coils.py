"""Coils, operators and motors: which of them act on the volts they get."""

from __future__ import annotations

from collections.abc import Mapping
from typing import cast

from wirecheck.circuit.found_wrong import condition
from wirecheck.circuit.netlist import ElementKey, highest
from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import Part
from wirecheck.model.kind import LoadSpec
from wirecheck.sequence.answers import Answer, View, coil_answer

#: So many times its rated volts destroy a coil or an electronic part (common practice, no source).
DESTROYS = 1.5


class Coils:
    """Everything with rated volts that takes current, and whether it acts.

    Attributes:
        elements: the loads, by key, in the order of the text.
        answers: what each does on the volts it has now: no, may, yes.
        acting: whether that is taken as yes, by the view.
        destroyed: the loads that burnt out on too many volts.
        held: loads that never came to rest at this moment, and what they are taken to do.
    """

    def __init__(self, nets: Nets, view: View) -> None:
        """All at rest, without volts."""
        self.view = view
        self.elements = {
            ElementKey(part, number): element
            for part, elements in nets.elements_of.items()
            for number, element in enumerate(elements)
            if isinstance(element.spec, LoadSpec) and element.spec.volts is not None
        }
        self.rated_v = {key: _rated_v(element) for key, element in self.elements.items()}
        self._keys_of: dict[tuple[str, str], list[ElementKey]] = {}
        for key, element in self.elements.items():
            self._keys_of.setdefault((key.part, element.name), []).append(key)
        self._bad = {key for key, element in self.elements.items() if condition(element) != "well"}
        self.answers = dict.fromkeys(self.elements, Answer.NO)
        self.acting = dict.fromkeys(self.elements, False)
        self.destroyed: set[ElementKey] = set()
        self.held: dict[ElementKey, bool] = {}

    def take(self, volts: Mapping[ElementKey, float]) -> list[ElementKey]:
        """Have every load follow the volts across it; those that changed."""
        changed = []
        for key, element in self.elements.items():
            was = self.acting[key]
            self.answers[key] = answer = self._answer(key, element, volts.get(key, 0.0))
            now = self.held.get(key, answer.counts(self.view))
            if now != was:
                self.acting[key] = now
                changed.append(key)
        return changed

    def _answer(self, key: ElementKey, element: Element, volts: float) -> Answer:
        if key in self._bad or key in self.destroyed:
            return Answer.NO
        return coil_answer(element.part, volts, self.rated_v[key], is_open=self.acting[key])

    def acts(self, part: Part, name: str) -> bool:
        """Whether a load of a part, by its name, acts."""
        return any(self.acting[key] for key in self._keys_of.get((part.key, name), ()))

    def keys(self, part: Part, name: str) -> list[ElementKey]:
        """The loads of a part that have a name; none where it has no such."""
        return self._keys_of.get((part.key, name), [])

    def overvolted(self, volts: Mapping[ElementKey, float]) -> ElementKey | None:
        """A load that these volts destroy, if there is one that is not destroyed yet."""
        for key, rated in self.rated_v.items():
            over = volts.get(key, 0.0) > DESTROYS * rated
            if over and key not in self.destroyed and key not in self._bad:
                return key
        return None


def _rated_v(element: Element) -> float:
    volts = cast(LoadSpec, element.spec).volts
    return highest(element.part.values.get(volts)) if isinstance(volts, str) else volts or 0.0
