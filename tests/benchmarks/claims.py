"""What a sheet's claims cost beside the check of its wiring."""

from statistics import median
from time import perf_counter

import wirecheck
from tests.benchmarks.figure import Figure
from tests.contract.source import ROOT
from wirecheck.check.engine import check

EXAMPLE = "potting-shed-options"
ROUNDS = 15
BOUND = 6.0


def claims_beside_rules() -> list[Figure]:
    """Compare a check that tries every claim with one that runs the rules alone, in turn."""
    built = wirecheck.load(ROOT / "examples" / f"{EXAMPLE}.wiring")
    diagrams = [built.diagram, *(each.diagram for each in wirecheck.variants(built))]
    count = sum(len(diagram.claims) for diagram in diagrams)
    pairs = []
    for _ in range(ROUNDS + 1):
        started = perf_counter()
        for diagram in diagrams:
            check(diagram)
        between = perf_counter()
        for diagram in diagrams:
            wirecheck.check(diagram)
        pairs.append((between - started, perf_counter() - between))
    alone_s, whole_s = (median(times) for times in zip(*pairs[1:], strict=True))
    each_ms = (whole_s - alone_s) / count * 1000
    return [
        Figure(
            f"check of {count} claims in {len(diagrams)} diagrams / the same without",
            whole_s / alone_s,
            BOUND,
            f"{whole_s * 1000:.0f} ms / {alone_s * 1000:.0f} ms, {each_ms:.1f} ms a claim",
        )
    ]
