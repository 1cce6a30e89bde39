"""Chart, steps and record: everything told, nothing over anything else."""

from functools import cache
from itertools import combinations

from tests.troubleshoot.test_chart import begun, whole
from wirecheck.drawing.canvas import Canvas, Lettering, Shape
from wirecheck.drawing.faults.picture import chart_picture
from wirecheck.drawing.faults.record import record_pages
from wirecheck.drawing.faults.steps import chart_pages
from wirecheck.drawing.sheet import MARGIN
from wirecheck.model.diagram import Diagram
from wirecheck.troubleshoot.conversation import Conversation

SEEN = "the pilot lights; the main burner does not"


def diagram() -> Diagram:
    return begun().dictionary.diagram


@cache
def picture() -> Canvas:
    return chart_picture(diagram(), whole(), SEEN, "2026-11-25")


def ended() -> Conversation:
    conversation = begun()
    while (advice := conversation.diagnosis.advice) is not None:
        outcome = advice.outcomes[-1]
        conversation = conversation.answer(advice.reading, outcome.value, outcome.words)
    return conversation


def words(*pages: Canvas) -> str:
    lettering = (item for page in pages for item in page.in_order() if isinstance(item, Lettering))
    return " ".join(" ".join(each.text for each in lettering).split())


def test_the_picture_has_every_step_and_every_repair() -> None:
    told = words(picture())
    for step in whole().steps:
        if step.reading is not None:
            assert f"{step.number}. {step.reading.ask}" in told
        elif step.ending is not None:
            assert step.ending.repair[0] in told


def test_no_box_of_the_picture_lies_over_another() -> None:
    tagged = ("step", "end")
    boxes = [
        item.bounds
        for item in picture().in_order()
        if isinstance(item, Shape) and set(tagged) & {*item.tag.classes}
    ]
    assert len(boxes) == len(list(whole().steps))
    for one, other in combinations(boxes, 2):
        apart = (
            one.right <= other.left
            or other.right <= one.left
            or one.bottom <= other.top
            or other.bottom <= one.top
        )
        assert apart


def test_no_lettering_of_the_picture_lies_over_another_or_off_the_sheet() -> None:
    sheet = picture()
    lettering = [item.bounds for item in sheet.in_order() if isinstance(item, Lettering)]
    for bounds in lettering:
        assert bounds.left >= MARGIN - 1
        assert bounds.right <= sheet.width - MARGIN + 1
    for one, other in combinations(lettering, 2):
        wide = min(one.right, other.right) - max(one.left, other.left)
        high = min(one.bottom, other.bottom) - max(one.top, other.top)
        assert wide <= 0.5 or high <= 2.0, (one, other)


def test_the_steps_say_where_to_go_on() -> None:
    pages = chart_pages(diagram(), whole(), SEEN)
    told = words(*pages)
    for step in whole().readings:
        for way in step.branches:
            if way.step.reading is not None:
                assert f"go to step {way.step.number}" in told
        for caution in step.reading.cautions if step.reading else ():
            assert f"! {caution}" in told
    assert "To prove, whatever was mended" in told
    assert all(page.width < page.height for page in pages)


def test_the_record_has_the_whole_path_and_how_it_ends() -> None:
    conversation = ended()
    ending = conversation.diagnosis.ending
    assert ending is not None
    told = words(*record_pages(conversation))
    for observation in conversation.observations:
        assert observation.words in told
    for text in (*ending.repair, *ending.proof, *ending.cautions):
        assert text in told
    assert "Done by, date:" in told


def test_a_record_that_is_not_finished_says_so() -> None:
    assert "More readings would narrow it down." in words(*record_pages(begun()))
