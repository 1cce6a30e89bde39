"""The key of an exercise: what is wrong in it, how that shows at the unit, how it should be."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Diagram
from wirecheck.practice.exercise import Exercise, Hidden
from wirecheck.report.check_text import cautions_text
from wirecheck.report.page import Page
from wirecheck.report.visible import visible
from wirecheck.sequence.run import run
from wirecheck.sequence.script import heat_call


def key_text(exercise: Exercise, right: Diagram, page: Page) -> Iterator[str]:
    """Write the key of an exercise, line by line.

    Args:
        exercise: which.
        right: the diagram that it was made from.
        page: what it is written for.
    """
    diagram = exercise.checked.diagram
    yield from page.plain_headline(visible(f"Key to {exercise.name}: {diagram.title}"))
    yield from cautions_text(page)
    for number, hidden in enumerate(exercise.hidden, 1):
        yield ""
        yield from _mistake(number, hidden, page)
    yield ""
    yield from page.heading("a call for heat as wired here:")
    yield from _call(diagram, page)
    yield from page.heading("with the right wiring:")
    yield from _call(right, page)
    told = {finding for hidden in exercise.hidden for finding in hidden.findings}
    others = [finding for finding in exercise.checked.findings if finding not in told]
    if others:
        yield from page.heading("also found in it:")
        for finding in others:
            yield from page.item(visible(f"{finding.breaks}: {finding.message} [{finding.rule}]"))


def _mistake(number: int, hidden: Hidden, page: Page) -> Iterator[str]:
    yield from page.heading(visible(f"{number}. {hidden.mistake.words}"))
    kind = hidden.mistake.form.value.replace("-", " ")
    yield from page.named("to find", f"{hidden.difficulty.value} ({kind})")
    for finding in hidden.findings:
        yield from page.named(str(finding.breaks), visible(f"{finding.message} [{finding.rule}]"))
        if finding.seen_at_unit:
            yield from page.named("seen at the unit", visible(finding.seen_at_unit))
        if finding.caution:
            yield from page.named("caution", visible(finding.caution))


def _call(diagram: Diagram, page: Page) -> Iterator[str]:
    told = run(diagram, heat_call()).told
    for each in told:
        yield from page.item(visible(f"{each.control}: {each.outcome.sentence}"))
    if not told:
        yield from page.item("no ignition control is drawn: there is no sequence to run")
