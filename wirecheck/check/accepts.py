"""Findings that comments of the text accept, sorted out of a check."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Final, NamedTuple

from wirecheck.check.engine import Checked, in_order
from wirecheck.check.text_rules import TEXT_RULES, UNUSED, WITHOUT_REASON, text_finding
from wirecheck.language.accepts import Accept, accepts
from wirecheck.model.finding import Finding, Problem
from wirecheck.model.nearest import nearest
from wirecheck.properties.registry import PROPERTIES
from wirecheck.rules.registry import RULES

#: All that a finding can be called.
FINDING_NAMES: Final = (*RULES, *PROPERTIES, *TEXT_RULES)


class Accepted(NamedTuple):
    """A finding and what accepts it."""

    finding: Finding
    accept: Accept


class Sorted(NamedTuple):
    """A check, what of it is accepted, and what is wrong with the acceptances."""

    checked: Checked
    accepted: tuple[Accepted, ...]
    problems: tuple[Problem, ...]


def sort_out(checks: Sequence[Checked]) -> tuple[Sorted, ...]:
    """Sort the accepted findings out of the checks of one file, its variants among them.

    What no check of the file needs, and a safety finding accepted without a reason, become
    findings of the first of them that has the text where that stands.
    """
    sources = dict.fromkeys(source for each in checks for source in each.diagram.sources)
    stated = [accept for source in sources for accept in accepts(source)]
    if not stated:
        return tuple(Sorted(each, (), ()) for each in checks)
    sorted_out = [_sorted(each, stated) for each in checks]
    used = {_place(each.accept) for one in sorted_out for each in one.accepted}
    left = [each for one in checks for each in one.findings]
    about = {_place(accept): each for accept, each in _about(stated, used, left)}
    first, *others = (_with(one, about) for one in sorted_out)
    return (first._replace(problems=tuple(_unknown(stated))), *others)


def _place(accept: Accept) -> tuple[str, str]:
    """What tells an acceptance from others, also where several diagrams include its file."""
    return str(accept.span), accept.rule


def _with(one: Sorted, about: dict[tuple[str, str], Finding]) -> Sorted:
    """A check with the findings about acceptances in its texts, which are taken out of them."""
    sources = set(one.checked.diagram.sources)
    here = [key for key, finding in about.items() if finding.span.source in sources]
    if not here:
        return one
    findings = (*one.checked.findings, *(about.pop(key) for key in here))
    return one._replace(
        checked=one.checked._replace(findings=in_order(one.checked.diagram, findings))
    )


def _sorted(checked: Checked, stated: Iterable[Accept]) -> Sorted:
    accepted, left = [], []
    for finding in checked.findings:
        accept = next((each for each in stated if each.covers(finding)), None)
        if accept is None:
            left.append(finding)
        else:
            accepted.append(Accepted(finding, accept))
    return Sorted(checked._replace(findings=tuple(left)), tuple(accepted), ())


def _about(
    stated: Iterable[Accept], used: set[tuple[str, str]], found: Sequence[Finding]
) -> Iterator[tuple[Accept, Finding]]:
    for accept in stated:
        if _place(accept) in used or accept.rule not in FINDING_NAMES:
            continue
        with_reason = accept._replace(reason="any")
        is_there = any(with_reason.covers(each) for each in found)
        rule = WITHOUT_REASON if is_there else UNUSED
        yield accept, text_finding(rule, "accept", accept.span, rule=accept.rule)


def _unknown(stated: Iterable[Accept]) -> Iterator[Problem]:
    for accept in stated:
        if accept.rule not in FINDING_NAMES:
            near = nearest(accept.rule, FINDING_NAMES)
            hint = (
                f"; did you mean {near}?" if near else "; wirecheck explain --all lists the rules"
            )
            message = f"no rule is called “{accept.rule}”, so nothing is accepted{hint}"
            yield Problem(message, accept.span, near)
