"""The conversation of a technician with the diagram: what was observed, and what follows from it.

A conversation is a value: an answer gives a further one, the old one stays, and going back is to
take it again.  The same answers always give the same diagnosis.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from wirecheck.troubleshoot.diagnosis import Diagnosis
from wirecheck.troubleshoot.dictionary import Dictionary
from wirecheck.troubleshoot.judge import judge
from wirecheck.troubleshoot.reading import Observation, Reading
from wirecheck.troubleshoot.words import value_words


@dataclass(frozen=True)
class Conversation:
    """What was observed so far.

    Attributes:
        dictionary: of the diagram.
        observations: in order.
        given: so many of them were there at the beginning, and are not taken back.
    """

    dictionary: Dictionary
    observations: tuple[Observation, ...] = ()
    given: int = 0

    @classmethod
    def begun(cls, dictionary: Dictionary, given: Sequence[Observation] = ()) -> Conversation:
        """A conversation that begins with what is known already."""
        return cls(dictionary, tuple(given), len(given))

    def answer(self, reading: Reading, value: float | None, words: str = "") -> Conversation:
        """The conversation with one more reading.

        Args:
            reading: that was made.
            value: what it came to, in its unit, or the number of the choice; None: it cannot be
                made, or is not known, and is not asked again.
            words: as it was told; made up from the value where nothing is given.
        """
        number = math.nan if value is None else value
        told = words or ("not known" if value is None else value_words(reading, value))
        observation = Observation(reading, number, number, told)
        return Conversation(self.dictionary, (*self.observations, observation), self.given)

    def back(self) -> Conversation:
        """The conversation without its last answer; the same where there is none."""
        kept = max(self.given, len(self.observations) - 1)
        return Conversation(self.dictionary, self.observations[:kept], self.given)

    @cached_property
    def diagnosis(self) -> Diagnosis:
        """What follows from all that."""
        return judge(self.dictionary, self.observations)
