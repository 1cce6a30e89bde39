"""What the commands print as JSON, held to the published forms."""

import json
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from tests.cli.command_line import NO_BURNER_GROUND, UNKNOWN_KIND
from tests.sequence.heater import HEATER
from wirecheck import (
    check,
    check_note_bytes,
    compare,
    kind,
    kind_names,
    lists,
    load_text,
    meter,
    practice,
    replace,
    rule,
    rule_names,
    simulate,
    troubleshoot,
    try_faults,
    variants,
)
from wirecheck.check.accepts import sort_out
from wirecheck.correct.answer import Bound
from wirecheck.correct.rewrite import mended
from wirecheck.correct.search import correct
from wirecheck.grade.classroom import Classroom, classroom
from wirecheck.grade.key import Key
from wirecheck.grade.marking import marked
from wirecheck.grade.record import Record, problems_told
from wirecheck.grade.rubric import default_rubric
from wirecheck.model.diagram import Diagram
from wirecheck.practice.exercise import Wish
from wirecheck.report.baseline import baseline_text, hold_against, read_baseline
from wirecheck.report.check_json import check_json
from wirecheck.report.checks import CheckedFile
from wirecheck.report.compare_json import compare_json
from wirecheck.report.compared import ComparedFiles
from wirecheck.report.correct_json import correct_json
from wirecheck.report.corrections import CorrectedFile
from wirecheck.report.drawings import Drawing, DrawnFile, drawings_json
from wirecheck.report.faults_files import FaultsFile
from wirecheck.report.faults_json import faults_json
from wirecheck.report.formatted import FormattedFile, formatted_json
from wirecheck.report.grade_json import grades_json
from wirecheck.report.html.files import ReportFile, reports_json
from wirecheck.report.kinds import kinds_json
from wirecheck.report.lists_files import ListsFile
from wirecheck.report.lists_json import lists_json
from wirecheck.report.meter_files import MeterFile
from wirecheck.report.meter_json import meters_json
from wirecheck.report.notes_files import NoteDrawing, NoteFile, note_file, tally_note
from wirecheck.report.notes_json import closing_json, document_of, note_json, written
from wirecheck.report.practice_json import practice_json
from wirecheck.report.practices import Made, PracticeFile
from wirecheck.report.published import schemas_json
from wirecheck.report.replace_files import ReplaceFile
from wirecheck.report.replace_json import replace_json
from wirecheck.report.rules import explained, rules_json
from wirecheck.report.schemas import DOCUMENTS, schema_text
from wirecheck.report.sequence_json import sequences_json
from wirecheck.report.sequences import SequenceFile
from wirecheck.report.troubleshoot_files import TroubleshootFile
from wirecheck.report.troubleshoot_json import troubleshoot_json
from wirecheck.resources import shared_text


def checked(text: str) -> CheckedFile:
    built = load_text(f"{text}wire box.TH to unknown\n", "a.wiring")
    return CheckedFile("a.wiring", built.problems, check(built.diagram))


def corrected(text: str, bound: Bound) -> CorrectedFile:
    diagram = load_text(text, "a.wiring").diagram
    found = correct(diagram, bound)
    texts = tuple(mended(answer.state, answer.proof) for answer in found.answers)
    return CorrectedFile("a.wiring", "Heater", (), text, found, texts, ("box: runs",))


def fault_drawn() -> Diagram:
    return load_text(HEATER.replace("SENSE to pilot.ROD", "SPARK to pilot.ROD")).diagram


def diagnosed(seen: str, text: str = "") -> TroubleshootFile:
    diagram = load_text(NO_BURNER_GROUND + text).diagram
    talk = troubleshoot(diagram, seen=[seen])
    findings = check(diagram).findings
    return TroubleshootFile("a.wiring", (), talk.dictionary, talk.diagnosis, findings)


def notes() -> Iterator[str]:
    """One document with everything in it, and one that could not be read."""
    text = (
        f"<div>\n```wiring\n</div>\n\n```wiring name a, draw ladder\n{HEATER}"
        "wire box.TH to unknown\nexpect main-valve off during run\nvariant v\nend\n```\n"
    )
    document = check_note_bytes(text.encode(), "a.md", Path("a.md"))
    drawings = tuple(NoteDrawing(each, "a.svg", "stale") for each in document.drawings)
    unread = NoteFile("b.md", checked(UNKNOWN_KIND).problems, None)
    files = [note_file("a.md", document)._replace(drawings=drawings), unread]
    tallies = [tally_note(file) for file in files]
    return document_of(map(written, map(note_json, files)), lambda: closing_json(tallies, 3))


@cache
def claiming() -> list[CheckedFile]:
    """A file that claims, accepts and has a variant, and a baseline that knows of it."""
    text = (
        f"{NO_BURNER_GROUND}expect spark on during trial, main-valve on during wait\n"
        "expect 24 V across box.PV and box.COM, continuity across box.PV and earth\n"
        "# accept burner-ground-missing: a part of the unit\npart valve is gas-valve-3-wire\n"
        "variant v\nwire box.PV to valve.PV\n"
    )
    built = load_text(text, "c.wiring")
    checks = [check(built.diagram), *(check(each.diagram) for each in variants(built))]
    names = [None, *(each.name for each in variants(built))]
    files = [
        CheckedFile("c.wiring", each.problems, each.checked, name, accepted=each.accepted)
        for each, name in zip(sort_out(checks), names, strict=True)
    ]
    known = read_baseline(baseline_text(files, Path()))
    return [*files, *hold_against(files, known, Path()).files]


def marked_class() -> Classroom:
    key = Key(load_text(HEATER).diagram, "key")
    found = marked([key], fault_drawn(), default_rubric())
    lost = Record("a.wiring", "A", "a", "marked").with_mark(found)
    problems = problems_told(load_text("part\n", "b.wiring").problems)
    return classroom([lost, Record("b.wiring", "B", "b", "unreadable", "-", problems)], 100)


@cache
def documents() -> dict[str, dict[str, Any]]:
    wrong, unusable = checked(NO_BURNER_GROUND), checked(UNKNOWN_KIND)
    unread = CheckedFile("b.wiring", unusable.problems, None)
    drawing = Drawing("ladder", "svg", "a-ladder.svg")
    diagram = load_text(HEATER).diagram
    runs = simulate(diagram), simulate(diagram, view="danger")
    measured = MeterFile("a.wiring", wrong.problems, meter(check(diagram)), ("a-meter-1.svg",))
    ran = SequenceFile("a.wiring", (), *runs, picture="a-sequence.svg")
    return {
        "baseline": json.loads(baseline_text([wrong, unread], Path())),
        "check": check_json([wrong, unusable, unread, *claiming()], 3),
        "compare": compare_json(
            ComparedFiles("a.wiring", "b.wiring", (), compare(diagram, fault_drawn()))
        ),
        "correct": correct_json(
            [
                corrected(HEATER.replace("SENSE to pilot.ROD", "SPARK to pilot.ROD"), Bound()),
                corrected(HEATER.replace("SENSE to pilot.ROD", "SPARK to pilot.ROD"), Bound(0)),
                CorrectedFile("b.wiring", "", unusable.problems, "", None),
            ]
        ),
        "draw": drawings_json([DrawnFile(wrong, (drawing,)), DrawnFile(unread, ())]),
        "explain": rules_json([explained(rule(name)) for name in rule_names()]),
        "faults": faults_json(
            [
                FaultsFile("a.wiring", wrong.problems, try_faults(diagram)),
                FaultsFile("b.wiring", unusable.problems, None),
            ]
        ),
        "format": formatted_json(
            [
                FormattedFile("a.wiring", "a", "b", ()),
                FormattedFile("b.wiring", "", "", unusable.problems),
            ]
        ),
        "grade": grades_json(marked_class(), ["key"], ["summary.svg"]),
        "kinds": kinds_json([kind(name) for name in kind_names()]),
        "lists": lists_json(
            [
                ListsFile("a.wiring", wrong.problems, lists(check(diagram)), ("a-lists-1.svg",)),
                ListsFile("b.wiring", unusable.problems, None),
            ],
            ("wires", "parts", "terminals"),
        ),
        "meter": meters_json([measured, MeterFile("b.wiring", unusable.problems, None)]),
        "notes": json.loads("".join(notes())),
        "practice": practice_json(
            [
                PracticeFile(
                    "a.wiring",
                    "Heater",
                    wrong.problems,
                    tuple(
                        Made(each, ("a-exercise-01.wiring",), ("key/a-exercise-01.txt",))
                        for each in practice(diagram, Wish(exercises=1))
                    ),
                    ("a-blank.wiring",),
                ),
            ]
        ),
        "schema": schemas_json(),
        "report": reports_json(
            [
                ReportFile("a.wiring", (), check(diagram).findings, "a-report.html"),
                ReportFile("b.wiring", unusable.problems, (), ""),
            ]
        ),
        "replace": replace_json(
            ReplaceFile(
                "a.wiring",
                "Heater",
                wrong.problems,
                (),
                replace(
                    diagram,
                    load_text(
                        "part box is pilot-ignition-control: one-rod\n"
                        "part pilot is pilot-burner: one-rod\n"
                    ).diagram,
                ),
                ("box: runs",),
                ("box: runs",),
            )
        ),
        "sequence": sequences_json([ran, SequenceFile("b.wiring", unusable.problems, None, None)]),
        "troubleshoot": troubleshoot_json(
            [
                diagnosed("no spark", "observe pilot-flame off\n"),
                diagnosed("pilot lights, no pilot"),
                TroubleshootFile("b.wiring", unusable.problems),
            ]
        ),
    }


@pytest.mark.parametrize("command", DOCUMENTS)
def test_what_is_printed_has_the_published_form_and_nothing_else(command: str) -> None:
    printed = json.loads(json.dumps(documents()[command]))
    form = DOCUMENTS[command].model_validate_json(json.dumps(printed), strict=True)
    assert form.model_dump(mode="json", by_alias=True) == printed


@pytest.mark.parametrize("command", DOCUMENTS)
def test_the_published_schema_is_that_of_the_form(command: str) -> None:
    published = json.loads(shared_text(f"schemas/{command}.json"))
    stale = "write them anew: python -m wirecheck.report.schemas"
    assert published == json.loads(schema_text(command)), stale


def test_the_keys_that_were_promised_are_required() -> None:
    schema = json.loads(shared_text("schemas/check.json"))
    promised = {
        "FileForm": "file variant problems findings claims assumed not_checked",
        "ProblemForm": "line column end_line end_column message nearest",
        "FindingForm": "rule breaks also_breaks file line column end_line end_column message "
        "seen_at_unit leads terminals caution source edits",
        "EditForm": "action file line column end_line end_column new_text",
    }
    for form, keys in promised.items():
        assert set(keys.split()) <= set(schema["$defs"][form]["required"]), form
    assert {"schema", "files", "summary"} <= set(schema["required"])
