"""What a meter sheet is made of: readings, in groups, in the stages of a call for heat."""

from __future__ import annotations

from enum import Enum
from typing import Literal, NamedTuple

from wirecheck.check.engine import Checked
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding

#: What the meter is set to.
Meter = Literal["volts AC", "ohms", "amps AC", "microamps DC"]

#: The unit of a reading's value, whatever it is printed in.
UNITS: dict[Meter, str] = {
    "volts AC": "V",
    "ohms": "ohm",
    "amps AC": "A",
    "microamps DC": "uA",
}


class Stage(Enum):
    """When a reading is taken, in the order of the work.

    First without power, then with the gas shut: nothing burns before the wiring is known.
    """

    POWER_OFF = "power-off"
    IDLE = "idle"
    CALL = "call"
    DAMPER_OPENING = "damper-opening"
    TRIAL = "trial"
    STOPPED = "stopped"
    RUN = "run"


class Probe(NamedTuple):
    """Where a probe goes.

    Attributes:
        terminal: the terminal, or the one a lead was taken off.
        shown: for people, with the label printed there.
        lead: number of the lead whose loose end it is; None: the terminal itself.
    """

    terminal: Terminal
    shown: str
    lead: int | None = None


class Wrong(NamedTuple):
    """Another reading, and what it means."""

    reading: str
    means: str


class Reading(NamedTuple):
    """One reading.

    Attributes:
        step: its number on the sheet, from 1.
        meter: what the meter is set to.
        red, black: where its probes go; no black one: a clamp, which goes where the red one says.
        how: what to do first, or how to hold it; "" if nothing.
        value: what this unit shows, in the unit of `UNITS`; inf where nothing conducts.
        good: the same for people, with what goes with it.
        wrong: what other readings mean.
        line_voltage: a probe is at line voltage, or beside it.
        in_series: the meter takes the place of a lead, it is not put across anything.
    """

    step: int
    meter: Meter
    red: Probe
    black: Probe | None
    how: str
    value: float
    good: str
    wrong: tuple[Wrong, ...]
    line_voltage: bool = False
    in_series: bool = False


class Group(NamedTuple):
    """Readings that belong together.

    Attributes:
        name: of the control they are taken at; "" for the unit as a whole.
        notes: what to know of it, or why readings are missing.
        readings: in the order of the work.
    """

    name: str
    notes: tuple[str, ...]
    readings: tuple[Reading, ...]


class Section(NamedTuple):
    """One stage.

    Attributes:
        stage: which.
        title: for people.
        set_up: how the unit is brought there.
        groups: its readings.
    """

    stage: Stage
    title: str
    set_up: tuple[str, ...]
    groups: tuple[Group, ...]


class MeterSheet(NamedTuple):
    """The meter sheet of one diagram.

    Attributes:
        checked: the diagram and what a check says of it.
        cautions: for whoever holds the meter.
        as_drawn: how a call ends with this wiring, a sentence for each control.
        dangers: what is dangerous in that call, in sentences.
        remarks: what goes for all readings, and what is not to be measured.
        sections: the stages.
    """

    checked: Checked
    cautions: tuple[str, ...]
    as_drawn: tuple[str, ...]
    dangers: tuple[str, ...]
    remarks: tuple[str, ...]
    sections: tuple[Section, ...]

    @property
    def readings(self) -> tuple[Reading, ...]:
        """All readings in order."""
        return tuple(
            reading
            for section in self.sections
            for group in section.groups
            for reading in group.readings
        )

    @property
    def is_good(self) -> bool:
        """Whether its values are those of a unit in which no mistake was found."""
        return not self.mistakes and not self.dangers

    @property
    def mistakes(self) -> tuple[Finding, ...]:
        """The findings that make its values those of the unit as drawn, not of a good one."""
        return tuple(
            finding for finding in self.checked.findings if finding.breaks > Breaks.WORKMANSHIP
        )
