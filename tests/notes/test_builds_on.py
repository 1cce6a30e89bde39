"""Which blocks come before which, each once."""

import pytest

from wirecheck.notes.builds_on import MOST_BELOW, Order, order_of
from wirecheck.notes.document import read_data


def order(*openings: str) -> Order:
    """Blocks of these openings, one below the other: block n opens in line 3n - 2."""
    text = "".join(f"```wiring {opening}\n```\n\n" for opening in openings)
    return order_of(read_data(text.encode(), "note.md").blocks)


def below(told: Order, number: int) -> list[str]:
    return [block.name.text for block in told.together[number].below if block.name]


def problems(told: Order) -> list[str]:
    return [f"{each.span.line}:{each.span.column}: {each.message}" for each in told.problems]


def test_what_is_built_on_comes_first_and_once() -> None:
    told = order(
        "name supply, piece",
        "name burner, piece, on supply",
        "name heater, on burner, on supply",
        "on heater, on burner",
    )
    assert problems(told) == []
    assert [below(told, number) for number in range(4)] == [
        [],
        ["supply"],
        ["supply", "burner"],
        ["supply", "burner", "heater"],
    ]


def test_a_block_may_build_on_one_further_down_and_case_does_not_count() -> None:
    told = order("on Größe", "name GRÖSSE")
    assert problems(told) == []
    assert below(told, 0) == ["GRÖSSE"]


def test_a_name_that_no_block_has() -> None:
    told = order("name heater, on heatr", "on nothing-like-it")
    assert problems(told) == [
        "1:27: no block of this document is called “heatr”; did you mean heater?",
        "4:14: no block of this document is called “nothing-like-it”; names here: heater",
    ]
    assert [each.incomplete for each in told.together] == [True, True]


def test_no_name_at_all() -> None:
    assert problems(order("on heater")) == [
        "1:14: no block of this document is called “heater”; no block has a name"
    ]


def test_two_blocks_of_one_name() -> None:
    told = order("name heater", "name Heater", "on heater")
    assert problems(told) == ["4:16: a block is called Heater already, in line 1"]
    assert told.together[2].below == (told.together[0].block,)


@pytest.mark.parametrize(
    ("openings", "problem"),
    [
        (("name a, on a",), "1:22: the blocks build on each other in a ring: a on a"),
        (
            ("name a, on b", "name b, on c", "name c, on a"),
            "7:22: the blocks build on each other in a ring: a on b on c on a",
        ),
        (
            ("on b", "name b, on c", "name c, on b"),
            "7:22: the blocks build on each other in a ring: b on c on b",
        ),
    ],
)
def test_a_ring_is_told_once_where_it_closes(openings: tuple[str, ...], problem: str) -> None:
    told = order(*openings)
    assert problems(told) == [problem]
    assert all(each.incomplete for each in told.together)


def test_a_long_ring_is_not_spelled_out() -> None:
    told = order(*(f"name b{n}, on b{(n + 1) % 40}" for n in range(40)))
    (problem,) = told.problems
    assert "b0 on b1 on b2 on b3 on … on b37 on b38 on b39 on b0" in problem.message


def test_a_chain_beyond_all_measure_is_cut() -> None:
    count = 5 * MOST_BELOW
    told = order("name b0", *(f"name b{n}, on b{n - 1}" for n in range(1, count)))
    assert len(told.together[MOST_BELOW].below) == MOST_BELOW
    assert len(told.problems) == count - 1 - MOST_BELOW
    assert told.problems[0].message == f"this block builds on more than {MOST_BELOW} others"
    assert str(told.problems[0].span) == f"note.md:{3 * MOST_BELOW + 4}:1"


def test_a_piece_that_nothing_builds_on_is_told() -> None:
    message = "no block builds on this piece, so it was not checked: leave piece out"
    assert problems(order("name a, piece", "piece", "name b, piece", "on b")) == [
        f"1:1: {message}",
        f"4:1: {message}",
    ]


def test_a_block_that_was_not_read_leaves_those_above_incomplete() -> None:
    text = "```wiring name a\n```wiring on a\n```\n"
    first, second = order_of(read_data(text.encode(), "note.md").blocks).together
    assert first.block.lost
    assert second.incomplete
