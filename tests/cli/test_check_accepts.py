"""Comments that accept a finding: what they cover, what stays in sight, what is told of them."""

from __future__ import annotations

import pytest

from tests.cli.command_line import CommandLine
from tests.sequence.heater import HEATER

UNGROUNDED = HEATER.replace("wire box.GND to pilot.HOOD\n", "")
BOX = "part box is pilot-ignition-control: two-rod\n"
#: A lead that defeats the limit: a matter of safety.
BRIDGED = f"{HEATER}wire limit.1 to limit.2\n"


def _found(answer_document: dict[str, list[dict[str, object]]]) -> list[tuple[object, object]]:
    """Rules found and rules accepted in the only entry."""
    (entry,) = answer_document["files"]
    findings, accepted = entry["findings"], entry["accepted"]
    assert isinstance(findings, list)
    assert isinstance(accepted, list)
    return [
        *((each["rule"], "found") for each in findings),
        *((each["finding"]["rule"], each["reason"]) for each in accepted),
    ]


@pytest.mark.parametrize(
    "comment",
    [
        f"{BOX.rstrip()}  # accept burner-ground-missing: bench unit\n",
        f"{BOX.rstrip()}  # Accept burner-ground-missing , spark-lead-missing:  bench unit \n",
        f"# accept burner-ground-missing: bench unit\n\n# the control\n{BOX}",
        BOX.replace("\n", ",\n    trial 90 s  # accept burner-ground-missing: bench unit\n"),
        BOX.replace("\n", ",  # accept burner-ground-missing: bench unit\n    trial 90 s\n"),
    ],
)
def test_an_acceptance_covers_its_line_or_the_statement_below(
    wirecheck: CommandLine, comment: str
) -> None:
    wirecheck.file("heater.wiring", UNGROUNDED.replace(BOX, comment))
    answer = wirecheck("check", "--as", "json", "heater.wiring")
    found = _found(answer.document)
    assert ("burner-ground-missing", "bench unit") in found
    assert ("burner-ground-missing", "found") not in found


@pytest.mark.parametrize(
    "comment",
    [
        f"{BOX}# accept burner-ground-missing: too late\n",
        f"{BOX.rstrip()}  # accept burner-ground-missing on the bench\n",
        f"{BOX.rstrip()}  # do accept burner-ground-missing: no\n",
        f'note "x"  # accept burner-ground-missing: not here\n{BOX}',
    ],
)
def test_an_acceptance_elsewhere_covers_nothing(wirecheck: CommandLine, comment: str) -> None:
    wirecheck.file("heater.wiring", UNGROUNDED.replace(BOX, comment))
    answer = wirecheck("check", "--as", "json", "heater.wiring")
    assert ("burner-ground-missing", "found") in _found(answer.document)
    assert answer.code == 1


def test_what_is_accepted_is_listed_and_ends_the_call_well(wirecheck: CommandLine) -> None:
    accepting = BOX.replace("\n", "  # accept burner-ground-missing: bench unit\n")
    wirecheck.file("heater.wiring", UNGROUNDED.replace(BOX, accepting))
    answer = wirecheck("check", "heater.wiring")
    assert answer.code == 0
    assert "accepted:\n  heater.wiring:4:6: operation: no lead runs" in answer.out
    assert "[burner-ground-missing];" in answer.out
    assert "1 finding accepted: nothing else was found. This does not make the" in answer.out


def test_a_safety_finding_is_accepted_with_a_reason_and_stays_in_sight(
    wirecheck: CommandLine,
) -> None:
    wirecheck.file("a.wiring", BRIDGED)
    (entry,) = wirecheck("check", "--as", "json", "a.wiring").document["files"]
    (rule,) = [each["rule"] for each in entry["findings"]]
    assert entry["findings"][0]["breaks"] == "safety"
    text = BRIDGED.replace("limit.1 to limit.2", f"limit.1 to limit.2  # accept {rule}: a test rig")
    wirecheck.file("a.wiring", text)
    answer = wirecheck("check", "a.wiring")
    assert answer.code == 0
    assert f"[{rule}]" in answer.out
    assert ": safety: " in answer.out
    assert "! Gas off and power off before you move a lead." in answer.out


def test_a_safety_finding_without_a_reason_stays_a_finding(wirecheck: CommandLine) -> None:
    wirecheck.file("a.wiring", BRIDGED)
    (entry,) = wirecheck("check", "--as", "json", "a.wiring").document["files"]
    (rule,) = [each["rule"] for each in entry["findings"]]
    text = BRIDGED.replace("limit.1 to limit.2", f"limit.1 to limit.2  # accept {rule}")
    wirecheck.file("a.wiring", text)
    answer = wirecheck("check", "--as", "json", "a.wiring")
    assert answer.code == 1
    assert _found(answer.document) == [(rule, "found"), ("accept-without-reason", "found")]


def test_an_acceptance_that_nothing_needs_is_told(wirecheck: CommandLine) -> None:
    wirecheck.file("a.wiring", HEATER.replace(BOX, f"# accept burner-ground-missing\n{BOX}"))
    answer = wirecheck("check", "a.wiring")
    assert answer.code == 1
    assert "a.wiring:4:10: workmanship: nothing here is found by burner-ground-mis" in answer.out


def test_one_that_a_variant_needs_is_not_unused(wirecheck: CommandLine) -> None:
    text = HEATER.replace(BOX, f"# accept burner-ground-missing: an option\n{BOX}")
    wirecheck.file("a.wiring", f"{text}variant v\nremove wire box.GND to pilot.HOOD\nend\n")
    assert wirecheck("check", "a.wiring").code == 0


def test_a_rule_that_is_not_there_is_a_problem(wirecheck: CommandLine) -> None:
    wirecheck.file("a.wiring", HEATER.replace(BOX, f"# accept burner-grond-missing: x\n{BOX}"))
    answer = wirecheck("check", "a.wiring")
    assert answer.code == 2
    assert (
        "a.wiring:4:10: problem: no rule is called “burner-grond-missing”, so nothing is accepted; "
        "did you mean burner-ground-missing?" in answer.out
    )


def test_a_refuted_claim_can_be_accepted(wirecheck: CommandLine) -> None:
    wirecheck.file(
        "a.wiring", f"{HEATER}expect spark on during run  # accept claim-refuted: an old sheet\n"
    )
    assert wirecheck("check", "a.wiring").code == 0


def test_what_is_accepted_is_not_mended(wirecheck: CommandLine) -> None:
    accepting = BOX.replace("\n", "  # accept burner-ground-missing: bench unit\n")
    file = wirecheck.file("a.wiring", UNGROUNDED.replace(BOX, accepting))
    before = (wirecheck.folder / file).read_text()
    assert wirecheck("check", "--fix", "a.wiring").code == 0
    assert (wirecheck.folder / file).read_text() == before
