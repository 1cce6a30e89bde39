"""A correction as JSON: the form is published as ``shared/schemas/correct.json``."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from wirecheck.correct.answer import Answer, Correction
from wirecheck.correct.rewired import Add, Change, Exchange, Fit, Move, Rewired, TakeOut
from wirecheck.correct.rewrite import Mended, words_of
from wirecheck.model.diagram import Terminal
from wirecheck.report.check_json import SCHEMA, finding_json, problem_json
from wirecheck.report.corrections import CorrectedFile, proved, summary

Json = dict[str, Any]


def correct_json(files: Sequence[CorrectedFile]) -> Json:
    """Return the document of a run of corrections."""
    found = [file.correction for file in files if file.correction]
    return {
        "schema": SCHEMA,
        "files": [_file(file) for file in files],
        "summary": {
            "files": len(files),
            "right": sum(each.nothing_to_do for each in found),
            "corrected": sum(bool(each.answers) for each in found),
            "problems": sum(len(file.problems) for file in files),
            "sentence": summary(files),
        },
    }


def _file(file: CorrectedFile) -> Json:
    correction = file.correction
    before = correction.before if correction else None
    answers = correction.answers if correction else ()
    return {
        "file": file.file,
        "variant": None,
        "problems": [problem_json(problem) for problem in file.problems],
        "nothing_to_correct": bool(correction and correction.nothing_to_do),
        "findings": [finding_json(finding) for finding in before.grave] if before else [],
        "trouble": list(before.trouble) if before else [],
        "does_before": list(file.does_before),
        "does_after": list(file.does_after),
        "answers": [_answer(*pair) for pair in zip(answers, file.mended, strict=True)],
        "nearest": _nearest(correction) if correction else None,
        "tried": [
            {"edits": each.edits, "number": each.number, "out_of": each.out_of, "all": each.all}
            for each in (correction.tried if correction else ())
        ],
        "proved_fewest": bool(correction and correction.answers and correction.proved_fewest),
        "in_time": bool(correction and correction.in_time),
        "proved": list(proved(correction)) if correction and not correction.nothing_to_do else [],
        "written": file.written,
        "drawings": [
            {"sheet": each.sheet, "format": each.file_format, "path": each.path}
            for each in file.drawings
        ],
    }


def _answer(answer: Answer, mended: Mended) -> Json:
    return {
        "edits": _edits(answer.state),
        "text": mended.text,
        "why_no_text": mended.why_not,
        "left": [finding_json(finding) for finding in mended.proof.checked.findings],
        "as_good": [_edits(state) for state in answer.as_good],
    }


def _nearest(correction: Correction) -> Json | None:
    nearest = correction.nearest
    if nearest is None:
        return None
    return {
        "edits": _edits(nearest.state),
        "left": [finding_json(finding) for finding in nearest.proof.grave],
    }


def _edits(state: Rewired) -> list[Json]:
    return [_edit(state, change) for change in state.changes]


def _edit(state: Rewired, change: Change) -> Json:
    words = words_of(state.found, change, state)
    show = state.found.show

    def form(action: str, away: Sequence[Terminal] = (), on: Sequence[Terminal] = ()) -> Json:
        return {
            "action": action,
            "words": words,
            "off": [show(terminal) for terminal in away],
            "on": [show(terminal) for terminal in on],
        }

    match change:
        case Move(_lead, old, new):
            return form("move", (old,), (new,))
        case Exchange(_lead, end, _other, other_end):
            return form("exchange", (end, other_end), (other_end, end))
        case Add(a, b):
            return form("add", (), (a, b))
        case TakeOut(lead):
            there = state.found.leads[lead]
            return form("remove", (there.a, there.b), ())
        case Fit():
            return form("set")
