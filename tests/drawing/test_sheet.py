"""The frame finds the paper for a drawing and keeps everything inside and apart."""

from itertools import combinations

import pytest

from tests.drawing.picture import texts
from wirecheck.drawing.canvas import Canvas, Lettering, Tag
from wirecheck.drawing.geometry import Box
from wirecheck.drawing.marks import NumberedFinding
from wirecheck.drawing.sheet import CAUTIONS, PaperSeries, TitleBlock, framed
from wirecheck.model.finding import Breaks

LONG = "A very long remark on a lead that lands where it does not belong. " * 9


def _content(width: float, height: float) -> Canvas:
    canvas = Canvas(id_prefix="ladder-")
    canvas.box(Box(-30, -20, width - 30, height - 20), tag=Tag("all"))
    return canvas


def _block(series: PaperSeries = "a4") -> TitleBlock:
    findings = (
        NumberedFinding(1, Breaks.SAFETY, LONG),
        NumberedFinding(2, Breaks.OPERATION, "short"),
        NumberedFinding(13, Breaks.WORKMANSHIP, LONG),
    )
    summary = "3 findings: 1 safety, 1 operation, 1 workmanship"
    return TitleBlock(LONG, "Ladder", LONG, "2024-05-01", findings, summary, (LONG,), series)


@pytest.mark.parametrize("series", ["a4", "letter"])
@pytest.mark.parametrize(
    ("width", "height"), [(0.1, 0.1), (700, 280), (900, 300), (300, 900), (3000, 500), (500, 5000)]
)
def test_content_fits_and_nothing_collides(
    series: PaperSeries, width: float, height: float
) -> None:
    page = framed(_content(width, height), _block(series))
    paper = Box(0, 0, page.width, page.height)
    items = page.in_order()
    content = next(item.bounds for item in items if item.tag.id == "ladder-all")
    assert (content.width, content.height) == pytest.approx((width + 1, height + 1))
    letterings = [item.bounds for item in items if isinstance(item, Lettering)]
    assert all(paper.holds(item.bounds) for item in items)
    for one, other in combinations([content, *letterings], 2):
        assert not one.overlaps(other, slack=0.5), (one, other)


@pytest.mark.parametrize(
    ("width", "height", "size"),
    [(700, 300, (841.9, 595.3)), (400, 600, (595.3, 841.9)), (1000, 500, (1190.6, 841.9))],
)
def test_the_smallest_paper_is_chosen(
    width: float, height: float, size: tuple[float, float]
) -> None:
    page = framed(_content(width, height), TitleBlock("t", "Ladder"))
    assert (page.width, page.height) == size


def test_every_sheet_opens_with_the_cautions_and_names_its_fields() -> None:
    block = TitleBlock("Heater 3", "Ladder", "heater.wiring", "2024-05-01", summary="1 finding")
    told = texts(framed(_content(100, 100), block))
    assert "WARNING" in told
    assert " ".join(CAUTIONS) in " ".join(told)
    for field in ("Heater 3", "Ladder", "heater.wiring", "2024-05-01", "1 finding"):
        assert field in told


def test_findings_are_listed_in_full() -> None:
    told = " ".join(texts(framed(_content(100, 100), _block())))
    assert told.count(LONG.strip()) >= 3


def test_an_empty_drawing_still_gets_its_frame() -> None:
    assert framed(Canvas(), TitleBlock("nothing", "Ladder")).in_order()


def test_a_listed_finding_can_be_found_by_a_page() -> None:
    tags = [item.tag for item in framed(_content(9, 9), _block()).in_order()]
    assert any(tag.id == "ladder-listed-13" and "finding-13" in tag.classes for tag in tags)


def test_a_long_path_is_shown_from_its_end() -> None:
    path = "/a/folder/of/some/depth/that/nobody/reads/on/a/sheet/fire-station-heater.wiring"
    told = texts(framed(_content(100, 100), TitleBlock("t", "Ladder", path)))
    place = next(place for place, text in enumerate(told) if text.startswith("..."))
    assert "".join(told[place : place + 2]).endswith("/fire-station-heater.wiring")
