"""How long the answer to a reading takes on the largest example."""

from pathlib import Path
from time import process_time

import wirecheck
from tests.benchmarks.figure import Figure
from wirecheck.troubleshoot.conversation import Conversation
from wirecheck.troubleshoot.dictionary import Dictionary
from wirecheck.troubleshoot.reading import Observation

EXAMPLE = Path(__file__).parents[2] / "examples" / "greenhouse-range.wiring"
BOUND_S = 1.0
#: Every so many-th fault is looked for.
STEP = 25


def answers_to_readings() -> list[Figure]:
    """Look for some faults of the largest example, in the process's own seconds."""
    known = Dictionary(wirecheck.load(EXAMPLE).diagram)
    started = process_time()
    simulated = sum(1 for _done in known.preparing())
    prepared = process_time() - started
    first: list[float] = []
    later: list[float] = []
    for number in range(1, simulated, STEP):
        values = [(each, known.value((number,), each)) for each in known.symptoms]
        talk = Conversation.begun(known, [Observation(r, v, v, "") for r, v in values])
        first.append(_took(talk))
        while (advice := talk.diagnosis.advice) is not None:
            talk = talk.answer(advice.reading, known.value((number,), advice.reading))
            later.append(_took(talk))
    return [
        Figure(
            f"the longest answer to a reading of {EXAMPLE.stem}, in seconds",
            max(later),
            BOUND_S,
            f"mean {sum(later) / len(later):.2f} s; {simulated} faults tried in {prepared:.1f} s, "
            f"then up to {max(first):.1f} s until the first reading is asked for",
        )
    ]


def _took(talk: Conversation) -> float:
    started = process_time()
    assert talk.diagnosis.groups
    return process_time() - started
