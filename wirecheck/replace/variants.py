"""The variants of a text after a replacement: each is a diagram of its own, and checked as one."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.correct.proof import Proof, proof
from wirecheck.language.build import Built
from wirecheck.language.variations import Variation, variations


class VariantThen(NamedTuple):
    """A variant with the new devices in it.

    Attributes:
        name: of the variant.
        proof: what a check and a run say of it then.
        problems: of its text, in words, that were not there before.
        is_worse: whether it has problems, or mistakes of safety or operation, that it had not.
    """

    name: str
    proof: Proof
    problems: tuple[str, ...]
    is_worse: bool


def variants_then(found: Built, then: Built) -> tuple[VariantThen, ...]:
    """Check every variant of the new text, and compare it with what it was."""
    if not then.nested.variants:
        return ()
    before = {variation.name: variation for variation in variations(found)}
    return tuple(_then(variation, before.get(variation.name)) for variation in variations(then))


def _then(variation: Variation, before: Variation | None) -> VariantThen:
    known = {problem.message for problem in before.problems} if before else set()
    problems = tuple(
        problem.message for problem in variation.problems if problem.message not in known
    )
    now = proof(variation.diagram)
    is_worse = bool(problems) or worse(proof(before.diagram) if before else None, now)
    return VariantThen(variation.name, now, problems, is_worse)


def worse(before: Proof | None, now: Proof) -> bool:
    """Whether something of safety or operation is wrong now that was not before."""
    rules = {finding.rule for finding in before.grave} if before else set()
    if any(finding.rule not in rules for finding in now.grave):
        return True
    return bool(now.trouble) and not (before and (before.trouble or before.grave))
