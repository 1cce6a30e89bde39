"""What a check says, as JUnit XML, the form in which build servers take test results.

Each diagram, a file or a variant of it, is a suite.  A finding is a case that failed, a problem of
the text one that ended in an error, a claim that holds one that passed; what is accepted, known or
cannot be decided was skipped, with the reason.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final, NamedTuple
from xml.etree import ElementTree as ET

from wirecheck.model.finding import Finding
from wirecheck.model.text import Span
from wirecheck.report.checks import CheckedFile
from wirecheck.report.visible import visible

#: The case of a diagram in which there is nothing else to tell.
NOTHING_FOUND: Final = "no rule found a mistake"


class _Case(NamedTuple):
    """A case: its name, how it ended ("" for well), in which class of that, and what is said."""

    name: str
    ended: str = ""
    type: str = ""
    message: str = ""


def check_junit(files: Sequence[CheckedFile]) -> str:
    """Return the document of a run."""
    return document_of(suites_of(files))


def suites_of(files: Sequence[CheckedFile]) -> list[ET.Element]:
    """Return a suite for each diagram."""
    return [_suite(file) for file in files]


def document_of(suites: Sequence[ET.Element]) -> str:
    """Return the document of suites."""
    root = ET.Element("testsuites", {"name": "wirecheck", **_sums(suites)})
    root.extend(suites)
    ET.indent(root)
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{ET.tostring(root, encoding="unicode")}\n'


def _sums(suites: Sequence[ET.Element]) -> dict[str, str]:
    return {
        name: str(sum(int(suite.get(name, "0")) for suite in suites))
        for name in ("tests", "failures", "errors")
    }


def _suite(file: CheckedFile) -> ET.Element:
    name = visible(file.file + (f", variant {file.variant}" if file.variant else ""))
    cases = list(_cases(file)) or [_Case(NOTHING_FOUND)]
    counts = {
        "tests": len(cases),
        "failures": sum(case.ended == "failure" for case in cases),
        "errors": sum(case.ended == "error" for case in cases),
        "skipped": sum(case.ended == "skipped" for case in cases),
    }
    suite = ET.Element("testsuite", {"name": name, **{k: str(v) for k, v in counts.items()}})
    for case in cases:
        element = ET.SubElement(suite, "testcase", {"name": visible(case.name), "classname": name})
        if case.ended:
            said = {"message": visible(case.message), "type": case.type}
            ET.SubElement(element, case.ended, said).text = visible(case.message)
    return suite


def _cases(file: CheckedFile) -> Iterator[_Case]:
    for problem in file.problems:
        message = f"{problem.span}: {problem.message}"
        yield _Case(f"problem in {_line(problem.span)}", "error", "problem", message)
    for finding in file.findings:
        yield _Case(_named(finding), "failure", str(finding.breaks), _told(finding))
    for finding in file.known:
        message = f"known, by the baseline: {_told(finding)}"
        yield _Case(_named(finding), "skipped", str(finding.breaks), message)
    for each in file.accepted:
        reason = each.accept.reason or "no reason given"
        message = f"accepted, {reason}: {_told(each.finding)}"
        yield _Case(_named(each.finding), "skipped", str(each.finding.breaks), message)
    for answer in file.checked.claims if file.checked else ():
        name = f"{answer.claim.text} in {_line(answer.claim.span)}"
        if answer.verdict == "proved":
            yield _Case(name)
        elif answer.verdict == "undecided":
            yield _Case(
                name, "skipped", answer.verdict, f"{answer.claim.span}: {answer.sentence()}"
            )


def _named(finding: Finding) -> str:
    return f"{finding.rule} in {_line(finding.span)}"


def _line(span: Span) -> str:
    return f"line {span.line}, column {span.column}"


def _told(finding: Finding) -> str:
    caution = f" ({finding.caution})" if finding.caution else ""
    return f"{finding.span}: {finding.breaks}: {finding.message}{caution}"
