"""``wirecheck check --faults``: the table of single faults, in each form."""

from __future__ import annotations

import csv
import io
import json

from tests.cli.command_line import UNKNOWN_KIND, CommandLine
from tests.properties.test_properties import unit


def test_the_table_tells_the_worst_first_with_its_reason(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", unit())
    answer = wirecheck("check", "--faults", "heater.wiring")
    assert answer.code == 0
    headings = ["\nhazard:\n", "\nlatent loss of a protection:\n", "\ndamage:\n", "\nno heat:\n"]
    places = [answer.out.index(heading) for heading in headings]
    assert places == sorted(places)
    assert "main gas flows in the trial, before a flame is proved" in answer.out
    assert answer.out.startswith("! Gas off and power off")
    assert answer.err == ""


def test_json_and_csv_have_the_same_rows(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", unit())
    document = json.loads(wirecheck("check", "--faults", "--as", "json", "heater.wiring").out)
    table = wirecheck("check", "--faults", "--as", "csv", "heater.wiring").out
    rows = list(csv.DictReader(io.StringIO(table)))
    faults = document["files"][0]["faults"]
    assert [row["at"] for row in rows] == [fault["at"] for fault in faults]
    assert [row["class"] for row in rows] == [fault["class"] for fault in faults]
    assert sum(document["files"][0]["counted"].values()) == len(rows)


def test_a_part_that_cannot_be_used_ends_the_call_with_2(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", UNKNOWN_KIND)
    assert wirecheck("check", "--faults", "heater.wiring").code == 2


def test_csv_is_for_faults_and_fix_is_not(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", unit())
    assert "only the table" in wirecheck("check", "--as", "csv", "heater.wiring").err
    assert "leave --fix out" in wirecheck("check", "--faults", "--fix", "heater.wiring").err
