"""Variants as diagrams: what each adds, takes out and sets; and several together."""
# ruff: noqa: E501 - each case stands in one line, its message whole

from __future__ import annotations

import pytest

import wirecheck
from tests.sequence.heater import HEATER
from wirecheck.language.variations import MOST_COMBINATIONS, Variation, all_combinations, variations

FIRST = HEATER.count("\n") + 1
BASE = [
    "xfmr.R to limit.1", "limit.2 to stat.R", "stat.W to box.TH", "xfmr.C to box.COM",
    "xfmr.C to earth", "box.PV to valve.PV", "box.MV to valve.MV", "box.VC to valve.C",
    "box.SPARK to pilot.SPARK", "box.SENSE to pilot.ROD", "box.GND to pilot.HOOD",
]  # fmt: skip


def variation(inside: str) -> Variation:
    """The heater's one variant with some statements inside."""
    built = wirecheck.load_text(f"{HEATER}variant v\n{inside}\nend\n")
    assert not built.problems
    assert [built.diagram.lead_name(lead) for lead in built.diagram.leads] == BASE
    (only,) = variations(built)
    assert only.name == "v"
    return only


def leads(inside: str) -> list[str]:
    """Its leads, as it has no problems."""
    found = variation(inside)
    assert found.problems == ()
    return [found.diagram.lead_name(lead) for lead in found.diagram.leads]


@pytest.mark.parametrize(
    ("inside", "gone", "added"),
    [
        ('note "nothing else"', [], []),
        ("remove wire xfmr.C to earth", ["xfmr.C to earth"], []),
        ("remove wire earth to xfmr.C", ["xfmr.C to earth"], []),
        ("remove wire xfmr.R to limit to stat", ["xfmr.R to limit.1", "limit.2 to stat.R"], []),
        ("remove wire xfmr.R to limit.1..2 to stat.R", ["xfmr.R to limit.1", "limit.2 to stat.R"], []),
        ("remove wire box.PV to valve", ["box.PV to valve.PV"], []),
        ("remove part limit\nwire xfmr.R to stat", ["xfmr.R to limit.1", "limit.2 to stat.R"], ["xfmr.R to stat.R"]),
        ("remove part valve\npart valve is gas-valve-2-wire\nwire box.MV to valve to box.VC", BASE[5:8], ["box.MV to valve.1", "valve.C to box.VC"]),
        ("splice s\nwire s to earth\nwire s to open\nremove wire xfmr.C to earth", ["xfmr.C to earth"], ["s to earth", "s to a loose end"]),
    ],
)  # fmt: skip
def test_what_a_variant_has(inside: str, gone: list[str], added: list[str]) -> None:
    assert leads(inside) == [*(lead for lead in BASE if lead not in gone), *added]


def test_a_jumper_is_removed_as_one() -> None:
    text = f"{HEATER}jumper limit.1 to limit.2\nvariant v\nremove jumper limit.1 to limit.2\nend\n"
    (only,) = variations(wirecheck.load_text(text))
    assert only.problems == ()
    assert len(only.diagram.leads) == len(BASE)


def test_what_is_set_stands_for_what_was_typed() -> None:
    found = variation("set xfmr: rating 75 VA\nset box: retry lockout")
    parts = found.diagram.parts
    assert str(parts["xfmr"].values["rating"]) == "75 VA"
    assert parts["box"].values["retry"] == "lockout"
    assert parts["box"].values["pilot"] == "two-rod"


def test_what_is_set_counts_before_the_leads_of_the_base_are_run() -> None:
    text = "part s is terminal-strip: terminals 4\npart k is relay\nvariant v\nset s: terminals 2\nend\nwire k.A to s.4\n"
    built = wirecheck.load_text(text)
    assert not built.problems
    (only,) = variations(built)
    assert [(str(p.span), p.message) for p in only.problems] == [
        ("text:6:15", "no terminal 4 on s; it has terminals 1 to 2")
    ]


def test_what_is_taken_out_is_looked_up_before_what_is_set() -> None:
    """One rod has no sensing terminal: the lead to it goes, and is nowhere not traced."""
    one_rod = "set box: one-rod\nset pilot: one-rod"
    found = variation(f"{one_rod}\nremove wire box.SENSE to pilot.ROD")
    assert found.problems == ()
    names = [found.diagram.lead_name(lead) for lead in found.diagram.leads]
    assert names == [lead for lead in BASE if lead != "box.SENSE to pilot.ROD"]
    (missed,) = variation(one_rod).problems
    assert missed.message.startswith("no terminal ROD on pilot")
    (missed,) = variation("set box: retry lockout\nremove part limt").problems
    assert "did you mean limit?" in missed.message


def test_a_damper_in_a_variant_takes_the_shorting_plug_out() -> None:
    plug = "plug box to vent: D-HOT to HOT, D-CALL to CALL, D-PROVED to PROVED, D-COM to COM"
    found = variation(f"part vent is vent-damper\n{plug}")
    assert found.diagram.parts["box"].values["damper-plug"] == "removed"


@pytest.mark.parametrize(
    ("inside", "expected"),
    [
        ("remove wire xfmr.C to stat", "13 no wire runs between xfmr.C and stat; from xfmr.C leads run to box.COM, earth"),
        ("remove jumper xfmr.C to earth", "15 no jumper runs between xfmr.C and earth; what runs there is a wire"),
        ("remove wire box to valve", "13 3 leads run between box and valve; name the terminals of the one to remove"),
        ("remove part lmit", "13 no part or splice is called “lmit”; did you mean limit?"),
        ("remove wire xfmr.R to lmit", "23 no part or splice is called “lmit”; did you mean limit?"),
        ("remove wire xfmr.R to xfmr.Q", "28 no terminal Q on xfmr; it has L1, N, R, C"),
        ("set bx: retry lockout", "5 no part or splice is called “bx”; did you mean box?"),
        ("set box: retry never", "16 retry takes continuous, lockout or none, not “never”"),
        ("part box is relay", "6 “box” is declared twice, first in line 4"),
    ],
)  # fmt: skip
def test_what_a_variant_cannot_take_out_or_set(inside: str, expected: str) -> None:
    found = variation(inside)
    assert [
        f"{each.span.column} {each.message}"
        for each in found.problems
        if each.span.line == FIRST + 1
    ] == [expected]


def test_problems_of_the_base_are_not_told_again() -> None:
    built = wirecheck.load_text("part k is rely\nvariant v\npart j is relay\nend\n")
    (only,) = variations(built)
    assert len(built.problems) == 1
    assert only.problems == ()


def test_the_bases_claims_hold_in_a_variant_but_those_about_what_it_takes_out() -> None:
    text = f"{HEATER}expect spark on during trial\nexpect main-valve off when limit open\nvariant v\nremove part limit\nexpect spark off during run\nend\n"
    built = wirecheck.load_text(text)
    (only,) = variations(built)
    assert [claim.text for claim in built.diagram.claims] == [
        "spark on during trial",
        "main-valve off when limit open",
    ]
    assert [claim.text for claim in only.diagram.claims] == [
        "spark on during trial",
        "spark off during run",
    ]
    (left,) = only.diagram.not_evaluated
    assert left.reason == (
        "“main-valve off when limit open” is about limit, which this variant takes out"
    )


def test_a_variant_may_have_a_title_of_its_own() -> None:
    text = 'diagram "base"\nvariant v\ndiagram "other"\nend\nvariant w\nend\n'
    built = wirecheck.load_text(text)
    assert built.diagram.title == "base"
    assert [each.diagram.title for each in variations(built)] == ["other", "base"]


# ---- together ----------------------------------------------------------------------------------


def test_variants_that_touch_nothing_in_common_are_combined() -> None:
    text = f"""{HEATER}variant a
set xfmr: rating 75 VA
variant b
remove wire xfmr.C to earth
variant c
remove wire earth to xfmr.C
wire xfmr.C to unknown
variant d
set box: retry lockout
"""
    together = all_combinations(wirecheck.load_text(text))
    assert [each.name for each in together.built] == [
        "a + b", "a + c", "a + d", "b + d", "c + d", "a + b + d", "a + c + d",
    ]  # fmt: skip
    assert together.left_out == 0
    assert all(each.problems == () for each in together.built)
    last = together.built[-1].diagram
    assert last.parts["box"].values["retry"] == "lockout"
    assert str(last.parts["xfmr"].values["rating"]) == "75 VA"


def test_variants_that_do_not_go_together_are_not_combined() -> None:
    text = f"""{HEATER}variant a
remove part limit
wire xfmr.R to stat
variant b
wire limit.2 to earth
variant c
set box: trial 60 s
"""
    together = all_combinations(wirecheck.load_text(text))
    assert [each.name for each in together.built] == ["a + c", "b + c"]


def test_so_many_combinations_are_built_and_no_more() -> None:
    options = "".join(f"variant v{n}\nnote “{n}”\nend\n" for n in range(10))
    together = all_combinations(wirecheck.load_text(f"part k is relay\n{options}"))
    assert len(together.built) == MOST_COMBINATIONS
    assert together.left_out > 0
