"""A replacement as a technician reads it: what comes out, where each lead goes, what to fit."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecheck.model.finding import Finding
from wirecheck.replace.replacement import Replacement
from wirecheck.replace.words import AFTERWARDS, cross_rows, device_lines, old_mistakes
from wirecheck.report.check_text import cautions_text, problem_text
from wirecheck.report.page import Page
from wirecheck.report.replace_files import ReplaceFile, difference, verdict
from wirecheck.report.table_text import table_text
from wirecheck.report.visible import visible

HEADINGS = ("wire", "colour", "other end", "comes off", "goes to")


def replace_text(file: ReplaceFile, page: Page) -> Iterator[str]:
    """Write the report of a replacement, line by line."""
    title = visible(file.title) if file.title else "not read"
    yield from page.plain_headline(f"{visible(file.file)}: {title}")
    if file.replacement is not None and (mistakes := old_mistakes(file.replacement)):
        yield from map(page.alarm, page.item(f"! {mistakes}", ""))
    for problem in file.problems:
        yield from problem_text(problem, page)
    for reason in file.refused:
        yield from page.item(f"refused: {visible(reason)}", "")
    if file.replacement is not None:
        yield from cautions_text(page)
        yield ""
        yield from _replaced(file, file.replacement, page)
    yield ""
    yield from page.plain_headline(verdict(file))


def _replaced(file: ReplaceFile, done: Replacement, page: Page) -> Iterator[str]:
    yield from page.heading("devices:")
    for line in device_lines(done.plan):
        yield from page.item(visible(line))
    yield from page.heading("lead by lead, wire numbers and other ends as found:")
    yield from table_text(HEADINGS, cross_rows(done), page)
    yield from _listed("leads to run:", missing(done), page)
    yield from _listed("to fit, cut or look at:", [task.words for task in done.tasks], page)
    if done.plan.gas_side:
        yield from page.heading("on the gas side, which no lead shows:")
        for line in done.plan.gas_side:
            yield from map(page.alarm, page.item(f"! {visible(line)}"))
    yield from _listed(
        "set aside in the text, as it names what is no longer there:", done.set_aside, page
    )
    yield from _listed(
        "read again in the new text, as it may tell of the old wiring:", done.old_comments, page
    )
    yield from _listed("as found, by the simulation:", file.does_before, page)
    yield from _findings("as found, a check says:", done.before.grave, done.before.trouble, page)
    yield from _listed("then, by the simulation:", file.does_after, page)
    yield from _findings("then, a check says:", done.proof.grave, done.proof.trouble, page)
    workmanship = [each for each in done.proof.checked.findings if each not in done.proof.grave]
    yield from _findings("of workmanship then:", workmanship, (), page)
    for each in done.variants:
        name = visible(each.name)
        yield from _findings(
            f"then, a check of variant {name} says:", each.proof.grave, each.proof.trouble, page
        )
        yield from _listed(f"the text of variant {name} has problems:", each.problems, page)
    yield from _listed("claims of the text that hold no longer:", done.refuted, page)
    yield from _listed("the new text has problems:", done.problems, page)
    yield from page.heading("afterwards:")
    for line in AFTERWARDS:
        yield from map(page.alarm, page.item(f"! {line}"))
    yield from _text(file, page)


def missing(done: Replacement) -> list[str]:
    """The leads to run, with what they are for."""
    return [f"{each.a} to {each.b}: {each.lead} ({each.why})" for each in done.missing]


def _listed(heading: str, lines: Sequence[str], page: Page) -> Iterator[str]:
    if lines:
        yield from page.heading(heading)
        for line in lines:
            yield from page.item(visible(line))


def _findings(
    heading: str, findings: Sequence[Finding], trouble: tuple[str, ...], page: Page
) -> Iterator[str]:
    told = [f"{each.breaks}: {each.message} [{each.rule}]" for each in findings]
    yield from _listed(heading, [*told, *trouble], page)


def _text(file: ReplaceFile, page: Page) -> Iterator[str]:
    if file.written:
        yield from page.item(f"written: {visible(file.written)}", "")
    else:
        yield from page.heading("the text would change so (--write or --out writes it):")
    yield from (visible(line) for line in difference(file))
    for path in file.drawings:
        yield from page.item(f"drawn: {visible(path)}")
