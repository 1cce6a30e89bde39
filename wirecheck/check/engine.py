"""Runs the rules over a diagram: findings, what was assumed, what was not checked."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, NamedTuple

from wirecheck.check.assumed import assumptions
from wirecheck.check.one_mistake import told_once
from wirecheck.check.standing_back import at_their_cause
from wirecheck.circuit.nets import Nets
from wirecheck.model.collector import collector_paused
from wirecheck.model.diagram import UNKNOWN_END, Diagram
from wirecheck.model.finding import Assumed, Finding, NotChecked
from wirecheck.properties.unexplained import unexplained
from wirecheck.rules.electrical.unstated import unstated
from wirecheck.rules.facts import Facts
from wirecheck.rules.registry import RULES

if TYPE_CHECKING:
    from wirecheck.check.claims import Answer


class Checked(NamedTuple):
    """What a check of one diagram says.

    Attributes:
        diagram: what was checked.
        nets: its nets, for whoever draws or simulates it next.
        findings: in the order of the text, worst first at one place.
        assumed: what was taken as given because the text does not say it.
        not_checked: what was not looked at, with the reason.
        claims: what became of the diagram's claims, where they were tried.
    """

    diagram: Diagram
    nets: Nets
    findings: tuple[Finding, ...]
    assumed: tuple[Assumed, ...]
    not_checked: tuple[NotChecked, ...]
    claims: tuple[Answer, ...] = ()


@collector_paused()
def check(diagram: Diagram) -> Checked:
    """Check a diagram by every rule, and by what must hold in every position of its switches."""
    nets = Nets(diagram)
    facts = Facts(diagram, nets)
    raised = _raised(facts)
    found = in_order(diagram, at_their_cause(diagram, raised))
    told = told_once(facts, found, _found)
    beyond = unexplained(nets, facts.conduction, told)
    return Checked(
        diagram,
        nets,
        in_order(diagram, (*told, *beyond.findings)),
        tuple(assumptions(diagram)),
        (*_not_checked(facts), *beyond.not_checked),
    )


def _raised(facts: Facts) -> list[Finding]:
    return [finding for rule in RULES.values() for finding in rule.check(facts)]


def _found(facts: Facts) -> Iterator[Finding]:
    """What the rules find in a diagram, each mistake at its cause as far as they know it."""
    return at_their_cause(facts.diagram, _raised(facts))


def in_order(diagram: Diagram, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings in the order of the text, worst first at one place, each once."""
    order = {source: number for number, source in enumerate(diagram.sources)}
    unique = {(f.rule, f.fault, f.span, f.message): f for f in findings}
    return tuple(
        sorted(
            unique.values(),
            key=lambda f: (order[f.span.source], f.span.start, -f.breaks, f.rule, f.message),
        )
    )


def _not_checked(facts: Facts) -> Iterator[NotChecked]:
    diagram = facts.diagram
    for item in diagram.not_evaluated:
        yield NotChecked(item.statement, item.reason, item.span)
    for seen in diagram.observations:
        yield NotChecked(seen.word, "what was seen is for troubleshooting, not judged", seen.span)
    for lead in diagram.leads:
        if UNKNOWN_END in (lead.a.part, lead.b.part):
            known = lead.a if lead.b.part == UNKNOWN_END else lead.b
            both = known.part == UNKNOWN_END
            which = "neither end of this lead" if both else f"the lead at {diagram.show(known)}"
            verb = "is traced" if both else "is not traced"
            reason = f"{which} {verb}: what is missing there is not judged"
            yield NotChecked("untraced lead", reason, lead.span)
    yield from unstated(facts)
    yield NotChecked(
        "the ignition sequence", "a check runs no call for heat: wirecheck sequence shows one"
    )
