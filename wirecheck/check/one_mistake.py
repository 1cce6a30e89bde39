"""Findings that one change of the wiring mends together are one mistake.

A lead on the wrong screw leaves its own screw empty, opens one circuit and closes another; several
rules see it, each from its side.  Which findings belong together is tried: a lead that they name is
landed elsewhere, taken out, exchanged or run, as `trials` has it.  Those that are gone then, with
nothing new in their place, are one mistake, and of them the one that names the lead speaks.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from itertools import islice
from typing import Final, NamedTuple

from wirecheck.check.trials import Trial, trials
from wirecheck.circuit.nets import Nets
from wirecheck.language.derive import with_derived_defaults
from wirecheck.model.diagram import Diagram, Terminal
from wirecheck.model.finding import Breaks, Finding, Related
from wirecheck.rules.facts import Facts
from wirecheck.rules.registry import RULES

#: In a larger diagram, and with more findings than these, nothing is tried; nor are more changes.
MOST_LEADS: Final = 300
MOST_FINDINGS: Final = 24
MOST_TRIALS: Final = 200

#: What tells one finding from another when the wiring has changed.
_Key = tuple[str, str, frozenset[Terminal]]
#: What a check says of a diagram before anything is tried.
Judge = Callable[[Facts], Iterable[Finding]]


class _Mend(NamedTuple):
    """A change, and the findings that it mends."""

    trial: Trial
    mended: tuple[Finding, ...]


def told_once(facts: Facts, findings: Sequence[Finding], judge: Judge) -> list[Finding]:
    """Leave out all but one of the findings of each mistake.

    Args:
        facts: of the diagram.
        findings: what was found in it.
        judge: finds what is wrong in a diagram, with the same measure.
    """
    left, kept = list(findings), list[Finding]()
    if len(facts.diagram.leads) > MOST_LEADS or len(left) > MOST_FINDINGS:
        return left
    while len(left) > 1 and any(each.breaks > Breaks.WORKMANSHIP for each in left):
        mend = _best(facts, left, judge)
        if mend is None:
            break
        kept.append(_told(mend))
        left = [each for each in left if each not in mend.mended]
    return [*kept, *left]


def _best(facts: Facts, findings: Sequence[Finding], judge: Judge) -> _Mend | None:
    """The change that mends the most findings, two at least; the first of several."""
    best: _Mend | None = None
    for trial in islice(trials(facts, findings), MOST_TRIALS):
        mended = _mended(facts.diagram, trial, findings, judge, len(best.mended) if best else 1)
        if mended:
            best = _Mend(trial, mended)
            if len(mended) == len(findings):
                break
    return best


def _mended(
    diagram: Diagram, trial: Trial, findings: Sequence[Finding], judge: Judge, more_than: int
) -> tuple[Finding, ...]:
    """The findings that a change mends, if they are more than so many and none is new."""
    parts = with_derived_defaults(diagram.parts, trial.leads)
    changed = replace(diagram, parts=parts, leads=trial.leads, _shown={})
    facts = Facts(changed, Nets(changed))
    if len(findings) - _still_raised(facts, findings) <= more_than:
        return ()
    before = {_key(each) for each in findings}
    after = {_key(each): each.breaks for each in judge(facts)}
    mended = tuple(each for each in findings if _key(each) not in after)
    is_new = any(grade > Breaks.WORKMANSHIP for key, grade in after.items() if key not in before)
    return mended if not is_new and len(mended) > more_than else ()


def _still_raised(facts: Facts, findings: Iterable[Finding]) -> int:
    """How many of the findings their own rules still raise."""
    count = 0
    for name in dict.fromkeys(each.rule for each in findings):
        if name in RULES:
            raised = {_key(each) for each in RULES[name].check(facts)}
            count += sum(each.rule == name and _key(each) in raised for each in findings)
    return count


def _told(mend: _Mend) -> Finding:
    """The finding that speaks for all: it names the lead, and says the worst of it."""
    changed = set(mend.trial.changed)

    def rank(finding: Finding) -> tuple[bool, bool, int, bool]:
        grave = finding.breaks > Breaks.WORKMANSHIP
        general = finding.rule in RULES and RULES[finding.rule].rule.general
        return grave, bool(changed & {*finding.lead_numbers}), finding.breaks, not general

    speaker = max(mend.mended, key=rank)
    others = (
        Related(each.span, f"the same mistake: {each.message}")
        for each in mend.mended
        if each is not speaker and each.breaks > Breaks.WORKMANSHIP
    )
    return speaker._replace(related=(*speaker.related, *others))


def _key(finding: Finding) -> _Key:
    return finding.rule, finding.fault, frozenset(finding.at_terminals)
