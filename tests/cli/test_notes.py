"""``wirecheck notes``: documents, folders of them, their drawings, and how it ends."""

from __future__ import annotations

import json
import os
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from tests.cli.command_line import BURNER_GROUND, NO_BURNER_GROUND, CommandLine, process
from tests.sequence.heater import HEATER
from wirecheck.cli import note_work
from wirecheck.report.notes_files import NoteFile

CLAIM = "expect 24 V across box.PV and box.COM during trial\n"


def note(text: str, words: str = "") -> str:
    return f"# Note\n\nWired so:\n\n```wiring {words}\n{text}```\n\nThe end.\n"


RIGHT, WRONG = note(HEATER + CLAIM, "name heater"), note(NO_BURNER_GROUND)
BROKEN = "# Note\n\n```wiring\npart x is lamp\n"


def test_a_right_note_ends_with_0_and_calls_no_unit_safe(wirecheck: CommandLine) -> None:
    wirecheck.file("note.md", RIGHT)
    answer = wirecheck("notes", "note.md")
    assert (answer.code, answer.err) == (0, "")
    assert "note.md: 1 diagram: nothing found, 1 claim proved\n" in answer.out
    assert "none of them found a mistake, 1 claim proved. This makes no unit safe" in answer.out
    assert "!" not in answer.out


def test_a_finding_stands_at_its_line_below_the_cautions(wirecheck: CommandLine) -> None:
    wirecheck.file("note.md", WRONG)
    answer = wirecheck("notes", "note.md")
    assert answer.code == 1
    place = answer.out.index("note.md:7:6: operation: no lead runs from box.GND")
    assert answer.out.startswith("! Gas off and power off")
    assert answer.out.index("! Local codes") < place
    assert "   7 | part box is pilot-ignition-control\n     |      ^^^\n" in answer.out


def test_a_refuted_claim_ends_with_1(wirecheck: CommandLine) -> None:
    wirecheck.file("note.md", note(HEATER + CLAIM.replace("trial", "wait"), "name heater"))
    answer = wirecheck("notes", "note.md")
    assert answer.code == 1
    assert (
        "note.md:19:8: operation: claimed 24 V across box.PV and box.COM during wait" in answer.out
    )
    assert "1 operation finding, 0 of 1 claim proved" in answer.out


def test_a_broken_document_ends_with_2_and_stops_no_other(wirecheck: CommandLine) -> None:
    documents: dict[str, str | bytes] = {
        "a.md": BROKEN,
        "b.md": WRONG,
        "c.md": b"\xff\xfe\x00",
        "d.md": RIGHT,
    }
    for name, text in documents.items():
        wirecheck.file(f"job/{name}", text)
    answer = wirecheck("notes", "job", "nowhere.md")
    assert answer.code == 2
    assert "job/a.md:3:1: problem: nothing closes this block" in answer.out
    assert "job/b.md: 1 diagram: 1 operation finding\n" in answer.out
    assert "job/c.md:1:1: problem: this file is UTF-16" in answer.out
    assert "job/d.md: 1 diagram: nothing found, 1 claim proved\n" in answer.out
    assert "nowhere.md:1:1: problem: cannot be read" in answer.out
    assert "nowhere.md: 0 diagrams: not read\n" in answer.out
    assert "5 documents, 2 diagrams" in answer.out


def test_an_error_of_ours_spoils_one_document_and_ends_with_3(
    wirecheck: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    checked = note_work._checked  # noqa: SLF001 - what fails inside is up to the test

    def fails(task: note_work.Task) -> NoteFile:
        if task.given.name == "b.md":
            raise KeyError("odd")
        return checked(task)

    monkeypatch.setattr(note_work, "_checked", fails)
    for name in ("a.md", "b.md", "c.md"):
        wirecheck.file(name, WRONG)
    answer = wirecheck("notes", "a.md", "b.md", "c.md")
    assert answer.code == 3
    assert "b.md: 0 diagrams: not checked, by an error of ours\n" in answer.out
    assert "c.md: 1 diagram: 1 operation finding\n" in answer.out
    assert "1 document not checked, by an error of ours" in answer.out
    assert "KeyError: 'odd'" in answer.err
    assert "b.md" in answer.err
    assert "Traceback" not in answer.err
    assert "Traceback" in wirecheck("notes", "b.md", "--debug").err


def test_folders_are_searched_for_notes_and_hidden_ones_are_not(wirecheck: CommandLine) -> None:
    wanted = ("job/1.md", "job/deep/2.MARKDOWN", "job/deep/3.txt", "job/4.text")
    for name in (*wanted, "job/5.wiring", "job/6.html", "job/.venv/7.md"):
        wirecheck.file(name, "# Nothing\n")
    answer = wirecheck("notes", "job")
    assert answer.code == 0
    listed = [line.partition(":")[0] for line in answer.out.splitlines() if "no wiring" in line]
    assert listed == sorted(wanted)
    empty = wirecheck("notes", "job/.venv/../6.html", "job/deep/../6.html")
    assert empty.code == 0
    (wirecheck.folder / "bare").mkdir()
    bare = wirecheck("notes", "bare")
    assert bare.code == 2
    assert "no .md, .markdown, .txt or .text file is in this folder" in bare.out


def test_a_wiring_file_is_no_document(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("notes", "heater.wiring")
    assert answer.code == 2
    assert "heater.wiring:1:1: problem: a wiring file is no document" in answer.out


def test_combinations_are_checked_if_asked_for(wirecheck: CommandLine) -> None:
    variants = "variant a\nset box: gas lp\nend\nvariant b\nset limit: manual\nend\n"
    wirecheck.file("note.md", note(HEATER + variants))
    assert "note.md: 3 diagrams" in wirecheck("notes", "note.md").out
    assert "note.md: 4 diagrams" in wirecheck("notes", "note.md", "--all-combinations").out


def test_standard_input_is_markdown(wirecheck: CommandLine) -> None:
    piped = process("notes", "-", "--as", "json", given=WRONG.encode())
    assert piped.code == 1
    (document,) = piped.document["documents"]
    assert document["diagrams"][0]["findings"][0]["line"] == 7
    assert wirecheck("notes", "-", "--draw").code == 2


def test_what_a_block_shares_with_those_on_it_is_told_once(wirecheck: CommandLine) -> None:
    text = note(NO_BURNER_GROUND, "name first") + note('note "to be seen"\n', "on first")
    wirecheck.file("note.md", text)
    answer = wirecheck("notes", "note.md")
    assert answer.out.count("[burner-ground-missing]") == 1
    assert "  in: first; line 18\n" in answer.out
    assert "note.md: 2 diagrams: 1 operation finding\n" in answer.out


def test_a_finding_in_an_included_file_names_the_note(wirecheck: CommandLine) -> None:
    wirecheck.file("job/unit.wiring", NO_BURNER_GROUND)
    wirecheck.file("job/note.md", note('include "unit.wiring"\npart x is lmp\n', "name a"))
    answer = wirecheck("notes", "job/note.md")
    assert "job/unit.wiring:2:6: operation: no lead runs" in answer.out
    assert "  in: job/note.md, a\n" in answer.out


def test_what_was_not_checked_is_said(wirecheck: CommandLine) -> None:
    untraced = BURNER_GROUND + "wire box.TH to unknown\n"
    wirecheck.file("note.md", f"<div>\n```wiring\n```\n</div>\n\n{note(untraced)}")
    out = wirecheck("notes", "note.md").out
    assert "note.md: not checked:\n" in out
    assert "  note.md:2:1: a fence that opens no block: it stands in HTML" in out
    assert "  note.md:17:6: untraced lead: the lead at box.TH is not traced" in out
    assert "taken as given" not in out
    assert "note.md: taken as given" in wirecheck("notes", "note.md", "--assumed").out


def test_json_has_every_diagram_where_it_stands(wirecheck: CommandLine) -> None:
    text = note(HEATER, "name heater, draw ladder") + note("variant lp\nend\n", "on heater")
    wirecheck.file("note.md", text)
    answer = wirecheck("notes", "note.md", "--as", "json", "--check")
    assert answer.code == 1
    (document,) = answer.document["documents"]
    told = [
        (each["block"], each["on"], each["place"]["line"], each["variant"])
        for each in document["diagrams"]
    ]
    assert told == [("heater", [], 5, None), (None, ["heater"], 26, "lp")]
    (drawing,) = document["drawings"]
    assert drawing["path"] == "note.heater.ladder.svg"
    assert (drawing["state"], drawing["place"]["column"]) == ("missing", 29)
    summary = answer.document["summary"]
    assert (summary["documents"], summary["diagrams"], summary["stale"]) == (1, 2, 1)
    assert summary["by_document"][0]["file"] == "note.md"


def test_drawings_are_made_once_and_told_when_they_are_stale(wirecheck: CommandLine) -> None:
    text = note(HEATER, "name a, draw ladder, draw connections")
    wirecheck.file("job/note.md", text)
    missing = wirecheck("notes", "--check", "job")
    assert missing.code == 1
    assert "job/note.md:5:24: missing: job/note.a.ladder.svg is not there" in missing.out
    assert not list(wirecheck.folder.glob("job/*.svg"))

    made = wirecheck("notes", "--draw", "job")
    assert made.code == 0
    assert "  drawn: job/note.a.ladder.svg\n" in made.out
    assert "nothing found, 2 drawings made\n" in made.out
    pictures = {path: path.read_bytes() for path in wirecheck.folder.glob("job/*.svg")}
    assert len(pictures) == 2
    assert all(picture.startswith(b"<?xml") for picture in pictures.values())

    stamps = [path.stat().st_mtime_ns for path in pictures]
    assert "drawn" not in wirecheck("notes", "--draw", "job").out
    assert [path.stat().st_mtime_ns for path in pictures] == stamps
    assert wirecheck("notes", "--check", "job").code == 0

    wirecheck.file(
        "job/note.md", text.replace("stat is", "roomstat is").replace("to stat", "to roomstat")
    )
    stale = wirecheck("notes", "--check", "job")
    assert stale.code == 1
    assert "job/note.md:5:24: stale: job/note.a.ladder.svg shows what stood here" in stale.out
    assert "2 drawings not up to date" in stale.out
    assert {path: path.read_bytes() for path in pictures} == pictures


def test_a_drawing_is_the_same_from_wherever_it_is_made(
    wirecheck: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    wirecheck.file("job/note.md", note(HEATER, "name a, draw ladder"))
    wirecheck("notes", "--draw", "job/note.md")
    assert wirecheck("notes", "--check", wirecheck.folder / "job").code == 0
    monkeypatch.chdir(wirecheck.folder / "job")
    assert wirecheck("notes", "--check", "note.md").code == 0


def test_a_drawing_that_cannot_be_written_is_a_problem(wirecheck: CommandLine) -> None:
    wirecheck.file("note.md", note(HEATER, "name a, draw ladder"))
    (wirecheck.folder / "note.a.ladder.svg").mkdir()
    answer = wirecheck("notes", "--draw", "note.md")
    assert answer.code == 2
    assert "note.md:1:1: problem: note.a.ladder.svg cannot be read or written" in answer.out


def test_two_documents_of_one_name_do_not_share_a_drawing(wirecheck: CommandLine) -> None:
    for name in ("note.md", "note.txt"):
        wirecheck.file(name, note(HEATER, "name a, draw ladder"))
    answer = wirecheck("notes", "--draw", ".")
    assert answer.code == 2
    assert (
        "note.txt:1:1: problem: its drawings would have the names of those of note.md" in answer.out
    )
    wirecheck.file("note.txt", note(HEATER))
    assert wirecheck("notes", "--draw", ".").code == 0


def test_several_processes_say_the_same_as_one(wirecheck: CommandLine) -> None:
    for number in range(6):
        wirecheck.file(f"job/{number}.md", (RIGHT, WRONG, BROKEN)[number % 3])
    one = wirecheck("notes", "job", "--jobs", "1")
    assert (one.code, one.err) == (2, "")
    assert process("notes", "job", "--jobs", "2", folder=wirecheck.folder) == one


def test_hostile_text_acts_nowhere(wirecheck: CommandLine) -> None:
    """What a terminal or a reader of JSON would act on is shown, in every place it can stand."""
    bad = "\x1b[2J\u202e\x07<b>"
    text = note(HEATER, f'name "{bad}", draw ladder, draw {bad}') + (
        f'```wiring on "{bad}?"\n```\n'
        f'```wiring name b\nvariant "{bad}"\nend\npart "{bad}" is lamp\nexpect "{bad}" on\n```\n'
        f"<div>\n```wiring {bad}\n</div>\n"
    )
    wirecheck.file("note.md", text)
    for words in ((), ("--check",), ("--draw",), ("--assumed",)):
        out = wirecheck("notes", "note.md", *words).out
        assert not {"\x1b", "\u202e", "\x07"} & set(out)
    printed = wirecheck("notes", "note.md", "--as", "json").out
    assert not {"\x1b", "\u202e", "\x07"} & set(printed)
    assert json.loads(printed)["documents"][0]["diagrams"]
    log = wirecheck("notes", "note.md", "--as", "sarif").document
    assert not {"\x1b", "\u202e", "\x07"} & set(json.dumps(log, ensure_ascii=False))
    suites = ET.fromstring(wirecheck("notes", "note.md", "--as", "junit").out)  # noqa: S314
    told = "".join(f"{each.attrib}{each.text}" for each in suites.iter())
    assert "<b>" in told
    assert not {"\x1b", "\u202e", "\x07"} & set(told)
    drawn = [path.name for path in wirecheck.folder.glob("*.svg")]
    assert drawn == ["note.2J-b.ladder.svg"]


def test_logs_for_programs_have_every_document(wirecheck: CommandLine) -> None:
    """What is in the logs is tested where they are made: here, that nothing is lost on the way."""
    for name, text in {"a.md": WRONG, "b.md": RIGHT, "c.md": BROKEN, "d.md": "# None\n"}.items():
        wirecheck.file(name, text)
    log = wirecheck("notes", ".", "--as", "sarif").document
    (run,) = log["runs"]
    told = [
        (
            each["ruleId"],
            each["locations"][0]["physicalLocation"]["artifactLocation"]["uri"],
            each["locations"][0]["physicalLocation"]["region"]["startLine"],
        )
        for each in run["results"]
    ]
    assert told == [("burner-ground-missing", "a.md", 7), ("problem", "c.md", 3)]
    assert run["results"][0]["properties"]["variants"] == ["line 5"]
    assert run["invocations"] == [{"executionSuccessful": False}]

    answer = wirecheck("notes", ".", "--as", "junit")
    assert answer.code == 2
    suites = ET.fromstring(answer.out)  # noqa: S314 - our own
    assert [suite.get("name") for suite in suites] == [
        "a.md, line 5",
        "b.md, heater",
        "c.md",
        "d.md",
    ]
    assert (suites.get("failures"), suites.get("errors")) == ("1", "1")
    refused = wirecheck("notes", ".", "--as", "junit", "--check")
    assert refused.code == 2
    assert "a log of findings has no drawings" in refused.err


def test_a_finding_of_several_blocks_is_one_result(wirecheck: CommandLine) -> None:
    text = note(NO_BURNER_GROUND, "name a") + note("variant v\nend\n", "name b, on a")
    wirecheck.file("note.md", text)
    (result,) = wirecheck("notes", "note.md", "--as", "sarif").document["runs"][0]["results"]
    assert result["properties"]["variants"] == ["a", "b, variant v"]


def test_what_a_comment_accepts_is_listed_and_drawn_and_ends_with_0(
    wirecheck: CommandLine,
) -> None:
    accepted = NO_BURNER_GROUND.replace(
        "part box", "# accept burner-ground-missing: a lesson\npart box"
    )
    wirecheck.file("note.md", note(accepted, "name a, draw ladder") + note("", "on a"))
    answer = wirecheck("notes", "note.md", "--draw")
    assert answer.code == 0
    assert "accepted:\n  note.md:8:6: operation: no lead runs from box.GND" in answer.out
    assert answer.out.count("a lesson") == 1
    assert "nothing else found, 1 finding accepted, 1 drawing made" in answer.out
    assert b"no lead runs" in (wirecheck.folder / "note.a.ladder.svg").read_bytes()
    unused = note(f"{BURNER_GROUND}# accept burner-ground-missing: no more\n", "name a")
    wirecheck.file("note.md", unused + note("", "on a"))
    answer = wirecheck("notes", "note.md")
    assert answer.code == 1
    assert answer.out.count("[accept-unused]") == 1
    wirecheck.file("note.md", note(accepted.replace("burner-g", "burner-"), "name a"))
    assert "no rule is called" in wirecheck("notes", "note.md").out


def test_an_acceptance_used_in_one_block_is_not_unused(wirecheck: CommandLine) -> None:
    accepted = NO_BURNER_GROUND.replace(
        "part box", "# accept burner-ground-missing: by turns\npart box"
    )
    ground = "wire box.GND to pilot.HOOD: green\n"
    text = note(accepted, "name a, piece") + note(ground, "on a") + note("", "on a")
    wirecheck.file("note.md", text)
    answer = wirecheck("notes", "note.md")
    assert (answer.code, answer.out.count("by turns")) == (0, 1)


def test_a_baseline_sets_aside_what_is_known(wirecheck: CommandLine) -> None:
    wirecheck.file("job/a.md", WRONG)
    wirecheck.file("job/b.md", RIGHT)
    written = wirecheck("notes", "job", "--baseline", "job/known.json", "--write-baseline")
    assert written.code == 0
    wirecheck.file("job/a.md", f"# One line more\n\n{WRONG}")
    known = wirecheck("notes", "job", "--baseline", "job/known.json")
    assert known.code == 0
    assert "known, by the baseline:\n  job/a.md:9:6: operation: no lead runs" in known.out
    assert "job/a.md: 1 diagram: nothing else found, 1 finding of the baseline\n" in known.out
    wirecheck.file("job/b.md", WRONG)
    new = wirecheck("notes", "job", "--baseline", "job/known.json")
    assert new.code == 1
    assert "job/b.md:7:6: operation" in new.out
    wirecheck.file("job/a.md", RIGHT)
    gone = wirecheck("notes", "job/a.md", "--baseline", "job/known.json")
    assert gone.code == 0
    assert "1 finding of the baseline is not found any more" in gone.err
    missing = wirecheck("notes", "job", "--baseline", "nowhere.json")
    assert (missing.code, missing.out) == (2, "")
    assert wirecheck("notes", "job", "--write-baseline").code == 2


@pytest.mark.parametrize(("grave", "code"), [("safety", 0), ("operation", 1), ("workmanship", 1)])
def test_fail_on_says_from_where_on_it_ends_with_1(
    wirecheck: CommandLine, grave: str, code: int
) -> None:
    wirecheck.file("note.md", WRONG)
    assert wirecheck("notes", "note.md", "--fail-on", grave).code == code


@pytest.mark.skipif(os.name == "nt", reason="a name that no Windows takes")
def test_the_name_of_a_document_acts_nowhere(wirecheck: CommandLine) -> None:
    wirecheck.file("a\x1b[2Jb.md", WRONG)
    answer = wirecheck("notes", Path("a\x1b[2Jb.md"))
    assert "\x1b" not in answer.out
    assert answer.code == 1
