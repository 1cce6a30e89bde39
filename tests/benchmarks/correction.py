"""Plants mistakes in the right examples and sees how they are mended.

``python -m tests.benchmarks.correction [EXAMPLE ...]`` prints a line for each example:

* single: single mistakes with a finding of safety or operation that were planted; one: those
  mended with one edit; first: those whose first answer joins the terminals of the original, or
  does the same as it by the judge of `tests.benchmarks.oracle`; among: one of the answers does;
* double: pairs of mistakes at different leads; two: those mended with no more than two edits;
  proved: those of which every single edit was tried before two were answered; brute: of these, so
  many had every single edit tried once more, by nothing of the search (`tests.benchmarks.brute`);
  refuted: those of which one mended it after all;
* twice: the corrected text corrected again, which must change nothing; changed: where it did;
* median and most: seconds of process time for a correction, of single and of double mistakes.

``--single N``, ``--double N`` and ``--brute N`` take so many of each example, the same each time;
``--single all`` takes every one. ``--jobs N`` works in so many processes; ``--tell`` says what was
not as it should be.
"""

from __future__ import annotations

import argparse
import random
import sys
from collections import Counter
from collections.abc import Iterable
from functools import lru_cache
from multiprocessing import Pool
from pathlib import Path
from statistics import median
from time import process_time
from typing import NamedTuple

import wirecheck
from tests.benchmarks.brute import mending
from tests.benchmarks.campaign import RIGHT, example, sample
from tests.benchmarks.mutants import Mistake, Original
from tests.benchmarks.oracle import Behaviour, behaviour, differences
from wirecheck.correct.answer import Answer, Correction
from wirecheck.correct.likelihood import joins
from wirecheck.correct.rewired import Rewired
from wirecheck.correct.rewrite import mended
from wirecheck.model.diagram import Diagram

COLUMNS = (
    "single", "one", "first", "among", "double", "two", "proved", "brute", "refuted", "twice",
    "changed",
)  # fmt: skip
#: So long a correction may take on a machine that does other things too.
PATIENCE_S = 180.0
#: So many mistakes are handed to a process at once.
CHUNK = 10


class Task(NamedTuple):
    """Mistakes of an example to plant, by their numbers; each entry is planted by itself."""

    example: str
    planted: tuple[tuple[int, ...], ...]
    by_force: bool


class Result(NamedTuple):
    """What came of some mistakes: figures by column, seconds, and what was not right, in words."""

    example: str
    double: bool
    counted: Counter[str]
    seconds: float
    told: str


@lru_cache(maxsize=2)
def _original(name: str) -> tuple[Original, tuple[Mistake, ...], Behaviour]:
    original = example(name)
    return original, tuple(original.mistakes()), behaviour(original.diagram)


def done(task: Task) -> list[Result]:
    """Plant mistakes and correct them; those with no finding of safety or operation count not."""
    original, mistakes, _does = _original(task.example)
    results = []
    for numbers in task.planted:
        chosen = [mistakes[number] for number in numbers]
        diagram = original.with_mistakes(*chosen)
        started = process_time()
        found = wirecheck.correct(diagram, seconds=PATIENCE_S)
        seconds = process_time() - started
        if not found.nothing_to_do:
            judged = _judged_double if len(chosen) > 1 else _judged_single
            counted = judged(task, diagram, found)
            name = " | ".join(each.name for each in chosen)
            told = _told(name, counted, found, seconds)
            results.append(Result(task.example, len(chosen) > 1, counted, seconds, told))
    return results


def _judged_single(task: Task, _diagram: Diagram, found: Correction) -> Counter[str]:
    first = bool(found.answers) and _is_original(task.example, found.answers[0])
    among = first or any(_is_original(task.example, answer) for answer in found.answers)
    counted = Counter(single=1, one=_edits(found) == 1, first=first, among=among)
    return counted + _corrected_twice(found)


def _judged_double(task: Task, diagram: Diagram, found: Correction) -> Counter[str]:
    edits = _edits(found)
    counted = Counter(double=1, two=edits in (1, 2), proved=edits == 1 or found.proved_fewest)
    if edits == 2 and task.by_force:
        counted += Counter(brute=1, refuted=any(True for _state in mending(diagram)))
    return counted + _corrected_twice(found)


def _edits(found: Correction) -> int:
    return len(found.answers[0].changes) if found.answers else 0


def _is_original(name: str, answer: Answer) -> bool:
    original, _mistakes, does = _original(name)
    if joins(answer.state) == joins(Rewired.nothing_changed(original.diagram)):
        return True
    return not differences(does, behaviour(answer.state.diagram))


def _corrected_twice(found: Correction) -> Counter[str]:
    """Write the first answer into the text, and correct what is read from that."""
    if not found.answers:
        return Counter()
    text = mended(found.answers[0].state, found.answers[0].proof).text
    if text is None:
        return Counter(changed=1)
    again = wirecheck.correct(wirecheck.load_text(text, "again").diagram)
    return Counter(twice=1, changed=not again.nothing_to_do)


def _told(name: str, counted: Counter[str], found: Correction, seconds: float) -> str:
    right = counted["one"] and counted["first"] if counted["single"] else counted["two"]
    wrong = [column for column in ("refuted", "changed") if counted[column]]
    if right and not wrong and seconds < found.bound.seconds / 9:
        return ""
    did = " ".join(column for column in COLUMNS if counted[column])
    changes = "; ".join(str(change) for change in found.answers[0].changes) if found.answers else ""
    tried = ", ".join(f"{each.number} of {each.edits}" for each in found.tried)
    return f"{name}: {did}; {seconds:.1f} s; tried {tried}; {changes}"


# ---- what is planted ---------------------------------------------------------------------------


def _tasks(name: str, options: argparse.Namespace) -> list[Task]:
    original = example(name)
    every = list(original.mistakes())
    places = {mistake.name: number for number, mistake in enumerate(every)}
    chosen = sample(original, None if options.single == "all" else int(options.single))
    singles: list[tuple[int, ...]] = [(places[mistake.name],) for mistake in chosen]
    doubles = _pairs(every, options.double)
    forced, rest = doubles[: options.brute], doubles[options.brute :]
    return [
        *_in_chunks(name, singles, by_force=False),
        *_in_chunks(name, forced, by_force=True),
        *_in_chunks(name, rest, by_force=False),
    ]


def _in_chunks(name: str, planted: list[tuple[int, ...]], *, by_force: bool) -> list[Task]:
    chunk = 1 if by_force else CHUNK
    starts = range(0, len(planted), chunk)
    return [Task(name, tuple(planted[at : at + chunk]), by_force) for at in starts]


def _pairs(every: list[Mistake], count: int) -> list[tuple[int, ...]]:
    """So many pairs of mistakes at different leads, the same each time."""
    chance = random.Random(len(every))  # noqa: S311
    pairs: list[tuple[int, ...]] = []
    while len(pairs) < count:
        one, other = chance.sample(range(len(every)), 2)
        if not every[one].changed.keys() & every[other].changed.keys():
            pairs.append((one, other))
    return pairs


def main(arguments: list[str] | None = None) -> int:
    """Run it, print the table, and return 1 if a mistake was not mended as it should be."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("examples", nargs="*", default=RIGHT, metavar="EXAMPLE")
    parser.add_argument("--single", default="20", help="so many of each example, or all")
    parser.add_argument("--double", type=int, default=10, help="so many of each example")
    parser.add_argument("--brute", type=int, default=0, help="so many doubles tried by force")
    parser.add_argument("--jobs", type=int, default=1, help="processes that work side by side")
    parser.add_argument("--tell", action="store_true", help="say which were not right")
    options = parser.parse_args(arguments)
    print(f"{'':26}" + "".join(f"{column:>8}" for column in COLUMNS) + "  median and most, s")
    everything: list[Result] = []
    with Pool(options.jobs) as pool:
        for given in options.examples:
            name = Path(given).stem
            results = []
            for some in pool.imap_unordered(done, _tasks(name, options)):
                results += some
                for line in (each.told for each in some if options.tell and each.told):
                    print(f"  {line}", flush=True)
            print(_line(name, results), flush=True)
            everything += results
    print(_line("all", everything))
    total = _total(everything)
    broken = total["one"] < total["single"] or total["two"] < total["double"]
    return 1 if broken or total["refuted"] or total["changed"] else 0


def _total(results: Iterable[Result]) -> Counter[str]:
    total: Counter[str] = Counter()
    for each in results:
        total.update(each.counted)
    return total


def _line(name: str, results: list[Result]) -> str:
    total = _total(results)
    times = ""
    for double in (False, True):
        seconds = [each.seconds for each in results if each.double is double]
        times += f"  {median(seconds):.2f} {max(seconds):.2f}" if seconds else ""
    return f"{name:26}" + "".join(f"{total[column]:8}" for column in COLUMNS) + times


if __name__ == "__main__":
    sys.exit(main())
