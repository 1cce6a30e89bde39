"""Plants mistakes in the right examples and sees how they are mended.

``python -m tests.benchmarks.correction [EXAMPLE ...]`` prints a line for each example:

* single: single mistakes with a finding of safety or operation that were planted; one: those
  mended with one edit; first: those whose first answer joins the terminals of the original, or
  does the same as it by the judge of `tests.benchmarks.oracle`; among: one of the answers does;
* double: pairs of mistakes at different leads; two: those mended with no more than two edits;
  proved: those of which every single edit was tried before two were answered;
* median and most: seconds of process time for a correction, of single and of double mistakes.

``--single N`` and ``--double N`` take so many, the same each time; ``--tell`` says what was not as
it should be.
"""

from __future__ import annotations

import argparse
import random
import sys
from collections import Counter
from collections.abc import Iterator
from itertools import islice
from pathlib import Path
from statistics import median
from time import process_time

import wirecheck
from tests.benchmarks.campaign import RIGHT, example, grave, sample
from tests.benchmarks.mutants import Mistake, Original
from tests.benchmarks.oracle import Behaviour, behaviour, differences
from wirecheck.correct.answer import Answer, Correction
from wirecheck.correct.likelihood import joins
from wirecheck.correct.rewired import Rewired

COLUMNS = ("single", "one", "first", "among", "double", "two", "proved")
#: A sample of single mistakes is drawn so much larger than wished, as some have no grave finding.
MORE = 4


class Campaign:
    """What was planted in one example, and what came of it."""

    def __init__(self, original: Original, *, tell: bool) -> None:
        """Look at the right diagram."""
        self._original = original
        self._joins = joins(Rewired.nothing_changed(original.diagram))
        self._does: Behaviour = behaviour(original.diagram)
        self._tell = tell
        self.counted: Counter[str] = Counter()
        self.seconds: dict[str, list[float]] = {"single": [], "double": []}

    def single(self, mistakes: list[Mistake], count: int) -> None:
        """Plant single mistakes."""
        for name, found in self._corrected("single", ((each,) for each in mistakes), count):
            answers = found.answers
            one = bool(answers) and len(answers[0].changes) == 1
            first = bool(answers) and self._is_original(answers[0])
            among = first or any(map(self._is_original, answers))
            for column, holds in (("one", one), ("first", first), ("among", among)):
                self.counted[column] += holds
            if self._tell and not (one and first):
                print(f"  {name}: one {one}, first {first}, among {among}")

    def double(self, count: int) -> None:
        """Plant pairs of mistakes at different leads."""
        for name, found in self._corrected("double", self._pairs(), count):
            two = bool(found.answers) and len(found.answers[0].changes) <= 2
            self.counted["two"] += two
            self.counted["proved"] += two and found.proved_fewest
            if self._tell and not two:
                print(f"  {name}: {len(found.answers)} answers; tried {found.tried}")

    def _corrected(
        self, column: str, planted: Iterator[tuple[Mistake, ...]], count: int
    ) -> Iterator[tuple[str, Correction]]:
        grave_ones = (
            (mistakes, diagram)
            for mistakes in planted
            for diagram in [self._original.with_mistakes(*mistakes)]
            if grave(wirecheck.check(diagram).findings)
        )
        for mistakes, diagram in islice(grave_ones, count):
            started = process_time()
            found = wirecheck.correct(diagram, seconds=120)
            self.seconds[column].append(process_time() - started)
            self.counted[column] += 1
            yield " | ".join(each.name for each in mistakes), found

    def _pairs(self) -> Iterator[tuple[Mistake, ...]]:
        every = list(self._original.mistakes())
        chance = random.Random(len(every))  # noqa: S311
        while True:
            one, other = chance.sample(every, 2)
            if not one.changed.keys() & other.changed.keys():
                yield one, other

    def _is_original(self, answer: Answer) -> bool:
        if joins(answer.state) == self._joins:
            return True
        return not differences(self._does, behaviour(answer.state.diagram))


def main(arguments: list[str] | None = None) -> int:
    """Run it, print the table, and return 1 if a mistake was not mended with as many edits."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("examples", nargs="*", default=RIGHT[:-1], metavar="EXAMPLE")
    parser.add_argument("--single", type=int, default=20, help="so many of each example")
    parser.add_argument("--double", type=int, default=10, help="so many of each example")
    parser.add_argument("--tell", action="store_true", help="say which were not right")
    options = parser.parse_args(arguments)
    print(f"{'':26}" + "".join(f"{column:>8}" for column in COLUMNS) + "  median and most, s")
    total: Counter[str] = Counter()
    seconds: dict[str, list[float]] = {"single": [], "double": []}
    for name in options.examples:
        original = example(Path(name).stem)
        campaign = Campaign(original, tell=options.tell)
        campaign.single(sample(original, options.single * MORE), options.single)
        campaign.double(options.double)
        total += campaign.counted
        for column, taken in campaign.seconds.items():
            seconds[column] += taken
        print(_line(Path(name).stem, campaign.counted, campaign.seconds), flush=True)
    print(_line("all", total, seconds))
    return 1 if total["one"] < total["single"] or total["two"] < total["double"] else 0


def _line(name: str, counted: Counter[str], seconds: dict[str, list[float]]) -> str:
    times = "".join(f"  {median(s):.2f} {max(s):.2f}" for s in seconds.values() if s)
    return f"{name:26}" + "".join(f"{counted[column]:8}" for column in COLUMNS) + times


if __name__ == "__main__":
    sys.exit(main())
