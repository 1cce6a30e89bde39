"""Parts, kinds of the user's own, splices, cables and printed labels."""
# ruff: noqa: E501 - each case stands in one line, its message whole

from __future__ import annotations

import pytest

import wirecheck
from tests.language.said import leads, load, problems
from wirecheck.model.quantity import Quantity

# ---- parts, splices, cables --------------------------------------------------------------------


def test_names_are_shown_as_first_typed_and_compared_in_any_case() -> None:
    assert leads("part XFMR is Transformer\npart Öl is relay\nwire xfmr.r to öL.a") == [
        "XFMR.R to Öl.A"
    ]


def test_statements_may_stand_in_any_order() -> None:
    text = "wire k.A to s to j.A: in c\ncable c: 18/2\nsplice s\npart j is mine\npart k is relay\nkind mine is relay"
    assert len(leads(text)) == 2


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("part k is relay\npart K is mains", "2:6 [K] “K” is declared twice, first in line 1"),
        ("part k is relay\nsplice k", "2:8 [k] “k” is declared twice, first in line 1"),
        ("splice s\nsplice S", "2:8 [S] “S” is declared twice, first in line 1"),
        ("cable c: 18/2\ncable c: 18/3", "2:7 [c] a cable is called c already, in line 1"),
        ('part "" is relay', '1:6 [""] a name cannot be empty'),
        ('part " " is relay', '1:6 [" "] a name cannot be empty'),
        ("splice earth", "1:8 [earth] earth is the unit's earth everywhere; choose another name"),
        ("part k is relai", "1:11 [relai] no kind of part is called “relai”; did you mean relay?"),
        ("part k is zzz", "1:11 [zzz] no kind of part is called “zzz”; wirecheck kinds lists them"),
        ("part k is relay: pols 2", "1:18 [pols] a relay has no attribute “pols”; did you mean poles?"),
        ("cable c: 18", "1:7 [c] a cable begins with its gauge and number of conductors, as in 18/5"),
        ("cable c: 18/0", "1:7 [c] a cable begins with its gauge and number of conductors, as in 18/5"),
        ("cable c: 40 ft, 18/2", "1:7 [c] a cable begins with its gauge and number of conductors, as in 18/5"),
        ("cable c: 18/2, 40 V", "1:16 [40 V] a cable takes no volts; it has length, rating, shielded"),
        ("splice s: crimped", "1:11 [crimped] a splice has no attribute “crimped”; did you mean crimp?"),
        ('diagram "a"\ndiagram "b"', '2:1 [diagram "b"] a diagram has one title; take this one away'),
    ],
)  # fmt: skip
def test_declarations_that_cannot_be(text: str, expected: str) -> None:
    assert problems(text) == [expected]


def test_a_very_long_number_is_no_number_of_conductors() -> None:
    assert len(problems(f"cable c: {'9' * 10_000}/{'9' * 10_000}")) == 1


# ---- kinds of the user's own -------------------------------------------------------------------


def test_a_kind_of_ones_own_is_used_like_any_other() -> None:
    diagram = load("part x is Mine: 20 VA\nkind mine is transformer: primary 240 V, rating 75 VA")
    part = diagram.parts["x"]
    assert (part.kind.name, part.kind.title, part.family) == (
        "mine",
        "control transformer (mine)",
        "transformer",
    )
    assert part.values["rating"] == Quantity(20, 20, "VA")
    assert part.values["primary"] == Quantity(240, 240, "V")


def test_a_kind_may_be_made_from_another_of_them_in_any_order() -> None:
    text = "kind c is b: poles 3\nkind b is a\nkind a is relay: poles 2\npart k is c\npart j is b"
    diagram = load(text)
    assert [diagram.parts[key].values["poles"] for key in ("k", "j")] == [3, 2]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("kind a is a", ["1:11 [a] kind a is made from itself"]),
        ("kind a is b\nkind b is a\npart k is a\nwire k.1 to earth", ["1:11 [b] kind a is made from itself"]),
        ("kind relay is mains", ["1:6 [relay] relay is a kind of the part library; choose another name"]),
        ("kind a is relay\nkind A is mains", ["2:1 [kind A is mains] kind A is stated twice, first in line 1"]),
        ("kind a is relai\npart k is a\nwire k.A to k.B", ["1:11 [relai] no kind of part is called “relai”; did you mean relay?"]),
        ("kind a relay\npart k is a\nwire k.A to k.B", ["1:8 [relay] “is” is missing: write “is relay”"]),
        ("kind mine is relay\npart k is mime", ["2:11 [mime] no kind of part is called “mime”; did you mean mine?"]),
        ("kind a is relay: 5 ft", ["1:18 [5 ft] a relay takes no length; it has"]),
    ],
)  # fmt: skip
def test_kinds_that_cannot_be(text: str, expected: list[str]) -> None:
    found = problems(text)
    assert len(found) == len(expected)
    assert all(each.startswith(start) for each, start in zip(found, expected, strict=True))


# ---- labels ------------------------------------------------------------------------------------

BOX = "part box is pilot-ignition-control\n"


def test_a_label_is_what_wires_use_and_reports_show() -> None:
    text = BOX + 'labels box: PV as "P 1", TH as "W"\nwire box."p 1" to box.w\n'
    assert leads(text) == ["box.P 1 to box.W"]
    assert load(text).leads[0].a.name == "PV"


def test_a_label_hides_the_terminals_own_name() -> None:
    text = BOX + 'labels box: PV as "P1"\nwire box.PV to box.MV'
    assert problems(text) == ["3:10 [PV] box's PV is labelled “P1” here; use the label"]


def test_two_terminals_may_swap_names() -> None:
    text = BOX + 'labels box: PV as "MV", MV as "PV"\nwire box.PV to earth'
    assert load(text).leads[0].a.name == "MV"


def test_numbered_terminals_take_labels() -> None:
    text = 'part tb is terminal-strip\nlabels tb: 1 as "R", 2 as "1", 3 as "2"\nwire tb.1 to tb.r'
    assert [end.name for end in load(text).leads[0][:2]] == ["2", "1"]
    assert problems(text + "\nwire tb.3 to earth") == [
        "4:9 [3] tb's 3 is labelled “2” here; use the label"
    ]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (BOX + 'labels box: PV as "MV"', '2:13 [PV as "MV"] “MV” is another terminal of box; label that one too'),
        (BOX + 'labels box: PV as "x", MV as "X"', '2:24 [MV as "X"] PV and MV of box cannot both be labelled “X”'),
        (BOX + 'labels box: PV as "x"\nlabels box: PV as "y"', '3:13 [PV as "y"] PV of box is labelled twice'),
        (BOX + 'labels box: PV as " "', '2:13 [PV as " "] a label cannot be empty'),
        (BOX + 'labels box: XX as "x"', "2:13 [XX] no terminal XX on box; it has TH, 24V, COM, PV, MV, VC, GND, SENSE, SPARK, D-HOT, D-CALL, D-PROVED, D-COM"),
        (BOX + 'labels bix: PV as "x"', "2:8 [bix] no part or kind of yours is called “bix”; did you mean box?"),
        ('part tb is terminal-strip: terminals 3\nlabels tb: 1 as "3"', '2:12 [1 as "3"] “3” is another terminal of tb; label that one too'),
    ],
)  # fmt: skip
def test_labels_that_cannot_be(text: str, expected: str) -> None:
    assert problems(text) == [expected]


def test_the_labels_of_a_kind_hold_for_its_parts_and_for_kinds_made_from_it() -> None:
    text = (
        "kind a is relay\nkind b is a\npart j is a\npart k is b\n"
        'labels j: COM as "1"\nlabels a: A as "85", B as "86"\nlabels b: B as "30"\n'
        "wire j.85 to j.86 to j.1\nwire k.85 to k.30\n"
    )
    assert leads(text) == ["j.85 to j.86", "j.86 to j.1", "k.85 to k.30"]


def test_a_label_of_the_kind_for_a_terminal_a_part_has_not_is_left_out() -> None:
    text = (
        'kind mine is pilot-burner: two-rod\nlabels mine: ROD as "F", SPARK as "I"\n'
        "part one is mine: one-rod\npart two is mine\nwire one.I to two.F to two.I"
    )
    assert len(leads(text)) == 2


def test_a_parts_own_label_must_not_clash_with_one_of_its_kind() -> None:
    text = 'kind a is relay\nlabels a: A as "85"\npart k is a\nlabels k: B as "85"'
    assert problems(text) == ['4:11 [B as "85"] A and B of k cannot both be labelled “85”']


# ---- defaults that follow from what is drawn ---------------------------------------------------


def pilots(text: str) -> list[object]:
    diagram = wirecheck.load_text(text).diagram
    return [part.values.get("pilot") for part in diagram.parts.values()]


@pytest.mark.parametrize(
    ("box", "burner", "wires", "expected"),
    [
        ("", "", "", ["two-rod", "two-rod"]),
        ("", ": one-rod", "", ["one-rod", "one-rod"]),
        (": one-rod", "", "", ["one-rod", "one-rod"]),
        (": one-rod", ": two-rod", "", ["one-rod", "two-rod"]),
        (": one-rod", "", "wire box.SENSE to pilot.ROD", ["one-rod", "two-rod"]),
    ],
)
def test_the_pilot_is_as_the_other_side_says(
    box: str, burner: str, wires: str, expected: list[object]
) -> None:
    """A lead on a rod is drawn, so the rod is there, whatever the control was made for."""
    text = f"part box is pilot-ignition-control{box}\npart pilot is pilot-burner{burner}\n{wires}"
    assert pilots(text) == expected
    assert not wirecheck.load_text(text).problems


def test_each_control_takes_after_the_burner_it_is_wired_to() -> None:
    text = (
        "part b1 is pilot-ignition-control\npart b2 is pilot-ignition-control\n"
        "part p1 is pilot-burner: one-rod\npart p2 is pilot-burner: two-rod\n"
        "wire b2.SPARK to p2.SPARK\nwire b1.SPARK to p1.SPARK\n"
    )
    assert pilots(text) == ["one-rod", "two-rod", "one-rod", "two-rod"]


def test_the_dampers_plug_is_out_where_a_damper_is_wired() -> None:
    text = "part b is pilot-ignition-control\npart d is vent-damper\n"
    wired = text + "wire b.D-HOT to d.HOT"
    values = [load(each).parts["b"].values["damper-plug"] for each in (text, wired)]
    assert values == ["fitted", "removed"]
