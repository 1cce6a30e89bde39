"""Measures everything, prints the table, and exits 1 if a bound is broken."""

import sys

from tests.benchmarks.claims import claims_beside_rules
from tests.benchmarks.classroom import flat_memory
from tests.benchmarks.cold_start import cold_check
from tests.benchmarks.faults import every_fault
from tests.benchmarks.mistakes import mistakes_checked
from tests.benchmarks.notes import binder
from tests.benchmarks.sequence import whole_sequence
from tests.benchmarks.solver import circuits_solved
from tests.benchmarks.throughput import large_files
from tests.benchmarks.troubleshooting import answers_to_readings


def main() -> int:
    """Print one line a figure as soon as it is known."""
    broken = 0
    # A process begins with the peak of the one that starts it: memory before the large files.
    for measure in (
        cold_check,
        flat_memory,
        binder,
        claims_beside_rules,
        circuits_solved,
        whole_sequence,
        every_fault,
        mistakes_checked,
        large_files,
        answers_to_readings,
    ):
        for figure in measure():
            verdict = "holds" if figure.holds else "BROKEN"
            print(f"{figure.value:5.2f}  at most {figure.bound:.1f}  {verdict:6}  {figure.name}")
            print(f"{'':31}{figure.beside}", flush=True)
            broken += not figure.holds
    return 1 if broken else 0


if __name__ == "__main__":
    sys.exit(main())
