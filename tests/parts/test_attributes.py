"""What an attribute as typed means, and what is said of one that means nothing."""

import re

import pytest
from hypothesis import given as generated
from hypothesis import strategies as st

from tests.parts.typed import read, read_lead
from wirecheck.model.diagram import Attribute
from wirecheck.model.finding import Problem
from wirecheck.parts.library import kind, kind_names


@pytest.mark.parametrize(
    "line",
    [
        "mains: volts 120 V = 120 V",
        "transformer: primary 120 V = primary 120 V",
        "transformer: secondary 24 V = secondary 24 V",
        "transformer: rating 40 VA = rating 40 VA",
        "transformer: rating 40 VA = 40va",
        "thermostat: anticipator 0.75 A = anticipator 0.75 A",
        "thermostat: anticipator 0.75 A = 0.75 A",
        "pilot-ignition-control: pilot two-rod = pilot two-rod",
        "pilot-ignition-control: pilot two-rod = Two-Rod",
        "pilot-ignition-control: trial 90 s = trial 90 s",
        "pilot-ignition-control: wait 5 min = WAIT 5min",
        "pilot-ignition-control: gas lp = propane",
        "gas-valve-3-wire: pilot 0.2 A = pilot 0.2 A",
        "gas-valve-3-wire: main 0.4 A = main 0.4 A",
        "gas-valve-3-wire: seats single-seat = single-seat",
        "pilot-burner: pilot two-rod = two-rod",
        "pilot-burner: rod dirty = dirty",
        "vent-damper: opening 10-30 s = 10-30 s",
        "high-limit: stuck open = stuck open",
        "relay: coil shorted = coil shorted",
        "fuse: blown yes = blown",
        "fuse: rating 3 A = 3A",
        "relay: poles 2 = poles 2",
        "direct-ignition-control: tries 3 = tries 3",
    ],
)
def test_what_is_typed_for_a_part(line: str) -> None:
    name, _, rest = line.partition(": ")
    wanted, _, typed = rest.partition(" = ")
    attribute = read(kind(name), typed)
    assert isinstance(attribute, Attribute), attribute
    assert f"{attribute.name} {attribute.value}" == wanted
    assert attribute.span.text == typed


@pytest.mark.parametrize(
    ("typed", "wanted"),
    [
        ("red", "colour red"),
        ("color red", "colour red"),
        ("gray", "colour grey"),
        ("purple/white", "colour violet/white"),
        ("RD", "colour red"),
        ("gnye", "colour green/yellow"),
        ('"red"', "colour red"),
        ("18 AWG", "size 18 AWG"),
        ("0.75 mm2", "size 0.75 mm2"),
        ("12 ft", "length 12 ft"),
        ("105 C", "rating 105 C"),
        ("ignition-cable", "ignition-cable yes"),
        ("broken", "broken yes"),
        ("loose 200 ohm", "loose 200 ohm"),
        ("touches earth", "touches earth"),
        ("in C1", "in C1"),
        ('number "R 1"', "number R 1"),
        ("number 12", "number 12"),
    ],
)
def test_what_is_typed_for_a_lead(typed: str, wanted: str) -> None:
    attribute = read_lead(typed)
    assert isinstance(attribute, Attribute), attribute
    assert f"{attribute.name} {attribute.value}" == wanted


@pytest.mark.parametrize(
    ("owner", "typed", "at", "message", "nearest"),
    [
        ("transformer", "primry 120 V", "primry", "did you mean primary", "primary"),
        ("transformer", "24 V", "24 V", "write primary 24 V or secondary 24 V", None),
        ("transformer", "40 A", "40 A", "a transformer takes no amps; it has primary, ", None),
        ("transformer", "rating 24 V", "24 V", "rating takes volt-amperes, as in 40 VA", None),
        ("transformer", "rating 40", "40", "40 has no unit", "40 VA"),
        ("transformer", "rating", "rating", "rating needs a value: volt-amperes", None),
        ("transformer", "secondary 24 VAC", "24 VAC", "no unit is written VAC; write V", "24 V"),
        ("transformer", "secondary 0 V", "0 V", "more than 0 V", None),
        ("transformer", "secondary 24/48 V", "24/48 V", "secondary takes one value", None),
        ("transformer", "primary 120/120 V", "120/120 V", "has a value twice", None),
        ("transformer", "rating 10-5 VA", "10-5 VA", "from low to high: 5-10 VA", None),
        ("mains", "40", "40", "a number alone says nothing", None),
        ("mains", "split phase", "split phase", "write it as one word, split-phase", "split-phase"),
        ("mains", "spare legs", "spare", "has no attribute “spare”", None),
        ("terminal-strip", "4", "4", "say what the number is: write terminals 4", "terminals 4"),
        ("direct-ignition-control", "3", "3", "write tries 3", "tries 3"),
        ("relay", "2poles", "2poles", "write poles 2", "poles 2"),
        ("relay", "2 pole", "2 pole", "write poles 2", "poles 2"),
        ("high-limit", "200 degrees", "200 degrees", "write F", "200 F"),
        ("blower", "1/3 hp", "1/3 hp", "a blower takes volts, amperes, volt-amperes or ", None),
        ("pilot-ignition-control", "lp gas", "lp gas", "before its value: write gas lp", "gas lp"),
        ("pilot-burner", "single rod", "single rod", "one word, one-rod", "one-rod"),
        ("direct-burner", "solid", "solid", "say what is solid: write bond solid", "bond solid"),
        ("relay", "poles 9", "9", "a whole number from 1 to 8, not “9”", None),
        ("relay", "poles 0", "0", "a whole number from 1 to 8, not “0”", None),
        ("relay", f"poles {'9' * 6000}", "9" * 6000, "a whole number from 1 to 8", None),
        ("pilot-ignition-control", "pilot tworod", "tworod", "one-rod or two-rod", "two-rod"),
        ("pilot-ignition-control", "sense link cut", "sense link", "is one word", "sense-link"),
        ("pilot-ignition-control", "90 s", "90 s", "trial 90 s or wait 90 s", None),
        ("fuse", "blown yes", "yes", "blown stands alone", None),
    ],
)
def test_what_is_said_of_a_part(
    owner: str, typed: str, at: str, message: str, nearest: str | None
) -> None:
    problem = read(kind(owner), typed)
    assert isinstance(problem, Problem)
    assert problem.span.text == at
    assert message in problem.message
    assert problem.nearest == nearest


@pytest.mark.parametrize(
    ("typed", "message", "nearest"),
    [
        ("red 18 AWG", "a comma is missing after red", "red, 18 AWG"),
        ("red 18AWG 3 ft", "a comma is missing after red", "red, 18AWG, 3 ft"),
        ("length 3 ft broken", "a comma is missing after length 3 ft", "length 3 ft, broken"),
        ("18 awg blu", "a comma is missing after 18 awg; a lead has no attribute “blu”", "blue"),
        ("18 AWG x 2", "a comma is missing after 18 AWG; a lead has no attribute “x”", None),
        ("bl", "did you mean black or blue?", None),
        ("re", "did you mean red?", "red"),
        ("red // old", "a comment begins with #", "#"),
        ("reed", "did you mean red?", "red"),
        ("18 gauge", "no unit is written gauge; write AWG", "18 AWG"),
        ("1/2 in", "write the fraction as a decimal: 0.5 in", "0.5 in"),
        ("length 1 1/2 in", "write the fraction as a decimal: 1.5 in", "1.5 in"),
        ("200 ohm", "write loose 200 ohm", "loose 200 ohm"),
        ("99 AWG", "no wire is as thin as 99 AWG", None),
        ("number R 1", "put “R 1” in double quotes", '"R 1"'),
        ("5 V", "a lead takes no volts", None),
        ("earth", "a lead has no attribute “earth”", None),
    ],
)
def test_what_is_said_of_a_lead(typed: str, message: str, nearest: str | None) -> None:
    problem = read_lead(typed)
    assert isinstance(problem, Problem)
    assert message in problem.message
    assert problem.nearest == nearest


WORDS = st.one_of(
    st.sampled_from(["red", "18", "AWG", "loose", "ohm", "primary", "120/240", "V", "stuck", "%"]),
    st.text(st.characters(blacklist_categories=("Z", "C")), min_size=1, max_size=8).filter(
        lambda word: '"' not in word
    ),
)


@generated(st.lists(WORDS, min_size=1, max_size=14), st.sampled_from(["lead", *kind_names()]))
def test_any_words_are_understood_or_explained(words: list[str], owner: str) -> None:
    typed = " ".join(words)
    result = read_lead(typed) if owner == "lead" else read(kind(owner), typed)
    if isinstance(result, Problem):
        assert result.message
        assert "\x00" not in result.message
        assert result.span.text in typed


@pytest.mark.parametrize("name", kind_names())
def test_what_the_library_shows_can_be_typed(name: str) -> None:
    """Every default and every choice is understood, with its name before it."""
    found = kind(name)
    for key, spec in found.attributes.items():
        for value in (*spec.choices, *([spec.default] if spec.default else [])):
            attribute = read(found, f"{key} {value}")
            assert isinstance(attribute, Attribute), attribute
            assert attribute.name == key
            assert re.sub(r"\s", "", value) in re.sub(r"\s", "", str(attribute.value))
