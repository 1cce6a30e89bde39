"""What a check of notes says, as their writer reads it: each document, then a line for each.

Every place is one of the document itself, so that an editor jumps to it. What a block says is told
where it stands, not again for every block and variant that builds on it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from typing import Final

from wirecheck.model.finding import NotChecked
from wirecheck.report.check_text import cautions_text, finding_text, problem_text, set_aside
from wirecheck.report.checks import CheckedFile, counted, finding_key, unique
from wirecheck.report.notes_files import (
    STALE,
    NoteDrawing,
    NoteFile,
    NoteTally,
    summary,
    told_once,
)
from wirecheck.report.page import Page
from wirecheck.report.visible import visible

#: What the file of a drawing is that is not as it should be.
_WORDS: Final = {
    "stale": "shows what stood here before; --draw draws it anew",
    "missing": "is not there; --draw draws it",
}


def note_text(file: NoteFile, page: Page, *, assumed: bool = False) -> Iterator[str]:
    """Write what was found in one document; nothing where nothing was.

    With ``assumed`` also what was taken as given in it.
    """
    told = told_once(file.diagrams)
    several = len(file.diagrams) > 1
    for each in told:
        yield from finding_text(each.finding, page)
        included = each.finding.span.file != file.file
        if several or included:
            labels = "; ".join(those.label for those in each.diagrams)
            yield from page.named("in", visible(f"{file.file}, {labels}" if included else labels))
        yield ""
    for problem in file.problems:
        yield from problem_text(problem, page)
        if problem.span.file != file.file:
            yield from page.named("in", visible(file.file))
        yield ""
    for drawing in file.drawings:
        if drawing.state in STALE:
            yield from _stale(drawing, page)
            yield ""
    yield from set_aside(_together(file), page)
    yield from _not_checked(file, page)
    if assumed:
        yield from _assumed(file, page)
    drawn = [each for each in file.drawings if each.state == "drawn"]
    for drawing in drawn:
        yield f"  drawn: {visible(drawing.path)}"
    if drawn:
        yield ""


def _together(file: NoteFile) -> CheckedFile:
    """What is accepted and what was known in all diagrams of a document, each once."""
    accepted = {finding_key(each.finding): each for c in file.checks for each in c.accepted}
    known = {finding_key(each): each for check in file.checks for each in check.known}
    return CheckedFile(
        file.file, (), None, accepted=tuple(accepted.values()), known=tuple(known.values())
    )


def opening_text(page: Page) -> Iterator[str]:
    """Write what stands above the first finding of a run."""
    yield from cautions_text(page)
    yield ""


def closing_text(tallies: Sequence[NoteTally], rules: int, page: Page) -> Iterator[str]:
    """Write what no document was checked for, a line for each, and what they come to."""
    yield from _left_out(tallies, page)
    for each in tallies:
        diagrams = counted(each.diagrams, "diagram")
        yield from page.plain_headline(f"{visible(each.file)}: {diagrams}: {each.verdict}")
    yield ""
    yield from page.plain_headline(summary(tallies, rules))


def _left_out(tallies: Sequence[NoteTally], page: Page) -> Iterator[str]:
    """Say what documents were not checked for: in full where all give one reason."""
    reasons: dict[str, dict[str, None]] = {}
    documents: Counter[str] = Counter()
    for each in tallies:
        for what, reason in each.not_checked:
            reasons.setdefault(what, {})[reason] = None
        documents.update({what for what, _reason in each.not_checked})
    if not reasons:
        return
    yield from page.heading("not checked:")
    for what, why in reasons.items():
        words = next(iter(why)) if len(why) == 1 else "each for its own reason; --as json has them"
        where = counted(documents[what], "document")
        yield from page.item(visible(f"{what}, in {where}: {words}"))
    yield ""


def _stale(drawing: NoteDrawing, page: Page) -> Iterator[str]:
    message = f"{visible(drawing.path)} {_WORDS[drawing.state]}"
    yield from page.headline(visible(str(drawing.wanted.span)), drawing.state, message)


def _not_checked(file: NoteFile, page: Page) -> Iterator[str]:
    """Say what of a document was not checked; what no check looks at is not said here."""
    if file.document is None:
        return
    items: list[NotChecked] = list(file.document.document.passed_over)
    for diagram in file.diagrams:
        items += [item for item in diagram.diagram.checked.not_checked if item.span]
    said = unique(_words(items))
    if said:
        yield from page.heading(f"{visible(file.file)}: not checked:")
        for words in said:
            yield from page.item(words)
        yield ""


def _assumed(file: NoteFile, page: Page) -> Iterator[str]:
    by_source: dict[str, list[str]] = {}
    for diagram in file.diagrams:
        for item in diagram.diagram.checked.assumed:
            by_source.setdefault(item.source, []).append(item.what)
    for source, whats in by_source.items():
        yield from page.heading(f"{visible(file.file)}: taken as given ({visible(source)}):")
        for what in unique(whats):
            yield from page.item(visible(what))
        yield ""


def _words(items: Iterable[NotChecked]) -> Iterator[str]:
    for item in items:
        yield visible(f"{item.span}: {item.what}: {item.reason}")
