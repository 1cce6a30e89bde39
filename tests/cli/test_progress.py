"""The line that tells a waiting person how far the work has come."""

import io
import sys

import pytest

from wirecheck.cli import progress


class Stream(io.StringIO):
    """Standard error, as a terminal or not."""

    def __init__(self, *, terminal: bool) -> None:
        super().__init__()
        self.terminal = terminal

    def isatty(self) -> bool:
        return self.terminal


@pytest.fixture
def slow(monkeypatch: pytest.MonkeyPatch) -> None:
    """Make every look at the clock a second later than the one before."""
    seconds = iter(range(1000))
    monkeypatch.setattr(progress, "monotonic", lambda: next(seconds))


def work(monkeypatch: pytest.MonkeyPatch, *, terminal: bool) -> str:
    stream = Stream(terminal=terminal)
    monkeypatch.setattr(sys, "stderr", stream)
    assert list(progress.told("abc", 3, "checking")) == ["a", "b", "c"]
    return stream.getvalue()


@pytest.mark.usefixtures("slow")
def test_long_work_is_told_on_a_terminal_and_wiped_at_the_end(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    said = work(monkeypatch, terminal=True)
    assert "\rchecking 2 of 3\x1b[K" in said
    assert said.endswith("\r\x1b[K")


@pytest.mark.usefixtures("slow")
def test_nothing_is_told_where_nobody_waits(monkeypatch: pytest.MonkeyPatch) -> None:
    assert work(monkeypatch, terminal=False) == ""


def test_short_work_is_not_told(monkeypatch: pytest.MonkeyPatch) -> None:
    assert work(monkeypatch, terminal=True) == ""
