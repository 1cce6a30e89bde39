"""A diagnosis as a technician reads it: what it may be, what to read next, what mends it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice

from wirecheck.report.check_text import problem_text
from wirecheck.report.page import Page
from wirecheck.report.troubleshoot_files import TroubleshootFile, summary
from wirecheck.report.visible import visible
from wirecheck.troubleshoot.diagnosis import Advice, Diagnosis, Ending, Group
from wirecheck.troubleshoot.endings import CAUTIONS
from wirecheck.troubleshoot.reading import Reading
from wirecheck.troubleshoot.words import told_words

#: So many groups of suspects are listed, the first of them with so many more of their own.
MOST_GROUPS, MOST_DETAILED, MOST_MORE = 12, 3, 4


def troubleshoot_text(files: Sequence[TroubleshootFile], page: Page) -> Iterator[str]:
    """Write the diagnoses, line by line."""
    for file in files:
        title = file.dictionary.diagram.title if file.dictionary else "no diagnosis"
        yield from page.plain_headline(f"{visible(file.file)}: {visible(title)}")
        if file.diagnosis:
            for danger in file.diagnosis.dangers:
                yield from map(page.alarm, page.item(visible(f"! {danger}"), ""))
            for caution in CAUTIONS:
                yield from map(page.alarm, page.item(f"! {caution}", ""))
            yield ""
        for problem in file.problems:
            yield from problem_text(problem, page)
        if file.chart:
            from wirecheck.report.fault_chart_text import chart_text

            yield from _remarks(file.diagnosis, page)
            yield from chart_text(file.chart, page)
        elif file.diagnosis:
            yield from diagnosis_text(file.diagnosis, page)
        yield from drawn_text(file, page)
        yield ""
    yield from page.plain_headline(summary(files))


def after_asking_text(files: Sequence[TroubleshootFile], page: Page) -> Iterator[str]:
    """What is left to say where all else was said while asking."""
    for file in files:
        for problem in file.problems:
            yield from problem_text(problem, page)
        yield from drawn_text(file, page)
    yield ""
    yield from page.plain_headline(summary(files))


def drawn_text(file: TroubleshootFile, page: Page) -> Iterator[str]:
    """Where the sheets lie."""
    for path in file.drawings:
        yield from page.item(f"drawn: {visible(path)}")


def diagnosis_text(diagnosis: Diagnosis, page: Page) -> Iterator[str]:
    """One diagnosis."""
    yield from page.heading("SEEN AND READ")
    for observation in diagnosis.observations:
        yield from page.item(visible(told_words(observation)))
    if not diagnosis.observations:
        yield from page.item("nothing yet: say what is seen with --seen, or with observe")
    yield from _remarks(diagnosis, page)
    yield ""
    yield from _suspects(diagnosis, page)
    yield ""
    if diagnosis.advice:
        yield from _advice(diagnosis.advice, page)
    if diagnosis.ending:
        yield from _ending(diagnosis.ending, page)


def _remarks(diagnosis: Diagnosis | None, page: Page) -> Iterator[str]:
    for remark in diagnosis.remarks if diagnosis else ():
        yield from map(page.alarm, page.item(visible(f"! {remark}")))


def _suspects(diagnosis: Diagnosis, page: Page) -> Iterator[str]:
    yield from page.heading("WHAT IT MAY BE")
    for place, group in enumerate(diagnosis.groups[:MOST_GROUPS]):
        yield from _group(group, page, MOST_MORE if place < MOST_DETAILED else 0)
    more = len(diagnosis.groups) - MOST_GROUPS
    if more > 0:
        yield from page.item(f"and {more} more, each less likely")


def _group(group: Group, page: Page, more: int) -> Iterator[str]:
    first, *others = group.suspects
    share = percent(group.probability)
    yield from page.item(visible(f"{share}: {first.what}"))
    told = {first.what}
    alike = (each for each in others if each.what not in told)
    for suspect in islice(alike, more):
        yield from page.item(visible(f"or {suspect.what}"), " " * 4)
    for observation in first.disagrees:
        yield from page.item(visible(f"against it: {told_words(observation)}"), " " * 4)


def percent(share: float) -> str:
    """A probability as it is printed: never 0 or 100 %, as nothing is certain."""
    if share > 0.99:
        return ">99 %"
    return "<1 %" if share < 0.01 else f"{share:.0%}".replace("%", " %")


def _advice(advice: Advice, page: Page) -> Iterator[str]:
    yield from page.heading("NEXT")
    yield from map(page.strong, page.item(visible(f"{advice.reading.ask}.".replace("?.", "?"))))
    yield from _cautions(advice.reading, page)
    for outcome in advice.outcomes:
        likely = percent(outcome.probability)
        words = f"{outcome.words} ({likely}): most likely {outcome.points_to}"
        yield from page.item(visible(words), " " * 4)
    yield from page.item(visible(f"as an answer: --answer '{advice.reading.key}=…'"), " " * 4)
    if advice.others:
        yield ""
        yield from page.heading("AFTER THAT, AS IT COMES OUT")
        for reading in advice.others:
            yield from page.item(visible(reading.ask))


def _cautions(reading: Reading, page: Page) -> Iterator[str]:
    for caution in reading.cautions:
        yield from map(page.alarm, page.item(visible(f"! {caution}"), " " * 4))


def _ending(ending: Ending, page: Page) -> Iterator[str]:
    sure = "TO MEND" if ending.is_sure else "NOTHING LEFT TO READ TELLS MORE; TO MEND FIRST"
    yield from page.heading(sure)
    for step in ending.repair:
        yield from page.item(visible(f"{step}."))
    yield ""
    yield from page.heading("TO PROVE IT")
    for step in ending.proof:
        yield from page.item(visible(step))
