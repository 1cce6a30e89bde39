"""Switching functions of two networks, held to Shannon's pairs, to BDDs and to every state."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.compare.networks import Composed, Network, contacts, drawn, parallel, series
from wirecheck import compare, load_text

#: Contacts by their hindrance: sums are in series, products in parallel (C. E. Shannon, "A symbolic
#: analysis of relay and switching circuits", Trans. AIEE 57, 1938; expressions from memory).
WORKED = series(
    "w",
    parallel("w'", series("x", "y")),
    parallel(series("x", "z"), series("s", "w'", "z"), series("z'", "y", parallel("s'", "v"))),
)
SIMPLIFIED = series("w", "x", "y", parallel("z", "s'", "v"))
BRIDGE = [
    ("hot", "c", "r"),
    ("c", "load", "s"),
    ("hot", "d", "u"),
    ("d", "load", "v"),
    ("c", "d", "t"),
]
TIE_SETS = parallel(
    series("r", "s"), series("u", "v"), series("r", "t", "v"), series("u", "t", "s")
)
TWO_PLACES = parallel(series("x", "y'"), series("x'", "y"))


def conducts(network: Network, on: dict[str, bool]) -> bool:
    """Whether a network conducts, by the meaning of the words."""
    if isinstance(network, Composed):
        every = (conducts(part, on) for part in network.parts)
        return all(every) if network.how == "series" else any(every)
    return on[network.rstrip("'")] != network.endswith("'")


def equal(one: Network, other: Network) -> bool:
    """Whether two networks conduct in the same states, each state by itself."""
    names = sorted({name.rstrip("'") for each in (one, other) for name in contacts(each)})
    states = product((False, True), repeat=len(names))
    return all(
        conducts(one, on) == conducts(other, on)
        for on in (dict(zip(names, state, strict=True)) for state in states)
    )


def hindrance(network: Network) -> Network:
    """The network that conducts where another one's hindrance says: make and break exchanged."""
    if isinstance(network, Composed):
        return Composed(network.how, tuple(map(hindrance, network.parts)))
    return network.rstrip("'") if network.endswith("'") else f"{network}'"


def test_shannons_thirteen_contacts_do_what_his_six_do() -> None:
    assert len(list(contacts(WORKED))) == 13
    assert len(list(contacts(SIMPLIFIED))) == 6
    assert equal(WORKED, SIMPLIFIED)
    found = compare(drawn(hindrance(WORKED)), drawn(hindrance(SIMPLIFIED)))
    assert found.how == "function"


def test_shannons_bridge_does_what_its_tie_sets_do() -> None:
    assert compare(drawn(BRIDGE), drawn(TIE_SETS)).how == "function"
    without = [edge for edge in BRIDGE if edge[2] != "t"]
    found = compare(drawn(BRIDGE), drawn(without))
    assert not found.same
    assert found.seen


def test_the_lamp_worked_from_two_places() -> None:
    """XY' + X'Y; with both changed over it is the same, with one it is the opposite."""
    both = parallel(series("x'", "y"), series("x", "y'"))
    one = parallel(series("x'", "y'"), series("x", "y"))
    assert compare(drawn(TWO_PLACES), drawn(both)).same
    assert not compare(drawn(TWO_PLACES), drawn(one)).same


_NETWORKS = st.recursive(
    st.sampled_from(["p", "q", "r", "p'", "q'", "r'"]),
    lambda inner: st.builds(
        lambda how, parts: Composed(how, tuple(parts)),
        st.sampled_from(["series", "parallel"]),
        st.lists(inner, min_size=2, max_size=3),
    ),
    max_leaves=6,
)


@settings(max_examples=25, deadline=None, derandomize=True)
@given(_NETWORKS, _NETWORKS)
def test_two_networks_are_the_same_if_and_only_if_they_conduct_alike(
    one: Network, other: Network
) -> None:
    """Relays that only one of the two has are parts of that one, and told as such."""
    every = {name.rstrip("'") for each in (one, other) for name in contacts(each)}
    alike = all({n.rstrip("'") for n in contacts(each)} == every for each in (one, other))
    found = compare(drawn(one), drawn(other))
    if alike:
        assert found.same == equal(one, other)
    if not found.same:
        assert found.differences


def test_functions_agree_with_binary_decision_diagrams() -> None:
    """The worked pair by an independent library, where it is installed."""
    bdd = pytest.importorskip("dd.autoref").BDD()
    bdd.declare(*"wxyzsv")

    def built(network: Network) -> object:
        if isinstance(network, Composed):
            parts = [built(part) for part in network.parts]
            result = parts[0]
            for part in parts[1:]:
                result = bdd.apply("and" if network.how == "series" else "or", result, part)
            return result
        variable = bdd.var(network.rstrip("'"))
        return bdd.apply("not", variable) if network.endswith("'") else variable

    assert built(WORKED) == built(SIMPLIFIED)
    assert bdd.count(built(SIMPLIFIED), 6) == 7


def test_with_too_many_switches_those_that_differ_are_gone_through_first() -> None:
    """Nothing is said to be the same that was not gone through."""
    rows = [series(str(number), str(100 + number)) for number in range(22)]
    one = drawn(parallel(*rows))
    bridged = load_text(one.source.text + "jumper limit-0.1 to limit-0.2\n").diagram
    found = compare(one, bridged)
    assert found.seen
    assert "not every position was gone through" in found.remarks[0]
    crossed = load_text(one.source.text.replace("limit-3 to n3", "limit-3 to n4")).diagram
    assert not compare(one, crossed).same
