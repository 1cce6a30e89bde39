"""Shannon's networks, counted state by state, and the two ways of solving a network compared.

The networks are those of C. E. Shannon, "A symbolic analysis of relay and switching circuits",
Transactions of the AIEE 57 (1938) 713-723, read in a formalisation of his thesis; the row of burner
permissives is that of "Lessons in Electric Circuits", volume IV, chapter 6.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise, product

import networkx as nx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wirecheck.circuit.switching import Network, Positions, holds

Function = Callable[[dict[str, bool]], bool]


def conducting(positions: Positions, function: Function) -> int:
    """The table of a function, worked out one state at a time."""
    return sum(
        1 << number
        for number in range(positions.count)
        if function({str(name): on for name, on in positions.state(number).items()})
    )


def bridge(positions: Positions) -> Network[str]:
    """Shannon's bridge: a-r-c-s-b, a-u-d-v-b, and t between c and d."""
    network: Network[str] = Network(positions.always)
    for a, b, contact in ("acr", "cbs", "adu", "dbv", "cdt"):
        network.add(a, b, positions.on(contact))
    return network


def test_table_of_a_variable_is_its_bit_of_the_state() -> None:
    positions = Positions("pqr")
    for state in range(8):
        assert positions.state(state) == {"p": state & 1, "q": state >> 1 & 1, "r": state >> 2}
        for place, name in enumerate("pqr"):
            assert holds(positions.on(name), state) == bool(state >> place & 1)
            assert holds(positions.off(name), state) != holds(positions.on(name), state)


def test_bridge_conducts_by_its_tie_sets() -> None:
    """The hindrance is ru + sv + rtv + uts; 16 of 32 states conduct: 0, 0, 2, 8, 5, 1."""
    positions = Positions("rsuvt")
    expected = conducting(
        positions,
        lambda on: (
            (on["r"] and on["s"])
            or (on["u"] and on["v"])
            or (on["r"] and on["t"] and on["v"])
            or (on["u"] and on["t"] and on["s"])
        ),
    )
    network = bridge(positions)
    assert network.between("a", "b") == network.reached("a")["b"] == expected
    by_closed = [0] * 6
    for state in range(32):
        by_closed[state.bit_count()] += holds(expected, state)
    assert by_closed == [0, 0, 2, 8, 5, 1]


@pytest.mark.parametrize(("p", "expected"), [(0.9, 0.97848), (0.5, 0.5)])
def test_bridge_conducts_with_a_known_probability(p: float, expected: float) -> None:
    """2p^2 + 2p^3 - 5p^4 + 2p^5, with each contact closed with probability p."""
    table = bridge(Positions("rsuvt")).between("a", "b")
    found = sum(
        p ** state.bit_count() * (1 - p) ** (5 - state.bit_count())
        for state in range(32)
        if holds(table, state)
    )
    assert found == pytest.approx(expected)


def series(network: Network[object], a: object, b: object, *tables: int) -> None:
    """Contacts in a row between two nodes."""
    here: object = a
    for table in tables[:-1]:
        there = object()
        network.add(here, there, table)
        here = there
    network.add(here, b, tables[-1])


def test_thirteen_contacts_do_what_six_do() -> None:
    """Hindrance w + w'(x + y) + (x + z)(s + w' + z)(z' + y + s'v) = w + x + y + z s' v."""
    positions = Positions("wxyzsv")
    on, off = positions.on, positions.off
    # A contact named in the hindrance is open where its variable is 1.
    w, x, y, z, s, v = (off(name) for name in "wxyzsv")
    w_, z_, s_ = (on(name) for name in "wzs")
    thirteen: Network[object] = Network(positions.always)
    thirteen.add("a", "m", w)
    thirteen.add("m", "n", w_)
    series(thirteen, "m", "n", x, y)
    series(thirteen, "n", "b", x, z)
    series(thirteen, "n", "b", s, w_, z)
    middle = object()
    series(thirteen, "n", middle, z_, y)
    thirteen.add(middle, "b", s_ | v)
    six: Network[object] = Network(positions.always)
    end = object()
    series(six, "a", end, w, x, y)
    for table in (z, s_, v):
        six.add(end, "b", table)
    assert thirteen.between("a", "b") == six.between("a", "b")
    assert six.between("a", "b").bit_count() == 7


def test_burner_permissives_close_in_one_row_of_thirty_two() -> None:
    """Low and high fuel pressure, air, damper and door in a row; the relay's two contacts."""
    permissives = ("low pressure", "high pressure", "air", "damper", "door")
    positions = Positions(permissives)
    network: Network[object] = Network(positions.always)
    series(network, "L1", "CR1", *(positions.on(name) for name in permissives))
    relay = network.between("L1", "CR1")
    lamps: Network[str] = Network(positions.always)
    lamps.add("L1", "green", relay)
    lamps.add("L1", "red", positions.but(relay))
    assert lamps.between("L1", "green") == 1 << 31
    assert lamps.between("L1", "red") == positions.always ^ 1 << 31
    assert positions.first(relay) == 31


def test_selective_circuit_counts_relays() -> None:
    """Operates with exactly 1, 3 or 4 of four relays; the hindrance as Shannon has it."""
    positions = Positions("wxyz")
    on, off = positions.on, positions.off
    network: Network[object] = Network(positions.always)

    def same(y: str, z: str) -> int:
        return (off(y) & off(z)) | (on(y) & on(z))

    # In parallel the hindrances multiply and the conductances add: conductance of w + ... is w'.
    for first, second, rest in (
        ("w", "x", positions.but(same("y", "z"))),
        ("w", "x'", same("y", "z")),
        ("w'", "x", same("y", "z")),
        ("w'", "x'", (on("y") ^ on("z"))),
    ):
        lead = on("w") if first == "w" else off("w")
        tail = on("x") if second == "x" else off("x")
        extra = on("y") & on("z") if (first, second) == ("w", "x") else 0
        series(network, "a", "b", lead, tail, rest | extra)
    table = network.between("a", "b")
    for state in range(16):
        assert holds(table, state) == (state.bit_count() in (1, 3, 4))


def test_first_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="no state"):
        Positions("ab").first(0)


edges = st.lists(
    st.tuples(st.integers(0, 5), st.integers(0, 5), st.integers(0, 3), st.booleans()), max_size=12
)


@given(edges)
def test_both_ways_agree_with_a_walk_in_every_state(
    contacts: list[tuple[int, int, int, bool]],
) -> None:
    positions = Positions(range(4))
    network: Network[int] = Network(positions.always)
    for a, b, variable, makes in contacts:
        network.add(a, b, positions.on(variable) if makes else positions.off(variable))
    reached = network.reached(0)
    for state, end in product(range(16), range(6)):
        closed: nx.Graph[int] = nx.Graph()
        closed.add_nodes_from(range(6))
        closed.add_edges_from(
            (a, b) for a, b, variable, makes in contacts if bool(state >> variable & 1) == makes
        )
        expected = nx.has_path(closed, 0, end)
        assert holds(reached.get(end, 0), state) == expected
        assert holds(network.between(0, end), state) == expected
        way = network.way(0, end, state)
        assert bool(way) == expected
        assert all(closed.has_edge(a, b) for a, b in pairwise(way))
