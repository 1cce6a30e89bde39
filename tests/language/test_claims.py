"""Claims and observations are read, their names and units checked, their truth left open."""
# ruff: noqa: E501 - each case stands in one line, its message whole

from __future__ import annotations

import pytest

from tests.language.said import load, problems

PARTS = """\
part box is pilot-ignition-control
part stat is thermostat
part limit is high-limit
part valve is gas-valve-3-wire
splice s1
"""
FIRST = PARTS.count("\n") + 1


@pytest.mark.parametrize(
    "claim",
    [
        "expect 24 V across box.PV and box.COM during trial",
        "expect main-valve off when limit open",
        "expect no-continuity across box.SENSE and earth",
        "expect 0.75 A through stat during run",
        "observe pilot-flame on, spark on, main-valve off during trial",
        "expect at least 20 V across box.TH and box.COM, at most 1 A through valve.PV..C",
        "expect between 20 V and 28 V across box.TH and s1 when limit closed and stat on during run",
        "EXPECT 22-26V ACROSS box.TH AND EARTH DURING Damper-Opening",
        "observe .5 A through stat, 3 µA through limit, continuity across limit",
        "expect box.lockout on, damper open, main-flame lit, pilot-flame out",
        "observe 24 V across box.24V and box.COM,\n    spark on\n",
    ],
)
def test_claims_that_read(claim: str) -> None:
    (noted,) = load(PARTS + claim).not_evaluated
    word = claim.split(maxsplit=1)[0].lower()
    assert (noted.statement, noted.reason) == (word, f"this {word} was read, not evaluated")


@pytest.mark.parametrize(
    ("claim", "expected"),
    [
        ("expect main-vale on", "8 [main-vale] “main-vale” is neither a part nor a signal; did you mean main-valve?"),
        ("expect spark on when limt open", "22 [limt] “limt” is neither a part nor a signal; did you mean limit?"),
        ("expect 24 V across box.PX and earth", "24 [PX] no terminal PX on box; it has TH, 24V, COM, PV, MV, VC, GND, SENSE, SPARK, D-HOT, D-CALL, D-PROVED, D-COM"),
        ("expect 24 V across bx.PV and earth", "20 [bx] no part or splice is called “bx”; did you mean box?"),
        ("expect bx.spark on", "8 [bx] no part or splice is called “bx”; did you mean box?"),
        ("expect 24 A across box.PV and earth", "8 [24 A] “24 A” stands before across, which takes volts"),
        ("expect 24 V through stat", "8 [24 V] “24 V” stands before through, which takes amperes"),
        ("expect 24 V across box.PV", "20 [box] the second end is missing: across ONE and OTHER"),
        ("expect 24 V across earth", "20 [earth] the second end is missing: across ONE and OTHER"),
        ("expect 24 V across valve", "20 [valve] name the terminal of valve; it has PV, MV and C"),
        ("expect 24 V across limit and earth", "20 [limit] name the terminal of limit; it has 1 and 2"),
        ("expect 24 V across limit.1..2 and earth", "20 [limit] name two ends: one terminal and another, with “and” between them"),
        ("expect 1 A through nothing", "20 [nothing] no part or splice is called “nothing”; there are box, stat, limit, valve and s1"),
    ],
)  # fmt: skip
def test_claims_about_what_is_not_there(claim: str, expected: str) -> None:
    assert problems(PARTS + claim) == [f"{FIRST}:{expected}"]
