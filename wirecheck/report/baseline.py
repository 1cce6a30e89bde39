"""A baseline: what was found in old files and is known, kept so that only new findings show.

A finding is known again by its file, its rule and the leads and terminals it names (or, where it
names no lead, the words it stands at), so it may move to another line.  Of equal ones as many are
known as were written.
"""

from __future__ import annotations

import json
import os
from collections import Counter
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any, Final, NamedTuple

from wirecheck.model.finding import Finding
from wirecheck.report.checks import CheckedFile

#: The version of the form; it changes when a key goes or changes its meaning.
SCHEMA: Final = 1


class Mark(NamedTuple):
    """What a finding is known by.

    Attributes:
        file: the path from the baseline's folder, with ``/``.
        rule, fault: what it is.
        at: the leads and terminals it names, as people read them.
        text: the words it stands at; "" where it names a lead.
    """

    file: str
    rule: str
    fault: str
    at: tuple[str, ...]
    text: str


class Baseline(NamedTuple):
    """How many findings of each mark are known."""

    known: Counter[Mark]


class BaselineError(ValueError):
    """A file that is no baseline; says in words what is wrong with it."""


class Held(NamedTuple):
    """The files of a run with what is known set aside, and what is not found any more."""

    files: list[CheckedFile]
    gone: int


def read_baseline(text: str) -> Baseline:
    """Read a baseline.

    Raises:
        BaselineError: it is none.
    """
    try:
        document = json.loads(text)
    except ValueError as error:
        raise BaselineError(f"it is no JSON: {error}") from None
    if not isinstance(document, dict) or document.get("schema") != SCHEMA:
        raise BaselineError(f"it is no baseline of form {SCHEMA}: write it with --write-baseline")
    known: Counter[Mark] = Counter()
    entries = document.get("known")
    for number, entry in enumerate(entries if isinstance(entries, list) else [None], start=1):
        mark, count = _mark_of(entry, number)
        known[mark] += count
    return Baseline(known)


def _mark_of(entry: object, number: int) -> tuple[Mark, int]:
    words = ("file", "rule", "fault", "text")
    if not isinstance(entry, dict):
        raise BaselineError("its “known” is no list of findings")
    at, count = entry.get("at"), entry.get("count")
    is_right = (
        all(isinstance(entry.get(word), str) for word in words)
        and isinstance(at, list)
        and all(isinstance(each, str) for each in at)
        and isinstance(count, int)
        and count > 0
    )
    if not is_right or not isinstance(at, list) or not isinstance(count, int):
        raise BaselineError(f"entry {number} of its “known” is no finding")
    file, rule, fault, text = (entry[word] for word in words)
    return Mark(file, rule, fault, tuple(at), text), count


def baseline_text(files: Iterable[CheckedFile], folder: Path) -> str:
    """Write what was found as a baseline that lies in a folder."""
    return known_text(marks_of(files, folder))


def marks_of(files: Iterable[CheckedFile], folder: Path) -> Counter[Mark]:
    """What was found, marked as a baseline that lies in a folder marks it."""
    known: Counter[Mark] = Counter()
    for file in files:
        known |= Counter(_mark(file.file, each, folder) for each in (*file.findings, *file.known))
    return known


def known_text(known: Counter[Mark]) -> str:
    """Write a baseline."""
    document: dict[str, Any] = {
        "schema": SCHEMA,
        "known": [
            {**mark._asdict(), "at": list(mark.at), "count": count}
            for mark, count in sorted(known.items())
        ],
    }
    return json.dumps(document, indent=2, ensure_ascii=False) + "\n"


def hold_against(files: Sequence[CheckedFile], baseline: Baseline, folder: Path) -> Held:
    """Set aside what a baseline knows; a baseline of files not checked here does not matter."""
    seen: Counter[Mark] = Counter()
    held = []
    for file in files:
        left = Counter(baseline.known)
        new, known = [], []
        for finding in file.findings:
            mark = _mark(file.file, finding, folder)
            if left[mark] > 0:
                left[mark] -= 1
                known.append(finding)
            else:
                new.append(finding)
        seen |= baseline.known - left
        checked = file.checked._replace(findings=tuple(new)) if file.checked else None
        held.append(file._replace(checked=checked, known=tuple(known)))
    names = {_path(file.file, folder) for file in files}
    expected = Counter({m: n for m, n in baseline.known.items() if m.file in names})
    return Held(held, (expected - seen).total())


def known_by_file(baseline: Baseline, names: Iterable[str], folder: Path) -> dict[str, Baseline]:
    """What a baseline knows of each of these files."""
    by_path: dict[str, Counter[Mark]] = {}
    for mark, count in baseline.known.items():
        by_path.setdefault(mark.file, Counter())[mark] = count
    return {name: Baseline(by_path.get(_path(name, folder), Counter())) for name in names}


def _mark(name: str, finding: Finding, folder: Path) -> Mark:
    at = tuple(sorted({*finding.leads, *finding.terminals}))
    text = "" if finding.leads else " ".join(finding.span.text.split())
    return Mark(_path(name, folder), finding.rule, finding.fault, at, text)


def _path(name: str, folder: Path) -> str:
    """A file's path from a folder; a name that is no path stays."""
    if name == "-":
        return name
    try:
        return Path(os.path.relpath(name, folder)).as_posix()
    except ValueError:  # on another drive
        return Path(name).absolute().as_posix()
