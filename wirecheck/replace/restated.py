"""Devices in the text: new ones stated, old ones giving their names to new ones, or taken out."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language import statements as st
from wirecheck.language.run_text import indent, line_break, whole_lines
from wirecheck.model.diagram import Part, key_of
from wirecheck.model.finding import Edit
from wirecheck.model.text import Span
from wirecheck.replace.device import Device
from wirecheck.replace.landing import counterpart
from wirecheck.replace.request import Swap
from wirecheck.replace.respell import Renaming, respelled
from wirecheck.replace.rewriting import Rewriting


def stated(text: Rewriting, device: Device) -> Edit:
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


def swapped(text: Rewriting, swap: Swap) -> None:
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
        *(text.aside(span) for span in naming.lost),
        *_labels(text, old, swap.new),
        *_kinds(text, old),
    ]
    text.change(edits)


def _labels(text: Rewriting, old: Part, new: Device) -> Iterator[Edit]:
    """The labels of the new device where those of the old one stand, or behind the part."""
    stated = [
        Span(text.source, parsed.start, parsed.end)
        for parsed in text.statements()
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
    statements = text.statements()
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


def taken_out(text: Rewriting, part: Part) -> None:
    """Take out a part that nothing replaces, and set aside what still speaks of it."""
    old = text.diagram.parts[part.key]
    nothing = Renaming(old, old, dict.fromkeys(old.structure.terminals))
    edits = [
        Edit("remove", "", whole_lines(old.span), ""),
        *(text.aside(span) for span in respelled(text.source, nothing).lost),
        *_labels(text, old, Device(old.name, "", {}, {})),
        *_kinds(text, old),
    ]
    text.change(edits)
