"""A comparison as a technician reads it: the verdict, the differences by circuit, a state."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from wirecheck.compare.result import Comparison
from wirecheck.report.check_text import problem_text
from wirecheck.report.compared import ComparedFiles, verdict
from wirecheck.report.page import Page
from wirecheck.report.visible import visible


def compare_text(files: ComparedFiles, page: Page) -> Iterator[str]:
    """Write the report of a comparison, line by line."""
    for problem in files.problems:
        yield from problem_text(problem, page)
    if files.problems:
        yield ""
    if files.comparison is not None:
        yield from _compared(files, files.comparison, page)
    names = f"{visible(files.first)} and {visible(files.second)}"
    yield from page.plain_headline(f"{names}: {verdict(files)}")


def _compared(files: ComparedFiles, found: Comparison, page: Page) -> Iterator[str]:
    for circuit, differences in groupby(found.differences, lambda each: each.circuit):
        yield from page.heading(f"{circuit.value}:")
        for difference in differences:
            yield from page.item(visible(difference.message))
    for seen in found.seen:
        yield from page.heading(f"seen {visible(seen.when)}:")
        yield from page.item(f"{visible(files.first)}: {visible(seen.first)}")
        yield from page.item(f"{visible(files.second)}: {visible(seen.second)}")
    if found.does_first != found.does_second:
        yield from page.heading("on a call for heat:")
        for name, does in ((files.first, found.does_first), (files.second, found.does_second)):
            for sentence in does:
                yield from page.item(f"{visible(name)}: {visible(sentence)}")
    if found.remarks:
        yield from page.heading("beside that:")
        for remark in found.remarks:
            yield from page.item(visible(remark))
    if found.differences or found.seen or found.remarks:
        yield ""
