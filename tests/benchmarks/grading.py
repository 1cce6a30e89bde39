"""Marks right and wrong drawings of every right example, and sees whether the marks are fair.

``python -m tests.benchmarks.grading [EXAMPLE ...]`` prints a line for each example:

* same: random harmless rewrites of it; full: those with full marks;
* matter: single mistakes that change what the unit does, by the judge of
  `tests.benchmarks.oracle`, which knows neither marks nor rules; below: those with less than full
  marks; named: those with a remark that names the moved lead or one of its terminals;
* nested: pairs of a drawing with some mistakes and the same with more, so that whatever is joined
  wrong in the one is so in the other; lower: those where the second mark is not higher;
* unsafe: drawings among all these with a finding of safety; capped: those under the cap.

``--same N``, ``--single N`` and ``--nested N`` take so many of each example, the same each time;
``--tell`` says what was not fair.
"""

from __future__ import annotations

import argparse
import random
import sys
from collections import Counter
from collections.abc import Iterator
from itertools import combinations
from pathlib import Path
from time import process_time

from tests.benchmarks.campaign import RIGHT, example, sample
from tests.benchmarks.mutants import Mistake, Original
from tests.benchmarks.oracle import behaviour, differences
from tests.benchmarks.rewrites import rewrites
from wirecheck import load_text
from wirecheck.circuit.nets import Nets
from wirecheck.grade.key import Key
from wirecheck.grade.marked import Marked
from wirecheck.grade.marking import marked
from wirecheck.grade.rubric import default_rubric
from wirecheck.model.diagram import Diagram, Terminal
from wirecheck.model.finding import Breaks

COLUMNS = ("same", "full", "matter", "below", "named", "nested", "lower", "unsafe", "capped")
#: Columns of which each has to come to as much as the one before it.
PROMISES = (("same", "full"), ("matter", "below"), ("matter", "named"), ("nested", "lower"),
            ("unsafe", "capped"))  # fmt: skip
#: A drawing gets at most so many mistakes.
MOST_MISTAKES = 5

Joined = frozenset[frozenset[Terminal]]


class Campaign:
    """What became of the drawings of one example."""

    def __init__(self, original: Original, *, tell: bool = False) -> None:
        """Make the key ready."""
        self._original = original
        self._key = Key(original.diagram, "the key")
        self._rubric = default_rubric()
        self._tell = tell
        self.counted: Counter[str] = Counter()

    def marked(self, diagram: Diagram) -> Marked:
        """Mark a drawing, and see whether it is capped if it is unsafe."""
        found = marked([self._key], diagram, self._rubric)
        findings = found.checked.findings
        if any(each.breaks is Breaks.SAFETY for each in self._key.beyond(findings)):
            self.counted["unsafe"] += 1
            self._count("capped", found.mark <= self._rubric.unsafe.cap, found, "unsafe")
        return found

    def same(self, count: int) -> None:
        """Rewrite the example so many times."""
        for text in rewrites(self._original, count):
            built = load_text(text, "rewrite")
            if built.problems:
                raise ValueError(built.problems[0].message)
            found = self.marked(built.diagram)
            self.counted["same"] += 1
            self._count("full", found.mark == self._rubric.out_of, found, "a rewrite")

    def single(self, mistakes: list[Mistake]) -> None:
        """Make single mistakes, and judge those that matter."""
        right = behaviour(self._original.diagram)
        for mistake in mistakes:
            diagram = self._original.with_mistakes(mistake)
            found = self.marked(diagram)
            if differences(right, behaviour(diagram)):
                self.counted["matter"] += 1
                self._count("below", found.mark < self._rubric.out_of, found, mistake.name)
                self._count("named", self._is_named(found, mistake), found, mistake.name)

    def nested(self, count: int) -> None:
        """Make some mistakes, then one after the other more of them."""
        done = 0
        for mistakes in self._chains():
            before: tuple[float, Joined] | None = None
            for number in range(1, len(mistakes) + 1):
                try:
                    diagram = self._original.with_mistakes(*mistakes[:number])
                except ValueError:
                    break
                found = self.marked(diagram)
                wrong = self._wrong(diagram)
                if before is not None and before[1] < wrong:
                    done += 1
                    self.counted["nested"] += 1
                    name = " | ".join(each.name for each in mistakes[:number])
                    self._count("lower", found.mark <= before[0], found, f"{before[0]}: {name}")
                before = found.mark, wrong
            if done >= count:
                return

    def _chains(self) -> Iterator[list[Mistake]]:
        every = list(self._original.mistakes())
        chance = random.Random(len(every))  # noqa: S311
        while True:
            chain: list[Mistake] = []
            for mistake in chance.sample(every, 4 * MOST_MISTAKES):
                free = all(not mistake.changed.keys() & each.changed.keys() for each in chain)
                if free and len(chain) < MOST_MISTAKES:
                    chain.append(mistake)
            yield chain

    def _wrong(self, diagram: Diagram) -> Joined:
        """The pairs of terminals joined that should not be, or not joined that should."""
        return _pairs(diagram) ^ _pairs(self._original.diagram)

    def _is_named(self, found: Marked, mistake: Mistake) -> bool:
        """Whether a remark names a moved lead or a terminal where it is or belongs."""
        show = self._original.diagram.show
        places = {show(end) for end in mistake.places}
        said = " ".join(f"{each.reason} {' '.join(each.places)}" for each in found.lost)
        return any(place in said for place in places)

    def _count(self, column: str, holds: bool, found: Marked, name: str) -> None:  # noqa: FBT001
        self.counted[column] += holds
        if self._tell and not holds:
            why = "; ".join(each.reason for each in found.lost)
            print(f"  {column}: {name}: {found.mark} of {found.before_cap} ({found.how}): {why}")


def _pairs(diagram: Diagram) -> Joined:
    """Every two terminals of devices, or one and earth, that are one conductor."""
    nets = Nets(diagram)
    return frozenset(
        frozenset(pair)
        for net in nets.members
        for pair in combinations((end for end in net if end.part not in diagram.splices), 2)
    )


def main(arguments: list[str] | None = None) -> int:
    """Run it, print the table, and return 1 if a mark was not fair."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("examples", nargs="*", default=RIGHT, metavar="EXAMPLE")
    parser.add_argument("--same", type=int, default=1000, help="so many rewrites of each example")
    parser.add_argument("--single", type=int, default=300, help="so many mistakes of each example")
    parser.add_argument("--nested", type=int, default=200, help="so many pairs of each example")
    parser.add_argument("--tell", action="store_true", help="say what was not fair")
    options = parser.parse_args(arguments)
    print(f"{'':26}" + "".join(f"{column:>8}" for column in COLUMNS) + "  a second")
    total: Counter[str] = Counter()
    for name in options.examples:
        original = example(Path(name).stem)
        campaign = Campaign(original, tell=options.tell)
        started = process_time()
        campaign.same(options.same)
        rate = options.same / (process_time() - started) if options.same else 0.0
        campaign.single(sample(original, options.single))
        campaign.nested(options.nested)
        total += campaign.counted
        print(f"{Path(name).stem:26}{_figures(campaign.counted)}{rate:10.0f}", flush=True)
    print(f"{'all':26}{_figures(total)}")
    return 1 if any(total[kept] < total[all_] for all_, kept in PROMISES) else 0


def _figures(counted: Counter[str]) -> str:
    return "".join(f"{counted[column]:8}" for column in COLUMNS)


if __name__ == "__main__":
    sys.exit(main())
