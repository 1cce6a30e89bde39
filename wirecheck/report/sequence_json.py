"""What a call for heat does, as JSON."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from wirecheck.report.check_json import SCHEMA, problem_json
from wirecheck.report.sequences import SequenceFile
from wirecheck.sequence.run import Run


def sequences_json(files: Sequence[SequenceFile]) -> dict[str, Any]:
    """Return the document of a run of sequences."""
    return {
        "schema": SCHEMA,
        "files": [_file_json(file) for file in files],
        "summary": {
            "files": len({file.file for file in files}),
            "dangers": sum(len(file.dangers) for file in files),
            "problems": sum(len(file.problems) for file in files),
        },
    }


def _file_json(file: SequenceFile) -> dict[str, Any]:
    return {
        "file": file.file,
        "variant": file.variant,
        "problems": [problem_json(problem) for problem in file.problems],
        "runs": [_run_json(run) for run in (file.works, file.endangers) if run is not None],
        "picture": file.picture,
    }


def _run_json(run: Run) -> dict[str, Any]:
    return {
        "view": run.view.value,
        "from_s": run.trace.from_s,
        "until_s": run.trace.until_s,
        "cut_short": run.trace.cut_short,
        "outcomes": [
            {
                "control": told.control,
                "outcome": told.outcome.word,
                "sentence": told.outcome.sentence,
            }
            for told in run.told
        ],
        "dangers": [
            {"danger": danger.word, "sentence": danger.sentence, "time_s": danger.time_s}
            for danger in run.dangers
        ],
        "changes": [
            {"time_s": time_s, "track": track, "state": state, "reason": reason}
            for time_s, track, state, reason in run.trace.changes
        ],
    }
