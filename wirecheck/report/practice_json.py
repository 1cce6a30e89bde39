"""Exercises as JSON: the form is published as ``shared/schemas/practice.json``."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from wirecheck.report.check_json import SCHEMA, finding_json, problem_json
from wirecheck.report.practices import Made, PracticeFile, summary

Json = dict[str, Any]


def practice_json(files: Sequence[PracticeFile]) -> Json:
    """Return the document of a run."""
    return {
        "schema": SCHEMA,
        "files": [_file(file) for file in files],
        "summary": {
            "files": len(files),
            "exercises": sum(len(file.made) for file in files),
            "problems": sum(len(file.problems) for file in files),
            "sentence": summary(files),
        },
    }


def _file(file: PracticeFile) -> Json:
    return {
        "file": file.file,
        "problems": [problem_json(problem) for problem in file.problems],
        "exercises": [_exercise(made) for made in file.made],
        "blank": list(file.blank),
    }


def _exercise(made: Made) -> Json:
    exercise = made.exercise
    return {
        "name": exercise.name,
        "difficulty": exercise.difficulty.value,
        "text": exercise.text,
        "mistakes": [
            {
                "kind": hidden.mistake.form.value,
                "words": hidden.mistake.words,
                "difficulty": hidden.difficulty.value,
                "findings": [finding_json(finding) for finding in hidden.findings],
            }
            for hidden in exercise.hidden
        ],
        "hand_out": list(made.hand_out),
        "key": list(made.key),
    }
