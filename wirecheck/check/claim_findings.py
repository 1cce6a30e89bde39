"""What became of a diagram's claims, as findings of its check."""

from __future__ import annotations

from typing import Final

from wirecheck.check.claims import Answer, Bench
from wirecheck.check.engine import Checked, in_order
from wirecheck.check.text_rules import NEVER_TESTED, REFUTED, text_finding
from wirecheck.circuit.nets import Nets
from wirecheck.model.claim import Claim
from wirecheck.model.finding import Breaks, Finding, NotChecked

_RULE_OF: Final = {"refuted": REFUTED, "never": NEVER_TESTED}
_GAS: Final = frozenset({"pilot-valve", "main-valve", "pilot-flame", "main-flame"})
_PHASES_OF_GAS: Final = frozenset({"trial", "proving", "run"})
_PHASES_OF_MAIN_GAS: Final = frozenset({"run"})
#: The names of findings about claims.
CLAIM_RULES: Final = tuple(rule.name for rule in _RULE_OF.values())


def with_claims(checked: Checked) -> Checked:
    """Try every claim of a checked diagram: those that fail are findings."""
    bench = Bench(checked.nets)
    answers = tuple(bench.answer(claim) for claim in checked.diagram.claims)
    found = (_finding(checked.nets, each) for each in answers if _fails(each))
    undecided = (
        NotChecked(each.claim.word, each.sentence(), each.claim.span)
        for each in answers
        if each.verdict != "proved" and not _fails(each)
    )
    return checked._replace(
        findings=in_order(checked.diagram, (*checked.findings, *found)),
        not_checked=(*undecided, *checked.not_checked),
        claims=answers,
    )


def _fails(answer: Answer) -> bool:
    """Whether a claim is mistaken; one of the base says nothing of a variant built otherwise."""
    void = answer.claim.inherited and answer.by_build
    return answer.verdict in _RULE_OF and not void


def is_of_safety(claim: Claim) -> bool:
    """Whether a claim says that gas is off where it must be.

    That is with a contact open, and in any phase but those in which that gas is to flow.
    """
    state = claim.state
    if state is None or state.on or state.subject.signal not in _GAS:
        return False
    flows = _PHASES_OF_GAS if state.subject.signal.startswith("pilot") else _PHASES_OF_MAIN_GAS
    opened = any(not condition.on for condition in claim.when)
    return opened or (bool(claim.phase) and claim.phase not in flows)


def _finding(nets: Nets, answer: Answer) -> Finding:
    claim, show = answer.claim, nets.diagram.show
    terminals = tuple(dict.fromkeys(claim.ends or ()))
    rule = _RULE_OF[answer.verdict]
    finding = text_finding(rule, claim.about, claim.span, answer.sentence())
    if answer.verdict == "refuted" and is_of_safety(claim):
        finding = finding._replace(breaks=Breaks.SAFETY)
    return finding._replace(terminals=tuple(map(show, terminals)), at_terminals=terminals)
