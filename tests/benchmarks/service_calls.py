"""Simulated calls for service: every fault of the right examples, found by asking for readings.

``python -m tests.benchmarks.service_calls [EXAMPLE ...]`` prints a table, a line for each example.
A call starts from what is seen alone.  Every reading asked for is answered by simulation, off by
anything up to the tolerance of a reading, and one in twenty cannot be made.

* faults: all fault modes of the diagram; silent: those that a call for heat does not show, whoever
  calls (a limit that would not open, an earth fault on the earthed side): nobody is called out;
* named: calls that end with the true fault in the first group, in percent; sure: calls that end
  with nothing else left, in percent;
* readings: mean and most of a call; fixed: the same for the readings in the order of the list, what
  cannot tell anything any more left out; second: the longest an answer took, in the process's own
  seconds.

``--sample N`` takes so many faults of an example, the same each time; ``--jobs N`` works on so many
examples at once; ``--tell`` prints the calls that ended wrong or took more than ten readings.
"""

from __future__ import annotations

import argparse
import random
import sys
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from pathlib import Path
from statistics import mean
from time import process_time
from typing import NamedTuple

import wirecheck
from tests.benchmarks.campaign import EXAMPLES, RIGHT
from wirecheck.circuit.instrument import OPEN_OHM
from wirecheck.sequence.callers import callers
from wirecheck.troubleshoot.conversation import Conversation
from wirecheck.troubleshoot.dictionary import Candidate, Dictionary
from wirecheck.troubleshoot.next_reading import choose, table
from wirecheck.troubleshoot.posterior import standings
from wirecheck.troubleshoot.reading import Observation, Reading
from wirecheck.troubleshoot.scale import TOLERANCES

MISSING = 0.05
#: A call that goes on longer than this has failed.
MOST = 10


class Called(NamedTuple):
    """How one call for service went."""

    fault: str
    named: bool
    sure: bool
    readings: int
    fixed: int
    slowest_s: float
    path: tuple[str, ...]


class Row(NamedTuple):
    """One example."""

    name: str
    faults: int
    silent: int
    calls: tuple[Called, ...]


def scenes(name: str) -> list[Dictionary]:
    """The diagram as everybody calls, then as each caller calls alone."""
    diagram = wirecheck.load(EXAMPLES / f"{name}.wiring").diagram
    everybody = Dictionary(diagram)
    each = sorted(callers(everybody.nets))
    alone = [Dictionary(diagram, (caller,)) for caller in each] if len(each) > 1 else []
    return [everybody, *alone]


def row(name: str, sample: int | None) -> Row:
    """Try every fault of an example, or a sample of them."""
    several = scenes(name)
    numbers = list(range(1, len(several[0].faults)))
    if sample is not None and sample < len(numbers):
        chosen = random.Random(len(numbers)).sample(numbers, sample)  # noqa: S311
        numbers = sorted(chosen)
    calls = []
    for number in numbers:
        scene = next((each for each in several if _shows(each, (number,))), None)
        if scene is not None:
            calls.append(_call(scene, number))
    return Row(name, len(numbers), len(numbers) - len(calls), tuple(calls))


def _shows(scene: Dictionary, candidate: Candidate) -> bool:
    """Whether anything is seen of a fault."""
    return any(scene.value(candidate, each) != scene.value((0,), each) for each in scene.symptoms)


class _Answers:
    """Answers readings at a unit with one fault; the same reading always alike."""

    def __init__(self, scene: Dictionary, number: int) -> None:
        self._scene, self._candidate = scene, (number,)
        self._chance = random.Random(number)  # noqa: S311

    def seen(self) -> list[Observation]:
        """What the call for service tells."""
        values = [(each, self._scene.value(self._candidate, each)) for each in self._scene.symptoms]
        return [
            Observation(each, value, value, each.choices[round(value)]) for each, value in values
        ]

    def answer(self, reading: Reading) -> float | None:
        """What is read, off by anything up to its tolerance; None where it cannot be made."""
        if self._chance.random() < MISSING:
            return None
        value = self._scene.value(self._candidate, reading)
        if not reading.unit or value > OPEN_OHM:
            return value
        least, share = TOLERANCES[reading.unit]
        return abs(value + self._chance.uniform(-1, 1) * max(least, share * value))


def _call(scene: Dictionary, number: int) -> Called:
    answers = _Answers(scene, number)
    talk = Conversation.begun(scene, answers.seen())
    path: list[str] = []
    waits = []
    while True:
        started = process_time()
        diagnosis = talk.diagnosis
        waits.append(process_time() - started)
        if diagnosis.advice is None or len(path) > 2 * MOST:
            break
        reading = diagnosis.advice.reading
        talk = talk.answer(reading, answers.answer(reading))
        path.append(f"{reading.key}={talk.observations[-1].words}")
    fault = scene.faults[number]
    named = any(fault in suspect.faults for suspect in diagnosis.groups[0].suspects)
    sure = diagnosis.ending is not None and diagnosis.ending.is_sure
    fixed = _in_fixed_order(scene, _Answers(scene, number))
    # The first wait holds the simulation of all that was never asked about before.
    return Called(fault.key, named, sure, len(path), fixed, max(waits[1:], default=0), tuple(path))


def _in_fixed_order(scene: Dictionary, answers: _Answers) -> int:
    """How many readings it takes in the order of the list."""
    observations = answers.seen()
    count = 0
    while True:
        left = [each for each in standings(scene, scene.singles, observations) if not each.failed]
        if not left:
            return count
        rest = table(scene, left, observations)
        if choose(rest) is None:
            return count
        many = (rest.numbers != rest.numbers[0]).any(axis=0)
        reading = rest.readings[int(many.argmax())]
        value = answers.answer(reading)
        number = float("nan") if value is None else value
        observations.append(Observation(reading, number, number, ""))
        count += 1


def main(arguments: list[str] | None = None) -> int:
    """Run it, print the table, and return 1 if a bound is broken."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("examples", nargs="*", default=RIGHT, metavar="EXAMPLE")
    parser.add_argument("--sample", type=int, help="so many faults of each example")
    parser.add_argument("--jobs", type=int, default=1, help="examples at once")
    parser.add_argument("--tell", action="store_true", help="say which calls went wrong")
    options = parser.parse_args(arguments)
    names = [Path(name).stem for name in options.examples]
    print(f"{'':26}faults silent  calls  named   sure   readings      fixed  second")
    rows = []
    for each in _rows(names, options.sample, options.jobs):
        print(_line(each.name, each.faults, each.silent, each.calls), flush=True)
        if options.tell:
            print("".join(f"  {line}\n" for line in _told(each.calls)), end="", flush=True)
        rows.append(each)
    calls = [call for each in rows for call in each.calls]
    print(_line("all", sum(r.faults for r in rows), sum(r.silent for r in rows), calls))
    return 0 if _holds(calls) else 1


def _rows(names: Sequence[str], sample: int | None, jobs: int) -> Iterator[Row]:
    if jobs == 1:
        yield from (row(name, sample) for name in names)
        return
    with ProcessPoolExecutor(jobs) as pool:
        yield from pool.map(partial(row, sample=sample), names)


def _holds(calls: Sequence[Called]) -> bool:
    named = mean(call.named for call in calls)
    readings = [call.readings for call in calls]
    return named >= 0.98 and mean(readings) <= 5 and max(readings) <= MOST


def _line(name: str, faults: int, silent: int, calls: Sequence[Called]) -> str:
    if not calls:
        return f"{name:26}{faults:6} {silent:6} {0:6}"
    named, sure = (100 * mean(getattr(c, each) for c in calls) for each in ("named", "sure"))
    readings, fixed = [c.readings for c in calls], [c.fixed for c in calls]
    return (
        f"{name:26}{faults:6} {silent:6} {len(calls):6} {named:6.1f} {sure:6.1f} "
        f"{mean(readings):5.2f} {max(readings):4} {mean(fixed):5.2f} {max(fixed):4}"
        f" {max(call.slowest_s for call in calls):7.2f}"
    )


def _told(calls: Sequence[Called]) -> Iterator[str]:
    for call in calls:
        if not call.named or call.readings > MOST:
            yield f"{'WRONG' if not call.named else 'LONG '} {call.fault}: {'; '.join(call.path)}"


if __name__ == "__main__":
    sys.exit(main())
