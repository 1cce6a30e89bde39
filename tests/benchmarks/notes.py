"""A binder of notes: how many a core checks in a second, beside a bare check of its diagrams.

The binder is checked by the command, as one process on one core; times are those processes' own
seconds, and memory is the most that the process held.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from pathlib import Path
from time import process_time
from typing import NamedTuple

import wirecheck
from tests.benchmarks.diagrams import UNIT
from tests.benchmarks.figure import Figure
from wirecheck.report.checks import NOTHING_FOUND

FEW, NOTES = 100, 1_000
BARE_BOUND = 1.3
MEMORY_BOUND = 1.2

_CLAIMS = """\
expect 24 V across box-{n}.PV and box-{n}.COM during trial
expect main-valve off when limit-{n} open"""
_OPTION = """\
variant shuts-off
  set box-{n}: retry lockout
  expect spark off during lockout
end"""
_NOTE = """\
# Note {n}: row heater

Gas off and power off before a lead is moved.

1. Wire the unit so:

   ```wiring name heater
{unit}
   ```

2. Where the unit is to stay off after one trial:

> ```wiring on heater
{option}
> ```
"""


class Process(NamedTuple):
    """What a process took."""

    seconds: float
    memory_kb: int


def binder() -> list[Figure]:
    """Check binders of 100 and of 1,000 notes, and the diagrams of the latter bare."""
    with tempfile.TemporaryDirectory() as folder:
        few = _checked(_written(Path(folder, "few"), FEW))
        many = _checked(_written(Path(folder, "many"), NOTES))
    bare_s = _bare_seconds()
    return [
        Figure(
            f"notes on a binder of {NOTES:,} / load and check of its diagrams",
            many.seconds / bare_s,
            BARE_BOUND,
            f"{many.seconds:.1f} s / {bare_s:.1f} s; "
            f"{NOTES / many.seconds:.0f} notes a second and core, two diagrams each",
        ),
        Figure(
            f"memory for {NOTES:,} notes / for {FEW:,}",
            many.memory_kb / few.memory_kb,
            MEMORY_BOUND,
            f"{many.memory_kb / 1024:.0f} MB / {few.memory_kb / 1024:.0f} MB",
        ),
    ]


def _unit(number: int) -> tuple[str, str]:
    """The wiring of one note with its claims, and its option."""
    unit = f"{UNIT}\n{_CLAIMS}".format(n=number, more="")
    return unit, _OPTION.format(n=number)


def _written(folder: Path, count: int) -> Path:
    folder.mkdir()
    for number in range(1, count + 1):
        unit, option = _unit(number)
        text = _NOTE.format(n=number, unit=_below(unit, "   "), option=_below(option, "> "))
        (folder / f"{number:04}.md").write_text(text, encoding="utf-8")
    return folder


def _below(text: str, margin: str) -> str:
    return "\n".join(f"{margin}{line}" for line in text.splitlines())


def _checked(folder: Path) -> Process:
    """Run the command on a folder and wait for it, with what the system says it took."""
    call = [sys.executable, "-m", "wirecheck", "notes", "--jobs", "1", str(folder)]
    with subprocess.Popen(call, stdout=subprocess.DEVNULL) as running:
        _pid, status, usage = os.wait4(running.pid, 0)
        running.returncode = os.waitstatus_to_exitcode(status)
    if running.returncode != NOTHING_FOUND:
        raise RuntimeError(f"the binder ended with {running.returncode}")
    return Process(usage.ru_utime + usage.ru_stime, usage.ru_maxrss)


def _bare_seconds() -> float:
    texts = ["\n".join(_unit(number)) for number in range(1, NOTES + 1)]
    started = process_time()
    for text in texts:
        built = wirecheck.load_text(text)
        wirecheck.check(built.diagram)
        for variation in wirecheck.variants(built):
            wirecheck.check(variation.diagram)
    return process_time() - started
