"""Lists as tables of text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecheck.lists.lists import Lists
from wirecheck.lists.tables import What, tables
from wirecheck.report.check_text import cautions_text, problem_text
from wirecheck.report.lists_files import ListsFile, as_drawn, summary
from wirecheck.report.page import Page
from wirecheck.report.table_text import table_text
from wirecheck.report.visible import visible


def lists_text(files: Sequence[ListsFile], what: Sequence[What], page: Page) -> Iterator[str]:
    """Write the lists of a run, line by line."""
    cautioned = False
    for file in files:
        title = file.lists.checked.diagram.title if file.lists else "not listed"
        yield from page.plain_headline(visible(f"{file.file}: {title}"))
        if file.lists and not cautioned:
            yield from cautions_text(page)
            cautioned = True
        for problem in file.problems:
            yield from problem_text(problem, page)
        if file.lists:
            yield from _lists(file.lists, what, page)
        for picture in file.pictures:
            yield from page.item(f"drawn: {visible(picture)}")
        yield ""
    yield from page.plain_headline(summary(files))


def _lists(lists: Lists, what: Sequence[What], page: Page) -> Iterator[str]:
    if as_drawn(lists):
        yield from map(page.alarm, page.item(f"! {as_drawn(lists)}", ""))
    for each in tables(lists, what):
        yield ""
        yield from page.heading(each.title.upper())
        if each.note:
            yield from page.item(each.note, "")
        yield from table_text(each.headings, each.rows, page)
