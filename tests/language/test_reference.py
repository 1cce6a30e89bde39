"""Every block of the language's reference is read, and what it says is what is said."""

from __future__ import annotations

import re

import pytest

import wirecheck
from tests.language.said import leads
from wirecheck.language.format import LINE_LENGTH, format_text
from wirecheck.language.read import LARGEST_FILE_BYTES, MOST_FILES
from wirecheck.language.statements import STATEMENT_WORDS
from wirecheck.language.subjects import SIGNALS
from wirecheck.model.quantity import UNITS
from wirecheck.parts.library import lead_attributes
from wirecheck.resources import grammar_text

REFERENCE = grammar_text("REFERENCE.md")
BLOCKS = re.findall(r"^```([a-z ]+)\n(.*?)^```$", REFERENCE, re.MULTILINE | re.DOTALL)
HEATER = BLOCKS[0][1]
PARTS = "".join(line for line in HEATER.splitlines(keepends=True) if line.startswith("part"))

READ = [(info, text) for info, text in BLOCKS if info in ("wiring", "wiring more")]
REFUSED = [
    (info, text, BLOCKS[number + 1][1])
    for number, (info, text) in enumerate(BLOCKS)
    if info.startswith("wiring refused")
]


def test_the_whole_file_has_these_leads() -> None:
    assert leads(HEATER) == [
        "line.L1 to xfmr.L1", "line.N to xfmr.N", "line.G to earth", "xfmr.R to limit.1",
        "limit.2 to stat.R", "stat.W to box.TH", "xfmr.C to box.COM", "xfmr.C to earth",
        "box.PV to valve.PV", "box.MV to valve.MV", "box.VC to valve.C",
        "box.SPARK to pilot.SPARK", "box.SENSE to pilot.ROD", "box.GND to pilot.HOOD",
    ]  # fmt: skip


@pytest.mark.parametrize(("info", "text"), READ, ids=[text.splitlines()[0] for _, text in READ])
def test_a_block_reads(info: str, text: str) -> None:
    before = PARTS if info == "wiring more" else ""
    assert not wirecheck.load_text(before + text).problems
    formatted = format_text(text)
    assert format_text(formatted) == formatted


@pytest.mark.parametrize(
    ("info", "text", "said"), REFUSED, ids=[text.splitlines()[0] for _, text, _ in REFUSED]
)
def test_a_refused_block_gets_what_stands_behind_it(info: str, text: str, said: str) -> None:
    before = PARTS if info.endswith("more") else ""
    skipped = before.count("\n")
    problems = wirecheck.load_text(before + text).problems
    assert [f"{p.span.line - skipped}:{p.span.column}: {p.message}" for p in problems] == (
        said.splitlines()
    )


def test_the_untidy_block_becomes_the_tidy_one() -> None:
    untidy, tidy = (text for info, text in BLOCKS if info in ("wiring untidy", "wiring tidy"))
    assert format_text(untidy) == tidy


def test_every_block_is_one_that_is_tested() -> None:
    known = {"wiring", "wiring more", "wiring refused", "wiring refused more", "said"}
    assert {info for info, _ in BLOCKS} == known | {"wiring untidy", "wiring tidy"}
    assert REFERENCE.count("```") == 2 * len(BLOCKS)
    assert len(REFUSED) == sum(info == "said" for info, _ in BLOCKS)


def test_it_names_all_there_is() -> None:
    table = REFERENCE.split("| measures | units |", 1)[1].split("\n\n", 1)[0]
    units = [unit for row in table.splitlines()[2:] for unit in row.split("|")[2].split(",")]
    assert [unit.strip() for unit in units] == [unit.symbol for unit in UNITS.values()]
    for word in (
        *STATEMENT_WORDS,
        *SIGNALS,
        *lead_attributes(),
        *lead_attributes()["colour"].choices,
    ):
        assert re.search(rf"\b{word}\b", REFERENCE), word
    assert f"at most {LARGEST_FILE_BYTES // 2**20} MB" in REFERENCE
    assert f"more than {MOST_FILES} of them" in REFERENCE
    assert f"longer than {LINE_LENGTH} columns" in REFERENCE


def test_links_within_the_page_lead_somewhere() -> None:
    headings = re.findall(r"^#+ (.+)$", REFERENCE, re.MULTILINE)
    anchors = {heading.lower().replace(" ", "-") for heading in headings}
    assert set(re.findall(r"\(#([^)]+)\)", REFERENCE)) <= anchors
