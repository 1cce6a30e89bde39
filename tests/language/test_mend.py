"""What a statement with slips in it still says."""
# ruff: noqa: E501 - each case stands in one line, its message whole

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

import wirecheck
from tests.language.drawn import wirings
from wirecheck.language.edit import apply, move_end, remove_lead, set_lead_attribute
from wirecheck.model.diagram import UNKNOWN_END

PARTS = "part k is relay\npart limit is high-limit\npart box is pilot-ignition-control\npart valve is gas-valve-3-wire\n"


def leads_with_attributes(statement: str) -> list[str]:
    diagram = wirecheck.load_text(PARTS + statement).diagram
    return [
        f"{diagram.lead_name(lead)}: {', '.join(a.span.text for a in lead.given.values())}"
        for lead in diagram.leads
    ]


@pytest.mark.parametrize(
    ("statement", "expected"),
    [
        ("wire k.A to k.B: red, 12', 18 AWG", "red, 18 AWG"),
        ('wire k.A to k.B: 24", red', "red"),
        ("wire k.A to k.B: 24″", ""),
        ("wire k.A to k.B: red,, 18 AWG", "red, 18 AWG"),
        ("wire k.A to k.B: red,", "red"),
        ("wire k.A to k.B: red, (18 AWG), 3 ft", "red, 3 ft"),
        ("wire k.A to k.B: number: 17, red", "red"),
        ('wire k.A to k.B: red, number "17, blue', "red"),
        ('wire k.A to k.B: number "1, 2", 12\', red', 'number "1, 2", red'),
        ("wire k.A to k.B: 'red', 12', 18 AWG, 24\"", "18 AWG"),
        ("wire k.A to k.B:", ""),
    ],
)
def test_an_attribute_with_a_slip_is_left_out_and_the_rest_is_used(
    statement: str, expected: str
) -> None:
    assert leads_with_attributes(statement) == [f"k.A to k.B: {expected}"]


def test_every_slip_of_a_statement_is_told() -> None:
    problems = wirecheck.load_text(PARTS + "wire k.A to k.B: 'red', 12', 24\"").problems
    assert [(p.span.column, p.span.text) for p in problems] == [(18, "'"), (27, "'"), (32, '"')]


def test_so_many_slips_are_told_and_no_more() -> None:
    text = PARTS + "wire k.A to k.B: " + ", ".join(["12'"] * 1000)
    assert len(wirecheck.load_text(text).problems) == 20


def test_a_part_keeps_the_attributes_that_can_be_read() -> None:
    built = wirecheck.load_text(
        "part x is transformer: primary 240 V, 12', rating 75 VA\nwire x.R to earth"
    )
    assert len(built.problems) == 1
    assert {name: str(a.value) for name, a in built.diagram.parts["x"].given.items()} == {
        "primary": "240 V", "rating": "75 VA",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("statement", "wired"),
    [
        ("wire k.A k.B: green", ["k.A", "k.B"]),
        ("wire k.A to limit box.TH", ["k.A", "limit.1", "limit.2", "box.TH"]),
        ("wire k.A to", ["k.A"]),
        ("wire k.A to zz.9 to to k.XX, box.24V", ["k.A", "box.24V"]),
        ('jumper "K"."A", k.b', ["k.A", "k.B"]),
        ("wire k.COM..NO k.A", ["k.COM", "k.NO", "k.A"]),
        (
            "plug box to valve PV, MV, VC to C",
            ["box.PV", "valve.PV", "box.MV", "valve.MV", "box.VC", "valve.C"],
        ),
        ("plug box valve: PV", ["box.PV", "valve.PV"]),
        ("plug box to valve: PV MV", ["box.PV", "valve.PV", "box.MV", "valve.MV"]),
        ("wire", []),
        ("part x relay", []),
    ],
)
def test_what_an_unreadable_lead_names_is_wired_and_not_traced(
    statement: str, wired: list[str]
) -> None:
    built = wirecheck.load_text(PARTS + statement)
    assert len(built.problems) == 1
    assert [built.diagram.show(lead.a) for lead in built.diagram.leads] == wired
    assert all(lead.b.part == UNKNOWN_END and not lead.given for lead in built.diagram.leads)
    names = [lead.a_span.text.lower().replace('"', "") for lead in built.diagram.leads]
    assert all(name.split(".")[-1] in statement.lower() for name in names)


def test_no_terminal_of_an_unreadable_lead_is_called_empty() -> None:
    """The lead of the burner ground is there, however it is typed."""
    text = (
        "part box is pilot-ignition-control\npart pilot is pilot-burner: two-rod\n"
        "wire box.SPARK to pilot.SPARK: ignition-cable\nwire box.SENSE to pilot.ROD\n"
    )
    for ground, expected in (("", True), ("wire box.GND - pilot.HOOD", False)):
        built = wirecheck.load_text(text + ground)
        found = {finding.rule for finding in wirecheck.check(built.diagram).findings}
        assert ("burner-ground-missing" in found) is expected


def test_edits_of_a_lead_that_cannot_be_read() -> None:
    text = PARTS + "wire k.A k.B  # bad\nplug box valve: PV\nwire k.COM to k.NO: red, 12'\n"
    diagram = wirecheck.load_text(text).diagram
    a, b, c, d, e = range(5)
    terminals = [lead.a for lead in diagram.leads]
    assert move_end(diagram, a, terminals[a], terminals[e]) is None
    assert move_end(diagram, c, terminals[c], terminals[e]) is None
    gone = text.replace("wire k.A k.B  # bad\n", "")
    assert apply(text, [remove_lead(diagram, b)]) == gone
    assert apply(text, [remove_lead(diagram, d)]) == text.replace("plug box valve: PV\n", "")
    assert "wire k.A to unknown: green  # bad" in apply(
        text, [set_lead_attribute(diagram, a, "colour", "green")]
    )
    moved = move_end(diagram, e, terminals[e], terminals[a])
    assert moved is not None
    assert "wire k.A to k.NO: red, 12'" in apply(text, [moved])


@settings(deadline=None)  # the first check of a process loads every rule
@given(wirings(), st.data())
@example("part k is relay\nwire k.A to k.B: red", None)
def test_a_slip_anywhere_costs_no_more_than_its_statement(
    text: str, data: st.DataObject | None
) -> None:
    """Nothing fails behind it: neither the check nor any edit."""
    if data is not None:
        at = data.draw(st.integers(0, len(text)))
        slip = data.draw(
            st.sampled_from(["'", '"', ",", ":", "(", ")", ".", "to ", "\n", "\u2013", ""])
        )
        cut_out = data.draw(st.integers(0, 3))
        text = text[:at] + slip + text[at + cut_out :]
    built = wirecheck.load_text(text)
    wirecheck.check(built.diagram)
    for number, lead in enumerate(built.diagram.leads):
        for end in (lead.a, lead.b):
            move_end(built.diagram, number, end, lead.a)
        apply(text, [remove_lead(built.diagram, number)])
        apply(text, [set_lead_attribute(built.diagram, number, "colour", "green")])
