"""One branch in its cell: wires to the symbol, terminals, names, and the mark of a safety."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.drawing.canvas import BLACK, NO_LINE, WHITE, Align, Canvas, Letters, Tag
from wirecheck.drawing.geometry import Point, box_about
from wirecheck.drawing.ladder.branches import Branch
from wirecheck.drawing.ladder.choice import inside, symbol_for
from wirecheck.drawing.ladder.series_parallel import Leaf
from wirecheck.drawing.ladder.work import CELL, SMALL_PT, TERMINAL_SIZES_PT, Work
from wirecheck.drawing.lettering import Face, fitted, fitting_size, text_width
from wirecheck.drawing.symbols.symbol import Pose, place
from wirecheck.model.diagram import Part
from wirecheck.model.kind import SwitchSpec

NAME = Letters(9.0, Face.BOLD, Align.CENTRE)
SAFETY_NOTE = "S in a black square: a safety, there to stop the gas."

_NAME_RISE = 23.5
_KIND_RISE = 14.5
_KIND_SIZES_PT = (SMALL_PT, 6.5, 6.0)
_LABEL_DROP = 8.0
_LABEL_OFF_EDGE = 1.5
"""From a label to the edge of the cell, where the rim of a block may stand."""
_LABEL_IN = (2.0, 5.5)
"""How far a label reaches under the symbol's own lead; so far only if it is long."""


def draw_element(work: Work, leaf: Leaf, left: Point, *, in_block: bool) -> None:
    """Draw a branch in the cell that begins at `left` on the line of the wire.

    In its control's block a branch shows neither the part's name nor its terminals: the block does.
    """
    branch, middle = leaf.branch, left.moved(CELL / 2, 0)
    symbol = symbol_for(branch)
    placed = place(work.canvas, symbol, Pose(middle), inside=inside(branch), tag=_tag(work, branch))
    start, end = placed.ports[0], placed.ports[1]
    work.wire(leaf.start, [left, start])
    work.wire(leaf.end, [end, left.moved(CELL, 0)])
    terminals = (branch.b, branch.a) if leaf.flipped else (branch.a, branch.b)
    if in_block:
        for terminal, port in zip(terminals, (start, end), strict=True):
            work.places.setdefault(terminal, port)
        _letter_name(work.canvas, middle, branch.name, "", branch)
        return
    circle = not symbol.has_posts
    for terminal, port, align in zip(terminals, (start, end), _OUTWARD, strict=True):
        spec = work.diagram.spec(terminal)
        if spec is None or spec.inner:
            continue
        name = work.put_terminal(branch.part, terminal, port, circle=circle)
        outward = CELL / 2 - abs(port.x - middle.x) - _LABEL_OFF_EDGE
        _letter_terminal(work.canvas, name, port, (align, outward))
    _letter_name(work.canvas, middle, branch.part.name, _kind_words(branch), branch)


_OUTWARD = (Align.RIGHT, Align.LEFT)


def _letter_terminal(canvas: Canvas, name: str, port: Point, place: tuple[Align, float]) -> None:
    """Letter a terminal under the wire, on the side away from the symbol, in so much room there."""
    align, outward = place
    least, most = _LABEL_IN
    size_pt = fitting_size(name, outward + most, TERMINAL_SIZES_PT)
    for row, line in enumerate(_lines(name, size_pt, outward + most)):
        shown = fitted(line, outward + most, size_pt)
        inward = max(least, text_width(shown, size_pt) - outward)
        at = port.moved(inward if align is Align.RIGHT else -inward, _LABEL_DROP + row * size_pt)
        canvas.text(at, shown, Letters(size_pt, align=align))


def _lines(name: str, size_pt: float, room: float) -> tuple[str, ...]:
    """Return a label in two lines if it does not fit in one and has a sign to be broken after."""
    if text_width(name, size_pt) <= room:
        return (name,)
    breaks = [place for place, sign in enumerate(name, 1) if sign in "-/._ " and place < len(name)]
    if not breaks:
        return (name,)
    middle = min(breaks, key=lambda place: abs(place - len(name) / 2))
    return name[:middle], name[middle:]


def _letter_name(canvas: Canvas, middle: Point, name: str, words: str, branch: Branch) -> None:
    """Letter a name above the symbol and smaller words below it, and mark a safety."""
    room = CELL - 8
    rise = _NAME_RISE if words else _KIND_RISE
    is_safety = isinstance(branch.spec, SwitchSpec) and branch.spec.safety
    shown = fitted(name, room - 12 * is_safety, NAME.size_pt, NAME.face)
    at = middle.moved(6 if is_safety else 0, -rise)
    canvas.text(at, shown, NAME)
    size_pt = fitting_size(words, room, _KIND_SIZES_PT)
    style = Letters(size_pt, align=Align.CENTRE)
    canvas.text(middle.moved(0, -_KIND_RISE), fitted(words, room, size_pt), style)
    if is_safety:
        half = text_width(shown, NAME.size_pt, NAME.face) / 2
        draw_safety_mark(canvas, at.moved(-half - 7, 0))


def draw_safety_mark(canvas: Canvas, at: Point) -> None:
    """Draw the white S in a black square that marks a safety."""
    tag = Tag(classes=("safety",), title="a safety: it is there to stop the gas")
    canvas.box(box_about(at, 4.5), fill=BLACK, stroke=NO_LINE, tag=tag)
    canvas.text(at, "S", Letters(7.5, Face.BOLD, Align.CENTRE, WHITE), tag=Tag(title=tag.title))


def _kind_words(branch: Branch) -> str:
    """Return what a branch is, what it is rated or how it resets, and what was found wrong."""
    title = ", ".join([branch.part.kind.title, *_typed(branch.part)])
    words = f"{title}, {branch.name}" if branch.name else title
    if branch.name and text_width(words, SMALL_PT) > CELL - 8:
        words = branch.name
    found = [f"{a.name} {a.value}".replace("-", " ") for a in branch.part.found_wrong()]
    return ", ".join([words, *found])


def _typed(part: Part) -> Iterator[str]:
    """Yield the rating of what opens by too much current, and that a limit is reset by hand."""
    if part.family == "overcurrent" and "rating" in part.given:
        yield str(part.given["rating"].value)
    if "reset" in part.given:
        yield f"{part.given['reset'].value} reset"


def _tag(work: Work, branch: Branch) -> Tag:
    part = branch.part
    title = f"{part.name}: {part.kind.title}" + (f", {branch.name}" if branch.name else "")
    ends = " to ".join(work.diagram.show(terminal) for terminal in (branch.a, branch.b))
    name = f"{part.key}-{branch.name}" if branch.name else part.key
    return Tag(f"part-{name}", ("part", f"part-{part.key}"), f"{title} ({ends})")
