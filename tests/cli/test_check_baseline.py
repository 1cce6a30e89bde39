"""A baseline: known findings are set aside wherever they move, new ones show."""

from __future__ import annotations

import json

import pytest

from tests.cli.command_line import CommandLine
from tests.sequence.heater import HEATER

UNGROUNDED = HEATER.replace("wire box.GND to pilot.HOOD\n", "")
CHECK = ("check", "--baseline", "known.json")


@pytest.fixture
def known(wirecheck: CommandLine) -> CommandLine:
    """A folder with a file of one finding, which is written as known."""
    wirecheck.file("a.wiring", UNGROUNDED)
    answer = wirecheck(*CHECK, "--write-baseline", "a.wiring")
    assert answer.code == 0
    return wirecheck


def test_what_is_written_is_known(known: CommandLine) -> None:
    document = json.loads((known.folder / "known.json").read_text())
    assert document == {
        "schema": 1,
        "known": [
            {
                "file": "a.wiring",
                "rule": "burner-ground-missing",
                "fault": "no-lead",
                "at": ["box.GND", "pilot.HOOD"],
                "text": "box",
                "count": 1,
            }
        ],
    }
    answer = known(*CHECK, "a.wiring")
    assert answer.code == 0
    assert "known, by the baseline:\n  a.wiring:4:6: operation: no lead runs from" in answer.out
    assert "1 finding of the baseline: nothing else was found." in answer.out
    assert answer.err == ""


@pytest.mark.parametrize(
    "moved",
    [
        f"# a remark\n\n{UNGROUNDED}",
        UNGROUNDED.replace("part box", 'note "x"\npart   box'),
        "".join(sorted(UNGROUNDED.splitlines(keepends=True), reverse=True)),
    ],
)
def test_a_finding_is_known_again_where_it_has_moved(known: CommandLine, moved: str) -> None:
    known.file("a.wiring", moved)
    assert known(*CHECK, "a.wiring").code == 0


def test_a_new_finding_shows_beside_known_ones(known: CommandLine) -> None:
    known.file("a.wiring", f"{UNGROUNDED}expect spark on during run\n")
    answer = known(*CHECK, "--as", "json", "a.wiring")
    assert answer.code == 1
    (entry,) = answer.document["files"]
    assert "claim-never-tested" in [each["rule"] for each in entry["findings"]]
    assert [each["rule"] for each in entry["known"]] == ["burner-ground-missing"]


def test_so_many_equal_ones_are_known_and_no_more(wirecheck: CommandLine) -> None:
    claim = "expect spark on during run\n"
    wirecheck.file("a.wiring", HEATER + claim)
    wirecheck(*CHECK, "--write-baseline", "a.wiring")
    wirecheck.file("a.wiring", HEATER + claim + claim)
    answer = wirecheck(*CHECK, "--as", "json", "a.wiring")
    (entry,) = answer.document["files"]
    assert (len(entry["findings"]), len(entry["known"])) == (1, 1)


def test_another_file_of_the_same_wiring_is_not_known(known: CommandLine) -> None:
    known.file("b.wiring", UNGROUNDED)
    assert known(*CHECK, "b.wiring").code == 1
    assert known(*CHECK, "a.wiring", "b.wiring").code == 1


def test_a_variant_shares_what_is_known_of_its_base(known: CommandLine) -> None:
    known.file("a.wiring", f"{UNGROUNDED}variant v\nset box: trial 60 s\nend\n")
    assert known(*CHECK, "a.wiring").code == 0


def test_what_is_found_no_more_is_told(known: CommandLine) -> None:
    known.file("a.wiring", HEATER)
    answer = known(*CHECK, "a.wiring")
    assert answer.code == 0
    assert answer.err == (
        "1 finding of the baseline is not found any more; write it anew with --write-baseline\n"
    )
    known.file("b.wiring", HEATER)
    assert known(*CHECK, "b.wiring").err == ""


def test_files_are_known_by_their_path_from_the_baseline(wirecheck: CommandLine) -> None:
    wirecheck.file("old/a.wiring", UNGROUNDED)
    path = wirecheck.folder / "old" / "known.json"
    here = ("check", "--baseline", str(path))
    assert wirecheck(*here, "--write-baseline", "old").code == 0
    assert wirecheck(*here, str(wirecheck.folder / "old" / "a.wiring")).code == 0


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{", "it is no JSON"),
        ("[]", "it is no baseline of form 1"),
        ('{"schema": 2}', "it is no baseline of form 1"),
        ('{"schema": 1, "known": [3]}', "its “known” is no list of findings"),
        ('{"schema": 1}', "its “known” is no list of findings"),
        ('{"schema": 1, "known": [{"file": "a"}]}', "entry 1 of its “known” is no finding"),
    ],
)
def test_a_file_that_is_no_baseline_is_refused(
    wirecheck: CommandLine, text: str, said: str
) -> None:
    wirecheck.file("a.wiring", HEATER)
    wirecheck.file("known.json", text)
    answer = wirecheck(*CHECK, "a.wiring")
    assert answer.code == 2
    assert f"baseline known.json: {said}" in answer.err


def test_a_baseline_that_is_not_there_is_refused(wirecheck: CommandLine) -> None:
    wirecheck.file("a.wiring", HEATER)
    answer = wirecheck(*CHECK, "a.wiring")
    assert (answer.code, "no such file" in answer.err) == (2, True)
    answer = wirecheck("check", "--write-baseline", "a.wiring")
    assert (answer.code, "--write-baseline needs --baseline" in answer.err) == (2, True)
