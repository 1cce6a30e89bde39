"""Working on many things in several processes, the answers in order, few of them at a time."""

from __future__ import annotations

import os
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from itertools import islice
from multiprocessing import get_context
from typing import Final, Generic, TypeVar

#: Answers that may wait for their turn, for each process.
AHEAD: Final = 4

_Thing = TypeVar("_Thing")
_Answer = TypeVar("_Answer")


def cores() -> int:
    """How many processes can run at once here."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def in_order(
    work: Callable[[_Thing], _Answer],
    lost: Callable[[_Thing], _Answer],
    things: Iterable[_Thing],
    processes: int,
    begin: Callable[[], None] | None = None,
) -> Iterator[_Answer]:
    """Work on each thing and give the answers in the order of the things.

    No more answers are kept than `AHEAD` for each process, however many things there are.

    Args:
        work: a function that another process can import; what it raises is raised here.
        lost: the answer where the work ended its process, as one that runs out of memory does.
        things: what can be sent to another process.
        processes: how many work at once; with one the work is done here.
        begin: what each of several processes does first.
    """
    if processes <= 1:
        yield from map(work, things)
    else:
        yield from _Batch(work, lost, iter(things), processes, begin).answers()


class _Batch(Generic[_Thing, _Answer]):
    def __init__(
        self,
        work: Callable[[_Thing], _Answer],
        lost: Callable[[_Thing], _Answer],
        things: Iterator[_Thing],
        processes: int,
        begin: Callable[[], None] | None,
    ) -> None:
        self.begin = begin
        self.work = work
        self.lost = lost
        self.things = things
        self.processes = processes
        self.waiting: deque[tuple[_Thing, Future[_Answer] | None]] = deque()

    def answers(self) -> Iterator[_Answer]:
        """Keep every process busy; where one was ended, begin anew."""
        while True:
            pool = self._pool(self.processes)
            try:
                self._send(pool, self.processes * AHEAD)
                while self.waiting:
                    answer = _answer_of(self.waiting[0][1])
                    self.waiting.popleft()
                    self._send(pool, 1)
                    yield answer
            except BrokenProcessPool:
                pass  # all that were sent lost their answers
            else:
                return
            finally:
                pool.shutdown(wait=False, cancel_futures=True)
            left = [thing for thing, _future in self.waiting]
            self.waiting.clear()
            yield from map(self._alone, left)

    def _send(self, pool: ProcessPoolExecutor, most: int) -> None:
        for thing in islice(self.things, most):
            try:
                future = pool.submit(self.work, thing)
            except BrokenProcessPool:  # told when its turn comes
                future = None
            self.waiting.append((thing, future))

    def _alone(self, thing: _Thing) -> _Answer:
        """Work on one thing in a process of its own: it may be the one that ends it."""
        with self._pool(1) as pool:
            try:
                return pool.submit(self.work, thing).result()
            except BrokenProcessPool:
                return self.lost(thing)

    def _pool(self, processes: int) -> ProcessPoolExecutor:
        """Processes that begin afresh: they share nothing with this one, on any system."""
        return ProcessPoolExecutor(processes, get_context("spawn"), self.begin)


def _answer_of(future: Future[_Answer] | None) -> _Answer:
    if future is None:
        raise BrokenProcessPool
    return future.result()
