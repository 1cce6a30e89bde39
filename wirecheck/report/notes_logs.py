"""What a check of notes says, as SARIF and as JUnit XML, put together document by document.

Each document's part is made where the document is checked.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from itertools import chain
from xml.etree import ElementTree as ET

from wirecheck.report.check_json import Json
from wirecheck.report.check_junit import document_of, suites_of
from wirecheck.report.check_sarif import log_of, results_of
from wirecheck.report.checks import CheckedFile
from wirecheck.report.notes_files import NoteFile


def sarif_part(file: NoteFile, *, with_baseline: bool) -> str:
    """Return the results of one document; each names the blocks and variants that have it."""
    checks = [each.check._replace(variant=each.label) for each in file.diagrams]
    entries = [*checks, CheckedFile(file.file, file.problems, None)]
    return json.dumps(list(results_of(entries, with_baseline=with_baseline)))


def sarif_log(parts: Iterable[str], *, usable: bool) -> Json:
    """Return the log of a run; ``usable``: whether everything could be used."""
    return log_of(list(chain.from_iterable(map(json.loads, parts))), usable=usable)


def junit_part(file: NoteFile) -> str:
    """Return the suites of one document: one a diagram, and one for what could not be used."""
    checks = [each.check._replace(file=f"{file.file}, {each.label}", variant=None)
              for each in file.diagrams]  # fmt: skip
    if file.problems or not checks:
        checks.insert(0, CheckedFile(file.file, file.problems, None))
    part = ET.Element("part")
    part.extend(suites_of(checks))
    return ET.tostring(part, encoding="unicode")


def junit_document(parts: Iterable[str]) -> str:
    """Return the document of a run."""
    return document_of([suite for part in parts for suite in ET.fromstring(part)])  # noqa: S314 - written above
