"""What a correction comes to."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.correct.proof import Proof
from wirecheck.correct.rewired import Change, Rewired


class Bound(NamedTuple):
    """How far to look: so many edits, and so many seconds of work.

    Where the seconds are not enough, an answer stands with what was proved until then.
    """

    edits: int = 3
    seconds: float = 20.0


class Tried(NamedTuple):
    """How much was tried: ``number`` ways to make so many ``edits``, of ``out_of``.

    ``out_of`` is None where not all were listed.
    """

    edits: int
    number: int
    out_of: int | None

    @property
    def all(self) -> bool:
        """Whether every one was tried."""
        return self.number == self.out_of


class Answer(NamedTuple):
    """One way of mending it.

    Attributes:
        state: the diagram with the changes made.
        proof: what was found in it: nothing of safety or operation.
        as_good: other changes, as few, that join the same terminals.
    """

    state: Rewired
    proof: Proof
    as_good: tuple[Rewired, ...]

    @property
    def changes(self) -> tuple[Change, ...]:
        """What to change, in order."""
        return self.state.changes


class Correction(NamedTuple):
    """What was found.

    Attributes:
        before: the diagram as found.
        answers: all that were found with the fewest edits, the likelier mistake first; each joins
            other terminals than the ones before it.
        tried: what was tried, by number of edits.
        in_time: False if the time ended before all was tried that was to be tried.
        nearest: where nothing mends it, the try that left the fewest findings.
        bound: how far it was looked.
    """

    before: Proof
    answers: tuple[Answer, ...]
    tried: tuple[Tried, ...]
    in_time: bool
    nearest: Answer | None
    bound: Bound

    @property
    def nothing_to_do(self) -> bool:
        """Whether nothing of safety or operation was found."""
        return self.before.holds

    @property
    def proved_fewest(self) -> bool:
        """Whether every way with fewer edits was tried."""
        fewest = len(self.answers[0].changes) if self.answers else 0
        return all(each.all for each in self.tried if each.edits < fewest)
