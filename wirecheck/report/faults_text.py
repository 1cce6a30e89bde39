"""What single faults come to, as a table for people: the worst first, each with its reason."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from wirecheck.faults.campaign import Tried
from wirecheck.faults.effect import Class
from wirecheck.report.check_text import CAUTIONS, problem_text
from wirecheck.report.checks import counted
from wirecheck.report.faults_files import FaultsFile
from wirecheck.report.page import Page
from wirecheck.report.visible import visible

#: What the classes mean and where they come from.
EXPLAINED = (
    "hazard: gas flows, or high voltage gets, where it must not, with every switch working",
    "latent loss of a protection: still safe, but one more fault or an overheating is not caught",
    "damage: a supply is shorted, or a part gets too many volts",
    "no heat: a call does not light any more",
    "the classes and the three steps of noticing are our own; no standard gives a scale",
)


def faults_text(files: Sequence[FaultsFile], page: Page) -> Iterator[str]:
    """Write the tables of a run, line by line."""
    for caution in CAUTIONS:
        yield from map(page.alarm, page.item(f"! {caution}", ""))
    yield ""
    for line in EXPLAINED:
        yield from page.item(line, "")
    for file in files:
        yield ""
        yield from _file(file, page)


def _file(file: FaultsFile, page: Page) -> Iterator[str]:
    title = file.campaign.diagram.title if file.campaign else "not looked at"
    yield from page.plain_headline(f"{visible(file.file)}: {visible(title)}")
    for problem in file.problems:
        yield from problem_text(problem, page)
    if file.campaign is None:
        return
    counts = file.campaign.counted
    words = ", ".join(f"{number} {severity}" for severity, number in counts.items())
    yield from page.item(f"{counted(len(file.campaign.tried), 'single fault')}: {words}", "")
    for words in file.campaign.already:
        yield from page.item(f"wrong without any fault: {visible(words)}", "")
    by_class = groupby(file.campaign.tried, key=lambda each: each.effect.severity)
    for severity, some in by_class:
        yield ""
        yield from page.heading(f"{severity}:")
        if severity is Class.NO_EFFECT:
            names = "; ".join(_fault(each) for each in some)
            yield from page.item(names)
            continue
        for each in some:
            yield from _line(each, page)


def _fault(tried: Tried) -> str:
    return visible(f"{tried.fault.name} {tried.fault.kind}")


def _line(tried: Tried, page: Page) -> Iterator[str]:
    place = visible(str(tried.fault.span))
    yield from page.item(f"{place}: {_fault(tried)}")
    yield from page.item(f"{visible(tried.effect.reason)} ({tried.effect.detected})", "    ")
