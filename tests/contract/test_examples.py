"""The examples hold what they promise, however they are written down.

The right ones raise no problem, and no finding about safety or operation; each wrong one raises
the one finding it was made for.  Neither may hang on names, order, direction, case or units.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.contract.rewriting import REWRITINGS, reordered, with_byte_order_mark
from tests.contract.source import ROOT
from wirecheck import check, format_text, load, load_bytes, load_text
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Breaks, Finding

EXAMPLES = ROOT / "examples"

#: The wrong ones, with the rule each breaks and what that breaks.
WRONG = {
    "common-exchanged": ("hot-and-common-exchanged", Breaks.SAFETY),
    "damper-plug-left-in": ("damper-plug-left-in", Breaks.SAFETY),
    "limit-in-common": ("safety-in-common", Breaks.SAFETY),
    "no-burner-ground": ("burner-ground-missing", Breaks.OPERATION),
    "sense-on-spark": ("rod-on-spark", Breaks.SAFETY),
    "valve-leads-out-of-order": ("valve-leads-out-of-order", Breaks.OPERATION),
}
RIGHT = sorted(path.stem for path in EXAMPLES.glob("*.wiring") if path.stem not in WRONG)

Rewriting = Callable[[str, Diagram], str]


def _text(name: str) -> str:
    return (EXAMPLES / f"{name}.wiring").read_text(encoding="utf-8")


def _findings(text: str) -> tuple[Finding, ...]:
    """What a check says of a text, which must have no problem of its own."""
    built = load_bytes(text.encode(), "example.wiring")
    assert [problem.message for problem in built.problems] == []
    return check(built.diagram).findings


def _rewritten(name: str, rewriting: Rewriting) -> str:
    text = _text(name)
    other = rewriting(text, load_text(text).diagram)
    assert other != text or rewriting is reordered
    return other


def _grave(findings: tuple[Finding, ...]) -> list[tuple[str, str]]:
    return [(f.rule, f.message) for f in findings if f.breaks is not Breaks.WORKMANSHIP]


def test_there_is_an_example_of_every_system() -> None:
    kinds = {
        part.kind.name
        for name in RIGHT
        for part in load(EXAMPLES / f"{name}.wiring").diagram.parts.values()
    }
    assert len(RIGHT) >= 9
    assert kinds >= {
        "pilot-ignition-control",
        "direct-ignition-control",
        "valve-adapter",
        "vent-damper",
        "relay",
        "blower",
        "fan-limit-control",
        "circulator",
        "zone-valve",
        "low-water-cutoff",
        "air-switch",
        "inducer",
    }


@pytest.mark.parametrize("name", [*RIGHT, *WRONG])
def test_an_example_tells_its_story_first(name: str) -> None:
    text = _text(name)
    assert text.startswith("# ")
    assert "\ndiagram " in text
    assert text == text.encode("utf-8").decode("utf-8").replace("\r\n", "\n")


@pytest.mark.parametrize("name", RIGHT)
def test_a_right_example_raises_nothing(name: str) -> None:
    assert [(f.rule, f.message) for f in _findings(_text(name))] == []


@pytest.mark.parametrize("rewriting", REWRITINGS, ids=lambda r: r.__name__)
@pytest.mark.parametrize("name", RIGHT)
def test_a_right_example_is_right_however_it_is_written(name: str, rewriting: Rewriting) -> None:
    assert _grave(_findings(_rewritten(name, rewriting))) == []


@pytest.mark.parametrize("name", WRONG)
def test_a_wrong_example_raises_its_one_finding(name: str) -> None:
    found = _findings(_text(name))
    assert [(f.rule, f.breaks) for f in found] == [WRONG[name]]


@pytest.mark.parametrize("rewriting", REWRITINGS, ids=lambda r: r.__name__)
@pytest.mark.parametrize("name", WRONG)
def test_a_wrong_example_is_wrong_however_it_is_written(name: str, rewriting: Rewriting) -> None:
    found = _findings(_rewritten(name, rewriting))
    grave = [(f.rule, f.breaks) for f in found if f.breaks is not Breaks.WORKMANSHIP]
    assert grave == [WRONG[name]]


@pytest.mark.parametrize("name", [*RIGHT, *WRONG])
def test_formatting_an_example_changes_no_finding(name: str) -> None:
    text = _text(name)
    printed = format_text(text)
    assert format_text(printed) == printed
    before, after = _findings(text), _findings(printed)
    assert [(f.rule, f.message) for f in before] == [(f.rule, f.message) for f in after]


def test_switches_do_change_places_in_some_examples() -> None:
    """A rewriting that leaves every example as it is would prove nothing."""
    changed = [name for name in RIGHT if _rewritten(name, reordered) != _text(name)]
    assert len(changed) >= 5


def test_a_byte_order_mark_reaches_the_reader() -> None:
    name = RIGHT[0]
    assert _rewritten(name, with_byte_order_mark).encode().startswith(b"\xef\xbb\xbf")
