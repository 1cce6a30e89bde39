"""Which reading to take next: what narrows down most for its effort and risk."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, NamedTuple

from wirecheck.troubleshoot.dictionary import Dictionary
from wirecheck.troubleshoot.entropy import entropy_bits, expected_entropies, outcomes
from wirecheck.troubleshoot.posterior import Standing
from wirecheck.troubleshoot.reading import Observation, Reading
from wirecheck.troubleshoot.sequencing import BREADTH, Sequencing

if TYPE_CHECKING:
    from wirecheck.troubleshoot.entropy import Floats, Numbers

#: With more candidates than this, what is seen is asked for first: it costs next to nothing.
MANY = 150
#: With so few groups left the sequence is looked at to its end.
FEW = 6
#: A reading expected to tell less than this is not worth taking, in bits.
LEAST_GAIN = 0.01
#: So many other readings are named beside the best.
OTHERS = 3


class Table(NamedTuple):
    """What is left to read, and what it comes to.

    Attributes:
        standings: the candidates.
        shares: of one, of each.
        readings: those left.
        numbers: (candidates, readings) outcome of each.
        groups: (candidates,) group of each: those need not be told apart.
    """

    standings: Sequence[Standing]
    shares: Floats
    readings: Sequence[Reading]
    numbers: Numbers
    groups: Numbers


class Choice(NamedTuple):
    """The best reading: its column, its gain in bits, and the columns of what would come next."""

    column: int
    gain_bits: float
    others: tuple[int, ...]


def table(
    dictionary: Dictionary,
    standing: Sequence[Standing],
    observations: Sequence[Observation],
    *,
    seen_first: bool = False,
) -> Table:
    """Set up what is left.

    Args:
        dictionary: of the diagram.
        standing: the candidates; there is at least one.
        observations: the readings that have been made, or could not be.
        seen_first: leave to what is seen without a meter, if any of that is left.
    """
    import numpy as np

    from wirecheck.troubleshoot.scale import position

    taken = {each.reading.key for each in observations}
    may = dictionary.allowed.and_seen(observations)

    def is_left(reading: Reading) -> bool:
        return reading.key not in taken and may.allows(reading)

    symptoms = list(filter(is_left, dictionary.symptoms))
    if symptoms and (seen_first or len(standing) > MANY):
        readings: Sequence[Reading] = symptoms
        positions = np.array(
            [
                [position(each, dictionary.value(one.candidate, each)) for each in readings]
                for one in standing
            ]
        )
    else:
        columns = [n for n, each in enumerate(dictionary.all_readings) if is_left(each)]
        readings = [dictionary.all_readings[column] for column in columns]
        positions = np.array([dictionary.row(one.candidate)[columns] for one in standing])
    return bare_table(dictionary, standing)._replace(readings=readings, numbers=outcomes(positions))


def bare_table(dictionary: Dictionary, standing: Sequence[Standing]) -> Table:
    """The candidates with nothing left to read."""
    import numpy as np

    weights = np.array([one.weight for one in standing])
    numbers = np.zeros((len(standing), 0), dtype=np.int64)
    return Table(standing, weights / weights.sum(), (), numbers, _groups(dictionary, standing))


def _groups(dictionary: Dictionary, standing: Sequence[Standing]) -> Numbers:
    """One group for one piece of work: faults of one site need not be told apart."""
    import numpy as np

    numbers: dict[frozenset[str], int] = {}
    for one in standing:
        sites = frozenset(dictionary.faults[number].site for number in one.candidate)
        numbers.setdefault(sites, len(numbers))
    return np.array(
        [
            numbers[frozenset(dictionary.faults[number].site for number in one.candidate)]
            for one in standing
        ],
        dtype=np.int64,
    )


def merged(left: Table) -> Table:
    """The same with groups joined that no reading left tells apart: some of them are alike."""
    import numpy as np

    joined = {group: {group} for group in left.groups.tolist()}
    first: dict[bytes, int] = {}
    for row, group in zip(left.numbers, left.groups.tolist(), strict=True):
        other = first.setdefault(row.tobytes(), group)
        if joined[other] is not joined[group]:
            joined[other] |= joined[group]
            for each in joined[other]:
                joined[each] = joined[other]
    return left._replace(groups=np.array([min(joined[group]) for group in left.groups.tolist()]))


def choose(left: Table) -> Choice | None:
    """The reading to take; None if none is worth it."""
    found = _best(left)
    if found is None:
        return None
    column, gain_bits, useful = found
    next_ones = dict.fromkeys(_after(left, column))
    next_ones.update(dict.fromkeys(useful))
    next_ones.pop(column, None)
    return Choice(column, gain_bits, tuple(next_ones)[:OTHERS])


def _best(left: Table) -> tuple[int, float, list[int]] | None:
    """Column and gain of the best reading, and all that are of use, the best first."""
    import numpy as np

    if not left.readings:
        return None
    many = int(left.groups.max()) + 1
    before = entropy_bits(np.bincount(left.groups, left.shares, many).tolist())
    gains = before - expected_entropies(left.shares, left.numbers, left.groups)
    costs = np.array([reading.cost for reading in left.readings])
    order = [int(each) for each in np.argsort(-(gains / costs), kind="stable")]
    useful = _different(left, [each for each in order if gains[each] >= LEAST_GAIN])
    if not useful:
        return None
    best = useful[0]
    if len(set(left.groups.tolist())) <= FEW:
        columns = left.numbers.T[useful].tolist()
        few = Sequencing(
            left.shares.tolist(), columns, costs[useful].tolist(), left.groups.tolist()
        )
        place = few.best(few.everything)
        best = useful[place] if place is not None else best
    return best, float(gains[best]), useful


def _after(left: Table, column: int) -> Iterator[int]:
    """What would be read next after each outcome of a reading, the likeliest outcome first."""
    import numpy as np

    shares = np.bincount(left.numbers[:, column], left.shares)
    for outcome in np.argsort(-shares, kind="stable"):
        stay = left.numbers[:, column] == outcome
        if len(set(left.groups[stay].tolist())) < 2:
            continue
        rest = left._replace(
            shares=left.shares[stay] / shares[outcome],
            numbers=left.numbers[stay],
            groups=left.groups[stay],
        )
        found = _best(rest)
        if found is not None:
            yield found[0]


def _different(left: Table, order: Sequence[int]) -> list[int]:
    """The first of each kind of split, in order: what splits alike is not looked at twice."""
    found: dict[bytes, int] = {}
    for column in order:
        found.setdefault(left.numbers[:, column].tobytes(), column)
        if len(found) == BREADTH:
            break
    return list(found.values())
