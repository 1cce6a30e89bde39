"""A canvas draws what it was told, literally, in the order of its layers, the same every time."""

import subprocess
import sys

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.drawing.picture import SVG, groups, texts, titles
from wirecheck.drawing import dot_source, engine
from wirecheck.drawing.canvas import Align, Canvas, Layer, Letters, Stroke, Tag, safe_id
from wirecheck.drawing.geometry import Box, Point, arc, box_about
from wirecheck.drawing.lettering import printable

NASTY = [
    'quotes " and "" and \\"',
    "<script>alert('x')</script>",
    "a & b &amp; c &lt; &#65; &nbsp;",
    r"DOT escapes \N \G \E \T \H \L \n \l \r \\ \ ",
    "ends in a backslash \\",
    "--> <!-- ]]> <?xml ?>",
    "<<b>not html</b>>",
    "HTML-like < TABLE > label",
    "Ω µ °F → é 漢 ☃",
    '"];} digraph x { a -> b } //',
    "%s {0} $x `x`",
]


@pytest.mark.parametrize("nasty", NASTY)
def test_any_text_is_drawn_literally(nasty: str) -> None:
    canvas = Canvas(400, 100, title=nasty)
    canvas.text(Point(10, 20), nasty, tag=Tag(nasty, (nasty,), nasty))
    canvas.line([Point(0, 0), Point(9, 9)], tag=Tag(nasty, title=nasty))
    assert texts(canvas) == [nasty]
    assert titles(canvas) == [nasty] * 3


@settings(max_examples=60, deadline=None)
@given(st.text(min_size=1, max_size=30))
def test_random_text_never_breaks_the_drawing(text: str) -> None:
    canvas = Canvas(400, 100, title=text)
    canvas.text(Point(10, 20), text, tag=Tag(text, (text,), text))
    shown = printable(text)
    assert texts(canvas) == ([shown.replace("\xa0", " ")] if shown.strip() else [])


def test_a_newline_is_drawn_as_a_blank() -> None:
    canvas = Canvas(100, 100)
    canvas.text(Point(10, 20), "two\nlines\r\tand\x00more")
    assert texts(canvas) == ["two lines  and more"]


def test_layers_decide_what_is_on_top() -> None:
    canvas = Canvas(100, 100)
    for layer in reversed(Layer):
        canvas.box(Box(0, 0, 9, 9), layer=layer, tag=Tag(f"box-{layer.name}"))
        canvas.line([Point(0, 0), Point(9, 9)], layer=layer, tag=Tag(f"line-{layer.name}"))
    drawn = [group.get("id") for group in groups(canvas)]
    assert drawn == [f"{kind}-{layer.name}" for layer in Layer for kind in ("box", "line")]


def test_ids_are_unique_and_begin_with_the_prefix() -> None:
    canvas = Canvas(100, 100, id_prefix="ladder-")
    for name in ("lead", "lead", "lead--2", "lead"):
        canvas.box(Box(0, 0, 9, 9), tag=Tag(name))
    ids = [group.get("id") for group in groups(canvas)]
    assert ids == ["ladder-lead", "ladder-lead--2", "ladder-lead--2--2", "ladder-lead--3"]


@given(st.text(max_size=8), st.text(max_size=8))
def test_different_names_give_different_ids(one: str, other: str) -> None:
    assert (safe_id(one) == safe_id(other)) == (one == other)


def test_items_without_a_tag_carry_neither_id_nor_title() -> None:
    canvas = Canvas(100, 100)
    canvas.box(Box(0, 0, 9, 9))
    canvas.text(Point(5, 5), "x")
    assert [group.get("id") for group in groups(canvas)] == [None, None]
    assert titles(canvas) == []


def test_everything_stays_where_it_was_put() -> None:
    canvas = Canvas(200, 100)
    canvas.text(Point(10, 20), "left")
    canvas.text(Point(190, 20), "right", Letters(align=Align.RIGHT))
    canvas.text(Point(100, 20), "middle", Letters(align=Align.CENTRE))
    canvas.line([Point(20, 30), Point(150, 30)], Stroke("#123456", 3))
    canvas.oval(box_about(Point(50, 60), 10))
    left, right, middle = (group.find(f"{SVG}text") for group in groups(canvas)[-3:])
    assert left is not None
    assert right is not None
    assert middle is not None
    assert [left.get("x"), right.get("x"), middle.get("x")] == ["10", "190", "100"]
    line, oval = groups(canvas)[:2]
    path, ellipse = line.find(f"{SVG}path"), oval.find(f"{SVG}ellipse")
    assert path is not None
    assert ellipse is not None
    # Graphviz counts y upwards as negative numbers from the bottom of the sheet.
    assert path.get("d") == "M20,-70C63.33,-70 106.67,-70 150,-70"
    assert (ellipse.get("cx"), ellipse.get("cy"), ellipse.get("rx")) == ("50", "-40", "10")


def test_the_sheet_has_the_size_asked_for_even_with_text_at_its_rim() -> None:
    canvas = Canvas(300, 100)
    canvas.text(Point(1, 20), "W" * 29)
    canvas.text(Point(299, 40), "W" * 29, Letters(align=Align.RIGHT))
    assert b'width="300pt" height="100pt"' in engine.render(canvas, "svg")


def test_a_curve_takes_three_n_plus_one_points() -> None:
    with pytest.raises(ValueError, match="3 n \\+ 1"):
        Canvas().curve([Point(0, 0), Point(1, 1)])


def test_an_arc_stays_on_its_circle() -> None:
    ends = arc(Point(10, 10), 5, 30, 300)[::3]
    assert len(ends) == 5
    assert all(abs((x - 10) ** 2 + (y - 10) ** 2 - 25) < 1e-9 for x, y in ends)


def test_placing_a_canvas_moves_it_and_keeps_its_ids() -> None:
    inner = Canvas(id_prefix="ladder-")
    inner.text(Point(0, 0), "x", tag=Tag("a"))
    inner.box(Box(0, 0, 4, 4), tag=Tag("b"))
    inner.line([Point(0, 0), Point(4, 4)])
    page = Canvas(100, 100, id_prefix="ladder-")
    page.place(inner, 10, 20)
    assert page.bounds() == inner.bounds().moved(10, 20)
    assert [group.get("id") for group in groups(page)] == [None, "ladder-b", "ladder-a"]


def _busy_canvas() -> Canvas:
    canvas = Canvas(300, 200, title="busy", id_prefix="x-")
    for number, name in enumerate(NASTY):
        at = Point(10 + number / 7, 10 + 15 * number)
        canvas.text(at, name, tag=Tag(name, ("a", "b"), name))
        canvas.curve(arc(at, 3 + number / 3, 10 * number, 200), tag=Tag("arc"))
    return canvas


def test_the_same_drawing_gives_the_same_bytes() -> None:
    """In this process, and in another one whose sets and dicts hash differently."""
    source = dot_source.write(_busy_canvas())
    code = (
        "import sys; from tests.drawing.test_canvas import _busy_canvas;"
        "from wirecheck.drawing import dot_source;"
        "sys.stdout.buffer.write(dot_source.write(_busy_canvas()).encode())"
    )
    other = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, check=True, env={"PYTHONHASHSEED": "7"}
    )
    assert other.stdout.decode() == source
    for file_format in ("svg", "png"):
        first, second = (engine.render(_busy_canvas(), file_format) for _ in range(2))
        assert first == second
