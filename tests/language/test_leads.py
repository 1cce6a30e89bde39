"""One lead for each pair of neighbouring ends: where it lands, and what it is."""
# ruff: noqa: E501 - each case stands in one line, its message whole

from __future__ import annotations

import pytest

import wirecheck
from tests.language.said import leads, load, problems
from wirecheck.model.diagram import EARTH, OPEN_END, UNKNOWN_END, LeadRole
from wirecheck.model.quantity import Quantity

PARTS = """\
part a is relay
part b is relay
part limit is high-limit
part stat is thermostat: common
part box is pilot-ignition-control
part valve is gas-valve-3-wire
part pilot is pilot-burner: two-rod
part tb is terminal-strip: terminals 4
splice s1: wire-nut
"""
FIRST = PARTS.count("\n") + 1


def wired(statements: str) -> list[str]:
    return leads(PARTS + statements)


def said(statement: str) -> list[str]:
    return [line.removeprefix(f"{FIRST}:") for line in problems(PARTS + statement)]


# ---- ends --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("statement", "expected"),
    [
        ("wire a.COM to b.COM", ["a.COM to b.COM"]),
        ("wire a.com to s1 to b.NO", ["a.COM to s1", "s1 to b.NO"]),
        ("wire a.COM to earth", ["a.COM to earth"]),
        ('wire a.COM to "EARTH" to b.COM', ["a.COM to earth", "earth to b.COM"]),
        ("wire a.COM to open", ["a.COM to a loose end"]),
        ("wire unknown to a.COM", ["an end not traced to a.COM"]),
        ("wire a.COM to unknown to b.COM", ["a.COM to an end not traced", "an end not traced to b.COM"]),
        ("wire tb.1 to TB.4", ["tb.1 to tb.4"]),
        ("jumper a.COM to a.NO", ["a.COM to a.NO"]),
        ("plug box to valve: PV, mv, VC to C", ["box.PV to valve.PV", "box.MV to valve.MV", "box.VC to valve.C"]),
    ],
)  # fmt: skip
def test_where_leads_land(statement: str, expected: list[str]) -> None:
    assert wired(statement) == expected


def test_an_end_not_traced_or_loose_is_an_end_of_its_own_each_time() -> None:
    text = "wire a.COM to unknown\nwire unknown to b.COM to open\njumper a.A to unknown to a.B"
    diagram = load(PARTS + text)
    ends = [end for lead in diagram.leads for end in lead[:2]]
    made_up = [end for end in ends if end.part in (OPEN_END, UNKNOWN_END)]
    assert len(set(made_up)) == len(made_up) == 5


def test_roles_and_runs() -> None:
    diagram = load(
        PARTS + "wire a.A to b.A to b.B\njumper a.COM to a.NO\nplug box to valve: PV, MV"
    )
    assert [(lead.role, lead.run) for lead in diagram.leads] == [
        (LeadRole.WIRE, 1), (LeadRole.WIRE, 1), (LeadRole.JUMPER, 2), (LeadRole.PLUG, 3),
        (LeadRole.PLUG, 3),
    ]  # fmt: skip
    assert diagram.leads[0].span.text == "a.A to b.A"
    assert diagram.leads[1].b_span.text == "b.B"
    assert diagram.leads[1].statement.text == "wire a.A to b.A to b.B"


@pytest.mark.parametrize(
    ("statement", "expected"),
    [
        ("wire bx.TH to a.A", ["6 [bx] no part or splice is called “bx”; did you mean box?"]),
        ("wire zzz to a.A", ["6 [zzz] no part or splice is called “zzz”; there are a, b, limit, stat, box, valve, pilot, tb and s1"]),
        ("wire box.PVV to a.A", ["10 [PVV] no terminal PVV on box; it has TH, 24V, COM, PV, MV, VC, GND, SENSE, SPARK, D-HOT, D-CALL, D-PROVED, D-COM"]),
        ("wire valve.PVV to a.A", ["12 [PVV] no terminal PVV on valve; it has PV, MV, C"]),
        ("wire tb.5 to a.A", ["9 [5] no terminal 5 on tb; it has terminals 1 to 4"]),
        ("wire s1.1 to a.A", ["6 [s1] s1 is a splice: name it alone, it has no terminals"]),
        ("wire earth.1 to a.A", ["6 [earth] earth is the unit's earth: name it alone, it has no terminals"]),
        ('wire "a.A" to b.A', ['6 ["a.A"] quotes hold one name; the dot stands outside them: a.A']),
        ("wire a.A to A.a", ["6 [a.A to A.a] this lead runs from a terminal to itself"]),
        ("wire earth to earth", ["6 [earth to earth] this lead runs from a terminal to itself"]),
        ("wire a.A to open to b.A", ["13 [open] “open” is a loose end; no lead goes on behind it"]),
        ("plug box to valv: PV", ["13 [valv] no part or splice is called “valv”; did you mean valve?"]),
        ("plug s1 to valve: PV", ["6 [s1] s1 is a splice: name it alone, it has no terminals"]),
        ("plug box to valve: PVV", ["20 [PVV] no terminal PVV on box; it has TH, 24V, COM, PV, MV, VC, GND, SENSE, SPARK, D-HOT, D-CALL, D-PROVED, D-COM"]),
        ("plug box to valve: VC", ["20 [VC] no terminal VC on valve; it has PV, MV, C"]),
        ("plug a to a: NO", ["14 [NO] this conductor runs from a terminal to itself"]),
    ],
)  # fmt: skip
def test_ends_that_are_not_there(statement: str, expected: list[str]) -> None:
    assert said(statement) == expected


def test_a_lead_with_a_bad_end_is_kept_with_that_end_not_traced() -> None:
    built = wirecheck.load_text(PARTS + "wire bx.TH to a.A to valve.XX")
    assert [built.diagram.lead_name(lead) for lead in built.diagram.leads] == [
        "an end not traced to a.A", "a.A to an end not traced",
    ]  # fmt: skip


def test_the_leads_of_a_part_that_could_not_be_declared_are_no_problems_of_their_own() -> None:
    text = "part x is relai\npart y relay\nsplice z wire-nut\npart k is relay\nwire x.A to y.B to z to k.A\n"
    assert [line[:2] for line in problems(text)] == ["1:", "2:", "3:"]


# ---- passing through ---------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("statement", "expected"),
    [
        ("wire a.A to limit to b.A", ["a.A to limit.1", "limit.2 to b.A"]),
        ("wire a.A to STAT to b.A", ["a.A to stat.R", "stat.W to b.A"]),
        ("wire a.A to limit", ["a.A to limit.1"]),
        ("wire limit to a.A", ["limit.2 to a.A"]),
        (
            "wire a.A to limit to stat to b.A",
            ["a.A to limit.1", "limit.2 to stat.R", "stat.W to b.A"],
        ),
        ("wire a.A to b.COM..NO to limit", ["a.A to b.COM", "b.NO to limit.1"]),
        ("wire a.A to b.nc..com to limit", ["a.A to b.NC", "b.COM to limit.1"]),
        ("wire a.A to b.A..B to limit", ["a.A to b.A", "b.B to limit.1"]),
        (
            "wire a.A to b.COM to b.NO to limit",
            ["a.A to b.COM", "b.COM to b.NO", "b.NO to limit.1"],
        ),
        ("wire a.A to b.COM to limit", ["a.A to b.COM", "b.COM to limit.1"]),
        ("wire limit to limit", ["limit.2 to limit.1"]),
    ],
)
def test_what_a_lead_passes(statement: str, expected: list[str]) -> None:
    assert wired(statement) == expected


def test_what_was_passed_and_what_was_named_alone_is_kept() -> None:
    diagram = load(PARTS + "wire limit to stat to b.COM..NO to limit")
    assert [(p.part, p.entered.name, p.left.name, p.span.text) for p in diagram.passed] == [
        ("stat", "R", "W", "stat"), ("b", "COM", "NO", "b.COM..NO"),
    ]  # fmt: skip
    assert [(n.part, n.landed.name) for n in diagram.named_alone] == [
        ("limit", "2"),
        ("limit", "1"),
    ]


@pytest.mark.parametrize(
    ("statement", "expected"),
    [
        ("wire a.A to limit to LIMIT to b.A", ["22 [LIMIT] this lead passes limit twice"]),
        ("wire a.A to limit.1..2 to limit to b.A", ["27 [limit] this lead passes limit twice"]),
        ("wire a.A to b.COM..NO to limit to b.NO..COM to b.A", ["35 [b.NO..COM] this lead passes b twice"]),
        ("wire a.A to b.COM..NO", ["13 [b.COM..NO] nothing is passed where a lead begins or ends; name one terminal"]),
        ("wire b.COM..NO to a.A", ["6 [b.COM..NO] nothing is passed where a lead begins or ends; name one terminal"]),
        ("wire a.A to b.COM..A to limit", ["13 [b.COM..A] b has nothing to pass between COM and A"]),
        ("wire a.A to valve to b.A", ["13 [valve] valve is not passed through by its name; name the terminal: one of PV, MV, C"]),
        ("wire a.A to tb", ["13 [tb] tb has more than one way in; name the terminal: by its number"]),
    ],
)  # fmt: skip
def test_what_cannot_be_passed(statement: str, expected: list[str]) -> None:
    assert said(statement) == expected


def test_two_poles_of_a_relay_in_series_are_two_contacts() -> None:
    text = "part k is relay: poles 2\nwire k.1.COM..1.NO to earth\nwire k.A to k.1.COM..1.NO to k.2.COM..2.NO to k.B"
    assert problems(text) == [
        "2:6 [k.1.COM..1.NO] nothing is passed where a lead begins or ends; name one terminal"
    ]


# ---- attributes --------------------------------------------------------------------------------


def values(statement: str) -> list[dict[str, object]]:
    diagram = load(PARTS + statement)
    return [{name: a.value for name, a in lead.given.items()} for lead in diagram.leads]


@pytest.mark.parametrize(
    ("typed", "name", "value"),
    [
        ("red", "colour", "red"),
        ("RD", "colour", "red"),
        ("green/yellow", "colour", "green/yellow"),
        ("18 AWG", "size", Quantity(18, 18, "AWG")),
        ("18awg", "size", Quantity(18, 18, "AWG")),
        ("0.75 mm²", "size", Quantity(0.75, 0.75, "mm2")),
        (".75MM2", "size", Quantity(0.75, 0.75, "mm2")),
        ("12 ft", "length", Quantity(12, 12, "ft")),
        ("length 2.5 m", "length", Quantity(2.5, 2.5, "m")),
        ("ignition-cable", "ignition-cable", "yes"),
        ("200 °F", "rating", Quantity(200, 200, "F")),
        ("105C", "rating", Quantity(105, 105, "C")),
        ("number 17", "number", "17"),
        ('number "17 a"', "number", "17 a"),
        ("broken", "broken", "yes"),
        ("loose 200 Ω", "loose", Quantity(200, 200, "ohm")),
        ("touches earth", "touches", "earth"),
    ],
)
def test_attributes_of_a_lead(typed: str, name: str, value: object) -> None:
    assert values(f"wire a.A to b.A: {typed}") == [{name: value}]


def test_a_runs_attributes_hold_for_each_lead_and_one_leads_own_replace_them() -> None:
    statement = "wire a.A to limit (3 ft, blue) to b.A to b.B (broken): red, 12 ft"
    three, twelve = Quantity(3, 3, "ft"), Quantity(12, 12, "ft")
    assert values(statement) == [
        {"colour": "blue", "length": three},
        {"colour": "red", "length": twelve},
        {"colour": "red", "length": twelve, "broken": "yes"},
    ]
    assert [lead.shared_length for lead in load(PARTS + statement).leads] == [False, True, True]
    assert [lead.conducts for lead in load(PARTS + statement).leads] == [True, True, False]
    assert not load(PARTS + "wire a.A to b.A: 12 ft").leads[0].shared_length


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("red 18 AWG", "18 [red 18 AWG] a comma is missing after red"),
        ("red, blue", "23 [blue] colour stands here twice: “red” before this"),
        ("1/2 in", "18 [1/2 in] write the fraction as a decimal: 0.5 in"),
        ("1 1/2 in", "18 [1 1/2 in] write the fraction as a decimal: 1.5 in"),
        ("18 AGW", "18 [18 AGW] no unit is written AGW; write AWG"),
        ("24 V", "18 [24 V] a lead takes no volts; it has colour, size, length, ignition-cable, rating, number, in, capped, broken, loose, touches"),
        ("length 24 V", "25 [24 V] length takes a length, as in 3 ft; 24 V is volts"),
        ("rde", "18 [rde] a lead has no attribute “rde”; did you mean red?"),
        ("in c9", "18 [in c9] no cable is called “c9”; declare it with: cable NAME: 18/5"),
    ],
)  # fmt: skip
def test_attributes_that_are_none(typed: str, expected: str) -> None:
    assert said(f"wire a.A to b.A: {typed}") == [expected]


def test_brackets_before_the_first_lead_describe_none() -> None:
    assert said("wire a.A (red) to b.A") == [
        "6 [a] brackets describe the lead that arrives here, and none does"
    ]


def test_a_lead_in_a_cable_has_its_size() -> None:
    text = "cable c1: 18/5, 40 ft\nwire a.A to b.A: in C1\nwire a.B to b.B: in c1, 16 AWG"
    first, second = values(text)
    assert first == {"in": "C1", "size": Quantity(18, 18, "AWG")}
    assert second["size"] == Quantity(16, 16, "AWG")
    cable = load(PARTS + text).cables["c1"]
    assert (cable.gauge_awg, cable.conductors) == (18, 5)


def test_earth_is_one_terminal() -> None:
    diagram = load(PARTS + "wire a.A to earth\nwire b.A to EARTH")
    assert {lead.b for lead in diagram.leads} == {EARTH}


def test_contacts_that_meet_inside_a_device_are_passed_together() -> None:
    """A boiler control's call contact and limit share a point that has no terminal."""
    text = (
        PARTS + "part boiler is boiler-control\nwire a.NO to boiler.BURNER-1..BURNER-2 to box.TH\n"
    )
    assert problems(text) == []
    assert leads(text) == ["a.NO to boiler.BURNER-1", "boiler.BURNER-2 to box.TH"]
    apart = text.replace("BURNER-1..BURNER-2", "BURNER-1..PUMP")
    assert ["nothing to pass" in message for message in problems(apart)] == [True]


def test_an_amount_in_another_unit_run_on_is_told_with_its_unit() -> None:
    """``18 ga green``: the unit is meant, the comma is missing; nothing is said of “18”."""
    (message,) = problems(PARTS + "wire a.A to b.A: 18 ga green\n")
    assert "no unit is written ga; write AWG, and put a comma behind it" in message
    (other,) = problems(PARTS + "wire a.A to b.A: 18 xq green\n")
    assert "put a comma behind it" not in other
