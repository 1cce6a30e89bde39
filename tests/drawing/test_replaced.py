"""Sheets of a replacement: what comes off is crossed out, what is to be landed is marked."""

from __future__ import annotations

import pytest

from tests.drawing.picture import texts, titles
from tests.replace.units import CONVERSION, STANDING, example, replaced
from wirecheck import draw_replacement
from wirecheck.drawing.canvas import Canvas, Lettering
from wirecheck.drawing.replaced import OLD_TITLE, cross_reference, new_connections, sheets
from wirecheck.replace.replacement import Replacement

CONTROL = 'part n is pilot-ignition-control\nlabels n: TH as "W", GND as "BRN", PV as "P"\n'


@pytest.fixture(scope="module")
def conversion() -> Replacement:
    """Convert a standing pilot."""
    return replaced(STANDING, CONVERSION)


@pytest.fixture(scope="module")
def drawn(conversion: Replacement) -> dict[str, Canvas]:
    """Draw it."""
    return sheets(conversion)


def marked(sheet: Canvas, word: str) -> set[str]:
    return {each.removeprefix(f"{word}: ") for each in titles(sheet) if each.startswith(word)}


def test_what_is_left_over_is_crossed_out_as_found(drawn: dict[str, Canvas]) -> None:
    found = drawn["found-connections"]
    assert marked(found, "take away") == {
        "couple.PLUS to valve.TC",
        "couple.MINUS to valve.TC-C",
    }
    assert marked(found, "add") == set()


def test_a_lead_to_run_is_hollow_and_an_end_to_land_keeps_its_colour(
    conversion: Replacement, drawn: dict[str, Canvas]
) -> None:
    then = drawn["replaced-connections"]
    after = conversion.after
    assert marked(then, "add") == {after.lead_name(after.leads[n]) for n in conversion.run}
    assert len(conversion.run) == len(conversion.missing) == 6
    assert marked(then, "land") == {"stat.W to control.CALL", "control.24V COM to xfmr.C"}
    assert conversion.landed - conversion.run == {
        number
        for number, lead in enumerate(after.leads)
        if after.lead_name(lead) in marked(then, "land")
    }


def test_an_end_is_marked_at_the_new_device_only() -> None:
    done = replaced(example("furnace-room-heater"), CONTROL)
    sheet = new_connections(done)
    signs = [each for each in titles(sheet) if each.startswith("land: ")]
    assert len(signs) == len(set(signs)) == len(done.landed)
    assert done.run == frozenset()


def test_a_title_of_the_old_unit_is_told_on_the_new_sheets(drawn: dict[str, Canvas]) -> None:
    told = {name: OLD_TITLE in " ".join(texts(sheet)) for name, sheet in drawn.items()}
    assert told.pop("replaced-connections")
    assert told.pop("replaced-ladder")
    assert not told["found-connections"]
    same = new_connections(replaced(example("furnace-room-heater"), CONTROL))
    assert OLD_TITLE not in " ".join(texts(same))


def test_the_ladder_flags_and_lists_them(conversion: Replacement, drawn: dict[str, Canvas]) -> None:
    shown = " ".join(texts(drawn["replaced-ladder"]))
    for place, number in enumerate(sorted(conversion.landed), 1):
        name = conversion.after.lead_name(conversion.after.leads[number])
        assert f"+{place} " in shown
        assert name.split(" to ")[0] in shown


def test_nothing_left_over_needs_no_sheet_as_found() -> None:
    drawn = sheets(replaced(example("furnace-room-heater"), CONTROL))
    assert list(drawn) == ["replaced-connections", "replaced-ladder", "cross-reference-1"]


def test_the_cross_reference_has_every_end_every_task_and_the_cautions(
    conversion: Replacement, drawn: dict[str, Canvas]
) -> None:
    page = drawn["cross-reference-1"]
    shown = " ".join(texts(page))
    for each in conversion.crossings:
        assert each.off in shown
        assert (each.to or "left over") in shown
    for each_new in conversion.missing:
        assert each_new.lead in shown
    for task in conversion.tasks:
        assert " ".join(task.words.split()[:4]) in shown
    assert "Prove several full cycles" in shown
    assert "Shut off the gas and the power" in shown


def test_a_long_cross_reference_takes_more_pages(conversion: Replacement) -> None:
    many = (
        each._replace(lead=each.lead + 100 * time)
        for time in range(16)
        for each in conversion.crossings
    )
    longer = conversion._replace(crossings=tuple(many))
    pages = cross_reference(longer)
    assert len(pages) == 3
    for page in pages:
        assert (page.width, page.height) == (595.3, 841.9)
        lettered = [each for each in page.in_order() if isinstance(each, Lettering)]
        boxes = [each.bounds for each in lettered]
        for place, one in enumerate(boxes):
            assert not [other for other in boxes[place + 1 :] if one.overlaps(other, slack=1.0)]


def test_a_diagram_with_mistakes_is_drawn_too() -> None:
    done = replaced(example("no-burner-ground"), CONTROL)
    assert "1 finding: 1 operation" in " ".join(texts(new_connections(done)))


def test_the_same_replacement_gives_the_same_bytes(conversion: Replacement) -> None:
    assert draw_replacement(conversion) == draw_replacement(conversion)


def test_the_heading_of_a_control_has_all_that_is_typed(drawn: dict[str, Canvas]) -> None:
    shown = " ".join(texts(drawn["replaced-connections"]))
    assert "trial 60 s" in shown
    assert "with shorting plug" in shown
