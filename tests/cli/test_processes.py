"""Work in several processes: in order, few answers at a time, and nothing lost but one."""

import os
from collections.abc import Iterator

import pytest

from wirecheck import processes
from wirecheck.processes import in_order

FATAL = 13


def square(number: int) -> int:
    """Work that takes the process with it for one number."""
    if number == FATAL:
        os._exit(1)
    return number * number


def lost(number: int) -> int:
    return -number


def refuse(number: int) -> int:
    raise ValueError(number)


@pytest.mark.parametrize("count", [0, 1])
def test_one_process_works_here(count: int) -> None:
    assert list(in_order(square, lost, range(5), count)) == [0, 1, 4, 9, 16]


def test_several_processes_answer_in_order_though_one_ends(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(processes, "AHEAD", 1)
    taken: list[int] = []

    def things() -> Iterator[int]:
        for number in range(20):
            taken.append(number)
            yield number

    answers = in_order(square, lost, things(), 2)
    first = next(answers)
    assert len(taken) <= 3
    rest = list(answers)
    assert [first, *rest] == [-n if n == FATAL else n * n for n in range(20)]


def test_what_the_work_raises_is_raised_here() -> None:
    with pytest.raises(ValueError, match="7"):
        list(in_order(refuse, lost, [7, 8], 2))
