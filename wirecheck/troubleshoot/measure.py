"""What a reading comes to on a unit with one fault, or with two."""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import cached_property

from wirecheck.circuit.found_wrong import SHORTED_OHM, condition
from wirecheck.circuit.instrument import WINDING_OHM
from wirecheck.circuit.netlist import ElementKey, load_ohms
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Diagram, Part
from wirecheck.model.kind import LoadSpec
from wirecheck.model.quantity import Quantity
from wirecheck.sequence.burner import BURNING
from wirecheck.sequence.flame import flame_path
from wirecheck.sequence.story import first
from wirecheck.troubleshoot.alteration import Alteration
from wirecheck.troubleshoot.fault import Fault
from wirecheck.troubleshoot.faulty_unit import FaultyUnit, Moment
from wirecheck.troubleshoot.reading import Reading, Stage
from wirecheck.troubleshoot.symptoms import story_of, watched

#: Volts from which an operator made for 24 V opens (common practice, no source).
OPENS_V = 18.0


class Patient:
    """A unit with some faults, and what every reading on it comes to."""

    def __init__(
        self, drawn: Diagram, nets: Nets, faults: tuple[Fault, ...], calling: tuple[str, ...]
    ) -> None:
        """Nothing is run yet."""
        self._drawn, self._nets, self._calling = drawn, nets, calling
        self.faults = faults
        self.alters = sum((fault.alters for fault in faults), Alteration())
        self.seems = sum((fault.seems for fault in faults), Alteration())
        self._lit_with: dict[Alteration, frozenset[str]] = {}

    @cached_property
    def unit(self) -> FaultyUnit:
        """The unit run."""
        return FaultyUnit(self._drawn, self.alters, self.seems, self._calling)

    def value(self, reading: Reading) -> float:
        """What a reading comes to: in its unit, or the number of the choice."""
        measure: dict[str, Callable[[Reading], float]] = {
            "watch": lambda each: watched(self._nets, self.unit.trace, each),
            "look": self._flow if reading.about == "flow" else self._look,
            "volts": self._volts,
            "ohms": self._ohms,
            "microamps": self._microamps,
            "trial": self._trial,
            "told": self._told,
        }
        return float(measure[reading.kind](reading))

    # ---- power on ----------------------------------------------------------------------------

    def _volts(self, reading: Reading) -> float:
        red, black = reading.points
        return self.unit.volts(_moment(reading), red, black)

    def _microamps(self, reading: Reading) -> float:
        control = self.unit.run_nets.diagram.parts[reading.part]
        story = story_of(self._nets, self.unit.trace, control)
        burns = any(
            span.state == BURNING and span.start_s <= reading.at_s <= span.end_s
            for span in story.first_flame
        )
        return flame_path(self.unit.run_nets, control).microamps if burns else 0.0

    def _trial(self, reading: Reading) -> float:
        """Whether the main burner lights with something done to the unit first."""
        if reading.about == "ground-jumper":
            ground, metal = reading.points
            done = Alteration(joined=((ground, metal),))
            poor = any(name == "loose" for _n, name, _v in (*self.alters.found, *self.seems.found))
            if self.unit.nets.joined(ground, metal) and not poor:
                done = Alteration()  # it bridges what is one conductor already
        else:
            (rod,) = reading.points
            done = Alteration(values=((rod.part, "rod", "clean"),))
            if self.unit.diagram.parts[rod.part].values.get("rod") != "dirty":
                done = Alteration()
        return float(reading.part in self._lit(Alteration()) or reading.part in self._lit(done))

    def _lit(self, done: Alteration) -> frozenset[str]:
        """The controls whose main burner lights with something done first."""
        if done not in self._lit_with:
            unit = self.unit
            if done != Alteration():
                unit = FaultyUnit(self._drawn, self.alters + done, self.seems, self._calling)
            self._lit_with[done] = frozenset(
                part.key
                for part in self._drawn.parts.values()
                if part.family == "ignition-control"
                and first(story_of(self._nets, unit.trace, part).main, BURNING)
            )
        return self._lit_with[done]

    def _told(self, reading: Reading) -> float:
        """Whether what was told in a statement is so; what cannot be decided does not speak."""
        if reading.claim is None:
            return 1.0
        verdict = self.unit.claims.answer(reading.claim).verdict
        return float(verdict in ("proved", "undecided"))

    # ---- a look ------------------------------------------------------------------------------

    def _look(self, reading: Reading) -> float:
        part = reading.part
        modes = {fault.mode for fault in self.faults}
        if reading.about == "gas":
            return float("gas-off" in modes)
        if reading.about == "landed":
            return float(self._has_moved(part))
        if reading.about == "gap":
            return float(any(fault.key == f"gap-wrong:{part}" for fault in self.faults))
        if reading.about == "cable":
            return float(any(number == reading.lead for number, _n, _v in self.alters.found))
        values = self.unit.diagram.parts[part].values
        if reading.about == "opened":
            return float("yes" in (values.get("blown"), values.get("tripped")))
        return float(values.get("stuck") == "open")

    def _flow(self, reading: Reading) -> float:
        """Whether no gas comes through an operator: all up to it must open."""
        valve = reading.points[0].part
        coils = self._nets.elements_of[valve]
        last = next(n for n, each in enumerate(coils) if (each.a, each.b) == reading.points)
        return float(self.alters.gas_off or any(self._shut(reading, n) for n in range(last + 1)))

    def _shut(self, reading: Reading, number: int) -> bool:
        valve = reading.points[0].part
        drawn, found = (nets.elements_of[valve] for nets in (self._nets, self.unit.nets))
        sticks = f"valve-sticks:{valve}:{drawn[number].name if len(drawn) > 1 else 'coil'}"
        if condition(found[number]) != "well" or any(each.key == sticks for each in self.faults):
            return True
        return self.unit.volts(_moment(reading), drawn[number].a, drawn[number].b) < OPENS_V

    def _has_moved(self, part: str) -> bool:
        leads = self._drawn.leads
        return any(
            there.part == part or getattr(leads[number], end).part == part
            for number, end, there in self.alters.moved
        )

    # ---- power off ---------------------------------------------------------------------------

    def _ohms(self, reading: Reading) -> float:
        if reading.about.startswith("whole"):
            return self.unit.ohms(*reading.points, calling=reading.about == "whole, calling")
        if reading.lead is not None:
            return self._lead_ohms(reading.lead, reading.about)
        if reading.about == "star":
            return self._star(reading)
        what, _blank, number = reading.about.partition(" ")
        part = self.unit.diagram.parts[reading.part]
        if what == "contact":
            return 0.0 if self.unit.off[ElementKey(part.key, int(number))] else math.inf
        return self._windings(part) if what == "windings" else self._coil(part, int(number))

    def _star(self, reading: Reading) -> float:
        """Which of the leads of a star, taken off there, leads to a short; 0: none."""
        point, common = reading.points
        shorted = self.unit.shorted_leads(point, common)
        leads = self._nets.leads_at(point)
        return float(next((n for n, lead in enumerate(leads, 1) if lead in shorted), 0))

    def _lead_ohms(self, number: int, about: str) -> float:
        drawn, found = self._drawn.leads[number], self.unit.diagram.leads[number]
        if about == "metal":
            return 0.0 if "touches" in found.given else math.inf
        if not found.conducts or (found.a, found.b) != (drawn.a, drawn.b):
            return math.inf
        loose = found.given.get("loose")
        return loose.value.high_base if loose and isinstance(loose.value, Quantity) else 0.0

    def _coil(self, part: Part, number: int) -> float:
        element = self.unit.nets.elements_of[part.key][number]
        found = condition(element)
        if found == "open" or not isinstance(element.spec, LoadSpec):
            return math.inf
        ohms = load_ohms(element.spec, part.values)
        return SHORTED_OHM if found == "shorted" or ohms is None else ohms.real

    def _windings(self, part: Part) -> float:
        return math.inf if part.values.get("winding") == "open" else WINDING_OHM


def _moment(reading: Reading) -> Moment | None:
    if reading.stage is Stage.IDLE:
        return None
    return Moment(reading.stage is not Stage.TRIAL, reading.at_s, reading.part)
