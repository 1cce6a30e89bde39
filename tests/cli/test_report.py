"""``wirecheck report``: what it writes and how it ends."""

from tests.cli.command_line import BURNER_GROUND, NO_BURNER_GROUND, UNKNOWN_KIND, CommandLine


def test_a_report_lies_beside_the_others_of_its_folder(wirecheck: CommandLine) -> None:
    wirecheck.file("wrong.wiring", NO_BURNER_GROUND)
    wirecheck.file("right.wiring", BURNER_GROUND)
    answer = wirecheck("report", "--out", "job", "wrong.wiring", "right.wiring")
    assert (answer.code, answer.err) == (1, "")
    assert "wrong.wiring: 1 operation finding\n  job/wrong-report.html\n" in answer.out
    assert "right.wiring: nothing found\n  job/right-report.html\n" in answer.out
    page = (wirecheck.folder / "job" / "wrong-report.html").read_text(encoding="utf-8")
    assert page.startswith("<!DOCTYPE html>")
    assert "run a green lead from the control to the burner itself" in page


def test_what_cannot_be_used_is_told_in_the_page_and_ends_with_2(wirecheck: CommandLine) -> None:
    wirecheck.file("odd.wiring", UNKNOWN_KIND)
    answer = wirecheck("report", "odd.wiring", "nowhere.wiring")
    assert answer.code == 2
    assert "odd.wiring:2:13: problem" in answer.out
    assert "nowhere.wiring: no report" in answer.out
    page = (wirecheck.folder / "odd-report.html").read_text(encoding="utf-8")
    assert "Could not be used" in page


def test_json_says_where_the_reports_lie(wirecheck: CommandLine) -> None:
    wirecheck.file("wrong.wiring", NO_BURNER_GROUND)
    document = wirecheck("report", "--as", "json", "wrong.wiring").document
    (file,) = document["files"]
    assert file["path"] == "wrong-report.html"
    assert file["findings"] == {"safety": 0, "operation": 1, "workmanship": 0}


def test_two_files_of_one_name_do_not_write_over_each_other(wirecheck: CommandLine) -> None:
    for name in ("one/heater.wiring", "two/heater.wiring"):
        wirecheck.file(name, BURNER_GROUND)
    answer = wirecheck("report", "one", "two")
    assert answer.code == 2
    assert "is the report of one/heater.wiring already" in answer.out
