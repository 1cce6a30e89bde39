"""Edits of the wiring change the text so that exactly the leads meant have changed."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

import wirecheck
from tests.language.drawn import wirings
from wirecheck.language.edit import (
    add_lead,
    apply,
    move_end,
    remove_lead,
    set_attribute,
    set_lead_attribute,
    swap_ends,
)
from wirecheck.model.diagram import (
    EARTH,
    OPEN_END,
    UNKNOWN_END,
    Diagram,
    Lead,
    LeadRole,
    Terminal,
)
from wirecheck.model.finding import Edit
from wirecheck.model.quantity import Quantity

BURNER = """\
part xfmr is transformer  # 40 VA
part limit is high-limit
part stat is thermostat
part box is pilot-ignition-control
part valve is gas-valve-3-wire

wire xfmr.R to limit to stat to box.TH: red, 12 ft  # the chain
wire xfmr.C to box.COM: blue
plug box to valve: PV, MV, VC to C
"""


def load(text: str) -> Diagram:
    built = wirecheck.load_text(text)
    assert not built.problems
    return built.diagram


def changed(text: str, *edits: Edit | None) -> str:
    """The lines that the edits take away and put in."""
    applied = apply(text, [edit for edit in edits if edit])
    before, after = Counter(text.splitlines()), Counter(applied.splitlines())
    gone, new = before - after, after - before
    load(applied)
    return "\n".join(
        [f"- {line}" for line in gone.elements()] + [f"+ {line}" for line in new.elements()]
    )


# ---- one lead of a run -------------------------------------------------------------------------


def test_an_end_of_a_run_moves_in_its_place() -> None:
    diagram = load(BURNER)
    edit = move_end(diagram, 2, Terminal("box", "TH"), Terminal("box", "24V"))
    assert edit is not None
    assert (edit.span.text, edit.new_text) == ("box.TH", "box.24V")
    assert edit.words == "take the red lead from stat.W off box.TH and land it on box.24V"


def test_moving_a_lead_off_a_part_passed_through_cuts_the_run_there() -> None:
    edit = move_end(load(BURNER), 1, Terminal("limit", "2"), Terminal("xfmr", "R"))
    assert changed(BURNER, edit).splitlines() == [
        "- wire xfmr.R to limit to stat to box.TH: red, 12 ft  # the chain",
        "+ wire xfmr.R to limit.1: red, 4 ft",
        "+ wire xfmr.R to stat to box.TH: red, 8 ft  # the chain",
    ]


def test_a_joint_stays_where_it_is_for_the_other_lead() -> None:
    text = "part k is relay\npart j is relay\nwire k.A to earth to j.A to k.B: green\n"
    edit = move_end(load(text), 0, EARTH, Terminal("j", "B"))
    assert changed(text, edit).splitlines() == [
        "- wire k.A to earth to j.A to k.B: green",
        "+ wire k.A to j.B: green",
        "+ wire earth to j.A to k.B: green",
    ]


@pytest.mark.parametrize(
    ("number", "left"),
    [
        (0, "+ wire limit.2 to stat to box.TH: red, 8 ft  # the chain"),
        (1, "+ wire xfmr.R to limit.1: red, 4 ft\n+ wire stat.W to box.TH: red, 4 ft  # the chain"),
        (2, "+ wire xfmr.R to limit to stat.R: red, 8 ft  # the chain"),
    ],
)
def test_taking_a_lead_out_of_a_run(number: int, left: str) -> None:
    edit = remove_lead(load(BURNER), number)
    assert changed(BURNER, edit).splitlines()[1:] == left.splitlines()


def test_brackets_go_with_the_lead_they_describe() -> None:
    text = "part k is relay\nwire k.A to k.COM (3 ft) to k.NO (red) to k.B (blue)\n"
    assert changed(text, remove_lead(load(text), 1)).splitlines()[1:] == [
        "+ wire k.A to k.COM (3 ft)",
        "+ wire k.NO to k.B (blue)",
    ]


def test_a_lead_alone_in_its_statement_goes_with_its_lines_and_its_comment() -> None:
    text = "part k is relay\nwire k.A to  # on\n  k.B: red  # off\njumper k.COM to k.NO\n"
    edit = remove_lead(load(text), 0)
    assert apply(text, [edit]) == "part k is relay\njumper k.COM to k.NO\n"
    assert edit.words == "take out the red lead from k.A to k.B"
    assert remove_lead(load(text), 1).words == "take out the jumper from k.COM to k.NO"


# ---- harnesses ---------------------------------------------------------------------------------


def test_a_pin_moves_within_the_harness() -> None:
    edit = move_end(load(BURNER), 6, Terminal("box", "VC"), Terminal("box", "COM"))
    assert changed(BURNER, edit).splitlines()[1:] == ["+ plug box to valve: PV, MV, COM to C"]


def test_a_pin_that_leaves_the_harness_becomes_a_wire() -> None:
    edit = move_end(load(BURNER), 6, Terminal("box", "VC"), Terminal("xfmr", "C"))
    assert changed(BURNER, edit).splitlines()[1:] == [
        "+ plug box to valve: PV, MV",
        "+ wire xfmr.C to valve.C",
    ]


def test_two_pins_swap() -> None:
    valve_pilot, valve_main = Terminal("valve", "PV"), Terminal("valve", "MV")
    edits = swap_ends(load(BURNER), 4, valve_pilot, 5, valve_main)
    assert changed(BURNER, *edits).splitlines()[1:] == [
        "+ plug box to valve: PV to MV, MV to PV, VC to C"
    ]


def test_leads_that_share_a_joint_do_not_swap_in_one_go() -> None:
    diagram = load(BURNER)
    assert swap_ends(diagram, 0, Terminal("limit", "1"), 1, Terminal("limit", "2")) == ()


# ---- new leads and attributes ------------------------------------------------------------------


def test_a_new_lead_stands_behind_the_last_one() -> None:
    edit = add_lead(load(BURNER), Terminal("box", "GND"), EARTH, "green, 18 AWG")
    assert apply(BURNER, [edit]) == BURNER + "wire box.GND to earth: green, 18 AWG\n"
    assert edit.words == "run a lead from box.GND to earth: green, 18 AWG"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("part k is relay", "part k is relay\nwire k.A to k.B"),
        ("part k is relay\r\n# end\r\n", "part k is relay\r\nwire k.A to k.B\r\n# end\r\n"),
        ("  part k is relay\n", "  part k is relay\n  wire k.A to k.B\n"),
        ("part k is relay\rwire k.COM to k.NO\r", None),
    ],
)
def test_the_new_line_is_written_as_the_others(text: str, expected: str | None) -> None:
    diagram = wirecheck.load_text(text).diagram
    after = apply(text, [add_lead(diagram, Terminal("k", "A"), Terminal("k", "B"))])
    assert after == (expected or text.replace("NO\r", "NO\rwire k.A to k.B\n"))


def test_labels_and_odd_names_are_spelled_so_that_they_read_back() -> None:
    text = 'part "old box" is relay\nlabels "old box": A as "coil +", B as "coil -"\n'
    edit = add_lead(load(text), Terminal("old box", "A"), Terminal("old box", "COM"))
    assert edit.new_text == 'wire "old box"."coil +" to "old box".COM\n'


@pytest.mark.parametrize(
    ("part", "expected"),
    [
        ("part box is pilot-ignition-control", ": sense-link cut"),
        ("part box is pilot-ignition-control: two-rod", ", sense-link cut"),
        ("part box is pilot-ignition-control: sense-link fitted, two-rod", "sense-link cut"),
    ],
)
def test_an_attribute_of_a_part_is_put_in_its_place(part: str, expected: str) -> None:
    edit = set_attribute(load(part), "box", "sense-link", "cut")
    assert edit.new_text == expected
    typed = load(apply(part, [edit])).parts["box"].given
    assert typed["sense-link"].value == "cut"
    assert edit.words == "change box: sense-link cut"


def test_an_attribute_of_the_kind_is_overruled_at_the_part() -> None:
    text = "kind mine is relay: poles 2\npart k is mine\n"
    edit = set_attribute(load(text), "k", "poles", "3")
    assert apply(text, [edit]) == "kind mine is relay: poles 2\npart k is mine: poles 3\n"


@pytest.mark.parametrize(
    ("number", "name", "text", "expected"),
    [
        (0, "colour", "green", "wire xfmr.R to limit (green) to stat to box.TH: red, 12 ft"),
        (3, "colour", "green", "wire xfmr.C to box.COM: green"),
        (3, "size", "18 AWG", "wire xfmr.C to box.COM: blue, 18 AWG"),
        (4, "colour", "red", "plug box to valve: MV, VC to C\n+ wire box.PV to valve.PV: red"),
    ],
)
def test_an_attribute_of_one_lead(number: int, name: str, text: str, expected: str) -> None:
    edit = set_lead_attribute(load(BURNER), number, name, text)
    new = changed(BURNER, edit).split("+ ", 1)[1].replace("  # the chain", "")
    assert new == expected


def test_what_a_lead_has_from_its_cable_is_not_taken_for_typed() -> None:
    text = "part k is relay\ncable c: 18/2\nwire k.A to k.B: in c\n"
    edit = set_lead_attribute(load(text), 0, "size", "16 AWG")
    assert apply(text, [edit]).endswith("wire k.A to k.B: in c, 16 AWG\n")


def test_edits_of_the_same_text_are_refused_together() -> None:
    diagram = load(BURNER)
    terminal = Terminal("box", "COM")
    moves = [move_end(diagram, 3, terminal, Terminal("box", name)) for name in ("VC", "GND")]
    with pytest.raises(ValueError, match="same text"):
        apply(BURNER, [edit for edit in moves if edit])


def test_the_last_lead_can_go_and_another_come_at_once() -> None:
    diagram = load(BURNER)
    new = add_lead(diagram, Terminal("box", "GND"), EARTH)
    text = BURNER.replace("plug box to valve: PV, MV, VC to C\n", "")
    diagram = load(text)
    edits = [remove_lead(diagram, 3), add_lead(diagram, Terminal("box", "GND"), EARTH)]
    assert apply(text, edits).splitlines()[-1] == new.new_text.strip()


def test_a_share_of_a_length_is_written_as_somebody_would_and_said() -> None:
    text = BURNER.replace("12 ft", "40 ft")
    diagram = load(text)
    moved = move_end(diagram, 1, Terminal("limit", "2"), Terminal("box", "D-CALL"))
    assert moved is not None
    assert moved.words.endswith("; each lead keeps its share of the run's 40 ft, rounded")
    after = apply(text, [moved])
    assert "wire xfmr.R to limit.1: red, 13 ft\n" in after
    assert "wire box.D-CALL to stat to box.TH: red, 27 ft" in after


def test_a_pin_with_an_untraced_end_can_be_moved() -> None:
    text = BURNER.replace("VC to C", "VC to 9")
    built = wirecheck.load_text(text)
    number = next(n for n, lead in enumerate(built.diagram.leads) if lead.a.name == "VC")
    edit = move_end(built.diagram, number, Terminal("box", "VC"), Terminal("box", "COM"))
    assert edit is not None
    after = wirecheck.load_text(apply(text, [edit]))
    assert not after.problems
    assert after.diagram.leads[-1].a == Terminal("box", "COM")
    assert after.diagram.leads[-1].b.part == UNKNOWN_END


# ---- any diagram -------------------------------------------------------------------------------


def lead_key(lead: Lead) -> tuple[object, ...]:
    """A lead as it must be again: ends, role, attributes; of its length the unit."""
    values: dict[str, object] = {name: given.value for name, given in lead.given.items()}
    length = values.get("length")
    if isinstance(length, Quantity):
        values["length"] = length.unit
    return (*map(_plain, (lead.a, lead.b)), lead.role, tuple(sorted(values.items(), key=str)))


def lengths_m(diagram: Diagram) -> list[float]:
    """The length of each lead, a run's length shared out among its leads; 0 where none is given."""
    sharing = Counter(lead.run for lead in diagram.leads if lead.shared_length)
    lengths = []
    for lead in diagram.leads:
        length = lead.given["length"].value if "length" in lead.given else None
        shared = sharing[lead.run] if lead.shared_length else 1
        lengths.append(length.low_base / shared if isinstance(length, Quantity) else 0.0)
    return lengths


def length_stays(before: Diagram, after: Diagram, *, without: int | None = None) -> bool:
    """Whether all leads are as long together as they were, within five of a hundred: rounded."""
    was, now = lengths_m(before), lengths_m(after)
    gone = was[without] if without is not None else 0.0
    return sum(now) == pytest.approx(sum(was) - gone, rel=0.05, abs=1e-9)


def _plain(end: Terminal) -> Terminal:
    return Terminal(end.part, "") if end.part in (OPEN_END, UNKNOWN_END) else end


def all_leads(diagram: Diagram) -> Counter[tuple[object, ...]]:
    return Counter(map(lead_key, diagram.leads))


def with_ends(key: tuple[object, ...], old: Terminal, new: Terminal) -> tuple[object, ...]:
    a, b, role, values = key
    plain = _plain(old)
    return (new if a == plain else a, new if b == plain and a != plain else b, role, values)


#: How busy the machine is must not decide a test.
unhurried = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])


@st.composite
def diagrams(draw: st.DrawFn) -> tuple[str, Diagram, int]:
    """A diagram without problems, and the number of one of its leads."""
    text = draw(wirings())
    built = wirecheck.load_text(text)
    assume(not built.problems and built.diagram.leads)
    return text, built.diagram, draw(st.integers(0, len(built.diagram.leads) - 1))


@unhurried
@given(diagrams())
def test_removing_any_lead_takes_out_that_lead_alone(drawn: tuple[str, Diagram, int]) -> None:
    text, diagram, number = drawn
    after = load(apply(text, [remove_lead(diagram, number)]))
    lead = diagram.leads[number]
    assert all_leads(after) == all_leads(diagram) - Counter([lead_key(lead)])
    assert length_stays(diagram, after, without=number)
    assert after.parts.keys() == diagram.parts.keys()


@unhurried
@given(diagrams(), st.data())
def test_moving_any_end_moves_that_end_alone(
    drawn: tuple[str, Diagram, int], data: st.DataObject
) -> None:
    text, diagram, number = drawn
    lead = diagram.leads[number]
    places = [
        part.terminal(name)
        for part in diagram.parts.values()
        for name, spec in part.structure.terminals.items()
        if not spec.inner
    ]
    old, new = data.draw(st.sampled_from([lead.a, lead.b])), data.draw(st.sampled_from(places))
    edit = move_end(diagram, number, old, new)
    if edit is None:
        assert new in (lead.a, lead.b)
        return
    built = wirecheck.load_text(apply(text, [edit]))
    key = lead_key(lead)
    moved = with_ends(key, old, new)
    if lead.role is LeadRole.PLUG and moved[2] is LeadRole.PLUG and new.part != old.part:
        moved = (*moved[:2], LeadRole.WIRE, moved[3])
    assert not built.problems
    assert all_leads(built.diagram) == all_leads(diagram) - Counter([key]) + Counter([moved])
    assert length_stays(diagram, built.diagram)


@unhurried
@given(diagrams())
def test_a_new_lead_is_all_that_adding_one_changes(drawn: tuple[str, Diagram, int]) -> None:
    text, diagram, _number = drawn
    part = next(iter(diagram.parts.values()))
    end = part.terminal(next(iter(part.structure.terminals)))
    after = load(apply(text, [add_lead(diagram, end, EARTH, "green")]))
    added = all_leads(after) - all_leads(diagram)
    assert list(added) == [(end, EARTH, LeadRole.WIRE, (("colour", "green"),))]
    assert len(after.leads) == len(diagram.leads) + 1
