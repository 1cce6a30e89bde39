"""On a corrected sheet what comes out and what goes in stands out, without colour too."""

import pytest

from tests.correct.heaters import LIMIT_BRIDGED, NO_BURNER_GROUND, SENSE_ON_SPARK, heater
from wirecheck.correct.rewired import Rewired
from wirecheck.correct.search import correct
from wirecheck.drawing.canvas import Canvas
from wirecheck.drawing.corrected import corrected_connections, corrected_ladder
from wirecheck.drawing.corrected.both import both


def answered(*mistakes: tuple[str, str]) -> Rewired:
    return correct(heater(*mistakes)).answers[0].state


def titles(canvas: Canvas, kind: str) -> set[str]:
    """What the marks of one kind speak of."""
    tags = (getattr(item, "tag", None) for item in canvas.in_order())
    return {tag.title for tag in tags if tag is not None and kind in tag.classes}


def test_a_lead_that_moves_is_shown_both_ways() -> None:
    state = answered(SENSE_ON_SPARK)
    sheet = corrected_connections(state)
    assert titles(sheet, "take-away") == {"take away: box.SPARK to pilot.ROD"}
    assert titles(sheet, "add") == {"add: box.SENSE to pilot.ROD"}


def test_the_ladder_flags_both_ends() -> None:
    sheet = corrected_ladder(answered(SENSE_ON_SPARK))
    assert titles(sheet, "take-away") == {"x1 box.SPARK to pilot.ROD"}
    assert titles(sheet, "add") == {"+1 box.SENSE to pilot.ROD"}


@pytest.mark.parametrize(
    ("mistake", "away", "added"), [(NO_BURNER_GROUND, 0, 1), (LIMIT_BRIDGED, 1, 0)]
)
def test_what_only_goes_in_or_only_comes_out(
    mistake: tuple[str, str], away: int, added: int
) -> None:
    state = answered(mistake)
    for sheet in (corrected_connections(state), corrected_ladder(state)):
        assert len(titles(sheet, "take-away")) == away
        assert len(titles(sheet, "add")) == added


def test_the_sheet_has_every_lead_before_and_after() -> None:
    state = answered(SENSE_ON_SPARK)
    shown = both(state)
    leads = [frozenset((lead.a, lead.b)) for lead in shown.checked.diagram.leads]
    for diagram in (state.found, state.diagram):
        assert {frozenset((lead.a, lead.b)) for lead in diagram.leads} <= set(leads)
    assert len(leads) == len(state.found.leads) + 1


def test_the_same_correction_gives_the_same_sheet() -> None:
    state = answered(SENSE_ON_SPARK)
    assert corrected_ladder(state) is not corrected_ladder(state)
    first, second = (corrected_connections(state).in_order() for _round in range(2))
    assert [repr(item) for item in first] == [repr(item) for item in second]
