"""An answer as words for the person with the screwdriver, and as the corrected text.

The changes are made in the text one after the other, so that comments, order and style stay; then
the text is read again and proved.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import NamedTuple

from wirecheck.correct.proof import Proof, proof
from wirecheck.correct.rewired import (
    Add,
    Change,
    Ends,
    Exchange,
    Fit,
    Move,
    Rewired,
    TakeOut,
)
from wirecheck.language.edit import add_lead, apply, move_end, remove_lead, set_attribute
from wirecheck.language.load import load_text
from wirecheck.model.diagram import Diagram, Terminal
from wirecheck.model.finding import Edit

_VERBS = {"fitted": "fit", "cut": "cut", "removed": "take out"}
_CAPPED = ", and cap what stays in place"


class Mended(NamedTuple):
    """An answer, written out.

    Attributes:
        words: what to do, a line for each change.
        text: the corrected text; None where it cannot be written.
        why_not: then the reason, else "".
        proof: of the corrected text, or of the answer where there is none.
    """

    words: tuple[str, ...]
    text: str | None
    why_not: str
    proof: Proof


class _NotInTextError(Exception):
    """A change cannot be made in the text; says why."""


def mended(state: Rewired, found: Proof) -> Mended:
    """Write an answer out; ``found`` is its proof."""
    words = tuple(words_of(state.found, change, state) for change in state.changes)
    try:
        text = _rewritten(state)
    except _NotInTextError as reason:
        return Mended(words, None, str(reason), found)
    again = proof(load_text(text, state.found.source.name).diagram)
    if not again.holds or _ends(again.checked.diagram) != _ends(state.diagram):
        return Mended(words, None, "read again, the changed text says something else", found)
    return Mended(words, text, "", again)


# ---- words -------------------------------------------------------------------------------------


def words_of(diagram: Diagram, change: Change, state: Rewired) -> str:
    """What to do, in plain words."""
    show = diagram.show
    match change:
        case Move(lead, old, new):
            other = _other(_ends_before(state, change, lead), old)
            which = f"{_called(state, lead)} from {show(other)}"
            return f"take {which} off {show(old)} and land it on {show(new)}"
        case Exchange(lead, end, other, other_end):
            one = f"{_called(state, lead)} on {show(end)}"
            return f"exchange {one} and {_called(state, other)} on {show(other_end)}"
        case Add(a, b, attribute):
            what = f": {attribute}" if attribute else ""
            return f"run a lead from {show(a)} to {show(b)}{what}"
        case TakeOut(lead):
            a, b = _ends_before(state, change, lead)
            return f"take out {_called(state, lead)} from {show(a)} to {show(b)}{_CAPPED}"
        case Fit(part, attribute, value):
            what = attribute.replace("-", " ")
            return f"{_VERBS.get(value, value)} the {what} of {diagram.parts[part].name}"


def _called(state: Rewired, lead: int) -> str:
    colour = None
    if lead < len(state.found.leads):
        colour = state.found.leads[lead].given.get("colour")
    return f"the {colour.value} lead" if colour else "the lead"


def _ends_before(state: Rewired, change: Change, lead: int) -> Ends:
    """Where a lead runs when a change comes to it."""
    before = Rewired.nothing_changed(state.found)
    for each in state.changes:
        if each is change:
            break
        before = before.after(each)
    ends = before.ends[lead]
    assert ends is not None  # noqa: S101 - a change of a lead that is out is not made
    return ends


def _other(ends: Ends, end: Terminal) -> Terminal:
    return ends[1] if ends[0] == end else ends[0]


# ---- text --------------------------------------------------------------------------------------


def _rewritten(state: Rewired) -> str:
    """The text after all changes.

    Raises:
        _NotInTextError: one of them cannot be made.
    """
    diagram, done = state.found, Rewired.nothing_changed(state.found)
    for change in state.changes:
        for step in _steps(change):
            diagram = _changed(diagram, _edits(diagram, done, step))
            done = done.after(step)
    return diagram.source.text


def _steps(change: Change) -> Iterable[Change]:
    """An exchange as two moves, as its edits may overlap."""
    if isinstance(change, Exchange):
        first = Move(change.lead, change.end, change.other_end)
        return first, Move(change.other, change.other_end, change.end)
    return (change,)


def _edits(diagram: Diagram, done: Rewired, change: Change) -> tuple[Edit | None, ...]:
    match change:
        case Move(lead, old, new):
            return (move_end(diagram, _in(diagram, done, lead), old, new),)
        case Add(a, b, attribute):
            return (add_lead(diagram, a, b, attribute),)
        case TakeOut(lead):
            return (remove_lead(diagram, _in(diagram, done, lead)),)
        case Fit(part, attribute, value):
            return (set_attribute(diagram, part, attribute, value),)
    return ()


def _in(diagram: Diagram, done: Rewired, lead: int) -> int:
    """The number of a lead in the diagram as it is read now."""
    wanted = done.lead(lead)
    ends = {wanted.a, wanted.b}
    alike = [number for number, each in enumerate(diagram.leads) if {each.a, each.b} == ends]
    if not alike:
        raise _NotInTextError("a lead is not found again in the changed text")
    colour = wanted.given.get("colour")
    of_colour = [
        number
        for number in alike
        if (given := diagram.leads[number].given.get("colour")) is not None
        and colour is not None
        and given.value == colour.value
    ]
    return (of_colour or alike)[0]


def _changed(diagram: Diagram, edits: Iterable[Edit | None]) -> Diagram:
    """The diagram read again after an edit of its text."""
    source = diagram.source
    made = []
    for edit in edits:
        if edit is None:
            raise _NotInTextError("a statement to change cannot be read")
        if edit.span.source is not source:
            raise _NotInTextError(f"a statement to change stands in {edit.span.file}")
        made.append(edit)
    before = load_text(source.text, source.name)
    after = load_text(apply(source.text, made), source.name)
    if len(after.problems) > len(before.problems):
        raise _NotInTextError(f"the changed text cannot be read: {after.problems[-1].message}")
    return after.diagram


def _ends(diagram: Diagram) -> Counter[frozenset[Terminal]]:
    return Counter(frozenset((lead.a, lead.b)) for lead in diagram.leads)
