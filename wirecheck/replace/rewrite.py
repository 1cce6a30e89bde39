"""The diagram with the new devices in it, as text: comments, order and style stay.

The text is changed step by step and read again after each: new devices are stated; leads that are
left over, or go to something that is there already, come off; each old device gives its name to the
new one, and its terminals are named anew; then the rest of the leads is moved and run, and what
has no use any more comes out.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wirecheck.language import statements as st
from wirecheck.language.build import Built
from wirecheck.language.edit import add_lead, apply, move_end, remove_lead, set_attribute
from wirecheck.language.load import load_text
from wirecheck.language.read import Parsed, read_text
from wirecheck.language.run_text import indent, line_break, whole_lines
from wirecheck.model.diagram import Diagram, Lead, Part, Terminal, key_of
from wirecheck.model.finding import Edit
from wirecheck.model.text import SourceFile, Span
from wirecheck.replace.device import Device
from wirecheck.replace.landing import Ends, Landings, counterpart
from wirecheck.replace.plan import Plan
from wirecheck.replace.request import Swap
from wirecheck.replace.respell import Renaming, respelled


class NotInTextError(Exception):
    """The replacement cannot be made in the text; says why."""


class Rewriting:
    """A text on its way.

    Attributes:
        built: the text as it stands now, read.
        set_aside: statements that name what is no longer there; they stand as comments.
    """

    def __init__(self, diagram: Diagram) -> None:
        """Start from the text as found.

        Raises:
            NotInTextError: it is not all in one file.
        """
        if len(diagram.sources) > 1:
            raise NotInTextError("it includes other files: replace in a file that stands alone")
        self.name = diagram.source.name
        self.built = load_text(diagram.source.text, self.name)
        self.set_aside: list[str] = []

    @property
    def diagram(self) -> Diagram:
        """The diagram as the text states it now."""
        return self.built.diagram

    @property
    def source(self) -> SourceFile:
        """The text as it stands now."""
        return self.diagram.source

    def change(self, edits: Iterable[Edit | None]) -> None:
        """Make some edits and read the text again."""
        made = []
        for edit in edits:
            if edit is None:
                raise NotInTextError("a statement to change cannot be read")
            made.append(edit)
        if made:
            self.built = load_text(apply(self.source.text, made), self.name)


def rewritten(found: Diagram, plan: Plan, landings: Landings) -> tuple[Built, tuple[str, ...]]:
    """Make a replacement in the text: what it reads as then, and what was set aside.

    Raises:
        NotInTextError: it cannot be made in the text.
    """
    text = Rewriting(found)
    for device in plan.request.fitted.values():
        text.change([_stated(text, device)])
    waiting = [
        (lead, here, ends)
        for lead, ends in _moves(found, plan, landings)
        if (here := _moved_early(text, plan, lead, ends)) is not None and ends is not None
    ]
    for swap in plan.request.swaps:
        _swapped(text, swap)
    for lead, here, ends in waiting:
        _moved_late(text, lead, (_end_after(plan, here[0]), _end_after(plan, here[1])), ends)
    for new in landings.new:
        text.change([add_lead(text.diagram, new.a, new.b, new.lead)])
    for part in plan.out:
        _taken_out(text, part)
    for key, attribute, value in plan.settings:
        text.change([set_attribute(text.diagram, key, attribute, value)])
    _claims_set_aside(text, len(load_text(found.source.text, text.name).problems))
    return text.built, tuple(text.set_aside)


# ---- leads -------------------------------------------------------------------------------------


def _moves(found: Diagram, plan: Plan, landings: Landings) -> Iterator[tuple[Lead, Ends | None]]:
    """The leads that do not just follow their device, with where they land."""
    for lead, ends in zip(found.leads, landings.ends, strict=True):
        if ends is None or ends != (_end_after(plan, lead.a), _end_after(plan, lead.b)):
            yield lead, ends


def _end_after(plan: Plan, end: Terminal) -> Terminal | None:
    """Where an end lands by the roles, as naming the terminals anew has it."""
    for swap in plan.request.swaps:
        if swap.old.key == end.part:
            return counterpart(swap.old, end, swap.new.part)
    return end


def _moved_early(text: Rewriting, plan: Plan, lead: Lead, ends: Ends | None) -> Ends | None:
    """Take a lead out, or move it as far as the text knows where to; where it then lands.

    None if it lands where it shall as soon as its devices are swapped. An end without counterpart
    must be off its device before that is swapped.
    """
    if ends is None:
        text.change([remove_lead(text.diagram, _number(text.diagram, (lead.a, lead.b), lead))])
        return None
    here = [lead.a, lead.b]
    swapped = {swap.old.key for swap in plan.request.swaps}
    for place, (old, new) in enumerate(zip((lead.a, lead.b), ends, strict=True)):
        if _end_after(plan, old) != new and new.part not in swapped:
            number = _number(text.diagram, (here[0], here[1]), lead)
            text.change([move_end(text.diagram, number, old, new)])
            here[place] = new
    arrived = all(_end_after(plan, end) == new for end, new in zip(here, ends, strict=True))
    return None if arrived else (here[0], here[1])


def _moved_late(
    text: Rewriting,
    lead: Lead,
    followed: tuple[Terminal | None, Terminal | None],
    ends: Ends,
) -> None:
    """Move the ends that had to wait for the new device."""
    here = list(followed)
    for place, new in enumerate(ends):
        old = here[place]
        if old is None:
            raise NotInTextError("a lead has no end left to be moved by")
        if old != new:
            number = _number(text.diagram, (here[0], here[1]), lead)
            text.change([move_end(text.diagram, number, old, new)])
            here[place] = new


def _number(diagram: Diagram, ends: tuple[Terminal | None, Terminal | None], lead: Lead) -> int:
    """The number of a lead in the text as it stands now: by its ends, then by its colour."""
    alike = [number for number, each in enumerate(diagram.leads) if {each.a, each.b} == set(ends)]
    colour = lead.given.get("colour")
    of_colour = [
        number
        for number in alike
        if (given := diagram.leads[number].given.get("colour"))
        and colour
        and given.value == colour.value
    ]
    if not alike:
        raise NotInTextError("a lead is not found again in the changed text")
    return (of_colour or alike)[0]


# ---- devices -----------------------------------------------------------------------------------


def _stated(text: Rewriting, device: Device) -> Edit:
    """State a new device behind the last part."""
    parts = [part for part in text.diagram.parts.values() if part.span.source is text.source]
    lines = [device.statement, *device.label_statement]
    if not parts:
        start = Span(text.source, 0, 0)
        return Edit("add", "", start, "".join(f"{line}\n" for line in lines))
    last = parts[-1].span
    return _behind(text, last, lines)


def _behind(text: Rewriting, statement: Span, lines: list[str]) -> Edit:
    """New lines behind those of a statement."""
    end, newline = whole_lines(statement).end, line_break(statement)
    before = "" if text.source.text[:end].endswith(("\n", "\r")) else newline
    written = "".join(f"{indent(statement)}{line}{newline}" for line in lines)
    return Edit("add", "", Span(text.source, end, end), before + written)


def _swapped(text: Rewriting, swap: Swap) -> None:
    """Put a new device in the place of an old one."""
    old = text.diagram.parts[swap.old.key]
    new = swap.new.part
    terminals = {
        name: (end.name if (end := counterpart(old, old.terminal(name), new)) else None)
        for name in old.structure.terminals
    }
    naming = respelled(text.source, Renaming(old, new, terminals))
    whole = Span(text.source, old.kind_span.start, old.span.end)
    edits = [
        Edit("set", "", whole, swap.new.stated),
        *naming.edits,
        *(_set_aside(text, span) for span in naming.lost),
        *_labels(text, old, swap.new),
        *_kinds(text, old),
    ]
    text.change(edits)


def _labels(text: Rewriting, old: Part, new: Device) -> Iterator[Edit]:
    """The labels of the new device where those of the old one stand, or behind the part."""
    stated = [
        Span(text.source, parsed.start, parsed.end)
        for parsed in _statements(text)
        if isinstance(parsed.statement, st.LabelsStatement)
        and key_of(parsed.statement.name.text) == old.key
    ]
    lines = new.label_statement
    if stated and lines:
        newline = line_break(stated[0]) + indent(stated[0])
        yield Edit("set", "", stated.pop(0), newline.join(lines))
    elif lines:
        yield _behind(text, old.span, lines)
    yield from (Edit("remove", "", whole_lines(span), "") for span in stated)


def _kinds(text: Rewriting, old: Part) -> Iterator[Edit]:
    """Kinds of the user's own that no part is of any more, once this one is gone."""
    statements = _statements(text)
    used = {
        key_of(parsed.statement.kind.text)
        for parsed in statements
        if isinstance(parsed.statement, st.PartStatement | st.KindStatement)
        and key_of(parsed.statement.name.text) != old.key
    }
    gone = key_of(old.kind.name)
    if gone in used or gone not in text.diagram.kinds:
        return
    for parsed in statements:
        statement = parsed.statement
        if not isinstance(statement, st.KindStatement | st.LabelsStatement):
            continue
        if key_of(statement.name.text) == gone:
            yield Edit("remove", "", whole_lines(Span(text.source, parsed.start, parsed.end)), "")


def _taken_out(text: Rewriting, part: Part) -> None:
    """Take out a part that nothing replaces, and set aside what still speaks of it."""
    old = text.diagram.parts[part.key]
    nothing = Renaming(old, old, dict.fromkeys(old.structure.terminals))
    edits = [
        Edit("remove", "", whole_lines(old.span), ""),
        *(_set_aside(text, span) for span in respelled(text.source, nothing).lost),
        *_labels(text, old, Device(old.name, "", {}, {})),
        *_kinds(text, old),
    ]
    text.change(edits)


def _claims_set_aside(text: Rewriting, known: int) -> None:
    """Set aside claims and observations of what the new devices have not: a pilot, a damper."""
    if len(text.built.problems) <= known:
        return
    at = [p.span for p in text.built.problems if p.span.source is text.source]
    claims = [
        Span(text.source, parsed.start, parsed.end)
        for parsed in _statements(text)
        if isinstance(parsed.statement, st.ExpectStatement | st.ObserveStatement)
    ]
    text.change(
        [
            _set_aside(text, claim)
            for claim in claims
            if any(claim.start <= span.start < claim.end for span in at)
        ]
    )


def _set_aside(text: Rewriting, span: Span) -> Edit:
    """A statement that names what is no longer there, as a comment for somebody to look at."""
    text.set_aside.append(span.text)
    return Edit("set", "", span, "\n".join(f"# {line}" for line in span.text.split("\n")))


def _statements(text: Rewriting) -> list[Parsed]:
    return read_text(text.source.text, text.name).statements
