"""The page: what goes into it is gathered here, how it looks is the template's.

It stands alone: style and script are in it, allowed by their digests and nothing else; it asks no
network and sends nothing.
"""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from wirecheck.drawing.sheet import CAUTIONS
from wirecheck.lists.lists import lists_of
from wirecheck.lists.tables import Table, tables
from wirecheck.meter.reading import MeterSheet
from wirecheck.meter.sheet import meter_sheet
from wirecheck.model.finding import Breaks, Finding, Problem
from wirecheck.report.checks import counted
from wirecheck.report.html.inline_svg import inline_svg
from wirecheck.report.html.moments import LIVE_V, Moment, moments
from wirecheck.report.visible import visible
from wirecheck.resources import shared_text

if TYPE_CHECKING:
    from wirecheck.check.engine import Checked
    from wirecheck.correct.rewrite import Mended
    from wirecheck.sequence.run import Run


class Sheets(NamedTuple):
    """Finished SVG files of the two sheets."""

    ladder: bytes
    connections: bytes


class Corrected(NamedTuple):
    """A correction: what to do, the sheets with what changes marked, what was proved."""

    mended: Mended
    sheets: Sheets
    does: tuple[str, ...]
    proved: tuple[str, ...]


class Material(NamedTuple):
    """All that a report tells.

    Attributes:
        file: name of the file.
        checked: the diagram and what was found.
        problems: of its text.
        run: a call for heat.
        timeline: the same drawn, SVG.
        sheets: as found.
        corrected: if anything of safety or operation was found, and it can be mended.
        date: as it shall be printed.
    """

    file: str
    checked: Checked
    problems: tuple[Problem, ...]
    run: Run
    timeline: bytes
    sheets: Sheets
    corrected: Corrected | None
    date: str


def report_page(material: Material) -> str:
    """The page as HTML."""
    from jinja2 import DictLoader, Environment, StrictUndefined

    loader = DictLoader({"page": shared_text("page/report.html.jinja")})
    environment = Environment(
        loader=loader,
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters["visible"] = visible
    style = shared_text("page/report.css")
    script = shared_text("page/report.js")
    return environment.get_template("page").render(
        **_content(material),
        style=style,
        script=script,
        style_digest=_digest(style),
        script_digest=_digest(script),
    )


def _digest(text: str) -> str:
    """Digest of an inline style or script (W3C Content Security Policy Level 3, hash sources)."""
    return f"sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}"


def _content(material: Material) -> dict[str, Any]:
    checked, run = material.checked, material.run
    told = moments(run)
    leads = [checked.diagram.lead_name(lead) for lead in checked.diagram.leads]
    return {
        "title": checked.diagram.title,
        "file": material.file,
        "date": material.date,
        "cautions": CAUTIONS,
        "verdict": _verdict(checked),
        "does": [f"{each.control}: {each.outcome.sentence}" for each in run.told],
        "dangers": [danger.sentence for danger in run.dangers],
        "problems": material.problems,
        "findings": [_finding(n, each) for n, each in enumerate(checked.findings, 1)],
        "sheets": _inlined(material.sheets, "found", "as found"),
        "corrected": material.corrected,
        "corrected_sheets": (
            _inlined(material.corrected.sheets, "corrected", "corrected")
            if material.corrected
            else None
        ),
        "timeline": inline_svg(material.timeline, "timeline", "Timeline of a call for heat"),
        "moments": told,
        "moments_json": _for_script(told),
        "leads": leads,
        "live_volts": LIVE_V,
        "meter": _meter(meter_sheet(checked)),
        "tables": list(_lists(checked)),
        "assumed": checked.assumed,
        "not_checked": checked.not_checked,
    }


def _verdict(checked: Checked) -> str:
    """What came of it, in a sentence."""
    if not checked.findings:
        return "No rule and no property objects to this wiring as typed in."
    found = dict.fromkeys(sorted(Breaks, reverse=True), 0)
    for finding in checked.findings:
        found[finding.breaks] += 1
    words = ", ".join(f"{count} of {breaks}" for breaks, count in found.items() if count)
    return f"{counted(len(checked.findings), 'finding')}: {words}."


def _finding(number: int, finding: Finding) -> dict[str, Any]:
    return {
        "number": number,
        "breaks": str(finding.breaks),
        "place": str(finding.span),
        "rule": finding.rule,
        "message": finding.message,
        "seen": finding.seen_at_unit,
        "caution": finding.caution,
        "source": finding.source,
        "leads": finding.leads,
        "numbers": " ".join(map(str, finding.lead_numbers)),
        "edits": [edit.words for edit in finding.edits],
    }


def _inlined(sheets: Sheets, prefix: str, which: str) -> dict[str, str]:
    return {
        "ladder": inline_svg(sheets.ladder, prefix, f"Ladder, {which}"),
        "connections": inline_svg(sheets.connections, prefix, f"Connections, {which}"),
    }


def _for_script(told: Sequence[Moment]) -> str:
    """What the script steps through; no text of the diagram is in it."""
    return json.dumps([{"volts": moment.volts} for moment in told], separators=(",", ":"))


def _meter(sheet: MeterSheet) -> dict[str, Any]:
    return {
        "cautions": sheet.cautions,
        "as_drawn": () if sheet.is_good else sheet.as_drawn,
        "is_good": sheet.is_good,
        "sections": sheet.sections,
        "remarks": sheet.remarks,
    }


def _lists(checked: Checked) -> Iterator[Table]:
    return tables(lists_of(checked), ("wires", "parts"))
