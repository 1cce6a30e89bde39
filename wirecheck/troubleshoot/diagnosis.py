"""What is known of a unit so far: which faults explain it, and what to read next."""

from __future__ import annotations

from dataclasses import dataclass

from wirecheck.troubleshoot.fault import Fault
from wirecheck.troubleshoot.reading import Observation, Outcome, Reading


@dataclass(frozen=True, slots=True)
class Suspect:
    """A fault, or two at once, that may be it.

    Attributes:
        faults: one, or the two of a double fault; none: the wiring as drawn does it by itself.
        probability: from 0 to 1, among all that is thought of.
        disagrees: the observations that it does not explain.
    """

    faults: tuple[Fault, ...]
    probability: float
    disagrees: tuple[Observation, ...] = ()

    @property
    def what(self) -> str:
        """For people."""
        return "; and ".join(fault.what for fault in self.faults)


@dataclass(frozen=True, slots=True)
class Group:
    """Suspects that the work is the same for, or that no reading left tells apart.

    Attributes:
        suspects: the likeliest first.
        probability: of all of them.
        repair: what mends them, in order.
    """

    suspects: tuple[Suspect, ...]
    probability: float
    repair: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Advice:
    """The next reading, and why this one.

    Attributes:
        reading: to be made.
        outcomes: what it may come to, the likeliest first.
        gain_bits: by how much it is expected to narrow down.
        others: what would be read next, the likeliest first, and what narrows down nearly as much.
    """

    reading: Reading
    outcomes: tuple[Outcome, ...]
    gain_bits: float
    others: tuple[Reading, ...]


@dataclass(frozen=True, slots=True)
class Ending:
    """What to do at last: the repair and the proof that it holds.

    Attributes:
        is_sure: whether the readings leave hardly anything but one piece of work.
        repair: what to mend, in order.
        proof: how the unit is proved afterwards.
        cautions: to be said before.
    """

    is_sure: bool
    repair: tuple[str, ...]
    proof: tuple[str, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Diagnosis:
    """All that is known so far.

    Attributes:
        observations: what it rests on, in order.
        groups: what may be it, the likeliest first.
        advice: the next reading; None when nothing is left worth reading.
        ending: the repair; None while there is something worth reading.
        remarks: two faults at once, a fault outside the list, contradictions: sentences.
        left_bits: how much is not known (entropy over the groups).
        dangers: those of the remarks that are to be said before all else.
    """

    observations: tuple[Observation, ...]
    groups: tuple[Group, ...]
    advice: Advice | None
    ending: Ending | None
    remarks: tuple[str, ...]
    left_bits: float
    dangers: tuple[str, ...] = ()
