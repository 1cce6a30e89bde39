"""When no single fault explains all: two at once, and which observations do not go together."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import islice

from wirecheck.troubleshoot.dictionary import Candidate, Dictionary
from wirecheck.troubleshoot.hitting import minimal_conflicts, minimal_hitting_sets
from wirecheck.troubleshoot.posterior import AGAINST, Standing, standings
from wirecheck.troubleshoot.reading import Observation

#: So many pairs, the likeliest, are simulated: as many as take about a second.
MOST_PAIRS = 15
#: So many of the faults that explain an observation, the likeliest, are paired.
MOST_EACH = 40


def doubles(dictionary: Dictionary, observations: Sequence[Observation]) -> list[Standing]:
    """Pairs of faults that explain all that no single one does, simulated together.

    What a unit with nothing broken would not show is a conflict: some fault that explains it must
    be there.  A pair must hit all of these; whether the two together really show what was seen,
    only a run of both can tell.
    """
    told = [each for each in observations if not each.is_missing]
    conflicts = []
    likeliest = sorted(dictionary.singles, key=dictionary.prior, reverse=True)
    for observation in told:
        if not _explains(dictionary, (0,), observation):
            found = (one for one in likeliest if _explains(dictionary, one, observation))
            conflicts.append([number for (number,) in islice(found, MOST_EACH)])
    if len(conflicts) < 2 or not all(conflicts):
        return []
    pairs: list[Candidate] = [
        tuple(sorted(each)) for each in minimal_hitting_sets(conflicts, 2) if len(each) == 2
    ]
    pairs = [pair for pair in pairs if _compatible(dictionary, pair)]
    pairs.sort(key=dictionary.prior, reverse=True)
    return [
        each for each in standings(dictionary, pairs[:MOST_PAIRS], observations) if not each.failed
    ]


def contradictions(
    dictionary: Dictionary, observations: Sequence[Observation]
) -> list[tuple[Observation, ...]]:
    """The smallest sets of observations that no single fault shows together."""
    told = [number for number, each in enumerate(observations) if not each.is_missing]
    # What is seen is compared first: few faults are left for which a reading is then simulated.
    told.sort(key=lambda number: observations[number].reading.kind != "watch")

    def holds(numbers: tuple[int, ...]) -> bool:
        return any(
            all(_explains(dictionary, one, observations[number]) for number in numbers)
            for one in dictionary.singles
        )

    found = minimal_conflicts(told, holds, most=3)
    return [tuple(observations[number] for number in sorted(numbers)) for numbers in found]


def _explains(dictionary: Dictionary, candidate: Candidate, observation: Observation) -> bool:
    return dictionary.apart(candidate, observation) <= AGAINST


def _compatible(dictionary: Dictionary, pair: Candidate) -> bool:
    """Whether both can be there at once: not two faults of one lead or one contact."""
    one, other = (dictionary.faults[number] for number in pair)
    return one.site != other.site
