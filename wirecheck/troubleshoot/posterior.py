"""How likely each candidate is, given what was observed (Bayes), and what is against it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from wirecheck.troubleshoot.dictionary import Candidate, Dictionary
from wirecheck.troubleshoot.reading import Observation

#: How often a reading is plainly wrong: misread, or taken at the wrong place (common practice, no
#: source).
WRONG = 1e-3
#: Beyond a tolerance a value soon gets unlikely: the share of a tolerance to one sigma.
SIGMA = 0.5
#: From so many tolerances on, an observation is against a candidate.
AGAINST = 2.0


class Standing(NamedTuple):
    """How a candidate stands.

    Attributes:
        candidate: its faults.
        weight: prior times likelihoods; no share of one.
        failed: numbers of the observations against it.
    """

    candidate: Candidate
    weight: float
    failed: tuple[int, ...]


def standings(
    dictionary: Dictionary,
    candidates: Iterable[Candidate],
    observations: Sequence[Observation],
    most_failed: int = 0,
) -> list[Standing]:
    """How candidates stand, in the order given, without those that fail too many observations.

    What a candidate would show is simulated only until it has failed: most fail what is seen.
    """
    told = [(number, each) for number, each in enumerate(observations) if not each.is_missing]
    told.sort(key=lambda each: each[1].reading.kind != "watch")  # the cheapest to simulate first
    found = (_standing(dictionary, candidate, told, most_failed) for candidate in candidates)
    return [standing for standing in found if standing is not None]


def _standing(
    dictionary: Dictionary,
    candidate: Candidate,
    told: Sequence[tuple[int, Observation]],
    most_failed: int,
) -> Standing | None:
    weight = dictionary.prior(candidate)
    failed: list[int] = []
    for number, observation in told:
        apart = dictionary.apart(candidate, observation)
        weight *= likelihood(apart)
        if apart > AGAINST:
            failed.append(number)
            if len(failed) > most_failed:
                return None
    return Standing(candidate, weight, tuple(sorted(failed)))


def likelihood(apart: float) -> float:
    """Of an observation so many tolerances from what would be read; 1 within one."""
    beyond = max(0.0, apart - 1.0) / SIGMA
    return WRONG + (1 - WRONG) * math.exp(-beyond * beyond / 2)
