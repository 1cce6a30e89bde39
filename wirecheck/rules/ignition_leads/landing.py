"""Where the ignition leads of each burner land: one reading, shared by the rules of the family.

Each rule reports one of the mistakes named here, so that leads that are landed wrong give one
finding however many terminals they leave empty.
"""

from __future__ import annotations

from collections.abc import Iterator
from enum import Enum, auto
from typing import NamedTuple

from wirecheck.model.diagram import Terminal
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.hookup import Hookup, hookups

#: Roles that belong on an ignition or sense lead, and points that only join leads.
_AT_HOME = frozenset({"spark", "sense", "spark-coil-cold", "electrode", "rod", "tie", ""})


class Mistake(Enum):
    """What is wrong with the landing of the leads between a control and its burner."""

    ROD_ON_SPARK = auto()
    EXCHANGED = auto()
    ELECTRODE_ON_SENSE = auto()
    SPARK_EARTHED = auto()
    SPARK_ON_CONTROL_CIRCUIT = auto()
    SPARK_MISSING = auto()
    SENSE_EARTHED = auto()
    SENSE_ON_CONTROL_CIRCUIT = auto()
    SENSE_FROM_ANOTHER_BURNER = auto()
    SENSE_MISSING = auto()


class Landing(NamedTuple):
    """A mistake of one hookup.

    ``at`` is a terminal that does not belong on that lead, or else the control's own end of it.
    """

    hookup: Hookup
    mistake: Mistake
    at: Terminal


def landings(facts: Facts) -> tuple[Landing, ...]:
    """Every mistake, in the order of the controls; use it as ``facts.once(landings)``."""
    reading = _Reading(facts)
    return tuple(
        Landing(hookup, mistake, at)
        for hookup in facts.once(hookups)
        for mistake, at in reading.mistakes(hookup)
    )


def landed_wrong(facts: Facts, mistake: Mistake) -> Iterator[Landing]:
    """The hookups with one mistake, judged by where the leads land, broken or not."""
    wired = facts.as_wired
    return (landing for landing in wired.once(landings) if landing.mistake is mistake)


def wrong_end(facts: Facts, landing: Landing, astray: tuple[int, Terminal] | None) -> Terminal:
    """What to call the other circuit: where the lead astray ends, or else its first terminal."""
    if astray is not None and facts.role(astray[1]) not in _AT_HOME:
        return astray[1]
    return landing.at


class _Reading:
    """Reads one diagram; looks through each net of an ignition or sense lead once."""

    def __init__(self, facts: Facts) -> None:
        self.facts = facts
        self._strange: dict[int, Terminal | None] = {}

    def mistakes(self, hookup: Hookup) -> Iterator[tuple[Mistake, Terminal]]:
        """The mistakes of one hookup: one of both leads together, or one of each."""
        both = self._of_both_leads(hookup)
        if both is not None:
            yield both, hookup.spark
            return
        yield from self._of_spark_lead(hookup)
        yield from self._of_sense_lead(hookup)

    def _of_both_leads(self, hookup: Hookup) -> Mistake | None:
        joined = self._joined_off_ground
        rod_on_spark = joined(hookup, hookup.rod, hookup.spark)
        electrode_on_sense = joined(hookup, hookup.electrode, hookup.sense)
        if joined(hookup, hookup.spark, hookup.sense):
            return Mistake.ROD_ON_SPARK
        if rod_on_spark:
            return Mistake.EXCHANGED if electrode_on_sense else Mistake.ROD_ON_SPARK
        return Mistake.ELECTRODE_ON_SENSE if electrode_on_sense else None

    def _of_spark_lead(self, hookup: Hookup) -> Iterator[tuple[Mistake, Terminal]]:
        spark, electrode = hookup.spark, hookup.electrode
        if hookup.grounded(self.facts, spark) or hookup.grounded(self.facts, electrode):
            yield Mistake.SPARK_EARTHED, spark
        elif strange := self._strange_at(spark):
            yield Mistake.SPARK_ON_CONTROL_CIRCUIT, strange
        elif not self.facts.joined(spark, electrode) and self._traced(spark, electrode):
            yield Mistake.SPARK_MISSING, self._strange_at(electrode) or spark

    def _of_sense_lead(self, hookup: Hookup) -> Iterator[tuple[Mistake, Terminal]]:
        sense, rod, ends = hookup.sense, hookup.rod, hookup.sense_lead
        strange = next((found for end in ends if (found := self._strange_at(end))), None)
        if any(hookup.grounded(self.facts, end) for end in ends):
            yield Mistake.SENSE_EARTHED, sense
        elif strange:
            yield Mistake.SENSE_ON_CONTROL_CIRCUIT, strange
        elif rod is not None and not self.facts.joined(sense, rod):
            other = self._rod_of_another(sense)
            if other:
                yield Mistake.SENSE_FROM_ANOTHER_BURNER, other
            elif self._traced(sense, rod):
                yield Mistake.SENSE_MISSING, sense

    def _joined_off_ground(self, hookup: Hookup, a: Terminal | None, b: Terminal) -> bool:
        """Joined by leads of their own, not by both being landed on ground."""
        return self.facts.joined(a, b) and not hookup.grounded(self.facts, b)

    def _traced(self, *ends: Terminal) -> bool:
        return all(self.facts.is_traced(end) for end in ends)

    def _strange_at(self, end: Terminal) -> Terminal | None:
        """The first terminal of an end's net that belongs to another circuit."""
        net = self.facts.net(end)
        if net not in self._strange:
            members = self.facts.nets.members[net]
            strange = (t for t in members if self.facts.role(t) not in _AT_HOME)
            self._strange[net] = next(strange, None)
        return self._strange[net]

    def _rod_of_another(self, sense: Terminal) -> Terminal | None:
        members = self.facts.nets.members[self.facts.net(sense)]
        return next((t for t in members if self.facts.role(t) in ("rod", "electrode")), None)
