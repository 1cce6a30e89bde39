"""What a comparison comes to."""

from __future__ import annotations

from typing import Literal, NamedTuple

from wirecheck.compare.circuits import Circuit
from wirecheck.compare.function import Witness
from wirecheck.compare.matching import Pair
from wirecheck.compare.misses import Miss
from wirecheck.model.diagram import Diagram, Terminal

How = Literal["structure", "function", ""]


class Voice(NamedTuple):
    """What the two diagrams are called in sentences."""

    first: str = "the first"
    second: str = "the second"


class Difference(NamedTuple):
    """One difference, named in circuits and leads.

    Attributes:
        circuit: the circuit it is told under.
        message: in words.
        miss: what was found.
        terminals: the terminals it is about, as the first calls them.
        first_leads, leads: numbers of the leads it is about, of the first and of the second.
        landed: where a lead has landed instead, as the first calls it: the end that is as it
            should be, and the one that is not; None if none has.
    """

    circuit: Circuit
    message: str
    miss: Miss
    terminals: tuple[Terminal, ...]
    first_leads: tuple[int, ...]
    leads: tuple[int, ...]
    landed: tuple[Terminal, Terminal] | None = None


class Seen(NamedTuple):
    """A position of the switches, or a time in a call, in which the two do not do the same.

    Attributes:
        when: how the switches stand, or the time.
        first, second: what each does then.
        witness: the two terminals; None where a run shows it.
    """

    when: str
    first: str
    second: str
    witness: Witness | None


class Comparison(NamedTuple):
    """Whether two diagrams do the same.

    Attributes:
        first, second: the diagrams.
        how: ``structure``: wired alike, ``function``: wired otherwise, and they do the same; ""
            if they do not.
        pairs: which part of the first is which of the second.
        differences: how the wiring of the second differs from the first's.
        seen: where what they do differs.
        does_first, does_second: how a call for heat ends at each, a sentence for each control.
        remarks: what else there is to say.
    """

    first: Diagram
    second: Diagram
    how: How
    pairs: tuple[Pair, ...]
    differences: tuple[Difference, ...] = ()
    seen: tuple[Seen, ...] = ()
    does_first: tuple[str, ...] = ()
    does_second: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()

    @property
    def same(self) -> bool:
        """Whether they do the same."""
        return bool(self.how)
