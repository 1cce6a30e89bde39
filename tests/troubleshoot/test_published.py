"""Published problems of diagnosis, worked by the core that the product uses.

Each says where it comes from, and how far that was read.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import combinations

import numpy as np
import pytest

from wirecheck.troubleshoot.entropy import entropy_bits, expected_entropies, outcomes
from wirecheck.troubleshoot.hitting import minimal_conflicts, minimal_hitting_sets
from wirecheck.troubleshoot.sequencing import Sequencing

# ---- polybox: three multipliers, two adders ------------------------------------------------------
# J. de Kleer and B. Williams, "Diagnosing multiple faults", Artificial Intelligence 32 (1987),
# 97-130. Conflicts and diagnoses were read in lecture slides that retell it; the entropies are our
# own figures for it, that X is probed first is the paper's, from memory.

PARTS = ("A1", "A2", "M1", "M2", "M3")
INPUTS = {"A": 3, "B": 2, "C": 2, "D": 3, "E": 3}
MULTIPLIES = {"M1": ("A", "C", "X"), "M2": ("B", "D", "Y"), "M3": ("C", "E", "Z")}
ADDS = {"A1": ("X", "Y", "F"), "A2": ("Y", "Z", "G")}


def fits(good: Iterable[str], seen: dict[str, int]) -> bool:
    """Whether the parts that are good can give what is seen; the others give anything.

    Values are carried forwards and backwards until nothing new follows; the box is a tree of small
    sums, so that finds every contradiction.
    """
    good, known = set(good), {**INPUTS, **seen}
    for _round in range(len(PARTS)):
        for part in good & MULTIPLIES.keys():
            a, b, to = MULTIPLIES[part]
            if known.setdefault(to, known[a] * known[b]) != known[a] * known[b]:
                return False
        for part in good & ADDS.keys():
            a, b, to = ADDS[part]
            for one, other in ((a, b), (b, a)):
                if to in known and one in known:
                    known.setdefault(other, known[to] - known[one])
            if (
                a in known
                and b in known
                and known.setdefault(to, known[a] + known[b]) != (known[a] + known[b])
            ):
                return False
    return True


def conflicts(seen: dict[str, int]) -> set[frozenset[str]]:
    return {frozenset(each) for each in minimal_conflicts(PARTS, lambda good: fits(good, seen))}


def sets(*words: str) -> set[frozenset[str]]:
    return {frozenset(each.split()) for each in words}


POLYBOX = [
    ({"F": 10, "G": 12}, sets("A1 M1 M2", "A1 A2 M1 M3"), sets("A1", "M1", "A2 M2", "M2 M3")),
    ({"F": 10, "G": 12, "X": 4}, sets("M1"), sets("M1")),
    (
        {"F": 10, "G": 12, "X": 6},
        sets("A1 M2", "A1 A2 M3"),
        sets("A1", "A2 M2", "M2 M3"),
    ),
    (
        {"F": 10, "G": 12, "X": 6, "Y": 4},
        sets("M2", "A2 M3"),
        sets("A2 M2", "M2 M3"),
    ),
    (
        {"F": 10, "G": 10},
        sets("A1 M1 M2", "A2 M2 M3"),
        sets("M2", "A1 A2", "A1 M3", "A2 M1", "M1 M3"),
    ),
]


@pytest.mark.parametrize(("seen", "conflicting", "diagnoses"), POLYBOX)
def test_polybox_conflicts_and_diagnoses(
    seen: dict[str, int], conflicting: set[frozenset[str]], diagnoses: set[frozenset[str]]
) -> None:
    assert conflicts(seen) == conflicting
    found = minimal_hitting_sets([sorted(each) for each in conflicting])
    assert {frozenset(each) for each in found} == diagnoses


def test_polybox_most_sets_of_broken_parts_explain_it() -> None:
    seen = {"F": 10, "G": 12}
    broken = [each for size in range(6) for each in combinations(PARTS, size)]
    consistent = [each for each in broken if fits(set(PARTS) - set(each), seen)]
    assert (len(broken), len(consistent)) == (32, 27)


def test_polybox_the_best_probe() -> None:
    each = 0.01
    weights = np.array([each, each, each**2, each**2])  # A1; M1; A2 and M2; M2 and M3
    weights *= np.array([(1 - each) ** 4] * 2 + [(1 - each) ** 3] * 2)
    shares = weights / weights.sum()
    assert shares == pytest.approx([0.4950, 0.4950, 0.0050, 0.0050], abs=5e-5)
    assert entropy_bits(shares) == pytest.approx(1.0808, abs=5e-5)
    # What X, Y and Z then are: with M1 broken X is 4, with M2 broken Y is, and so on.
    probes = np.array([[6, 6, 6], [4, 6, 6], [6, 4, 8], [6, 4, 8]], dtype=np.float64)
    numbers = outcomes(probes)
    left = expected_entropies(shares, numbers, np.arange(4))
    assert left[:2] == pytest.approx([0.0809, 1.0000], abs=5e-5)
    assert int(left.argmin()) == 0  # X


def test_polybox_a_probe_that_part_of_the_candidates_leave_open() -> None:
    # A2 and M2 broken leave Z at 6; M2 and M3 broken move it: one double apart from the rest.
    shares = np.array([0.4950, 0.4950, 0.0050, 0.0050])
    numbers = np.array([[0], [0], [0], [1]])
    left = expected_entropies(shares / shares.sum(), numbers, np.arange(4))
    assert left[0] == pytest.approx(1.0354, abs=5e-4)


# ---- a chain of four inverters -------------------------------------------------------------------
# The same paper, section 4, from memory.


def test_a_chain_is_halved() -> None:
    shares = np.full(4, 0.25)
    probes = np.triu(np.ones((4, 4)))[:, :3].astype(np.int64)  # wrong behind the broken one
    left = expected_entropies(shares, probes, np.arange(4))
    assert entropy_bits(shares) == 2
    assert left == pytest.approx([0.75 * np.log2(3), 1.0, 0.75 * np.log2(3)])
    assert left == pytest.approx([1.1887, 1.0000, 1.1887], abs=5e-5)


# ---- a house -------------------------------------------------------------------------------------
# D. Poole and A. Mackworth, "Artificial Intelligence", 2nd ed., section 5.5.3: read in the textbook
# and in a test file of the older book; the seven diagnoses are computed.


def test_house_wiring() -> None:
    """All switches up, both lights dark."""
    lights = {"l1": ("cb1", "s1", "s2", "l1"), "l2": ("cb1", "s3", "l2")}
    parts = ("cb1", "s1", "s2", "l1", "s3", "l2")

    def dark(good: tuple[str, ...]) -> bool:
        return not any(set(way) <= set(good) for way in lights.values())

    found = minimal_conflicts(parts, dark)
    assert {frozenset(each) for each in found} == sets("cb1 s1 s2 l1", "cb1 s3 l2")
    diagnoses = {frozenset(each) for each in minimal_hitting_sets(found)}
    assert diagnoses == sets("cb1", "s1 s3", "s1 l2", "s2 s3", "s2 l2", "l1 s3", "l1 l2")


# ---- hitting sets --------------------------------------------------------------------------------
# R. Reiter, "A theory of diagnosis from first principles", Artificial Intelligence 32 (1987),
# 57-95, from memory, with the result after R. Greiner and others' correction of 1989.


def test_hitting_sets() -> None:
    given = [{2, 4, 5}, {1, 2, 3}, {1, 3, 5}, {2, 4, 6}, {2, 4}, {2, 3, 5}, {1, 6}]
    expected = [{1, 2}, {1, 3, 4}, {1, 4, 5}, {2, 3, 6}, {2, 5, 6}, {3, 4, 6}]
    found = minimal_hitting_sets([sorted(each) for each in given])
    assert sorted(map(sorted, found)) == sorted(map(sorted, expected))
    assert [len(each) for each in found] == sorted(len(each) for each in found)
    assert [set(each) for each in minimal_hitting_sets([sorted(g) for g in given], 2)] == [{1, 2}]


# ---- a sequence of tests -------------------------------------------------------------------------
# After K. Pattipati, S. Raghavan and M. Shakeri: the form of the problem was read, the figures are
# recalled. Six states, five tests of one price.

SEQUENCE = Sequencing(
    (0.70, 0.01, 0.02, 0.10, 0.05, 0.12),
    list(zip(*((0, 0, 0, 0, 0), (0, 1, 0, 0, 1), (0, 0, 1, 1, 0),
               (1, 0, 0, 1, 1), (1, 1, 0, 0, 0), (1, 1, 1, 1, 0)), strict=True)),
    [1.0] * 5,
    range(6),
)  # fmt: skip


def test_a_look_ahead_finds_the_cheapest_sequence() -> None:
    everything = SEQUENCE.everything
    assert SEQUENCE.best(everything) == 1  # the second test
    assert SEQUENCE.expected_cost(everything) == pytest.approx(2.18)


def test_the_next_best_by_gain_alone_costs_a_third_more() -> None:
    assert SEQUENCE.expected_cost(SEQUENCE.everything, "greedy") == pytest.approx(2.86)
