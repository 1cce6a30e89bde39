"""Pieces go where they need the least paper, in reading order, none over another."""

from itertools import combinations, pairwise

from hypothesis import given
from hypothesis import strategies as st

from wirecheck.drawing.geometry import Box
from wirecheck.drawing.ladder.packing import packed
from wirecheck.drawing.sheet import Paper

sizes = st.lists(st.tuples(st.floats(10, 900), st.floats(10, 900)), min_size=1, max_size=6)


def _exact(width: float, height: float) -> Paper:
    return Paper("exact", width, height)


@given(sizes)
def test_pieces_do_not_overlap(pieces: list[tuple[float, float]]) -> None:
    corners = packed(pieces, _exact).corners
    boxes = [
        Box(at.x, at.y, at.x + width, at.y + height)
        for at, (width, height) in zip(corners, pieces, strict=True)
    ]
    assert not any(one.overlaps(other) for one, other in combinations(boxes, 2))


@given(sizes)
def test_reading_order_is_kept(pieces: list[tuple[float, float]]) -> None:
    """Each piece lies below the one before it, or to the right."""
    corners = packed(pieces, _exact).corners
    for before, after in pairwise(corners):
        assert after.y > before.y or after.x > before.x


def test_tall_pieces_stand_side_by_side_and_wide_ones_below_each_other() -> None:
    def is_lying(width: float, height: float) -> Paper:
        side = max(width, height)
        return Paper("square", side, side)

    tall = packed([(100, 900), (100, 900)], is_lying).corners
    assert tall[0].y == tall[1].y
    wide = packed([(900, 100), (900, 100)], is_lying).corners
    assert wide[0].x == wide[1].x
