"""The canonical form says the same, keeps every comment, and is its own canonical form."""
# ruff: noqa: E501 - each case stands in one line, its message whole

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import assume, example, given

import wirecheck
from tests.language.drawn import wirings
from tests.language.typed import texts
from wirecheck.language.cut import cut
from wirecheck.language.format import LINE_LENGTH, format_text
from wirecheck.model.diagram import Diagram
from wirecheck.model.text import SourceFile


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("PART  a\tIs Relay", "part a is Relay"),
        ('part "a"  is "relay"', "part a is relay"),
        ('part "a b" is relay', 'part "a b" is relay'),
        ('part "to" is relay', 'part "to" is relay'),
        ("part x is transformer:primary 120V ,secondary 24.0v", "part x is transformer: primary 120 V, secondary 24 V"),
        ("part x is transformer: primary 120/240V", "part x is transformer: primary 120/240 V"),
        ("kind k is relay\npart x is k: coil 24V", "kind k is relay\npart x is k: coil 24V"),
        ("part b is pilot-ignition-control: trial 10 -30S", "part b is pilot-ignition-control: trial 10-30 s"),
        ("part x is nothing: 24V", "part x is nothing: 24V"),
        ('wire "a"."1" TO b.com..no To c.1 ( RED,3FT ): 18awg', "wire a.1 to b.com..no to c.1 (red, 3 ft): 18 AWG"),
        ('wire a.1 to b.1: number "18 AWG", number 18awg', 'wire a.1 to b.1: number "18 AWG", number 18awg'),
        ('wire a.1 to b.1: number "a#b", 0.750mm², rd/WHITE', 'wire a.1 to b.1: number "a#b", 0.75 mm2, RD/white'),
        ('wire a.1 to b.1: 24", 12"', 'wire a.1 to b.1: 24", 12"'),
        ('labels b: "PV" as "P 1",MV   as "M"', 'labels b: PV as "P 1", MV as "M"'),
        ('plug a to b:PV,"end" to  MV', 'plug a to b: PV, "end" to MV'),
        ("part d is vent-damper: hold-open  SET", "part d is vent-damper: hold-open set"),
        ('wire a.1 to b.1: "set", number "to"', 'wire a.1 to b.1: "set", number "to"'),
        ("cable c:18/5,40ft", "cable c: 18/5, 40 ft"),
        ("note “as “found””", "note “as “found””"),
        ("note “as found”", 'note "as found"'),
        ("expect   24v ACROSS a.1 AND b.1 , x ON When y  OPEN during TRIAL", "expect 24 V across a.1 and b.1, x on when y open during trial"),
        ("expect between 20v and 30.50V across a", "expect between 20 V and 30.5 V across a"),
        ('expect "24V" on, "at" off', 'expect "24V" on, "at" off'),
        ("observe No-Continuity across a.1 and earth", "observe no-continuity across a.1 and earth"),
        ("remove  WIRE a.1 to b.1", "remove wire a.1 to b.1"),
        ("remove part  a", "remove part a"),
        ("jumper a.1 to b.1 # keep  this ", "jumper a.1 to b.1  # keep  this"),
        ("#  as   typed\t", "#  as   typed"),
        ("wire a.1  b.1   # bad", "wire a.1  b.1   # bad"),
    ],
)  # fmt: skip
def test_one_statement(typed: str, expected: str) -> None:
    assert format_text(typed) == expected + "\n"


def test_a_part_of_a_kind_of_the_users_own_has_the_attributes_of_what_it_is_made_from() -> None:
    typed = (
        "kind mine is other\nkind other is transformer: primary 120v\npart x is mine: 24v, 40va\n"
    )
    assert format_text(typed) == (
        "kind mine is other\nkind other is transformer: primary 120 V\npart x is mine: 24v, 40 VA\n"
    )


def test_blank_lines_comments_and_variants() -> None:
    typed = (
        "\n\n# first\n\n\n\npart a is relay\n# second\n   \npart b is relay # third\n"
        'variant one\nset a: 24 V\n  # inside\nvariant two\nremove part b\nEND\nnote "x"\n\n\n'
    )
    assert format_text(typed) == (
        "# first\n\npart a is relay\n# second\n\npart b is relay  # third\n"
        "variant one\n    set a: 24 V\n    # inside\nvariant two\n    remove part b\nend\n"
        'note "x"\n'
    )


def test_comments_inside_a_statement_stay_behind_what_they_stood_behind() -> None:
    typed = "wire a.1   to # first\n\n# own\n b.1 to c.1 : red , # colour\n 18AWG# last\n"
    assert format_text(typed) == (
        "wire a.1 to  # first\n    # own\n    b.1 to c.1: red,  # colour\n    18 AWG  # last\n"
    )


def test_a_long_statement_goes_on_behind_to_or_a_comma() -> None:
    ends = " to ".join(f"terminal-strip-{number}.1" for number in range(12))
    formatted = format_text(f"wire {ends}: green/yellow, 14 AWG, number 1234567890\n")
    lines = formatted.splitlines()
    assert all(len(line) <= LINE_LENGTH for line in lines)
    assert [line[-3:] for line in lines[:-1]] == [" to"] * (len(lines) - 1)
    assert all(line.startswith("    ") for line in lines[1:])
    assert len(cut(SourceFile("", formatted)).statements) == 1


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ('note "a"\r\nnote "b"\n', 'note "a"\r\nnote "b"\r\n'),
        ('note "a"\nnote "b"\r\n', 'note "a"\nnote "b"\n'),
        ('note "a"\rnote "b"\r', 'note "a"\nnote "b"\n'),
        ('\ufeffnote "a"', 'note "a"\n'),
        ("", ""),
        ("\n \n", ""),
    ],
)
def test_the_first_line_end_decides(typed: str, expected: str) -> None:
    assert format_text(typed) == expected


# ---- any text ----------------------------------------------------------------------------------


def meaning(diagram: Diagram) -> tuple[object, ...]:
    """Everything a diagram says, without the places where it says it."""
    leads = [
        (lead.a, lead.b, lead.role, lead.shared_length, values(lead.given))
        for lead in diagram.leads
    ]
    parts = [
        (part.name, part.kind.name, values(part.given), {k: v.text for k, v in part.labels.items()})
        for part in diagram.parts.values()
    ]
    splices = [(splice.name, values(splice.given)) for splice in diagram.splices.values()]
    cables = [(c.name, c.gauge_awg, c.conductors) for c in diagram.cables.values()]
    notes = [note.text for note in diagram.notes]
    named = (len(diagram.passed), len(diagram.named_alone), len(diagram.not_evaluated))
    return leads, parts, splices, cables, notes, diagram.title, named


def values(given_: object) -> dict[str, object]:
    assert isinstance(given_, dict)
    return {name: attribute.value for name, attribute in given_.items()}


def comments(text: str) -> Counter[str]:
    source = SourceFile("", text)
    return Counter(text[start:end] for start, end in cut(source).comments)


@given(wirings())
def test_formatting_a_diagram_changes_nothing_it_says(text: str) -> None:
    before = wirecheck.load_text(text)
    assume(not before.problems)
    formatted = format_text(text)
    after = wirecheck.load_text(formatted)
    assert not after.problems
    assert meaning(after.diagram) == meaning(before.diagram)
    assert comments(formatted) == comments(text)
    assert format_text(formatted) == formatted


@given(texts())
@example("wire a.1 to\n# x\nwire b.1 to c.1")
@example('note "a # b\n')
@example("wire a.1 to # one\n  b")
@example("\r\r\n\r")
@example("end\nend")
@example('wire ""."" to "\x85"')
@example("x to\nto\n,")
def test_formatting_any_text_changes_nothing_it_says(text: str) -> None:
    formatted = format_text(text)
    assert format_text(formatted) == formatted
    before, after = wirecheck.load_text(text), wirecheck.load_text(formatted)
    assert meaning(after.diagram) == meaning(before.diagram)
    odd = ("a character that", "what stands here is not UTF-8", "a lone carriage return")
    said = [p.message for p in before.problems if not p.message.startswith(odd)]
    said_after = [p.message for p in after.problems if not p.message.startswith(odd)]
    assert len(said_after) == len(said)
    assert comments(formatted) == comments(text.removeprefix("\ufeff"))
