"""How long it takes to try every single fault of the largest example."""

from pathlib import Path
from statistics import median
from time import process_time

import wirecheck
from tests.benchmarks.figure import Figure

EXAMPLE = Path(__file__).parents[2] / "examples" / "greenhouse-range.wiring"
BOUND_S = 2.0
ROUNDS = 3


def every_fault() -> list[Figure]:
    """Try every fault of the largest example, in the process's own seconds."""
    diagram = wirecheck.load(EXAMPLE).diagram
    took = []
    for _ in range(ROUNDS):
        started = process_time()
        tried = wirecheck.try_faults(diagram).tried
        took.append(process_time() - started)
    seconds = median(took)
    return [
        Figure(
            f"every single fault of {EXAMPLE.stem}, in seconds",
            seconds,
            BOUND_S,
            f"{len(tried)} faults, {len(tried) / seconds:.0f} a second",
        )
    ]
