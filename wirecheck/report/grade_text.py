"""The marks of a class as a trainer reads them: a line each, then the class as a whole."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecheck.grade.classroom import Classroom
from wirecheck.report.checks import counted
from wirecheck.report.grade_sheet import mark_words, sheet_text
from wirecheck.report.page import Page
from wirecheck.report.visible import visible


def grades_text(
    found: Classroom, pictures: Sequence[str], folder: str, page: Page
) -> Iterator[str]:
    """Write the report of a class, line by line; of a single drawing its whole sheet.

    Args:
        found: the class.
        pictures: paths of the summary sheets.
        folder: where the sheets are.
        page: what it is written for.
    """
    if len(found.records) == 1:
        yield from sheet_text(found.records[0], page)
    else:
        for record in found.records:
            yield from page.plain_headline(
                visible(f"{record.file}: {record.name}: {mark_words(record)}")
            )
        yield ""
        yield from _class(found, page)
    yield ""
    for picture in pictures:
        yield from page.item(f"drawn: {visible(picture)}", "")
    yield from page.plain_headline(f"{_summary(found)}; sheets are in {visible(folder)}")


def _class(found: Classroom, page: Page) -> Iterator[str]:
    if found.average is not None and found.middle is not None:
        yield from page.item(f"mean {found.average:.1f}, median {found.middle:.1f}", "")
    if found.common:
        yield from page.heading("commonest mistakes:")
    for each in found.common:
        unsafe = ", unsafe" if each.unsafe else ""
        yield from page.item(f"{each.drawings:3}  {visible(each.what)} ({each.circuit}{unsafe})")
    if found.circuits:
        yield from page.heading("right, by circuit:")
    for share in found.circuits:
        yield f"  {share.share:4.0%}  {share.circuit}"


def _summary(found: Classroom) -> str:
    words = [f"{counted(len(found.records), 'submission')}, {len(found.marks)} marked"]
    words += [f"{found.capped} capped as unsafe"] if found.capped else []
    left = len(found.records) - len(found.marks)
    words += [f"{left} without a mark"] if left else []
    return ", ".join(words)
