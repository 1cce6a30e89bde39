"""Write a canvas as DOT in which nothing is left to lay out.

Every item is one node, followed at once by its edge when it is a path. Graphviz emits nodes in the
order they are declared and after each node its edges (`outputorder=breadthfirst`), so the order of
the items is the order of painting. A path is a loop edge with a given spline at an invisible node;
boxes, circles and lettering are nodes of fixed size. `neato -n2` then keeps all of it in place.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.drawing.canvas import Align, Canvas, Item, Lettering, Path, Shape
from wirecheck.drawing.geometry import Box, Point, box_about

_POINTS_PER_INCH = 72
_HEADER = """graph sheet {
graph [bgcolor="#ffffff", margin=0, pad=0, splines=true,
notranslate=true, outputorder=breadthfirst, charset="UTF-8"];
node [shape=box, fixedsize=true, margin=0, label="", fontname="Helvetica"];
edge [dir=none];
"""
_JUSTIFY = {Align.LEFT: "\\l", Align.CENTRE: "", Align.RIGHT: "\\r"}


def write(canvas: Canvas) -> str:
    """Return the DOT text of `canvas`, the same for the same items."""
    return _HEADER + "".join(_lines(canvas)) + "}\n"


def item_names(canvas: Canvas) -> dict[str, Item]:
    """Return the items by the name of their node in the DOT text."""
    return {f"i{number}": item for number, item in enumerate(canvas.in_order())}


def _lines(canvas: Canvas) -> Iterator[str]:
    yield _paper(canvas)
    for name, item in item_names(canvas).items():
        match item:
            case Path():
                yield _path(name, item, canvas)
            case Shape():
                yield _shape(name, item, canvas)
            case Lettering():
                yield _lettering(name, item, canvas)


def _paper(canvas: Canvas) -> str:
    """Return a borderless node of the sheet's size: it alone sets the size of the picture."""
    sheet = Box(0, 0, canvas.width, canvas.height)
    attributes = {"style": "filled", "fillcolor": "#ffffff", "color": "#ffffff", "penwidth": "0"}
    return _node("paper", sheet, canvas, attributes)


def _path(name: str, path: Path, canvas: Canvas) -> str:
    anchor = {"shape": "point", "style": "invis"}
    attributes = {
        "pos": " ".join(_place(control, canvas) for control in path.controls),
        "color": path.stroke.colour,
        "penwidth": _number(path.stroke.width_pt),
        "style": path.stroke.dash.value,
    }
    middle = Point(canvas.width / 2, canvas.height / 2)
    loop = f"{name} -- {name} {_listed(attributes | _tag(path))};\n"
    return _node(name, box_about(middle, 0), canvas, anchor) + loop


def _shape(name: str, shape: Shape, canvas: Canvas) -> str:
    style = ["filled"] if shape.fill else []
    if shape.stroke.width_pt:
        style.append(shape.stroke.dash.value)
    attributes = {
        "shape": "ellipse" if shape.is_round else "box",
        "style": ",".join(style),
        "color": shape.stroke.colour if shape.stroke.width_pt else "#00000000",
        "penwidth": _number(shape.stroke.width_pt),
    }
    if shape.fill:
        attributes["fillcolor"] = shape.fill
    return _node(name, shape.outline, canvas, attributes | _tag(shape))


def _lettering(name: str, letters: Lettering, canvas: Canvas) -> str:
    """Return a node that holds the text, wide enough for any engine to keep it in line.

    Graphviz sets text flush with the left or right end of its node, as long as it believes that the
    text fits; the node is therefore wider than our own measure of the text on the open side, but
    not beyond the sheet, which it would enlarge.
    """
    bounds = letters.bounds
    style = letters.style
    foreign = sum(not character.isascii() for character in letters.text)
    spare = 4 + 0.15 * bounds.width + 0.4 * style.size_pt * foreign
    room = {
        Align.LEFT: bounds._replace(
            right=max(bounds.right, min(bounds.right + spare, canvas.width))
        ),
        Align.CENTRE: bounds,
        Align.RIGHT: bounds._replace(left=min(bounds.left, max(bounds.left - spare, 0))),
    }[style.align]
    attributes = {
        "shape": "none",
        "label": escaped(letters.text) + _JUSTIFY[style.align],
        "fontname": style.face.value,
        "fontsize": _number(style.size_pt),
        "fontcolor": style.colour,
    }
    return _backing(name, letters, canvas) + _node(name, room, canvas, attributes | _tag(letters))


def _backing(name: str, letters: Lettering, canvas: Canvas) -> str:
    colour = letters.style.backing
    if not colour:
        return ""
    attributes = {"style": "filled", "fillcolor": colour, "color": colour, "penwidth": "0"}
    return _node(f"{name}b", letters.bounds.grown(1), canvas, attributes)


def _node(name: str, outline: Box, canvas: Canvas, attributes: dict[str, str]) -> str:
    fixed = {
        "pos": _place(outline.centre, canvas),
        "width": _number(outline.width / _POINTS_PER_INCH),
        "height": _number(outline.height / _POINTS_PER_INCH),
    }
    return f"{name} {_listed(fixed | attributes)};\n"


def _tag(item: Item) -> dict[str, str]:
    attributes = {"id": item.tag.id, "class": " ".join(item.tag.classes)}
    return {key: escaped(value) for key, value in attributes.items() if value}


def _listed(attributes: dict[str, str]) -> str:
    return "[" + ", ".join(f"{key}={_quoted(value)}" for key, value in attributes.items()) + "]"


def _quoted(value: str) -> str:
    return '"' + value.replace('"', '\\"') + '"'


def escaped(text: str) -> str:
    r"""Return `text` so that Graphviz letters it literally.

    Graphviz reads `\N`, `\l` and the like in labels, and HTML entities too: the backslash is
    doubled and the ampersand written as an entity. Quotes are the business of `_quoted`.
    """
    return text.replace("\\", "\\\\").replace("&", "&amp;")


def _place(point: Point, canvas: Canvas) -> str:
    """Return a position in Graphviz's frame, whose y goes up from the bottom of the sheet."""
    return f"{_number(point.x)},{_number(canvas.height - point.y)}"


def _number(value: float) -> str:
    """Return at most four decimals with no idle zeros: the same text on every platform."""
    shown = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if shown == "-0" else shown
