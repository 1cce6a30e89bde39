"""Names that are the same name, and the nearest right word to a wrong one."""

from __future__ import annotations

import pytest

from wirecheck.model.diagram import key_of
from wirecheck.model.nearest import both, either, nearest


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("XFMR", "xfmr"),
        ("\u00d6l", "o\u0308L"),
        ("Stra\u00dfe", "STRASSE"),
        ("\u03a3\u03b1\u03c2", "\u03c3\u03b1\u03c3"),
    ],
)
def test_one_name(one: str, other: str) -> None:
    assert key_of(one) == key_of(other)


@pytest.mark.parametrize(
    ("one", "other"), [("k1", "k2"), ("a-b", "a_b"), ("Ol", "Öl"), ("a", "a ")]
)
def test_two_names(one: str, other: str) -> None:
    assert key_of(one) != key_of(other)


@pytest.mark.parametrize("name", ["\u0130", "\u1e9e", "\ufb01x", "\u0345", "A\u030a", "\u1f80"])
def test_the_key_of_a_key_is_itself(name: str) -> None:
    assert key_of(key_of(name)) == key_of(name)


@pytest.mark.parametrize(
    ("word", "known", "expected"),
    [
        ("transfomer", ["transformer", "thermostat"], "transformer"),
        ("PVV", ["PV", "MV", "C"], "PV"),
        ("D_HOT", ["D-HOT", "D-CALL"], "D-HOT"),
        ("highlimit", ["flow-switch", "high-limit"], "high-limit"),
        ("zzz", ["PV", "MV"], None),
        ("", ["PV"], None),
    ],
)
def test_nearest(word: str, known: list[str], expected: str | None) -> None:
    assert nearest(word, known) == expected


def test_lists_of_words() -> None:
    assert [either(words) for words in ([], ["a"], ["a", "b"], ["a", "b", "c"])] == [
        "", "a", "a or b", "a, b or c",
    ]  # fmt: skip
    assert both(["a", "b", "c"]) == "a, b and c"
