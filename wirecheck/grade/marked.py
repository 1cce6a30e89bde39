"""What a marked drawing comes to."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.check.engine import Checked
from wirecheck.compare.result import How
from wirecheck.model.finding import Breaks, Finding


class CircuitMark(NamedTuple):
    """The mark of one circuit.

    Attributes:
        circuit: its name; ``workmanship`` is one too.
        units, right: how many units it has, and how many are right; for workmanship how many
            findings cost nothing any more, and how many of these are left.
        points, out_of: what it gives to the mark.
    """

    circuit: str
    units: int
    right: int
    points: float
    out_of: float


class LostPoint(NamedTuple):
    """One mistake, and what it costs.

    Attributes:
        number: by which it is found on the drawing.
        circuit: where it costs.
        points: how much.
        what: the mistake in the key's terms, the same words for whoever makes it.
        reason: what is wrong, in words.
        effect: what the unit would have done; "" if nothing is to be seen.
        breaks: what it breaks at worst.
        line: in the drawing's text; None where nothing of it is typed.
        leads: the leads of the drawing it is about, in words.
        places: the terminals it is about, as the drawing calls them.
        caution: what to mind, where somebody can be hurt.
        finding: the same for whoever draws or lists findings.
    """

    number: int
    circuit: str
    points: float
    what: str
    reason: str
    effect: str
    breaks: Breaks
    line: int | None
    leads: tuple[str, ...]
    places: tuple[str, ...]
    caution: str
    finding: Finding


class Marked(NamedTuple):
    """One drawing, marked.

    Attributes:
        key: the name of the key that suits it best.
        how: whether it does the same as that: wired alike, wired otherwise, or not.
        mark, out_of: what it gets.
        before_cap: what it would get if it were safe.
        unsafe: why its mark is capped; empty if it is not.
        circuits: the marks of the circuits, workmanship last.
        lost: the lost points, in the order of their numbers.
        does, key_does: how a call for heat ends, at it and at the key.
        remarks: what costs nothing and is worth a word.
        checked: the drawing as checked, for who draws it.
    """

    key: str
    how: How
    mark: float
    out_of: float
    before_cap: float
    unsafe: tuple[str, ...]
    circuits: tuple[CircuitMark, ...]
    lost: tuple[LostPoint, ...]
    does: tuple[str, ...]
    key_does: tuple[str, ...]
    remarks: tuple[str, ...]
    checked: Checked
