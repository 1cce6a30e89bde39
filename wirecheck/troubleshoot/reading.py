"""What can be seen or measured at a unit, what it can come to, and what it came to."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum
from typing import Literal

from wirecheck.model.claim import Claim
from wirecheck.model.diagram import Terminal
from wirecheck.model.text import Span

#: How a reading is made: by watching a call, by a look with the power off, with the meter, by a
#: trial call after something was done (a jumper across the burner ground, a cleaned rod).  What
#: was told in a statement is never asked for.
Kind = Literal["watch", "look", "volts", "ohms", "microamps", "trial", "told"]


class Stage(Enum):
    """When a reading is taken.

    OFF: power and gas off.  IDLE: power on, no call.  TRIAL: on a call with the gas cock shut,
    while a good unit tries to light.  RUN: on a call with the gas on, when a good unit has just
    lit.  WARM: some minutes later.
    """

    OFF = "off"
    IDLE = "idle"
    TRIAL = "trial"
    RUN = "run"
    WARM = "warm"


@dataclass(frozen=True, slots=True)
class Reading:
    """Something to be seen or measured.

    Attributes:
        key: its name for programs, the same each time: ``volts:box.mv:box.vc:run``.
        kind: how it is made.
        stage: when.
        ask: the request, in words of the trade: "Read the volts from box.MV to box.VC".
        unit: ``V``, ``ohm``, ``uA``; "" for what has `choices`.
        choices: what it can come to, in words, for what has no unit.
        cost: minutes of work, with the risk counted in.
        cautions: to be said beside it.
        points: the terminals it is about: two probes, the ends of a lead.
        lead: number of the lead it is about, if it is one of a lead.
        part: key of the part it is about, or "".
        about: what of the part, or of the unit, is looked at: a track of the run, an attribute.
        at_s: seconds from the call; nan where there is none.
        claim: what was told in an ``observe`` statement.
    """

    key: str
    kind: Kind
    stage: Stage
    ask: str
    unit: Literal["V", "ohm", "uA", ""]
    cost: float
    choices: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    points: tuple[Terminal, ...] = ()
    lead: int | None = None
    part: str = ""
    about: str = ""
    at_s: float = math.nan
    claim: Claim | None = None


@dataclass(frozen=True, slots=True)
class Observation:
    """What a reading came to; a choice is its number in `Reading.choices`, from 0.

    Attributes:
        reading: what was seen or measured.
        low, high: between these; nan if it could not be made.  An open circuit is inf ohm.
        words: as it was told: "24 V", "the pilot lights".
        span: where an ``observe`` statement says it; None if it was told otherwise.
    """

    reading: Reading
    low: float
    high: float
    words: str
    span: Span | None = None

    @property
    def is_missing(self) -> bool:
        """Whether it could not be made, or is not known."""
        return math.isnan(self.low)


@dataclass(frozen=True, slots=True)
class Outcome:
    """What a reading may come to.

    Attributes:
        words: "24 V", "open", "the main burner lights".
        value: to answer with: a typical value in the reading's unit, or the number of the choice.
        probability: of it.
        points_to: what would then be most likely, in words.
    """

    words: str
    value: float
    probability: float
    points_to: str
