"""What a check says, as SARIF 2.1.0 (OASIS standard, errata 01), for whatever shows findings.

A finding that several variants of a file have is one result.  What a comment accepts is there with
the reason as its suppression (one of safety says so in its words as well), what a baseline knows as
unchanged; a problem of the text is a result too, and says that the run did not use everything.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import PurePath
from typing import TYPE_CHECKING, Any, Final
from urllib.parse import quote

from wirecheck.model.finding import Breaks, Edit, Finding, Problem
from wirecheck.model.text import Span
from wirecheck.report.checks import CheckedFile, finding_key
from wirecheck.report.rule_words import RuleWords, rule_words
from wirecheck.report.visible import visible

if TYPE_CHECKING:
    from wirecheck.check.accepts import Accepted

Json = dict[str, Any]

VERSION: Final = "2.1.0"
SCHEMA_URI: Final = (
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)
#: The result of what could not be used of a text.
PROBLEM: Final = "problem"

_LEVELS: Final = {Breaks.SAFETY: "error", Breaks.OPERATION: "warning", Breaks.WORKMANSHIP: "note"}
_BASE: Final = "base"


def check_sarif(files: Sequence[CheckedFile]) -> Json:
    """Return the log of one run."""
    with_baseline = any(file.known for file in files)
    usable = not any(file.problems for file in files)
    return log_of(list(results_of(files, with_baseline=with_baseline)), usable=usable)


def log_of(results: list[Json], *, usable: bool) -> Json:
    """Return the log of results; ``usable``: whether everything could be used.

    Where one is suppressed, those that are not say so: all have suppressions or none (3.27.23).
    """
    if any("suppressions" in each for each in results):
        for each in results:
            each.setdefault("suppressions", [])
    names = sorted({each["ruleId"] for each in results})
    for each in results:
        each["ruleIndex"] = names.index(each["ruleId"])
    return {
        "$schema": SCHEMA_URI,
        "version": VERSION,
        "runs": [
            {
                "tool": {"driver": _driver(names)},
                "columnKind": "unicodeCodePoints",
                "invocations": [{"executionSuccessful": usable}],
                "results": results,
            }
        ],
    }


def message_text(text: str) -> str:
    """A text as a plain message: nothing in it is a link or a placeholder (3.11.5, 3.11.6)."""
    shown = visible(text).replace("\\", "\\\\").replace("[", "\\[").replace("]", "\\]")
    return shown.replace("{", "{{").replace("}", "}}")


def uri(file: str) -> str:
    """A file's name as a reference; a path from the root as a whole one."""
    path = PurePath(file)
    return path.as_uri() if path.is_absolute() else quote(path.as_posix())


def _driver(names: Sequence[str]) -> Json:
    from importlib.metadata import version

    return {
        "name": "wirecheck",
        "version": version("wirecheck"),
        "rules": [_rule(rule_words(name)) for name in names],
    }


def _rule(words: RuleWords) -> Json:
    return {
        "id": words.name,
        "shortDescription": {"text": message_text(words.title)},
        "fullDescription": {"text": message_text(words.why or words.title)},
        "help": {"text": message_text("\n".join(filter(None, words.help)))},
        "defaultConfiguration": {"level": _LEVELS[words.breaks]},
        "properties": {"breaks": str(words.breaks)},
    }


# ---- results -----------------------------------------------------------------------------------


def results_of(files: Sequence[CheckedFile], *, with_baseline: bool) -> Iterator[Json]:
    """Every finding once, with the variants that have it, then the problems."""
    found: dict[tuple[object, ...], Json] = {}
    for file in files:
        variant = file.variant or _BASE
        for finding in file.findings:
            state = {"baselineState": "new"} if with_baseline else {}
            _add(found, file.file, variant, finding, state)
        for finding in file.known:
            _add(found, file.file, variant, finding, {"baselineState": "unchanged"})
        for each in file.accepted:
            _add(found, file.file, variant, each.finding, _accepted(each))
    yield from found.values()
    for file in files:
        yield from (_problem(problem) for problem in file.problems)


def _accepted(each: Accepted) -> Json:
    """What makes a result of an accepted finding: one of safety is told as accepted, as a note."""
    reason = visible(each.accept.reason)
    suppression = {"kind": "inSource"} | ({"justification": reason} if reason else {})
    more: Json = {"suppressions": [suppression]}
    if each.finding.breaks < Breaks.SAFETY:
        return more
    words = message_text(f"accepted, {each.accept.reason}: {each.finding.message}")
    return more | {"level": "note", "message": {"text": words}}


def _add(
    found: dict[tuple[object, ...], Json], file: str, variant: str, finding: Finding, more: Json
) -> None:
    key = (file, *finding_key(finding), *more)
    if key not in found:
        found[key] = {**_result(finding), **more}
    found[key]["properties"]["variants"].append(visible(variant))


def _result(finding: Finding) -> Json:
    logical = [
        *({"name": visible(name), "kind": "resource"} for name in finding.leads),
        *({"name": visible(name), "kind": "member"} for name in finding.terminals),
    ]
    location = _location(finding.span) | ({"logicalLocations": logical} if logical else {})
    result = {
        "ruleId": finding.rule,
        "kind": "fail",
        "level": _LEVELS[finding.breaks],
        "message": {"text": message_text(finding.message)},
        "locations": [location],
        "properties": {
            "fault": finding.fault,
            "breaks": str(finding.breaks),
            "seenAtUnit": visible(finding.seen_at_unit),
            "caution": visible(finding.caution),
            "variants": [],
        },
    }
    related = [
        {**_location(each.span), "message": {"text": message_text(each.label)}}
        for each in finding.related
    ]
    if related:
        result["relatedLocations"] = related
    if finding.edits:
        result["fixes"] = [_fix(finding.edits)]
    return result


def _fix(edits: Sequence[Edit]) -> Json:
    """All edits of a finding together: each alone may mend nothing."""
    changes: dict[str, list[Json]] = {}
    for edit in edits:
        replacement = {
            "deletedRegion": _region(edit.span),
            "insertedContent": {"text": edit.new_text},
        }
        changes.setdefault(edit.span.file, []).append(replacement)
    return {
        "description": {"text": message_text("; ".join(edit.words for edit in edits))},
        "artifactChanges": [
            {"artifactLocation": {"uri": uri(file)}, "replacements": replacements}
            for file, replacements in changes.items()
        ],
    }


def _problem(problem: Problem) -> Json:
    return {
        "ruleId": PROBLEM,
        "kind": "fail",
        "level": "error",
        "message": {"text": message_text(problem.message)},
        "locations": [_location(problem.span)],
    }


def _location(span: Span) -> Json:
    return {
        "physicalLocation": {
            "artifactLocation": {"uri": uri(span.file)},
            "region": _region(span),
        }
    }


def _region(span: Span) -> Json:
    return {
        "startLine": span.line,
        "startColumn": span.column,
        "endLine": span.end_line,
        "endColumn": span.end_column,
    }
