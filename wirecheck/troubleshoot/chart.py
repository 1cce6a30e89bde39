"""The whole decision tree from one symptom: like the chart in a service manual, for this diagram.

Every step is the reading that the conversation would ask for next, every way out of it one of the
outcomes that can come of it; it ends where the conversation would.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import count
from typing import Final

from wirecheck.troubleshoot.conversation import Conversation
from wirecheck.troubleshoot.diagnosis import Ending, Group
from wirecheck.troubleshoot.reading import Reading

#: What is rarer than this among all that the chart is for is not followed further.
LEAST: Final = 0.004
#: So many readings in a row and no more.
DEEPEST: Final = 12


@dataclass(frozen=True, slots=True)
class Step:
    """A place in the chart.

    Attributes:
        number: of a reading, counted in the order in which a reader comes to them; 0 at an end.
        probability: how often one comes here, of 1 at the top.
        reading: to be made here; None at an end.
        branches: the ways on, the likeliest first.
        groups: what may be it, the likeliest first.
        ending: what to do at an end; None where the chart stops short, as it is too rare.
    """

    number: int
    probability: float
    reading: Reading | None
    branches: tuple[Branch, ...]
    groups: tuple[Group, ...]
    ending: Ending | None

    @property
    def steps(self) -> Iterator[Step]:
        """This one and all below it, in the order of their numbers."""
        yield self
        for branch in self.branches:
            yield from branch.step.steps

    @property
    def readings(self) -> tuple[Step, ...]:
        """Those at which something is read."""
        return tuple(step for step in self.steps if step.reading is not None)


@dataclass(frozen=True, slots=True)
class Branch:
    """A way out of a step: what the reading comes to, how often, and where that leads."""

    words: str
    probability: float
    step: Step


def chart(conversation: Conversation, least: float = LEAST) -> Step:
    """Follow a conversation into every outcome.

    Args:
        conversation: with what is known at the top.
        least: what is rarer is not followed further.
    """
    return _step(conversation, 1.0, least, count(1), DEEPEST)


def _step(
    conversation: Conversation, probability: float, least: float, numbers: Iterator[int], left: int
) -> Step:
    diagnosis = conversation.diagnosis
    advice = diagnosis.advice
    if advice is None or probability < least or not left:
        return Step(0, probability, None, (), diagnosis.groups, diagnosis.ending)
    number = next(numbers)
    branches = tuple(
        Branch(
            outcome.words,
            outcome.probability,
            _step(
                conversation.answer(advice.reading, outcome.value, outcome.words),
                probability * outcome.probability,
                least,
                numbers,
                left - 1,
            ),
        )
        for outcome in advice.outcomes
    )
    return Step(number, probability, advice.reading, branches, diagnosis.groups, None)
