"""What became of a diagram's claims, as findings of its check."""

from __future__ import annotations

from typing import Final

from wirecheck.check.claims import Answer, Bench
from wirecheck.check.engine import Checked, in_order
from wirecheck.check.text_rules import NEVER_TESTED, REFUTED, text_finding
from wirecheck.circuit.nets import Nets
from wirecheck.model.finding import Finding, NotChecked

_RULE_OF: Final = {"refuted": REFUTED, "never": NEVER_TESTED}
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


def _finding(nets: Nets, answer: Answer) -> Finding:
    claim, show = answer.claim, nets.diagram.show
    terminals = tuple(dict.fromkeys(claim.ends or ()))
    rule = _RULE_OF[answer.verdict]
    finding = text_finding(rule, claim.about, claim.span, answer.sentence())
    return finding._replace(terminals=tuple(map(show, terminals)), at_terminals=terminals)
