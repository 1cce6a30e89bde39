"""What every reading comes to under every fault of a diagram, simulated when it is asked for."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import cached_property
from typing import TYPE_CHECKING

from wirecheck.check.engine import check
from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Diagram, Part
from wirecheck.model.finding import Breaks, Finding
from wirecheck.sequence.no_go import NoGo
from wirecheck.troubleshoot.fault import Fault
from wirecheck.troubleshoot.flame_readings import flame_readings
from wirecheck.troubleshoot.gas_readings import gas_readings
from wirecheck.troubleshoot.lead_faults import lead_faults
from wirecheck.troubleshoot.looks import looks
from wirecheck.troubleshoot.measure import Patient
from wirecheck.troubleshoot.moments import Moments
from wirecheck.troubleshoot.part_faults import outside_faults, part_faults
from wirecheck.troubleshoot.power_off_readings import power_off_readings
from wirecheck.troubleshoot.reading import Observation, Reading
from wirecheck.troubleshoot.safe import Allowed, allowed
from wirecheck.troubleshoot.scale import CHOICE_APART, distance, position
from wirecheck.troubleshoot.symptoms import NEVER, RUNS, pull_ins, symptoms
from wirecheck.troubleshoot.volt_readings import VoltReadings

if TYPE_CHECKING:
    from wirecheck.troubleshoot.entropy import Floats

#: By how much likelier it is that nothing is broken where the drawing itself does not work (common
#: practice, no source).
WRONG_AS_DRAWN = 100.0

#: Modes that weaken the flame signal, more or less.
WEAKENS = frozenset(("ground-poor", "rod-dirty", "sense-poor"))
#: What is read of one as a rule, in microamps (common practice, no source).
WEAKENED_UA = 0.7
#: Less than this is no flame signal at all, in microamps (common practice, no source).
WEAK_UA = 0.1

#: Faults by their number in `Dictionary.faults`: one, or two at once.
Candidate = tuple[int, ...]


class Dictionary:
    """The faults and readings of one diagram.

    Attributes:
        diagram: as drawn.
        nets: of it.
        calling: keys of what calls for heat; none: all that can.
        symptoms: what is seen without a meter.
    """

    def __init__(self, diagram: Diagram, calling: tuple[str, ...] = ()) -> None:
        """List the faults; nothing is simulated yet."""
        self.diagram = diagram
        self.nets = Nets(diagram)
        self.calling = calling
        self.symptoms: tuple[Reading, ...] = tuple(symptoms(self.nets))
        self._patients: dict[Candidate, Patient] = {}
        self._values: dict[tuple[Candidate, str], float] = {}
        self._rows: dict[Candidate, Floats] = {}

    @cached_property
    def mistakes(self) -> tuple[Finding, ...]:
        """The mistakes of the drawing itself that matter, the worst first."""
        found = [each for each in check(self.diagram).findings if each.breaks > Breaks.WORKMANSHIP]
        return tuple(sorted(found, key=lambda each: each.breaks, reverse=True))

    @cached_property
    def faults(self) -> tuple[Fault, ...]:
        """Every fault; the first is that nothing is broken, and all is wired as drawn."""
        return (
            *outside_faults(self.nets, self.mistakes),
            *lead_faults(self.nets),
            *part_faults(self.nets),
        )

    @property
    def controls(self) -> list[Part]:
        """Its ignition controls, in the order of the text."""
        parts = self.diagram.parts.values()
        return [part for part in parts if part.family == "ignition-control"]

    def burner_key(self, control: Part) -> str:
        """Key of the burner of a control; "" where none is drawn."""
        burner = self.moments.companions.of(control, "burner")
        return burner.key if burner else ""

    def symptom(self, part: str, about: str) -> Reading | None:
        """The symptom that is about something of a part; None if there is no such."""
        found = (each for each in self.symptoms if (each.part, each.about) == (part, about))
        return next(found, None)

    @cached_property
    def singles(self) -> tuple[Candidate, ...]:
        """Each fault by itself."""
        return tuple((number,) for number in range(len(self.faults)))

    @cached_property
    def moments(self) -> Moments:
        """When readings are taken."""
        return Moments(self.nets, self.patient((0,)).unit)

    @cached_property
    def allowed(self) -> Allowed:
        """What may be done at the unit as drawn."""
        return allowed(self.mistakes, NoGo(self.nets, Conduction(self.nets)))

    @cached_property
    def volts(self) -> VoltReadings:
        """The volts that may be read."""
        return VoltReadings(self.nets, self.moments)

    @cached_property
    def readings(self) -> tuple[Reading, ...]:
        """Everything that can be measured, tried or looked at, beside the symptoms."""
        return (
            *flame_readings(self.nets, self.moments),
            *gas_readings(self.nets, self.moments),
            *looks(self.nets),
            *pull_ins(self.nets),
            *self.volts.all(),
            *power_off_readings(self.nets),
        )

    @cached_property
    def all_readings(self) -> tuple[Reading, ...]:
        """Symptoms and readings; the columns of `row`."""
        return (*self.symptoms, *self.readings)

    @cached_property
    def by_key(self) -> dict[str, Reading]:
        """Symptoms and readings by their key."""
        return {reading.key: reading for reading in self.all_readings}

    def patient(self, candidate: Candidate) -> Patient:
        """The unit with these faults."""
        if candidate not in self._patients:
            faults = tuple(self.faults[number] for number in candidate)
            self._patients[candidate] = Patient(self.diagram, self.nets, faults, self.calling)
        return self._patients[candidate]

    def value(self, candidate: Candidate, reading: Reading) -> float:
        """What a reading comes to with these faults: in its unit, or the number of the choice."""
        key = candidate, reading.key
        if key not in self._values:
            self._values[key] = self._read(candidate, reading)
        return self._values[key]

    def _read(self, candidate: Candidate, reading: Reading) -> float:
        """As simulated; a weakened flame signal reads like any other of its kind."""
        value = self.patient(candidate).value(reading)
        weak = reading.unit == "uA" and self._is_weak(candidate)
        return min(value, WEAKENED_UA) if weak else value

    def _is_weak(self, candidate: Candidate) -> bool:
        return any(self.faults[number].mode in WEAKENS for number in candidate)

    def apart(self, candidate: Candidate, observation: Observation) -> float:
        """How many tolerances what was observed lies from what would be read; 0 if not at all.

        A poor lead or a dirty rod lets some current through, as much as it happens to: of it the
        simulated value is one of many, anything from next to nothing to a good signal.
        """
        reading = observation.reading
        value = self.value(candidate, reading)
        if reading.unit == "uA" and observation.low >= WEAK_UA:
            if not self._burns(candidate, reading.part):
                return CHOICE_APART  # only a flame sends a current
            good = max(self.value((0,), reading), value)
            if self._is_weak(candidate) and observation.high <= good:
                return 0.0
        return distance(observation, value)

    def _burns(self, candidate: Candidate, control: str) -> bool:
        """Whether the flame that a control senses burns at all."""
        flame = self.symptom(control, "pilot") or self.symptom(control, "main")
        return flame is None or self.value(candidate, flame) != NEVER

    def row(self, candidate: Candidate) -> Floats:
        """Where every reading lies with these faults, in tolerances."""
        import numpy as np

        if candidate not in self._rows:
            self._rows[candidate] = np.array(
                [position(each, self._read(candidate, each)) for each in self.all_readings]
            )
        return self._rows[candidate]

    def prior(self, candidate: Candidate) -> float:
        """How likely these faults are before anything is known, among all single ones."""
        return math.prod(self._weights[number] for number in candidate)

    @cached_property
    def works_as_drawn(self) -> bool:
        """Whether every burner lights and runs if nothing is broken."""
        endings = [each for each in self.symptoms if each.about == "ending"]
        return all(self.value((0,), each) == RUNS for each in endings)

    @cached_property
    def _weights(self) -> list[float]:
        weights = [fault.weight for fault in self.faults]
        if not self.works_as_drawn:
            weights[0] *= WRONG_AS_DRAWN
        total = sum(weights)
        return [weight / total for weight in weights]

    def preparing(self) -> Iterator[int]:
        """Simulate every fault once, so that the first answer comes at once; how many are done."""
        for done, candidate in enumerate(self.singles, 1):
            for symptom in self.symptoms:
                self.value(candidate, symptom)
            yield done
