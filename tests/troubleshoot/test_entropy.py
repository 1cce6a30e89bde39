"""Entropies against the definition, written out."""

from __future__ import annotations

import math

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from wirecheck.troubleshoot.entropy import expected_entropies, outcomes


def bits(shares: list[float]) -> float:
    total = sum(shares)
    return -sum(s / total * math.log2(s / total) for s in shares if s) if total else 0.0


@settings(deadline=None, max_examples=60)
@given(
    st.lists(
        st.tuples(st.floats(0.01, 1), st.integers(0, 3), st.integers(0, 2)), min_size=1, max_size=8
    )
)
def test_what_is_left_is_the_mean_over_the_outcomes(rows: list[tuple[float, int, int]]) -> None:
    weights = np.array([weight for weight, _outcome, _group in rows])
    shares = weights / weights.sum()
    numbers = np.array([[outcome] for _weight, outcome, _group in rows])
    groups = np.array([group for _weight, _outcome, group in rows])
    expected = 0.0
    for outcome in set(numbers[:, 0].tolist()):
        here = numbers[:, 0] == outcome
        each = [float(shares[here & (groups == group)].sum()) for group in range(3)]
        expected += float(shares[here].sum()) * bits(each)
    found = expected_entropies(shares, numbers, groups)
    assert math.isclose(found[0], expected, abs_tol=1e-9)


def test_values_within_a_tolerance_of_their_neighbour_are_one_outcome() -> None:
    positions = np.array([[0.0, 5.0], [0.9, 0.0], [2.0, 0.0], [1.8, 6.2]])
    assert outcomes(positions).tolist() == [[0, 1], [0, 0], [1, 0], [0, 2]] or outcomes(
        positions
    ).tolist() == [[0, 1], [0, 0], [0, 0], [0, 2]]
