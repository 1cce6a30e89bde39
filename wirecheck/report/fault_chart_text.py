"""A fault chart in words: each step with its ways on, as the printed pages have it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from wirecheck.drawing.faults.words import end_words
from wirecheck.report.page import Page
from wirecheck.report.troubleshoot_text import percent
from wirecheck.report.visible import visible
from wirecheck.troubleshoot.chart import Branch, Step


def chart_text(top: Step, page: Page) -> Iterator[str]:
    """Write a chart, line by line."""
    yield from page.heading("FAULT CHART")
    for step in top.readings:
        if step.reading is not None:
            yield from page.item(visible(f"{step.number}. {step.reading.ask}"), "")
            for caution in step.reading.cautions:
                yield from map(page.alarm, page.item(visible(f"! {caution}"), " " * 4))
            for branch in step.branches:
                words = f"{branch.words} ({percent(branch.probability)}): {_then(branch)}"
                yield from page.item(visible(words), " " * 4)
    if top.reading is None:
        yield from (line for words in end_words(top) for line in page.item(visible(words)))


def chart_json(step: Step) -> dict[str, Any]:
    """Return a step with all that follows from it."""
    return {
        "step": step.number,
        "probability": round(step.probability, 6),
        "reading": step.reading.key if step.reading else None,
        "ask": step.reading.ask if step.reading else None,
        "repair": list(step.ending.repair) if step.ending else [],
        "suspects": [each.what for group in step.groups for each in group.suspects]
        if step.reading is None
        else [],
        "ways": [
            {
                "words": branch.words,
                "probability": round(branch.probability, 6),
                "then": chart_json(branch.step),
            }
            for branch in step.branches
        ],
    }


def _then(branch: Branch) -> str:
    if branch.step.reading is not None:
        return f"go to step {branch.step.number}"
    return "; ".join(end_words(branch.step))
