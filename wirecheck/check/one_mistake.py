"""Findings that one change of the wiring mends together are one mistake.

A lead on the wrong screw leaves its own screw empty, opens one circuit and closes another; several
rules see it, each from its side.  Which findings belong together is tried: a lead that they name is
landed elsewhere, taken out, exchanged or run, as `trials` has it, until a change mends all that is
grave.  What is gone then, with nothing new in its place, is one mistake, and of it the finding that
names the lead speaks.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import islice
from typing import Final

from wirecheck.check.mending import Judge, Mend, Mending, is_grave
from wirecheck.check.trials import trials
from wirecheck.model.finding import Breaks, Finding, Related
from wirecheck.rules.facts import Facts
from wirecheck.rules.registry import RULES

#: In a larger diagram, and with more findings than these, nothing is tried; nor are more changes.
MOST_LEADS: Final = 300
MOST_FINDINGS: Final = 24
MOST_TRIALS: Final = 200


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
    while len(left) > 1 and any(map(is_grave, left)):
        mend = _best(facts, left, judge)
        if mend is None:
            break
        kept.append(_told(mend))
        left = [each for each in left if each not in mend.mended]
    return [*kept, *left]


def _best(facts: Facts, findings: Sequence[Finding], judge: Judge) -> Mend | None:
    """The first change that mends all that is grave, or else the most of it, two of several."""
    mending = Mending(facts.diagram, findings, judge)
    best: Mend | None = None
    for trial in islice(trials(facts, findings), MOST_TRIALS):
        enough = best.grave if best else min(1, mending.grave - 1)
        best = mending.mended(trial, more_than=enough) or best
        if best and best.grave == mending.grave:
            break
    return best


def _told(mend: Mend) -> Finding:
    """The finding that speaks for all: it names the lead, and says the worst of it."""
    changed = set(mend.trial.changed)

    def rank(finding: Finding) -> tuple[bool, bool, int, bool]:
        general = finding.rule in RULES and RULES[finding.rule].rule.general
        names_it = bool(changed & {*finding.lead_numbers})
        return is_grave(finding), names_it, finding.breaks, not general

    speaker = max(mend.mended, key=rank)
    others = (
        Related(each.span, f"the same mistake: {each.message}")
        for each in mend.mended
        if each is not speaker and each.breaks > Breaks.WORKMANSHIP
    )
    return speaker._replace(related=(*speaker.related, *others))
