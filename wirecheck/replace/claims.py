"""The claims of a text after a replacement: which of them hold no longer."""

from __future__ import annotations

from collections.abc import Hashable, Iterator

from wirecheck.check.claim_findings import CLAIM_RULES, with_claims
from wirecheck.correct.proof import Proof
from wirecheck.model.claim import Claim


def no_longer_true(before: Proof, after: Proof) -> tuple[str, ...]:
    """What the new text claims and does not hold, in sentences; what failed before is left out."""
    if not after.checked.diagram.claims:
        return ()
    failed = [_kind_of(claim) for claim, _why in _failing(before)]
    new = []
    for claim, why in _failing(after):
        if _kind_of(claim) in failed:
            failed.remove(_kind_of(claim))
        else:
            new.append(why)
    return tuple(new)


def _failing(proof: Proof) -> Iterator[tuple[Claim, str]]:
    """The claims that fail, each with the sentence that says so."""
    tried = with_claims(proof.checked)
    why = {f.span: f.message for f in tried.findings if f.rule in CLAIM_RULES}
    for answer in tried.claims:
        if answer.claim.span in why:
            yield answer.claim, why[answer.claim.span]


def _kind_of(claim: Claim) -> Hashable:
    """A claim without the names of its terminals, which are others on a new device."""
    return claim.about, claim.phase, claim.bounds, str(claim.state), claim.when
