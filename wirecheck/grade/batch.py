"""Marks many submissions over several processes; whatever one of them holds, the others go on."""

from __future__ import annotations

import signal
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from functools import partial
from threading import current_thread, main_thread
from typing import Any, NoReturn

from wirecheck.grade.record import Record
from wirecheck.grade.submission import Submission
from wirecheck.processes import in_order

#: What marks one submission; it has to be a function of a module, so that a process finds it.
Work = Callable[[Any, Submission], Record]

#: What a process marks with, and how long at one submission.
_with: tuple[Work, Any, float] | None = None


def batch(
    work: Work,
    setup: Callable[[], Any] | None,
    submissions: Sequence[Submission],
    *,
    processes: int,
    seconds: float,
) -> Iterator[Record]:
    """Mark submissions, and give their records in the same order.

    Args:
        work: marks one, with what ``setup`` gave.
        setup: called once in each process; it has to be picklable.
        submissions: what is marked.
        processes: how many at once; with one all is done in this process.
        seconds: of work at one submission, after which it is given up.
    """
    count = min(processes, len(submissions))
    begin = partial(_begin, work, setup, seconds)
    if count <= 1:
        begin()
    yield from in_order(_one, _lost, submissions, count, begin)


def _begin(work: Work, setup: Callable[[], Any] | None, seconds: float) -> None:
    global _with  # noqa: PLW0603 - a process is made ready once
    _with = work, setup() if setup else None, seconds


def _lost(submission: Submission) -> Record:
    return _given_up(submission, "the process that marked it has ended")


def _one(submission: Submission) -> Record:
    if _with is None:
        raise RuntimeError("the process was not made ready")
    work, made, seconds = _with
    try:
        with _time_limit(seconds):
            return work(made, submission)
    except TimeoutError:
        return _given_up(submission, f"it was given up after {seconds:g} s")
    except OSError as error:
        return _given_up(submission, f"no sheet can be written: {(error.strerror or '?').lower()}")
    except (MemoryError, RecursionError):
        return _given_up(submission, "it is nested too deep or too large")
    except Exception as error:  # noqa: BLE001 - the others are still to be marked
        return _given_up(submission, f"an error of ours: {type(error).__name__}: {error}")


def _given_up(submission: Submission, reason: str) -> Record:
    return Record(*submission, "not marked", reason)


@contextmanager
def _time_limit(seconds: float) -> Iterator[None]:
    """Stop after so many seconds of work, where the system has such a clock."""
    if not hasattr(signal, "setitimer") or current_thread() is not main_thread():
        yield
        return

    def late(*_signal: object) -> NoReturn:
        raise TimeoutError

    before = signal.signal(signal.SIGPROF, late)
    signal.setitimer(signal.ITIMER_PROF, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)
