"""What mistakes cost: circuits by their units, each mistake its share of what is lost there."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from typing import Final, NamedTuple

from wirecheck.compare.circuits import Circuit
from wirecheck.grade.marked import CircuitMark, LostPoint
from wirecheck.grade.rubric import Rubric
from wirecheck.model.diagram import Diagram, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.text import Span

WORKMANSHIP: Final = "workmanship"
_HALF = 0.5


class Loss(NamedTuple):
    """A mistake before it has its points."""

    circuit: str
    what: str
    reason: str
    effect: str
    breaks: Breaks
    leads: tuple[int, ...]
    places: tuple[Terminal, ...]
    caution: str
    unsafe: tuple[Finding, ...] = ()


def loss_of(finding: Finding, circuit: str) -> Loss:
    """What a finding costs that no difference explains."""
    return Loss(
        circuit,
        finding.rule.replace("-", " "),
        finding.message,
        finding.seen_at_unit,
        finding.breaks,
        finding.lead_numbers,
        finding.at_terminals,
        finding.caution,
    )


def circuit_marks(
    losses: Iterable[Loss], units: Counter[Circuit], rubric: Rubric
) -> Iterator[CircuitMark]:
    """The mark of each circuit that the key has, workmanship last.

    Workmanship counts in full where half of the units at least are right, and less below that:
    nobody has worked well on what is not there.
    """
    lost = Counter(each.circuit for each in losses)
    there = [circuit for circuit in Circuit if units[circuit]]
    weights = rubric.weights
    total = sum(map(weights.of, there)) + weights.workmanship
    count = right_units = 0
    for circuit in there:
        out_of = rubric.out_of * weights.of(circuit) / total if total else 0.0
        right = max(0, units[circuit] - lost[circuit.value])
        points = out_of * right / units[circuit]
        count, right_units = count + units[circuit], right_units + right
        yield CircuitMark(circuit.value, units[circuit], right, points, out_of)
    out_of = rubric.out_of * weights.workmanship / total if total else 0.0
    share = max(0.0, 1 - rubric.workmanship.each * lost[WORKMANSHIP])
    drawn = min(1.0, right_units / count / _HALF) if count else 1.0
    yield CircuitMark(WORKMANSHIP, lost[WORKMANSHIP], 0, out_of * share * drawn, out_of)


def lost_points(
    losses: Sequence[Loss], circuits: Iterable[CircuitMark], diagram: Diagram
) -> Iterator[LostPoint]:
    """The mistakes with their points: those of one circuit share what it lost."""
    lost = Counter(each.circuit for each in losses)
    gone = {each.circuit: each.out_of - each.points for each in circuits}
    for number, loss in enumerate(losses, 1):
        points = gone.get(loss.circuit, 0.0) / lost[loss.circuit]
        finding = _as_finding(loss, diagram)
        yield LostPoint(
            number,
            loss.circuit,
            points,
            loss.what,
            loss.reason,
            loss.effect,
            loss.breaks,
            finding.span.line if finding.span.end else None,
            finding.leads,
            finding.terminals,
            loss.caution,
            finding,
        )


def _as_finding(loss: Loss, diagram: Diagram) -> Finding:
    return Finding(
        rule="lost-point",
        fault=loss.circuit,
        breaks=loss.breaks,
        also_breaks=(),
        message=loss.reason,
        span=_span(loss, diagram),
        seen_at_unit=loss.effect,
        leads=tuple(diagram.lead_name(diagram.leads[n]) for n in loss.leads),
        lead_numbers=loss.leads,
        terminals=tuple(map(diagram.show, loss.places)),
        at_terminals=loss.places,
        caution=loss.caution,
        source="the key",
    )


def _span(loss: Loss, diagram: Diagram) -> Span:
    """Where the drawing says it: the lead, else the part."""
    for number in loss.leads:
        return diagram.leads[number].span
    for place in loss.places:
        if place.part in diagram.parts:
            return diagram.parts[place.part].name_span
    return Span(diagram.source, 0, 0)


def rounded_down(mark: float) -> float:
    """To a tenth, so that nothing less than full marks reads as full marks."""
    return math.floor(mark * 10 + 1e-6) / 10
