"""A text as an editor has it: read and checked, places told in the editor's own units."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from lsprotocol import types as lsp
from pygls import uris

from wirecheck.check.engine import Checked, check
from wirecheck.language.build import Built, build
from wirecheck.language.read import read_together
from wirecheck.model.finding import Breaks, Edit, Finding, Problem
from wirecheck.model.text import SourceFile, Span

if TYPE_CHECKING:
    from pygls.workspace import TextDocument

#: In a larger text findings wait until it is saved: a check then takes longer than a keystroke.
MOST_LEADS_AT_ONCE = 400
_SEVERITY = {
    Breaks.SAFETY: lsp.DiagnosticSeverity.Error,
    Breaks.OPERATION: lsp.DiagnosticSeverity.Warning,
    Breaks.WORKMANSHIP: lsp.DiagnosticSeverity.Information,
}


class Text(NamedTuple):
    """A document, read and checked.

    Attributes:
        uri: of the document.
        built: what it says.
        checked: None while it is too large to be checked at each keystroke.
    """

    uri: str
    built: Built
    checked: Checked | None

    @property
    def source(self) -> SourceFile:
        """The document itself, not what it includes."""
        return self.built.diagram.source


def read(document: TextDocument, *, at_leisure: bool = False) -> Text:
    """Read and check a document; includes are looked for beside its file.

    Args:
        document: as the editor has it, saved or not.
        at_leisure: check it however large it is.
    """
    path = Path(document.path) if document.path else None
    name = path.as_posix() if path else document.uri
    source = SourceFile(name, document.source.removeprefix("\ufeff"))
    built = build(read_together([source], path, "", {}))
    small = len(built.diagram.leads) <= MOST_LEADS_AT_ONCE
    return Text(document.uri, built, check(built.diagram) if small or at_leisure else None)


def uri_of(text: Text, source: SourceFile) -> str:
    """The document of a source: the text's own, or a file that it includes."""
    if source is text.source:
        return text.uri
    return uris.from_fs_path(str(Path(source.name).resolve())) or source.name


def range_of(span: Span) -> lsp.Range:
    """A span in lines from 0 and UTF-16 units, as an editor counts that says nothing else."""
    return lsp.Range(_position(span.source, span.start), _position(span.source, span.end))


def offset_at(source: SourceFile, position: lsp.Position) -> int:
    """The character at a place that an editor tells."""
    starts = source.line_starts
    if position.line >= len(starts):
        return len(source.text)
    start = starts[position.line]
    line = source.text[start : source.line_span(start)[1]]
    units, offset = 0, start
    for character in line:
        if units >= position.character or character in "\r\n":
            break
        units += _units(character)
        offset += 1
    return offset


def _position(source: SourceFile, offset: int) -> lsp.Position:
    line, column = source.position(offset)
    before = source.text[offset - (column - 1) : offset]
    return lsp.Position(line - 1, sum(map(_units, before)))


def _units(character: str) -> int:
    """How many UTF-16 units a character takes (The Unicode Standard, section 3.9)."""
    return 2 if ord(character) > 0xFFFF else 1


def diagnostics(text: Text) -> Iterator[lsp.Diagnostic]:
    """What is to be said at places of the document itself."""
    for problem in text.built.problems:
        if problem.span.source is text.source:
            yield _of_problem(problem)
    for finding in text.checked.findings if text.checked else ():
        if finding.span.source is text.source:
            yield _of_finding(text, finding)


def _of_problem(problem: Problem) -> lsp.Diagnostic:
    return lsp.Diagnostic(
        range_of(problem.span),
        problem.message,
        severity=lsp.DiagnosticSeverity.Error,
        source="wirecheck",
    )


def _of_finding(text: Text, finding: Finding) -> lsp.Diagnostic:
    message = [finding.message, finding.seen_at_unit, finding.caution]
    related = [
        lsp.DiagnosticRelatedInformation(
            lsp.Location(uri_of(text, each.span.source), range_of(each.span)), each.label
        )
        for each in finding.related
    ]
    return lsp.Diagnostic(
        range_of(finding.span),
        "\n".join(filter(None, message)),
        severity=_SEVERITY[finding.breaks],
        code=finding.rule,
        source=f"wirecheck: {finding.breaks}",
        related_information=related,
    )


def fixes(text: Text, asked: lsp.Range) -> Iterator[lsp.CodeAction]:
    """What mends what is said in a range: the edits of findings, the nearest right words."""
    for finding in text.checked.findings if text.checked else ():
        if finding.span.source is text.source and _touch(range_of(finding.span), asked):
            for edit in finding.edits:
                yield _action(edit.words, _change(text, edit), _of_finding(text, finding))
    for problem in text.built.problems:
        here = problem.span.source is text.source and _touch(range_of(problem.span), asked)
        if here and problem.nearest:
            change = {text.uri: [lsp.TextEdit(range_of(problem.span), problem.nearest)]}
            words = f"write {problem.nearest}"
            yield _action(words, change, _of_problem(problem))


def _change(text: Text, edit: Edit) -> dict[str, list[lsp.TextEdit]]:
    place = uri_of(text, edit.span.source)
    return {place: [lsp.TextEdit(range_of(edit.span), edit.new_text)]}


def _action(
    words: str, change: dict[str, list[lsp.TextEdit]], mends: lsp.Diagnostic
) -> lsp.CodeAction:
    return lsp.CodeAction(
        words,
        kind=lsp.CodeActionKind.QuickFix,
        diagnostics=[mends],
        edit=lsp.WorkspaceEdit(changes=change),
    )


def _touch(one: lsp.Range, other: lsp.Range) -> bool:
    return _key(one.start) <= _key(other.end) and _key(other.start) <= _key(one.end)


def _key(position: lsp.Position) -> tuple[int, int]:
    return position.line, position.character
