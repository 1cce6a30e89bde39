"""A claim that gas is off with a safety open is one of safety: refuted, so is its finding."""

import pytest

import wirecheck
from tests.sequence.heater import HEATER
from wirecheck.model.finding import Breaks


@pytest.mark.parametrize(
    ("claim", "breaks"),
    [
        ("main-valve off when limit open", Breaks.SAFETY),
        ("pilot-valve off when limit open during run", Breaks.SAFETY),
        ("main-valve off during run", Breaks.OPERATION),
        ("pilot-valve off during trial", Breaks.OPERATION),
    ],
)
def test_how_grave_a_refuted_claim_is(claim: str, breaks: Breaks) -> None:
    text = f"{HEATER}jumper limit.1 to limit.2\nexpect {claim}\n"
    built = wirecheck.load_text(text)
    assert not built.problems
    refuted = [f for f in wirecheck.check(built.diagram).findings if f.rule == "claim-refuted"]
    assert [finding.breaks for finding in refuted] == [breaks]
