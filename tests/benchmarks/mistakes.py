"""How long a check of a wrong diagram takes, and how that grows with the diagram.

A wrong diagram costs more than a right one: changes are tried, to tell one mistake once.
"""

from __future__ import annotations

import gc
from math import log
from statistics import linear_regression
from time import process_time

import wirecheck
from tests.benchmarks.campaign import RIGHT, example, sample, verdict
from tests.benchmarks.figure import Figure
from tests.benchmarks.oracle import Judge

#: So many mistakes of each example.
MISTAKES = 15
#: Seconds of the largest example: what still feels immediate.
BOUND_S = 1.0
BOUND_EXPONENT = 2.5


def mistakes_checked() -> list[Figure]:
    """Check wrong diagrams of every size, and judge those of the largest example."""
    leads, seconds = [], []
    wirecheck.check(example(RIGHT[0]).diagram)  # loads every rule
    for name in RIGHT:
        original = example(name)
        wrong = [original.with_mistakes(each) for each in sample(original, MISTAKES)]
        gc.collect()
        started = process_time()
        for diagram in wrong:
            wirecheck.check(diagram)
        seconds.append((process_time() - started) / len(wrong))
        leads.append(len(original.diagram.leads))
    slope = linear_regression([log(n) for n in leads], [log(s) for s in seconds]).slope
    sizes = ", ".join(f"{n}: {s * 1000:.0f}" for n, s in sorted(zip(leads, seconds, strict=True)))
    return [
        Figure(
            f"a check of a wrong {RIGHT[-1]}, in seconds",
            seconds[-1],
            BOUND_S,
            f"{1 / seconds[-1]:.1f} a second and core",
        ),
        Figure(
            "growth of a check of a wrong diagram with its leads, exponent",
            slope,
            BOUND_EXPONENT,
            f"leads and milliseconds: {sizes}",
        ),
        _judged(),
    ]


def _judged() -> Figure:
    original = example(RIGHT[-1])
    judge = Judge(original.diagram)
    mistakes = sample(original, MISTAKES)
    started = process_time()
    for each in mistakes:
        verdict(original, judge, each)
    seconds = (process_time() - started) / len(mistakes)
    return Figure(
        f"a mistake in {RIGHT[-1]} made, checked and judged, in seconds",
        seconds,
        BOUND_S,
        f"{1 / seconds:.1f} mutants a second and core",
    )
