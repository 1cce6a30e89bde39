"""How the work grows with the size of the file, and how it compares with parsing alone.

Times are the process's own seconds, so that other work on the machine does not count.
"""

import gc
import math
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median
from time import process_time

from lark import Lark

import wirecheck
from tests.benchmarks.diagrams import statements
from tests.benchmarks.figure import Figure
from wirecheck.resources import grammar_text

FEW, MANY = 1_000, 100_000
FEW_ROUNDS, MANY_ROUNDS = 11, 3
PARSING_BOUND = 3.0
GROWTH_BOUND = 1.1


def large_files() -> list[Figure]:
    """Load and check 1,000 and 100,000 leads, and parse the statements of the latter bare."""
    with _written(FEW) as few, _written(MANY) as many:
        few_s = median(_seconds(lambda: _load_and_check(few)) for _ in range(FEW_ROUNDS))
        rounds = [
            (_seconds(lambda: _load_and_check(many)), _bare_parsing_seconds())
            for _ in range(MANY_ROUNDS)
        ]
    many_s, parsing_s = median(ours for ours, _ in rounds), median(bare for _, bare in rounds)
    return [
        Figure(
            f"load and check of {MANY:,} leads / parsing their statements with Lark alone",
            many_s / parsing_s,
            PARSING_BOUND,
            f"{many_s:.1f} s / {parsing_s:.1f} s; {MANY / many_s:,.0f} leads a second",
        ),
        Figure(
            f"growth from {FEW:,} to {MANY:,} leads, as the exponent of the size",
            math.log(many_s / few_s) / math.log(MANY / FEW),
            GROWTH_BOUND,
            f"{few_s * 1000:.0f} ms to {many_s:.1f} s",
        ),
    ]


@contextmanager
def _written(leads: int) -> Iterator[Path]:
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder, "large.wiring")
        file.write_text("\n".join(statements(leads)) + "\n", encoding="utf-8")
        yield file


def _load_and_check(file: Path) -> None:
    wirecheck.check(wirecheck.load(file).diagram)


def _bare_parsing_seconds() -> float:
    parse = Lark(grammar_text("wiring.lark"), parser="lalr", propagate_positions=True).parse
    lines = statements(MANY)

    def parse_each() -> None:
        for line in lines:
            parse(line)

    gc.disable()
    try:
        return _seconds(parse_each)
    finally:
        gc.enable()


def _seconds(work: Callable[[], None]) -> float:
    gc.collect()
    gc.freeze()
    started = process_time()
    work()
    seconds = process_time() - started
    gc.unfreeze()
    return seconds
