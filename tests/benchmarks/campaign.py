"""Makes every single mistake in the right examples and sees what the check says of it.

``python -m tests.benchmarks.campaign [EXAMPLE ...]`` prints a table, a line for each example:

* mutants: the mistakes made; matter: those that change what the unit does, or put volts where
  they must not be, by the judge of `tests.benchmarks.oracle`, which knows no rule;
* found: those of them with a finding of safety or operation; named: found, and a finding names a
  lead or terminal of the mistake; once: found by one finding and no more;
* harmless: those that change nothing; false: those of them with such a finding all the same.

``--sample N`` takes so many mistakes of an example, the same each time; ``--tell`` prints what
was missed, false, unnamed or told more than once.
"""

from __future__ import annotations

import argparse
import random
import sys
from collections import Counter
from collections.abc import Iterable, Iterator
from pathlib import Path
from time import process_time
from typing import NamedTuple

import wirecheck
from tests.benchmarks.mutants import Mistake, Original
from tests.benchmarks.oracle import Behaviour, behaviour, differences
from wirecheck.model.finding import Breaks, Finding

EXAMPLES = Path(__file__).parents[2] / "examples"
#: The right ones, the small ones first.
RIGHT = (
    "workshop-heater-one-rod",
    "laundry-heater-own-labels",
    "furnace-room-heater",
    "hangar-heater-direct",
    "boiler-with-vent-damper",
    "make-up-air-heater",
    "furnace-two-speed-blower",
    "two-zone-boiler",
    "greenhouse-range",
)


class Verdict(NamedTuple):
    """What became of one mistake.

    Attributes:
        mistake: what was done.
        matters: what it changes, by the words of the judge; empty: nothing.
        findings: those of safety and operation.
    """

    mistake: Mistake
    matters: tuple[str, ...]
    findings: tuple[Finding, ...]

    @property
    def found(self) -> bool:
        """It matters and there is a finding."""
        return bool(self.matters and self.findings)

    @property
    def missed(self) -> bool:
        """It matters and there is none."""
        return bool(self.matters and not self.findings)

    @property
    def false(self) -> bool:
        """It is harmless and there is a finding."""
        return bool(self.findings and not self.matters)

    @property
    def named(self) -> bool:
        """It is found, and a lead or terminal of it is named."""
        places, moved = self.mistake.places, self.mistake.changed.keys()
        return self.found and any(
            places.intersection(each.at_terminals) or moved & {*each.lead_numbers}
            for each in self.findings
        )

    @property
    def once(self) -> bool:
        """It is found by one finding."""
        return self.found and len(self.findings) == 1


def example(name: str) -> Original:
    """A right example."""
    return Original(EXAMPLES / f"{name}.wiring")


def sample(original: Original, count: int | None) -> list[Mistake]:
    """All single mistakes, or so many of them, the same each time and in their order."""
    every = list(original.mistakes())
    if count is None or count >= len(every):
        return every
    chosen = random.Random(len(every)).sample(range(len(every)), count)  # noqa: S311
    return [every[number] for number in sorted(chosen)]


def judged(original: Original, mistakes: Iterable[Mistake]) -> Iterator[Verdict]:
    """Check and judge a diagram with each of some mistakes."""
    right = behaviour(original.diagram)
    for mistake in mistakes:
        yield verdict(original, right, mistake)


def verdict(original: Original, right: Behaviour, *mistakes: Mistake) -> Verdict:
    """Check and judge a diagram with some mistakes at once, told as the first of them."""
    diagram = original.with_mistakes(*mistakes)
    matters = tuple(differences(right, behaviour(diagram)))
    return Verdict(mistakes[0], matters, grave(wirecheck.check(diagram).findings))


def grave(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Those of safety and operation."""
    return tuple(each for each in findings if each.breaks >= Breaks.OPERATION)


COLUMNS = ("mutants", "matter", "found", "named", "once", "missed", "harmless", "false")


def counts(verdicts: Iterable[Verdict]) -> Counter[str]:
    """The figures of the table."""
    counted: Counter[str] = Counter()
    for each in verdicts:
        counted["mutants"] += 1
        counted["matter" if each.matters else "harmless"] += 1
        for column in ("found", "named", "once", "missed", "false"):
            counted[column] += bool(getattr(each, column))
    return counted


def main(arguments: list[str] | None = None) -> int:
    """Run it, print the table, and return 1 if a mistake that matters was missed."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("examples", nargs="*", default=RIGHT, metavar="EXAMPLE")
    parser.add_argument("--sample", type=int, help="so many mistakes of each example")
    parser.add_argument("--tell", action="store_true", help="say which were not right")
    options = parser.parse_args(arguments)
    print(f"{'':26}" + "".join(f"{column:>9}" for column in COLUMNS) + "  a second")
    total: Counter[str] = Counter()
    for name in options.examples:
        original = example(Path(name).stem)
        started = process_time()
        verdicts = list(judged(original, sample(original, options.sample)))
        rate = len(verdicts) / (process_time() - started)
        counted = counts(verdicts)
        total += counted
        print(f"{Path(name).stem:26}{_figures(counted)}{rate:10.0f}", flush=True)
        if options.tell:
            print("".join(f"  {line}\n" for line in _told(verdicts)), end="", flush=True)
    print(f"{'all':26}{_figures(total)}")
    return 1 if total["missed"] else 0


def _figures(counted: Counter[str]) -> str:
    return "".join(f"{counted[column]:9}" for column in COLUMNS)


def _told(verdicts: Iterable[Verdict]) -> Iterator[str]:
    """The mistakes that were not right, one line each."""
    for each in verdicts:
        rules = ", ".join(f"{f.rule} ({f.fault}, {f.breaks})" for f in each.findings)
        if each.missed:
            yield f"MISSED   {each.mistake.name} [changes: {'; '.join(each.matters)}]"
        elif each.false:
            yield f"FALSE    {each.mistake.name} [{rules}]"
        elif each.found and not each.once:
            yield f"TWICE    {each.mistake.name} [{rules}]"
        if each.found and not each.named:
            yield f"UNNAMED  {each.mistake.name} [{rules}]"


if __name__ == "__main__":
    sys.exit(main())
