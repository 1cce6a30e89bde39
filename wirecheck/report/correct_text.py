"""A correction as a technician reads it: what to move, what the unit does then, what was proved."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecheck.correct.answer import Answer, Correction
from wirecheck.correct.rewrite import Mended
from wirecheck.report.check_text import cautions_text, problem_text
from wirecheck.report.checks import counted
from wirecheck.report.corrections import VOCABULARY, CorrectedFile, difference, proved, summary
from wirecheck.report.page import Page
from wirecheck.report.visible import visible

#: Of the other answers so many are printed; the JSON form has all of them.
MOST_OTHERS = 6


def correct_text(files: Sequence[CorrectedFile], page: Page) -> Iterator[str]:
    """Write the report of a run of corrections, line by line."""
    cautioned = False
    for file in files:
        title = visible(file.title) if file.correction else "not looked at"
        yield from page.plain_headline(f"{visible(file.file)}: {title}")
        for problem in file.problems:
            yield from problem_text(problem, page)
        if file.correction and not file.correction.nothing_to_do:
            if not cautioned:
                yield from cautions_text(page)
                cautioned = True
            yield ""
            yield from _corrected(file, file.correction, page)
        elif file.correction:
            yield from page.item("nothing of safety or operation is found: nothing to correct")
        yield ""
    yield from page.plain_headline(summary(files))


def _corrected(file: CorrectedFile, correction: Correction, page: Page) -> Iterator[str]:
    yield from page.heading("as found:")
    for sentence in file.does_before:
        yield from page.item(visible(sentence))
    for finding in correction.before.grave:
        yield from page.item(visible(f"{finding.breaks}: {finding.message} [{finding.rule}]"))
    for trouble in correction.before.trouble:
        yield from page.item(visible(trouble))
    if file.mended:
        yield from _first(file.mended[0], file, page)
        yield from _others(file.mended[1:], page)
    elif correction.nearest:
        yield from _nearest(correction.nearest, correction, page)
    yield from page.heading("what was tried:")
    for sentence in proved(correction):
        yield from page.item(sentence)
    yield from page.item(VOCABULARY)
    yield from _text(file, page)


def _first(mended: Mended, file: CorrectedFile, page: Page) -> Iterator[str]:
    yield from page.heading("to correct it:")
    for number, words in enumerate(mended.words, 1):
        yield from page.item(f"{number}. {visible(words)}")
    yield from page.heading("the unit then, by the simulation:")
    for sentence in file.does_after or ("too little is drawn to run it",):
        yield from page.item(visible(sentence))
    left = mended.proof.checked.findings
    if left:
        yield from page.heading("of workmanship these are left:")
        for finding in left:
            yield from page.item(visible(f"{finding.message} [{finding.rule}]"))


def _others(others: Sequence[Mended], page: Page) -> Iterator[str]:
    """List what mends it with as few edits."""
    if not others:
        return
    yield from page.heading("as few edits, less likely the mistake:")
    for mended in others[:MOST_OTHERS]:
        yield from page.item(visible(f"or {'; '.join(mended.words)}"))
    if len(others) > MOST_OTHERS:
        left = counted(len(others) - MOST_OTHERS, "more way")
        yield from page.item(f"and {left}; --as json has all of them")


def _nearest(nearest: Answer, correction: Correction, page: Page) -> Iterator[str]:
    """Say how far it got."""
    from wirecheck.correct.rewrite import words_of

    state, left = nearest.state, nearest.proof.grave
    if len(left) >= len(correction.before.grave):
        return
    yield from page.heading("the nearest to it that was found, which is no correction:")
    for change in state.changes:
        yield from page.item(visible(words_of(state.found, change, state)))
    for finding in left:
        yield from page.item(visible(f"left: {finding.message} [{finding.rule}]"))


def _text(file: CorrectedFile, page: Page) -> Iterator[str]:
    if file.mended and file.mended[0].text is None:
        yield from page.item(visible(f"the text is left as it is: {file.mended[0].why_not}"))
    elif file.mended:
        word = "written" if file.written else "the text would change so (--write does it)"
        yield from page.heading(f"{word}:")
        yield from (visible(line) for line in difference(file))
    for drawing in file.drawings:
        yield from page.item(f"drawn: {visible(drawing.path)}")
