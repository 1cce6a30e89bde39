"""Changes of the wiring as edits of the text: nothing else in it moves.

Every edit stands for itself: it says which characters give way to which, in the text the diagram
was read from.  Several can be applied together where they do not overlap; two edits of one run of
leads may, so read the text again between them.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from wirecheck.language.run_cut import cut_run, said_of_length, share_of_length, stays
from wirecheck.language.run_text import (
    LINE_ENDS,
    Piece,
    PlugText,
    RunText,
    indent,
    line_break,
    merged,
    plug_text,
    run_text,
    whole_lines,
)
from wirecheck.language.spelling import spell, spell_in_part
from wirecheck.model.diagram import (
    OPEN_END,
    UNKNOWN_END,
    Attribute,
    Diagram,
    Lead,
    LeadRole,
    Terminal,
)
from wirecheck.model.finding import Edit
from wirecheck.model.text import SourceFile, Span

__all__ = [
    "add_lead",
    "apply",
    "move_end",
    "remove_lead",
    "set_attribute",
    "set_lead_attribute",
    "spell",
    "swap_ends",
]

_UNTRACED: Final = {OPEN_END: "loose end", UNKNOWN_END: "untraced end"}


def apply(text: str, edits: Iterable[Edit]) -> str:
    """The text after some edits of it; those at one place take effect in the order given.

    Raises:
        ValueError: two edits change the same characters.
    """
    pieces, done = [], 0
    for edit in sorted(edits, key=lambda edit: (edit.span.start, edit.span.end)):
        if edit.span.start < done:
            raise ValueError(f"two edits change the same text at {edit.span}")
        pieces += [text[done : edit.span.start], edit.new_text]
        done = edit.span.end
    return "".join([*pieces, text[done:]])


def add_lead(diagram: Diagram, a: Terminal, b: Terminal, attributes: str = "") -> Edit:
    """A new lead in a line of its own, behind the last lead or else the last part.

    ``attributes`` are as typed: ``green, 18 AWG``.
    """
    behind = f": {attributes}" if attributes else ""
    line = _wire(diagram, a, b, attributes)
    words = f"run a lead from {diagram.show(a)} to {diagram.show(b)}{behind}"
    span, new_text = merged(diagram.source, [_line_behind(diagram.source, _last(diagram), line)])
    return Edit("add", words, span, new_text)


def move_end(diagram: Diagram, lead_number: int, old: Terminal, new: Terminal) -> Edit | None:
    """Take the end of a lead off ``old`` and land it on ``new``.

    None if it lands there already, or if the statement is one that cannot be read.  Where the end
    is a joint or a part passed through, which the next lead shares, the statement is cut there.

    Raises:
        ValueError: the lead has no end on ``old``.
    """
    lead = diagram.leads[lead_number]
    other = _other_end(lead, old)
    if new in (old, other):
        return None
    words = _moved(diagram, lead, old, new)
    if lead.role is LeadRole.PLUG:
        plug = plug_text(lead)
        if plug is None:
            return None
        a, b = (new, lead.b) if old == lead.a else (lead.a, new)
        span, new_text = merged(plug.source, _pin_moved(diagram, lead, plug, (a, b)))
        return Edit("move", words, span, new_text)
    run = run_text(lead)
    if run is None:
        return None
    landed = spell(diagram, new)
    arriving = old == lead.b
    at = run.lead_at + arriving
    stop = run.stops[at]
    if at in (0, len(run.stops) - 1):
        return Edit("move", words, Span(run.source, stop.start, stop.end), landed)
    kept = stays(diagram, lead_number, run, step=1 if arriving else -1)
    arrives, leaves = (landed, kept) if arriving else (kept, landed)
    pieces = cut_run(diagram, lead_number, run, (at, at), (arrives + run.brackets(at), leaves))
    words += said_of_length(diagram, lead_number, run)
    span, new_text = merged(run.source, pieces)
    return Edit("move", words, span, new_text)


def swap_ends(
    diagram: Diagram, lead_1: int, terminal_1: Terminal, lead_2: int, terminal_2: Terminal
) -> tuple[Edit, ...]:
    """Land each of two leads where the other lands now; empty where two edits cannot say it."""
    first = move_end(diagram, lead_1, terminal_1, terminal_2)
    second = move_end(diagram, lead_2, terminal_2, terminal_1)
    if first is None or second is None or _overlap(first.span, second.span):
        return ()
    return first, second


def remove_lead(diagram: Diagram, lead_number: int) -> Edit:
    """Take a lead out; the other leads of its statement stay, if it can be read."""
    lead = diagram.leads[lead_number]
    words = f"take out {_called(lead)} from {diagram.show(lead.a)} to {diagram.show(lead.b)}"
    plug = plug_text(lead) if lead.role is LeadRole.PLUG else None
    run = run_text(lead) if plug is None else None
    if plug is not None:
        span, new_text = merged(plug.source, [_without_pin(plug)])
    elif run is not None and len(run.stops) > 2:
        words += said_of_length(diagram, lead_number, run)
        span, new_text = merged(run.source, _without_lead(diagram, lead_number, run))
    else:
        span, new_text = whole_lines(lead.statement), ""
    return Edit("remove", words, span, new_text)


def _without_lead(diagram: Diagram, lead_number: int, run: RunText) -> list[Piece]:
    """A run without one of its leads: shorter, or cut in two."""
    at, last = run.lead_at, len(run.stops) - 1
    behind = "" if at + 1 == last else stays(diagram, lead_number, run, step=1)
    before = stays(diagram, lead_number, run, step=-1) + run.brackets(at) if at else ""
    if before and behind:
        return cut_run(diagram, lead_number, run, (at, at + 1), (before, behind))
    left = range(at) if before else range(1, last)
    piece = Piece(run.stops[at].start, run.stops[at + 1].brackets_end, before or behind)
    return [piece, *share_of_length(diagram, lead_number, run, left)]


def set_attribute(diagram: Diagram, part_key: str, name: str, value: str) -> Edit:
    """Give a part's attribute another value, typed as ``value``."""
    part = diagram.parts[part_key]
    new_text = f"{name} {value}".rstrip()
    words = f"change {part.name}: {new_text}"
    typed = part.given.get(name)
    if typed is not None and part.span.start <= typed.span.start < part.span.end:
        return Edit("set", words, typed.span, new_text)
    end = Span(part.span.source, part.span.end, part.span.end)
    has_own = part.span.end > part.kind_span.end
    return Edit("set", words, end, f"{', ' if has_own else ': '}{new_text}")


def set_lead_attribute(diagram: Diagram, lead_number: int, name: str, text: str) -> Edit:
    """Give a lead an attribute typed as ``text``, in place of the one called ``name`` if it has it.

    Where the statement holds further leads, they keep theirs; one that cannot be read is replaced.
    """
    lead = diagram.leads[lead_number]
    words = f"use {text} for {_called(lead)} from {diagram.show(lead.a)} to {diagram.show(lead.b)}"
    plug = plug_text(lead) if lead.role is LeadRole.PLUG else None
    run = run_text(lead) if plug is None else None
    if plug is not None:
        pieces = _pin_as_wire(diagram, lead, plug, (lead.a, lead.b), text)
    elif run is not None:
        pieces = [_described(run, lead, name, text)]
    else:
        line = _wire(diagram, lead.a, lead.b, text)
        pieces = [Piece(lead.statement.start, lead.statement.end, line)]
    span, new_text = merged(lead.statement.source, pieces)
    return Edit("set", words, span, new_text)


def _described(run: RunText, lead: Lead, name: str, text: str) -> Piece:
    """An attribute of one lead of a run, where it is typed or would be."""
    stop = run.stops[run.lead_at + 1]
    typed = lead.given.get(name)
    of_its_own = typed is not None and stop.end <= typed.span.start < stop.brackets_end
    alone = len(run.stops) == 2
    if typed is not None and (of_its_own or alone) and not _from_cable(name, typed, lead):
        return Piece(typed.span.start, typed.span.end, text)
    if alone:
        return Piece(run.end, run.end, f", {text}" if run.attributes else f": {text}")
    if stop.brackets_end > stop.end:
        return Piece(stop.brackets_end - 1, stop.brackets_end - 1, f", {text}")
    return Piece(stop.end, stop.end, f" ({text})")


def _wire(diagram: Diagram, a: Terminal, b: Terminal, attributes: str) -> str:
    behind = f": {attributes}" if attributes else ""
    return f"wire {spell(diagram, a)} to {spell(diagram, b)}{behind}"


# ---- where things stand ------------------------------------------------------------------------


def _last(diagram: Diagram) -> Span | None:
    """The statement of the last lead of the file first named, or else of its last part."""
    for lead in reversed(diagram.leads):
        if lead.statement.source is diagram.source:
            return lead.statement
    for part in reversed(list(diagram.parts.values())):
        if part.span.source is diagram.source:
            return part.span
    return None


def _line_behind(source: SourceFile, statement: Span | None, line: str) -> Piece:
    """A new line behind the lines of a statement, or at the end of the text."""
    end, newline = len(source.text), "\n"
    if statement is not None:
        end, newline = whole_lines(statement).end, line_break(statement)
        line = indent(statement) + line
    begins = end == 0 or source.text.endswith(LINE_ENDS, 0, end)
    return Piece(end, end, f"{line}{newline}" if begins else f"{newline}{line}")


def _overlap(one: Span, other: Span) -> bool:
    same = one.source is other.source
    return same and one.start < other.end and other.start < one.end


def _other_end(lead: Lead, end: Terminal) -> Terminal:
    if end not in (lead.a, lead.b):
        raise ValueError(f"the lead has no end on {end}")
    return lead.b if end == lead.a else lead.a


def _from_cable(name: str, attribute: Attribute, lead: Lead) -> bool:
    """Whether an attribute is known from the cable only: it then stands where ``in`` does."""
    run_in = lead.given.get("in")
    return name != "in" and run_in is not None and attribute.span == run_in.span


# ---- plugs -------------------------------------------------------------------------------------


def _pin_moved(
    diagram: Diagram, lead: Lead, plug: PlugText, ends: tuple[Terminal, Terminal]
) -> list[Piece]:
    """The pin between two other terminals; a wire of its own where the harness does not reach."""
    a, b = ends
    stays = (a.part, b.part) == (lead.a.part, lead.b.part)
    if not stays or not {a.part, b.part} <= diagram.parts.keys():
        return _pin_as_wire(diagram, lead, plug, ends, "")
    start, end = plug.pins[plug.pin_at]
    here, there = (spell_in_part(diagram, terminal) for terminal in ends)
    return [Piece(start, end, here if here == there else f"{here} to {there}")]


def _pin_as_wire(
    diagram: Diagram,
    lead: Lead,
    plug: PlugText,
    ends: tuple[Terminal, Terminal],
    attributes: str,
) -> list[Piece]:
    line = _wire(diagram, *ends, attributes)
    return [_without_pin(plug), _line_behind(plug.source, lead.statement, line)]


def _without_pin(plug: PlugText) -> Piece:
    start, end = plug.pins[plug.pin_at]
    if len(plug.pins) == 1:
        lines = whole_lines(plug.span)
        return Piece(lines.start, lines.end, "")
    if plug.pin_at:
        return Piece(plug.pins[plug.pin_at - 1][1], end, "")
    return Piece(start, plug.pins[1][0], "")


# ---- words -------------------------------------------------------------------------------------


def _called(lead: Lead) -> str:
    colour = lead.given.get("colour")
    noun = "jumper" if lead.role is LeadRole.JUMPER else "lead"
    return f"the {colour.value} {noun}" if colour else f"the {noun}"


def _moved(diagram: Diagram, lead: Lead, old: Terminal, new: Terminal) -> str:
    other = _other_end(lead, old)
    which = _called(lead)
    if other.part not in _UNTRACED:
        which += f" from {diagram.show(other)}"
    if old.part in _UNTRACED:
        return f"land the {_UNTRACED[old.part]} of {which} on {diagram.show(new)}"
    return f"take {which} off {diagram.show(old)} and land it on {diagram.show(new)}"
