"""Every diagram of a document checked, and every place one of the document."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.sequence.heater import HEATER
from wirecheck import check, check_note, check_note_bytes, load_text
from wirecheck.notes.checked import CheckedDocument
from wirecheck.report.notes_files import note_file, told_once

GROUND = "wire box.GND to pilot.HOOD\n"
NO_GROUND = HEATER.replace(GROUND, "")


def block(opening: str, text: str, margin: str = "") -> str:
    lines = [f"```wiring {opening}", *text.splitlines(), "```", ""]
    return "".join(f"{margin}{line}\n" for line in lines)


def checked(*blocks: str) -> CheckedDocument:
    return check_note_bytes("\n".join(["# Note", "", *blocks]).encode(), "note.md")


def diagrams(document: CheckedDocument) -> list[tuple[str | None, str | None]]:
    return [
        (each.block.name.text if each.block.name else None, each.variant)
        for each in document.diagrams
    ]


def rules(document: CheckedDocument) -> list[list[str]]:
    return [[f.rule for f in each.checked.findings] for each in document.diagrams]


def problems(document: CheckedDocument) -> list[str]:
    return [f"{each.span.line}:{each.span.column}: {each.message}" for each in document.problems]


@pytest.mark.parametrize("margin", ["", "> ", "   ", "> > "])
@pytest.mark.parametrize("line_end", ["\n", "\r\n"])
def test_findings_stand_at_the_lines_of_the_document(margin: str, line_end: str) -> None:
    """A block raises what its text alone raises, each place moved to where it stands."""
    alone = check(load_text(NO_GROUND).diagram).findings
    text = f"# Note\n\nSome text.\n\n{block('name heater', NO_GROUND, margin)}"
    document = check_note_bytes(text.replace("\n", line_end).encode(), "note.md")
    (diagram,) = document.diagrams
    found = diagram.checked.findings
    assert [f.rule for f in found] == [f.rule for f in alone] == ["burner-ground-missing"]
    for there, here in zip(alone, found, strict=True):
        assert here.span.file == "note.md"
        assert here.span.line == there.span.line + 5
        assert here.span.column == there.span.column + len(margin)
        assert here.span.end_column == there.span.end_column + len(margin)
        lines = text.split("\n")
        assert lines[here.span.line - 1][here.span.column - 1 :].startswith(there.span.text)


@pytest.mark.parametrize("behind", ["", "\n", '\n\nnote "aside"\n'])
@pytest.mark.parametrize("margin", ["", "> ", "   ", "> - "])
@pytest.mark.parametrize("line_end", ["\n", "\r\n"])
def test_an_edit_made_in_the_document_mends_it(margin: str, line_end: str, behind: str) -> None:
    later = "> " + " " * (len(margin) - 2) if margin == "> - " else margin
    body = block("name heater", NO_GROUND + behind, later)
    lines = [line.rstrip() for line in (margin + body[len(later) :]).splitlines()]
    text = line_end.join([*lines, "", "The end.", ""])
    (diagram,) = check_note_bytes(text.encode(), "note.md").diagrams
    (finding,) = diagram.checked.findings
    (edit,) = finding.edits
    starts = [0]
    for line in text.splitlines(keepends=True):
        starts.append(starts[-1] + len(line))
    start = starts[edit.span.line - 1] + edit.span.column - 1
    end = starts[edit.span.end_line - 1] + edit.span.end_column - 1
    mended = check_note_bytes((text[:start] + edit.new_text + text[end:]).encode(), "note.md")
    assert problems(mended) == []
    assert rules(mended) == [[]]
    assert len(mended.diagrams[0].checked.diagram.leads) == len(load_text(HEATER).diagram.leads)


def test_a_block_adds_to_those_it_builds_on() -> None:
    supply, rest = HEATER[: HEATER.index("part limit")], HEATER[HEATER.index("part limit") :]
    document = checked(
        block("name supply, piece", supply),
        block("name heater, on supply", rest.replace(GROUND, "")),
        block("name mended, on heater", GROUND),
    )
    assert problems(document) == []
    assert diagrams(document) == [("heater", None), ("mended", None)]
    assert rules(document) == [["burner-ground-missing"], []]


def test_what_several_blocks_say_is_told_once_with_all_of_them() -> None:
    wrong = HEATER.replace("SENSE to pilot.ROD", "SPARK to pilot.ROD")
    document = checked(block("name a", wrong), block("name b, on a", "part x is lamp"))
    once = told_once(note_file("note.md", document).diagrams)
    both = [each for each in once if each.finding.rule == "rod-on-spark"]
    assert [len(each.diagrams) for each in both] == [2]
    assert len(once) == len({(str(f.finding.span), f.finding.message) for f in once})


def test_a_title_falls_back_on_document_and_block() -> None:
    document = checked(
        block("name a", 'diagram "First"\npart x is lamp'), block("on a", "part y is lamp")
    )
    titles = [each.checked.diagram.title for each in document.diagrams]
    assert titles == ["First", "note, line 9"]


def test_claims_stay_with_the_block_that_makes_them_and_those_of_a_piece_do_not() -> None:
    document = checked(
        block("name gauge, piece", "expect 24 V across xfmr.R and xfmr.C"),
        block("name heater, on gauge", f"{HEATER}expect main-valve on during run"),
        block("on heater, on gauge", "part x is lamp"),
    )
    assert problems(document) == []
    claimed = [[c.text for c in each.checked.diagram.claims] for each in document.diagrams]
    volts = "24 V across xfmr.R and xfmr.C"
    assert claimed == [[volts, "main-valve on during run"], [volts]]


def test_a_refuted_claim_is_a_finding_at_its_place() -> None:
    claim = "expect 24 V across box.PV and box.COM during wait"
    document = checked(block("name heater", f"{HEATER}{claim}\n"))
    (finding,) = document.diagrams[0].checked.findings
    assert finding.rule == "claim-refuted"
    assert (finding.span.line, finding.span.column) == (17, 8)
    assert "0 V" in finding.message


def test_a_block_of_variants_alone_is_as_if_they_stood_in_what_it_builds_on() -> None:
    claim = "expect main-valve on during run\n"
    options = "variant broken\nremove wire box.GND to pilot.HOOD\nend\nvariant other\nend"
    here = checked(block("name a", f"{HEATER}{claim}{options}"))
    apart = checked(block("name a", f"{HEATER}{claim}"), block("on a", options))
    assert [each.variant for each in apart.diagrams] == [None, "broken", "other"]
    assert rules(apart) == rules(here)
    assert "claim-never-tested" in rules(apart)[1]


def test_a_block_of_variants_alone_of_a_piece_is_checked_without_them_too() -> None:
    document = checked(block("name a, piece", NO_GROUND), block("on a", "variant v\nend"))
    assert diagrams(document) == [(None, None), (None, "v")]
    assert rules(document)[0] == ["burner-ground-missing"]


def test_variants_are_checked_together_if_asked_for_and_not_drawn() -> None:
    text = (
        f"{HEATER}variant lp\nset box: gas lp\nend\nvariant far\nset stat: anticipator 0.4 A\nend"
    )
    data = block("name a, draw ladder", text).encode()
    alone = check_note_bytes(data, "note.md")
    together = check_note_bytes(data, "note.md", combined=True)
    assert [each.variant for each in alone.diagrams] == [None, "lp", "far"]
    assert [each.variant for each in together.diagrams] == [None, "lp", "far", "lp + far"]
    assert [each.variant for each in together.drawings] == [None, "lp", "far"]


def test_of_what_stands_elsewhere_it_is_said_in_which_diagram_it_is_a_problem() -> None:
    document = checked(
        block("name a, piece", "wire x.1 to y.1"),
        block("name b, on a", "part x is lamp"),
        block("name c, on a", "part x is lamp\npart y is lamp"),
        block("name d", f"{HEATER}variant v\nset pilot: one-rod\nend"),
    )
    assert problems(document) == [
        "4:13: no part or splice is called “y”; there is x (in b)",
        "31:25: no terminal ROD on pilot; it has SPARK, HOOD (in d, variant v)",
    ]


def test_a_problem_of_a_block_is_not_told_again_for_those_on_it() -> None:
    document = checked(block("name a", "part x is lmp"), block("on a", "part y is lamp"))
    assert problems(document) == ["4:11: no kind of part is called “lmp”; did you mean lamp?"]


def test_a_block_on_one_that_is_not_there_is_not_checked() -> None:
    """Nor are the names called wrong that may stand there."""
    document = checked(block("on nowhere", "wire x.1 to y.2\nvariant v\nend"))
    assert document.diagrams == ()
    assert [each.partition(":")[0] for each in problems(document)] == ["3"]


def test_includes_lie_beside_the_document(tmp_path: Path) -> None:
    (tmp_path / "job").mkdir()
    (tmp_path / "job" / "heater.wiring").write_text(NO_GROUND, encoding="utf-8")
    (tmp_path / "out.wiring").write_text("", encoding="utf-8")
    note = tmp_path / "job" / "note.md"
    text = block("", 'include "heater.wiring"\ninclude "../out.wiring"\ninclude "note.md"')
    note.write_text(text, encoding="utf-8")
    document = check_note(note)
    (diagram,) = document.diagrams
    assert [Path(f.span.file).name for f in diagram.checked.findings] == ["heater.wiring"]
    messages = [each.message for each in document.problems]
    assert len(messages) == 2
    assert "outside the folder" in messages[0]
    assert "run in a ring" in messages[1]


def test_a_document_that_lies_nowhere_includes_nothing() -> None:
    assert problems(checked(block("", 'include "x.wiring"'))) == [
        "4:9: a text that is no file can include nothing"
    ]


def test_what_looks_like_a_block_is_kept_with_the_document() -> None:
    document = check_note_bytes(b"<div>\n```wiring\npart x is lamp\n```\n</div>\n", "note.md")
    assert document.diagrams == ()
    assert len(document.document.passed_over) == 1
