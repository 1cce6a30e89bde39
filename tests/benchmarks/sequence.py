"""How long a whole call for heat takes to run, once everything is loaded.

Times are the process's own seconds, so that other work on the machine does not count.
"""

import math
from statistics import median
from time import process_time

from tests.benchmarks.diagrams import LEADS_OF_A_UNIT, statements
from tests.benchmarks.figure import Figure
from wirecheck import load_text, simulate

ROUNDS = 21
#: A call from standby to run and back, in seconds of process time.
BOUND_S = 0.020
#: So many heaters, each with its own supply, against one: the exponent of the growth.
MANY = 8
GROWTH_BOUND = 1.6


def whole_sequence() -> list[Figure]:
    """Run a call of ten minutes at one heater and at several in one file."""
    one_s, many_s = _seconds(1), _seconds(MANY)
    return [
        Figure(
            "one call for heat from standby to run and back / 20 ms",
            one_s / BOUND_S,
            1.0,
            f"{one_s * 1000:.1f} ms; {MANY} heaters in one file {many_s * 1000:.0f} ms",
        ),
        Figure(
            f"growth of that from one heater to {MANY}, as the exponent of the size",
            math.log(many_s / one_s) / math.log(MANY),
            GROWTH_BOUND,
            f"{one_s * 1000:.1f} ms to {many_s * 1000:.0f} ms",
        ),
    ]


def _seconds(heaters: int) -> float:
    diagram = load_text("\n".join(statements(LEADS_OF_A_UNIT * heaters)) + "\n").diagram
    simulate(diagram)
    rounds = []
    for _round in range(ROUNDS):
        started = process_time()
        simulate(diagram)
        rounds.append(process_time() - started)
    return median(rounds)
