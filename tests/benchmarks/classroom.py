"""Marks a class of a thousand: how many a second, how much memory, what a second core brings.

``python -m tests.benchmarks.classroom [COUNT]`` writes a class of so many drawings of one example
into a folder that is removed afterwards: one in six a harmless rewrite, the others with one to four
mistakes.  Sheets in words are written for each; none is drawn.
"""

from __future__ import annotations

import random
import resource
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from time import monotonic
from typing import NamedTuple

from tests.benchmarks.campaign import EXAMPLES, example
from tests.benchmarks.figure import Figure
from tests.benchmarks.mutants import Mistake
from tests.benchmarks.rewrites import rewrites

EXAMPLE = "furnace-room-heater"
MANY, FEW = 1000, 100


class Marked(NamedTuple):
    """What marking a class took: seconds by the clock and of work, and the most memory in MB."""

    clock_s: float
    work_s: float
    memory_mb: float


def write_class(folder: Path, count: int) -> None:
    """Write a class, the same each time."""
    original = example(EXAMPLE)
    every = list(original.mistakes())
    chance = random.Random(count)  # noqa: S311
    right = rewrites(original, count)
    for number in range(count):
        mistakes = number % 6 and 1 + number % 4
        text = original.text(*_some(every, mistakes, chance)) if mistakes else next(right)
        (folder / f"apprentice-{number:04}.wiring").write_text(text, encoding="utf-8")


def _some(every: list[Mistake], count: int, chance: random.Random) -> list[Mistake]:
    """Mistakes at different leads."""
    found: list[Mistake] = []
    while len(found) < count:
        one = chance.choice(every)
        if all(not one.changed.keys() & other.changed.keys() for other in found):
            found.append(one)
    return found


def mark(folder: Path, out: Path, jobs: int) -> Marked:
    """Mark a class by the command, in processes of its own."""
    key = EXAMPLES / f"{EXAMPLE}.wiring"
    call = ["grade", "--key", key, "--sheets", "none", "--jobs", jobs, "--out", out, folder]
    program = (
        "import atexit, resource, sys; from wirecheck.cli.main import main;"
        "most = lambda: max(resource.getrusage(who).ru_maxrss for who in (0, -1));"
        "atexit.register(lambda: print(most(), file=sys.stderr)); main()"
    )
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    started = monotonic()
    ended = subprocess.run(
        [sys.executable, "-c", program, *map(str, call)],
        capture_output=True,
        text=True,
        check=False,
    )
    clock_s = monotonic() - started
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    if ended.returncode != 1:
        raise RuntimeError(ended.stderr)
    work_s = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return Marked(clock_s, work_s, int(ended.stderr.split()[-1]) / 1024)


def flat_memory() -> Iterator[Figure]:
    """Ten times the drawings must not take noticeably more memory."""
    with tempfile.TemporaryDirectory() as name:
        few, many = (marked_class(Path(name), count, 1) for count in (FEW // 4, FEW))
    beside = f"{few.memory_mb:.0f} MB for {FEW // 4} drawings, {many.memory_mb:.0f} MB for {FEW}"
    yield Figure("memory for four times the drawings", many.memory_mb / few.memory_mb, 1.3, beside)


def marked_class(folder: Path, count: int, jobs: int) -> Marked:
    """Write and mark a class of so many."""
    drawings = folder / f"class-{count}"
    if not drawings.exists():
        drawings.mkdir()
        write_class(drawings, count)
    return mark(drawings, folder / f"marks-{count}-{jobs}", jobs)


def main() -> int:
    """Print what it takes."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else MANY
    with tempfile.TemporaryDirectory() as name:
        for drawings, jobs in ((FEW, 1), (count, 1), (count, 2)):
            took = marked_class(Path(name), drawings, jobs)
            print(
                f"{drawings:5} drawings, {jobs} at once: {took.clock_s:6.1f} s by the clock, "
                f"{took.work_s:6.1f} s of work, {drawings / took.work_s:5.1f} a second and core, "
                f"at most {took.memory_mb:.0f} MB in a process",
                flush=True,
            )
    return 0


if __name__ == "__main__":
    sys.exit(main())
