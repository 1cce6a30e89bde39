"""The sheet of one apprentice in words: the mark, and each lost point with its reason."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.grade.record import Lost, Record
from wirecheck.report.check_text import cautions_text
from wirecheck.report.page import Page
from wirecheck.report.visible import visible

_HOW = {
    "structure": "wired as the key is",
    "function": "wired otherwise than the key, and it does the same",
}

_STATUS = {"mended": "slips mended", "partly read": "partly read"}


def mark_words(record: Record) -> str:
    """The mark, or why there is none."""
    if record.mark is None:
        return f"{record.status}: {record.reason}" if record.reason else record.status
    words = f"{record.mark:g} of {record.out_of:g}"
    if record.unsafe:
        words += ", capped: unsafe"
    return words if record.status == "marked" else f"{words} ({_STATUS[record.status]})"


def sheet_text(record: Record, page: Page) -> Iterator[str]:
    """Write the sheet of one submission, line by line."""
    yield from page.heading(f"{visible(record.name)}: {visible(mark_words(record))}")
    yield from page.item(f"file: {visible(record.file)}")
    if record.lost:
        yield from cautions_text(page)
    yield from _problems(record, page)
    yield from _mark(record, page)
    if record.lost:
        yield from page.heading("lost points:")
    told: set[str] = set()
    for lost in record.lost:
        yield from _lost(lost, page)
        if lost.caution and lost.caution not in told:
            yield from map(page.alarm, page.item(f"! {visible(lost.caution)}", "     "))
            told.add(lost.caution)
    if record.does:
        yield from page.heading("on a call for heat:")
    for sentence in record.does:
        yield from page.item(visible(sentence))
    for sentence in record.key_does if record.does != record.key_does else ():
        yield from page.item(f"the key: {visible(sentence)}")
    for remark in record.remarks:
        yield from page.item(f"costs nothing: {visible(remark)}")


def _mark(record: Record, page: Page) -> Iterator[str]:
    """How the mark comes about."""
    if record.how in _HOW:
        yield from page.item(f"{_HOW[record.how]}")
    for reason in record.unsafe:
        yield from page.item(f"unsafe: {visible(reason)}")
    if record.before_cap is not None and record.mark != record.before_cap:
        yield from page.item(f"if it were safe: {record.before_cap:g} of {record.out_of:g}")
    yield from _circuits(record)


def _problems(record: Record, page: Page) -> Iterator[str]:
    for problem in record.problems:
        place = f"{problem.file}:{problem.line}:{problem.column}"
        yield from page.headline(visible(place), "problem", visible(problem.message))
    if record.status == "partly read":
        yield from page.item("marked by what could be read; mend these lines and mark it again")
    if record.status == "mended":
        yield from page.item("read as what stands nearest; these slips cost nothing")


def _circuits(record: Record) -> Iterator[str]:
    for each in record.circuits:
        right = f"{each.right} of {each.units} right" if each.circuit != "workmanship" else ""
        line = f"  {each.circuit:24} {right:>14}  {each.points:5.1f} of {each.out_of:.1f}"
        yield line


def _lost(lost: Lost, page: Page) -> Iterator[str]:
    where = f" (line {lost.line})" if lost.line else ""
    words = f"{lost.number}. {lost.circuit}, -{lost.points:.1f}{where}: {visible(lost.reason)}"
    yield from page.item(words)
    if lost.effect:
        yield from page.item(f"the unit: {visible(lost.effect)}", "     ")
