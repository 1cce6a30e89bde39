"""The lists say what is drawn: every lead, part and terminal once, under the drawings' numbers."""

from __future__ import annotations

import re
from functools import cache

import pytest

from tests.contract.source import ROOT
from tests.sequence.heater import HEATER
from wirecheck import check, draw, lists, load, load_text
from wirecheck.circuit.nets import Nets
from wirecheck.lists.lists import Lists
from wirecheck.lists.parts import WireNeed
from wirecheck.lists.tables import WHAT, tables

EXAMPLES = sorted(path.stem for path in (ROOT / "examples").glob("*.wiring"))


@cache
def of(name: str) -> Lists:
    """The lists of an example, which no test changes."""
    return lists(check(load(ROOT / "examples" / f"{name}.wiring").diagram))


def listed(text: str) -> Lists:
    built = load_text(text)
    assert not built.problems
    return lists(check(built.diagram))


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_lead_part_and_terminal_stands_once(name: str) -> None:
    found = of(name)
    diagram = found.checked.diagram
    ends = [(wire.start.shown, wire.end.shown) for wire in found.wires]
    assert ends == [(diagram.show(lead.a), diagram.show(lead.b)) for lead in diagram.leads]
    assert [part.name for part in found.parts] == [
        *(part.name for part in diagram.parts.values()),
        *(splice.name for splice in diagram.splices.values()),
        *(cable.name for cable in diagram.cables.values()),
    ]
    landings = [each.wire for row in found.terminals for each in row.landings]
    assert sorted(landings) == sorted([*range(1, len(ends) + 1)] * 2)
    names = [row.at.shown for row in found.terminals]
    assert len(names) == len(set(names))


@pytest.mark.parametrize("name", EXAMPLES)
def test_one_wire_number_is_one_conductor(name: str) -> None:
    found = of(name)
    nets = Nets(found.checked.diagram)
    numbers: dict[str, int] = {}
    for wire, lead in zip(found.wires, nets.diagram.leads, strict=True):
        assert numbers.setdefault(wire.number, nets.net(lead.a)) == nets.net(lead.a)
    assert len(set(numbers.values())) == len(numbers)


def test_the_numbers_are_those_lettered_on_the_connection_sheet() -> None:
    found = listed(
        HEATER.replace("wire xfmr.R to", "wire xfmr.R to limit.1: number 77\nwire limit.2 to")
    )
    sheet = draw(found.checked, "connections").decode()
    lettered = set(re.findall(r">(\d+)</text>", sheet))
    assert {wire.number for wire in found.wires} <= lettered
    assert "77" in {wire.number for wire in found.wires}


def test_a_typed_number_stands_for_its_lead_and_its_net() -> None:
    found = listed(f"{HEATER}wire xfmr.C to earth: number C7\n")
    typed = [wire for wire in found.wires if wire.number == "C7"]
    assert ("xfmr.C", "earth") in [(wire.start.shown, wire.end.shown) for wire in typed]
    assert len(typed) > 1


def test_a_broken_lead_has_the_numbers_of_both_its_ends() -> None:
    found = listed("part k is relay\npart f is fuse: 3 A\nwire k.A to f.1: broken\n")
    (wire,) = found.wires
    assert (wire.number, wire.remarks) == ("1 / 2", ("found broken",))


def test_what_is_typed_for_a_lead_is_in_its_line() -> None:
    text = (
        "part k is relay\npart f is fuse: 3 A\ncable c: 18/5, 40 ft\n"
        "wire k.A to f.1: red, in c, 200 F\n"
        "wire k.B to f.2: 0.75 mm2, 3 ft, loose 200 ohm, touches earth\n"
        "jumper k.COM to k.NO\nwire k.NC to open: capped\n"
    )
    one, two, jumper, loose = listed(text).wires
    assert (one.colour, one.size, one.cable, one.remarks) == (
        "red",
        "18 AWG",
        "c",
        ("rated 200 F",),
    )
    assert (two.size, two.length) == ("0.75 mm2", "3 ft")
    assert two.remarks == ("found loose, 200 ohm", "found touching earth")
    assert jumper.kind == "jumper"
    assert (loose.end.part, loose.end.shown, loose.remarks) == ("", "a loose end", ("capped",))


def test_a_length_that_leads_share_is_told_once() -> None:
    text = (
        "part a is high-limit\npart b is high-limit\npart k is relay\n"
        "wire k.A to a to b (3 ft) to k.B: red, 30 ft\n"
    )
    one, two, three = listed(text).wires
    assert (one.run, one.run_length, one.length) == ((1, 3), "30 ft", "")
    assert one.length_words == "30 ft for 1-3"
    assert (two.run, two.length, two.length_words) == (None, "3 ft", "3 ft")
    assert three.length_words == "with 1"


def test_line_voltage_and_the_spark_are_told() -> None:
    found = of("furnace-room-heater")
    at = {wire.start.shown: wire.voltage for wire in found.wires}
    assert at["line.L1"] == at["service.2"] == "line"
    assert at["box.SPARK"] == "ignition"
    assert at["fuse.2"] == at["line.G"] == ""


def test_labels_stand_beside_the_terminals_own_names() -> None:
    found = of("laundry-heater-own-labels")
    (row,) = [row for row in found.terminals if row.at.shown == "dryer.W"]
    assert (row.at.part, row.at.terminal, row.at.label) == ("dryer", "TH", "W")
    (common,) = [row for row in found.terminals if row.at.shown == "dryer.24 C"]
    assert common.inside == ("P/M C", "BRN GND", "D-COM")


def test_parts_have_what_was_typed_and_what_was_taken() -> None:
    text = "part t is transformer: primary 120/240 V\nsplice s: crimp\ncable c: 18/5, 40 ft\n"
    parts = listed(f"{text}part v is vent-damper: draft-hood yes\nwire t.R to s: in c\n").parts
    by_name = {part.name: part for part in parts}
    assert by_name["t"].ratings == ("primary 120/240 V",)
    assert "secondary 24 V" in by_name["t"].taken
    assert by_name["v"].ratings == ("draft-hood yes",)
    assert (by_name["s"].what, by_name["s"].leads) == ("splice, crimp", 1)
    assert (by_name["c"].what, by_name["c"].leads) == ("cable, 5 conductors of 18 AWG", 1)
    assert by_name["c"].ratings == ("length 40 ft",)


def test_wire_is_added_up_by_its_sort_without_that_in_cables() -> None:
    text = (
        "part k is relay: poles 2\npart f is fuse: 3 A\ncable c: 18/5, 40 ft\n"
        "wire k.A to f to k.B: red, 18 AWG, 24 in\nwire k.1.COM to k.2.COM: red, 18 AWG, 1 ft\n"
        "wire k.1.NO to k.2.NO: red, 18 AWG\nwire k.1.NC to k.2.NC: in c\n"
    )
    assert listed(text).needs == (WireNeed("red, 18 AWG", 4, "36 in", 1),)


def test_tables_have_a_text_for_every_column() -> None:
    for name in EXAMPLES:
        for each in tables(of(name), WHAT):
            assert {len(row) for row in each.rows} == {len(each.headings)}
            assert len(each.line_voltage) == len(each.rows)


def test_only_the_tables_that_were_asked_for_are_made() -> None:
    found = listed(HEATER)
    assert [each.title for each in tables(found, ("terminals",))] == ["Terminals"]
    assert [each.title for each in tables(found, ("wires",))] == ["Wire list"]
