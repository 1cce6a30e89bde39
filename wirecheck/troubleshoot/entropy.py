"""How much a reading narrows down: entropies of what is thought of, before a reading and after.

With faults that each give one outcome of a reading, the entropy left after it is the mean of the
entropies within its outcomes (C. Shannon 1948; J. de Kleer and B. Williams, "Diagnosing multiple
faults", Artificial Intelligence 32, 1987, use it to choose a probe; both from memory).  Only what
tells one piece of work from another counts: faults of one group need not be told apart.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Numbers = NDArray[np.int64]

#: Two values that lie further apart than this many tolerances are two outcomes.
APART = 1.0


def entropy_bits(shares: Sequence[float] | Floats) -> float:
    """Of shares of one; those of nothing count for nothing."""
    import numpy as np

    known = np.asarray(shares, dtype=np.float64)
    some = known[known > 0]
    return abs(float((some * np.log2(some)).sum()))


def outcomes(positions: Floats) -> Numbers:
    """Which outcome of each reading each fault gives, numbered from 0 by rising value.

    A column is sorted and cut wherever two neighbours lie more than `APART` from each other.

    Args:
        positions: (faults, readings), in tolerances (`wirecheck.troubleshoot.scale`).

    Returns:
        (faults, readings) numbers.
    """
    import numpy as np

    order = np.argsort(positions, axis=0, kind="stable")
    ordered = np.take_along_axis(positions, order, axis=0)
    steps = np.zeros(positions.shape, dtype=np.int64)
    steps[1:] = np.cumsum(np.diff(ordered, axis=0) > APART, axis=0)
    numbers = np.empty_like(steps)
    np.put_along_axis(numbers, order, steps, axis=0)
    return numbers


def expected_entropies(shares: Floats, numbers: Numbers, groups: Numbers) -> Floats:
    """The entropy over the groups that is to be expected after each reading, in bits.

    Args:
        shares: (faults,) shares of one.
        numbers: (faults, readings) outcome of each reading under each fault.
        groups: (faults,) number of the group each belongs to.

    Returns:
        (readings,) bits.
    """
    import numpy as np

    faults, readings = numbers.shape
    some, many = int(numbers.max(initial=0)) + 1, int(groups.max(initial=0)) + 1
    column = np.arange(readings)
    place = (column * some + numbers) * many + groups[:, None]
    weights = np.broadcast_to(shares[:, None], (faults, readings))
    flat: Floats = np.zeros(readings * some * many)
    np.add.at(flat, place.ravel(), weights.ravel())
    joint = flat.reshape(readings, some, many)
    each = joint.sum(axis=2)
    bits: Floats = _plogp(each).sum(axis=1) - _plogp(joint).sum(axis=(1, 2))
    return bits


def _plogp(shares: Floats) -> Floats:
    """``p log2 p``, 0 for 0: with it the entropy of a column is a difference of two sums."""
    import numpy as np

    result: Floats = shares * np.log2(np.where(shares > 0, shares, 1.0))
    return result
