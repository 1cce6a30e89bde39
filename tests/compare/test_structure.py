"""Whether two diagrams are wired alike, held to counts and matchers of other people."""

from __future__ import annotations

import random
from pathlib import Path

import pytest
from networkx.algorithms.isomorphism import GraphMatcher, categorical_node_match

from tests.compare.networks import drawn, series_parallel
from tests.contract.rewriting import REWRITINGS
from wirecheck import load, load_text
from wirecheck.compare.pattern import Pattern, pattern, same_pattern
from wirecheck.compare.wired import Wired

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.wiring"))
#: Series-parallel networks of n like elements: with their order in series kept, and forgotten
#: (OEIS A003430 and A000084, from memory, recomputed here by the generator and the patterns).
ORDERED, FORGOTTEN = (1, 2, 5, 15, 48), (1, 2, 4, 10, 24)


@pytest.mark.parametrize("size", range(1, 6))
def test_networks_of_like_switches_are_as_many_as_are_published(size: int) -> None:
    networks = series_parallel(size)
    assert len(networks) == ORDERED[size - 1]
    kinds: list[Pattern] = []
    for network in networks:
        graph = pattern(Wired(drawn(network)))
        if not any(same_pattern(graph, other) for other in kinds):
            kinds.append(graph)
    assert len(kinds) == FORGOTTEN[size - 1]


def test_in_the_grounded_lead_the_order_counts() -> None:
    """Of two unlike switches there, an earth fault between them bypasses one."""
    text = """
part xfmr is transformer
part lit is lamp: 24 V, 2 VA
part limit is high-limit
part door is door-switch
wire xfmr.R to lit.1
wire xfmr.C to {} to {} to lit.2
wire xfmr.C to earth
"""
    one, other = (
        pattern(Wired(load_text(text.format(*order)).diagram))
        for order in (("limit", "door"), ("door", "limit"))
    )
    assert same_pattern(one, other) is None
    hot = text.replace("to {} to {} to lit.2", "to lit.2").replace(
        "xfmr.R to lit.1", "xfmr.R to {} to {} to lit.1"
    )
    one, other = (
        pattern(Wired(load_text(hot.format(*order)).diagram))
        for order in (("limit", "door"), ("door", "limit"))
    )
    assert same_pattern(one, other) is not None


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_a_diagram_written_another_way_has_the_same_pattern(path: Path) -> None:
    text, diagram = path.read_text(encoding="utf-8"), load(path).diagram
    right = pattern(Wired(diagram))
    chance = random.Random(path.stem)  # noqa: S311
    for rewriting in chance.sample(REWRITINGS, 2):
        other = load_text(rewriting(text, diagram), "other")
        mapping = same_pattern(right, pattern(Wired(other.diagram)))
        assert mapping is not None, rewriting.__name__


def test_small_patterns_agree_with_another_matcher() -> None:
    """VF2 by itself, without hashes, says the same of networks of four switches."""
    graphs = [pattern(Wired(drawn(network))) for network in series_parallel(4)]
    match = categorical_node_match("label", None)
    for number, one in enumerate(graphs):
        for other in graphs[number:]:
            expected = GraphMatcher(one, other, node_match=match).is_isomorphic()
            mapping = same_pattern(one, other)
            assert (mapping is not None) == expected
            if mapping:
                assert all(other.has_edge(mapping[a], mapping[b]) for a, b in one.edges)
