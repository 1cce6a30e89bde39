"""Each slip's own example, and only what is like it, gets its words."""
# ruff: noqa: E501, RUF001 - each case stands in one line, its message whole; phones type such characters

from __future__ import annotations

import re

import pytest

import wirecheck
from wirecheck.language.common_slips import SLIPS, Slip
from wirecheck.language.statements import STATEMENT_WORDS
from wirecheck.language.syntax_faults import EXPECTED_WORDS, USAGE
from wirecheck.model.finding import Problem
from wirecheck.resources import grammar_text

KNOWN = """\
part a is high-limit
part b is high-limit
part k1 is relay
part box is pilot-ignition-control
part valve is gas-valve-3-wire
"""


def problems_of(statement: str) -> tuple[Problem, ...]:
    return wirecheck.load_text(f"{KNOWN}{statement}\n").problems


def said(statement: str) -> list[str]:
    return [problem.message for problem in problems_of(statement)]


@pytest.mark.parametrize("slip", SLIPS, ids=[slip.example for slip in SLIPS])
def test_an_example_gets_the_words_of_its_slip(slip: Slip) -> None:
    (problem,) = problems_of(slip.example)
    words = re.sub(r"\\\{\w+\\\}", ".+", re.escape(slip.message))
    assert re.fullmatch(words, problem.message)
    assert problem.span.line == KNOWN.count("\n") + 1
    assert (problem.nearest is None) == (slip.nearest == "")


@pytest.mark.parametrize(
    ("statement", "message", "nearest"),
    [
        ("wire a.1 to b.1: 24″", "an inch mark stands here; write the unit: 24 in", "24 in"),
        ('wire a.1 to b.1: 24", 12"', "an inch mark stands here; write the unit: 24 in", "24 in"),
        ("wire a.1 to b.1: 12’", "a foot mark stands here; write the unit: 12 ft", "12 ft"),
        ("wire a—b.1 to b.1", "a long dash stands here; write the plain dash: -", "-"),
        ("wire a.1 – b.1", "between two ends stands “to”", "to"),
        ("wire a.1, b.1", "between two ends stands “to”", "to"),
        ("wire a.1 to b.1 18 AWG", "a colon is missing before the attributes: write “b.1: 18”", "b.1: 18"),
        ("part old box is relay", 'a name with a blank needs double quotes: "old box"', '"old box"'),
        ("part x transformer: 120 V", "“is” is missing: write “is transformer”", "is transformer"),
        ('labels box PV as "P"', "a colon is missing behind the name: write “box: PV”", "box: PV"),
        ("splice s is wire-nut", "a colon is missing behind the name: write “s: wire-nut”", "s: wire-nut"),
        ("note left side door", 'put the text in double quotes: "left side door"', '"left side door"'),
        ("expect 24 volts across a", "no unit is written volts; write V", "24 V"),
        ("expect 24 across a", "the unit is missing behind 24; write 24 V", "24 V"),
        ("expect 1/2 A through a", "write the fraction as a decimal: 0.5 A", "0.5 A"),
        ("expect main-valve opened", "“opened” cannot stand here; expected a state (on, off, open, closed, lit, out)", "open"),
        ("part x is relay y z", "a colon is missing behind the kind: write “relay: y”", "relay: y"),
        ("part c is pilot burner", "no kind of part is called “pilot burner”; did you mean pilot-burner?", "pilot-burner"),
        ("part c is pressure switch: stuck open", "no kind of part is called “pressure switch”; did you mean pressure-switch?", "pressure-switch"),
        ("part c is ignition control", "no kind of part is called “ignition control”; did you mean pilot-ignition-control or direct-ignition-control?", "pilot-ignition-control"),
        ("part c is zone valve 3 wire", "no kind of part is called “zone valve 3 wire”; did you mean zone-valve-3-wire?", "zone-valve-3-wire"),
        ("part c is a gas valve", "no kind of part is called “gas valve”; did you mean gas-valve-2-wire or gas-valve-3-wire?", "gas-valve-2-wire"),
        ("part c is own-kind red stripe", "a colon is missing behind the kind: write “own-kind: red”", "own-kind: red"),
        ("wire a 1 to b 1", "a dot is missing between a part and its terminal: a.1", "a.1"),
        ("wire a.1 to box TH", "a dot is missing between a part and its terminal: box.TH", "box.TH"),
        ("wire a.1 to box red", "a colon is missing before the attributes: write “box: red”", "box: red"),
        ("wire a.1 to b.1 -- green", "a comment begins with #", "#"),
        ("wire a.1 to b.1 and earth", "behind an end stands “to”, or a colon and attributes; “and” is neither (a name has no blank, a comment begins with #)", None),
        ("wire a.1 to b.flame rod", "behind an end stands “to”, or a colon and attributes; “rod” is neither (a name has no blank, a comment begins with #)", None),
        ("wire a.1 to ground", "no part or splice is called “ground”; did you mean earth?", "earth"),
        ("wire gnd to a.1", "no part or splice is called “gnd”; did you mean earth?", "earth"),
        ("wire a.1 to nothing", "no part or splice is called “nothing”; did you mean open?", "open"),
        ("part c is limit-switch", "no kind of part is called “limit-switch”; did you mean high-limit?", "high-limit"),
        ("part c is flame-sensor", "no kind of part is called “flame-sensor”; did you mean pilot-burner or direct-burner (its terminal ROD)?", "pilot-burner"),
        ("wire a.1 to box", "box has more than one way in; name the terminal: one of TH, 24V, COM, PV, MV, VC, GND, SENSE, SPARK, D-HOT, D-CALL, D-PROVED, D-COM", "box.TH"),
        ("wire a.1 to b.1: #18 AWG", "the statement ends here, but something must follow (# began a comment)", None),
        ("cable c2: 18/5 40 ft", "a comma is missing after 18/5", "18/5, 40 ft"),
        ("cable c2: 18-5", "gauge and number of conductors are written with a slash: 18/5", "18/5"),
        ("cable c2: five", "a cable begins with its gauge and number of conductors, as in 18/5", "18/5"),
        ("observe pilot lit", "“pilot” is neither a part nor a signal; did you mean pilot-flame?", "pilot-flame"),
        ("diagram", 'the statement ends too early: text in double quotes must follow; it reads diagram "title"', None),
        ("plug box to valve", "the statement ends too early: “:” must follow; it reads plug PART to PART: TERMINAL, TERMINAL to TERMINAL", None),
        ('diagram "a" "b"', '“"” cannot stand here; the statement is complete before it', None),
        ("part x is relay \u00ad", "a colon is missing behind the kind: write “relay: \u00ad”", "relay: \u00ad"),
        ("wir a.1 to b.1", "no statement begins with “wir”; did you mean wire? (if the line above goes on here, end that one with a comma or with “to”)", "wire"),
    ],
)  # fmt: skip
def test_the_whole_message(statement: str, message: str, nearest: str | None) -> None:
    (problem,) = problems_of(statement)
    assert (problem.message, problem.nearest) == (message, nearest)


def test_an_unknown_first_word_gets_all_those_there_are() -> None:
    (message,) = said("((((")
    assert message.startswith("no statement begins with “(”; statements begin with diagram, part, ")


def test_a_character_that_does_not_show_is_named_by_its_number() -> None:
    (message,) = said("part x\u00ad is relay")
    assert "U+00AD" in message


def test_the_place_is_where_the_parser_stopped() -> None:
    (problem,) = problems_of("part x is transformer: primary 120 V,, secondary 24 V")
    assert (problem.span.column, problem.span.text) == (38, ",")
    (problem,) = problems_of("wire a.1 to")
    assert (problem.span.column, problem.span.end_column) == (12, 12)


def test_every_statement_has_its_usage_and_every_terminal_its_words() -> None:
    assert set(USAGE) == set(STATEMENT_WORDS)
    terminals = set(
        re.findall(r"^(_?[A-Z_]+)(?:\.\d+)?:", grammar_text("wiring.lark"), re.MULTILINE)
    )
    first_words = {f"_{word.upper()}" for word in STATEMENT_WORDS}
    within_names = {"_DOT", "_THROUGH", "_OPEN"}
    assert terminals - first_words - within_names | {"_PART", "$END"} == set(EXPECTED_WORDS)
