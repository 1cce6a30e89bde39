"""Marks many submissions over several processes; whatever one of them holds, the others go on."""

from __future__ import annotations

import signal
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from threading import current_thread, main_thread
from typing import Any, NoReturn

from wirecheck.grade.record import Record
from wirecheck.grade.submission import Submission

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
    if processes <= 1 or len(submissions) <= 1:
        _begin(work, setup, seconds)
        yield from map(_one, submissions)
        return
    left = list(submissions)
    count = min(processes, len(left))
    with ProcessPoolExecutor(count, initializer=_begin, initargs=(work, setup, seconds)) as pool:
        waiting = [pool.submit(_one, each) for each in left]
        for submission, future in zip(left, waiting, strict=True):
            yield _result(future) or _by_itself(work, setup, seconds, submission)


def _begin(work: Work, setup: Callable[[], Any] | None, seconds: float) -> None:
    global _with  # noqa: PLW0603 - a process is made ready once
    _with = work, setup() if setup else None, seconds


def _result(future: Future[Record]) -> Record | None:
    """The record, or None if the process ended over this submission or another one."""
    try:
        return future.result()
    except BrokenProcessPool:
        return None


def _by_itself(
    work: Work, setup: Callable[[], Any] | None, seconds: float, submission: Submission
) -> Record:
    """Mark a submission in a process of its own, as one of them has ended a process."""
    with ProcessPoolExecutor(1, initializer=_begin, initargs=(work, setup, seconds)) as pool:
        record = _result(pool.submit(_one, submission))
    return record or _given_up(submission, "the process that marked it has ended")


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
