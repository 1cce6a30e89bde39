"""Makes every single mistake in the right examples and sees what the check says of it.

``python -m tests.benchmarks.campaign [EXAMPLE ...]`` prints a table, a line for each example:

* mutants: the mistakes made; matter: those that change what the unit does, or put volts where
  they must not be, by the judge of `tests.benchmarks.oracle`, which knows no rule;
* found: those of them with a finding of safety or operation; named: found, and a finding names a
  lead or terminal of the mistake; once: found by one finding and no more;
* harmless: those that change nothing; false: those of them with such a finding all the same.

``--sample N`` takes so many mistakes of an example, the same each time; ``--part K/N`` the K-th of
N parts of them, for a campaign in several goes; ``--jobs N`` works on so many at once.  ``--tell``
prints what was missed, false, unnamed or told more than once, as soon as it is known.
"""

from __future__ import annotations

import argparse
import gc
import random
import sys
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from functools import lru_cache
from pathlib import Path
from time import process_time
from typing import NamedTuple

import wirecheck
from tests.benchmarks.mutants import Mistake, Original
from tests.benchmarks.oracle import Judge
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
        matters: what it changes, by the words of the judge, or one such thing where it is found;
            empty: nothing.
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
    judge = Judge(original.diagram)
    for mistake in mistakes:
        yield verdict(original, judge, mistake)


def verdict(original: Original, judge: Judge, *mistakes: Mistake) -> Verdict:
    """Check and judge a diagram with some mistakes at once, told as the first of them."""
    diagram = original.with_mistakes(*mistakes)
    findings = grave(wirecheck.check(diagram).findings)
    matters = judge.first_difference(diagram)
    if matters and not findings:
        return Verdict(mistakes[0], tuple(judge.differences(diagram)), findings)
    return Verdict(mistakes[0], (matters,) if matters else (), findings)


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


# ---- many at once --------------------------------------------------------------------------

#: So many mistakes are one piece of work.
AT_ONCE = 20


class Piece(NamedTuple):
    """Some mistakes of one example."""

    example: str
    mistakes: tuple[Mistake, ...]


class Done(NamedTuple):
    """What became of a piece.

    Attributes:
        counted: the figures of the table.
        told: what was not right, a line each.
        seconds: of the process's own.
    """

    counted: Counter[str]
    told: tuple[str, ...]
    seconds: float


@lru_cache(maxsize=1)
def _example_and_judge(name: str) -> tuple[Original, Judge]:
    original = example(name)
    return original, Judge(original.diagram)


def do(piece: Piece) -> Done:
    """Check and judge every mistake of a piece."""
    original, judge = _example_and_judge(piece.example)
    gc.collect()
    gc.freeze()  # what is there now stays: no need to look through it again and again
    started = process_time()
    verdicts = [verdict(original, judge, mistake) for mistake in piece.mistakes]
    seconds = process_time() - started
    return Done(counts(verdicts), tuple(_told(verdicts)), seconds)


def done(name: str, mistakes: Sequence[Mistake], jobs: int) -> Iterator[Done]:
    """Do all of some mistakes of an example, a piece after the other, in their order."""
    starts = range(0, len(mistakes), AT_ONCE)
    pieces = [Piece(name, tuple(mistakes[start : start + AT_ONCE])) for start in starts]
    if jobs == 1:
        yield from map(do, pieces)
        return
    with ProcessPoolExecutor(jobs) as pool:
        yield from pool.map(do, pieces)


def main(arguments: list[str] | None = None) -> int:
    """Run it, print the table, and return 1 if a mistake that matters was missed."""
    options = _options(arguments)
    print(f"{'':26}" + "".join(f"{column:>9}" for column in COLUMNS) + "  a second and core")
    total: Counter[str] = Counter()
    for path in options.examples:
        name = Path(path).stem
        number, parts = options.part
        mistakes = sample(example(name), options.sample)[number - 1 :: parts]
        counted: Counter[str] = Counter()
        seconds = 0.0
        for piece in done(name, mistakes, options.jobs):
            counted += piece.counted
            seconds += piece.seconds
            if options.tell:
                print("".join(f"  {line}\n" for line in piece.told), end="", flush=True)
            rate = counted["mutants"] / seconds
            so_far = (
                f"{name}: {counted['mutants']} of {len(mistakes)}, {rate:.1f} a second and core"
            )
            print(f"\r{so_far}", end="", file=sys.stderr, flush=True)
        print(file=sys.stderr)
        total += counted
        print(f"{name:26}{_figures(counted)}{counted['mutants'] / seconds:10.1f}", flush=True)
    print(f"{'all':26}{_figures(total)}")
    return 1 if total["missed"] else 0


def _options(arguments: list[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("examples", nargs="*", default=RIGHT, metavar="EXAMPLE")
    parser.add_argument("--sample", type=int, help="so many mistakes of each example")
    parser.add_argument("--part", type=_part, default=(1, 1), metavar="K/N", help="the K-th of N")
    parser.add_argument("--jobs", type=int, default=1, help="so many processes")
    parser.add_argument("--tell", action="store_true", help="say which were not right")
    return parser.parse_args(arguments)


def _part(text: str) -> tuple[int, int]:
    number, _, parts = text.partition("/")
    if not 1 <= int(number) <= int(parts):
        message = f"{text}: no such part"
        raise argparse.ArgumentTypeError(message)
    return int(number), int(parts)


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
