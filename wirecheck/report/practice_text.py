"""What exercises were made and where they lie, as the trainer reads it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecheck.report.check_text import problem_text
from wirecheck.report.page import Page
from wirecheck.report.practices import Made, PracticeFile, summary
from wirecheck.report.visible import visible


def practice_text(files: Sequence[PracticeFile], page: Page) -> Iterator[str]:
    """Write the report of a run, line by line; it tells what is hidden."""
    for file in files:
        title = visible(file.title) if file.title else "not looked at"
        yield from page.plain_headline(f"{visible(file.file)}: {title}")
        for problem in file.problems:
            yield from problem_text(problem, page)
        for made in file.made:
            yield from _made(made, page)
        if file.blank:
            yield from page.heading("to be wired:")
            yield from (line for path in file.blank for line in page.item(visible(path)))
        yield ""
    yield from page.plain_headline(summary(files))


def _made(made: Made, page: Page) -> Iterator[str]:
    exercise = made.exercise
    yield from page.heading(visible(f"{exercise.name}, {exercise.difficulty.value} to find:"))
    for hidden in exercise.hidden:
        yield from page.item(visible(hidden.mistake.words))
    for name, paths in (("to hand out", made.hand_out), ("key", made.key)):
        if paths:
            yield from page.named(name, visible(", ".join(paths)))
