"""What a check says, as JSON: the form is published as ``shared/schemas/check.json``."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from wirecheck.model.finding import Assumed, Edit, Finding, NotChecked, Problem, Related
from wirecheck.model.text import Span
from wirecheck.report.checks import CheckedFile, tally

if TYPE_CHECKING:
    from wirecheck.check.claims import Answer

#: The version of every JSON form; it changes when a key goes or changes its meaning.
SCHEMA = 1

#: What can become of a claim (`wirecheck.check.claims.Verdict`).
VERDICTS = ("proved", "refuted", "never", "undecided")

Json = dict[str, Any]


def check_json(files: Sequence[CheckedFile], rules: int) -> Json:
    """Return the document of a run; ``rules`` is how many rules looked at each diagram."""
    total = tally(files, rules)
    return {
        "schema": SCHEMA,
        "files": [_file(file) for file in files],
        "summary": {
            "files": total.files,
            "variants": total.variants,
            "leads": total.leads,
            "rules": total.rules,
            "findings": {str(breaks): count for breaks, count in total.findings.items()},
            "problems": total.problems,
            "claims": {verdict: total.claims.get(verdict, 0) for verdict in VERDICTS},
            "accepted": total.accepted,
            "known": total.known,
            "sentence": total.sentence(),
        },
    }


def _file(file: CheckedFile) -> Json:
    checked = file.checked
    return {
        "file": file.file,
        "variant": file.variant,
        "title": checked.diagram.title if checked else None,
        "leads": file.leads,
        "problems": [problem_json(problem) for problem in file.problems],
        "findings": [finding_json(finding) for finding in file.findings],
        "accepted": [
            {"reason": each.accept.reason, "finding": finding_json(each.finding)}
            for each in file.accepted
        ],
        "known": [finding_json(finding) for finding in file.known],
        "fixed": [{"rule": step.finding.rule, "words": list(step.words)} for step in file.fixed],
        "claims": [claim_json(answer) for answer in checked.claims] if checked else [],
        "assumed": [_assumed(item) for item in checked.assumed] if checked else [],
        "not_checked": [_not_checked(item) for item in checked.not_checked] if checked else [],
    }


def problem_json(problem: Problem) -> Json:
    """Return a problem of a text."""
    return {
        **place_json(problem.span),
        "message": problem.message,
        "nearest": problem.nearest,
    }


def finding_json(finding: Finding) -> Json:
    """Return a finding with its edits."""
    return {
        "rule": finding.rule,
        "fault": finding.fault,
        "breaks": str(finding.breaks),
        "also_breaks": [str(breaks) for breaks in finding.also_breaks],
        **place_json(finding.span),
        "message": finding.message,
        "seen_at_unit": finding.seen_at_unit,
        "leads": list(finding.leads),
        "terminals": list(finding.terminals),
        "caution": finding.caution,
        "source": finding.source,
        "edits": [_edit(edit) for edit in finding.edits],
        "related": [_related(related) for related in finding.related],
    }


def claim_json(answer: Answer) -> Json:
    """Return what became of a claim; a value that no number says (nothing conducts) is null."""
    is_number = answer.value is not None and math.isfinite(answer.value)
    return {
        **place_json(answer.claim.span),
        "claim": answer.claim.text,
        "verdict": answer.verdict,
        "computed": answer.computed,
        "value": answer.value if is_number else None,
        "unit": answer.unit,
        "phase": answer.phase,
        "why": answer.why,
        "sentence": answer.sentence(),
    }


def place_json(span: Span) -> Json:
    """Return a place: lines and columns from 1, the end just behind the last character."""
    return {
        "file": span.file,
        "line": span.line,
        "column": span.column,
        "end_line": span.end_line,
        "end_column": span.end_column,
    }


def _edit(edit: Edit) -> Json:
    return {
        "action": edit.action,
        "words": edit.words,
        **place_json(edit.span),
        "new_text": edit.new_text,
    }


def _related(related: Related) -> Json:
    return {**place_json(related.span), "label": related.label}


def _assumed(item: Assumed) -> Json:
    place = place_json(item.span) if item.span else None
    return {"what": item.what, "source": item.source, "place": place}


def _not_checked(item: NotChecked) -> Json:
    place = place_json(item.span) if item.span else None
    return {"what": item.what, "reason": item.reason, "place": place}
