"""``wirecheck troubleshoot``: what it takes, what it says and how it ends."""

import json

from tests.cli.command_line import NO_BURNER_GROUND, UNKNOWN_KIND, CommandLine
from tests.sequence.heater import HEATER

CLASSIC = "pilot lights, spark goes on, no main"


def test_it_says_what_it_may_be_and_what_to_read_next(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("troubleshoot", "heater.wiring", "--seen", CLASSIC)
    assert (answer.code, answer.err) == (1, "")
    said = answer.out
    order = [
        "! No meter on the spark",
        "“spark goes on”",
        "WHAT IT MAY BE",
        "54 %: the burner ground",
        "NEXT",
        "  Jumper from box.GND",
        "! The jumper is for this test only",
        "AFTER THAT",
    ]
    places = [said.index(words) for words in order]
    assert places == sorted(places)
    assert said.endswith("A unit that runs again is not thereby safe.\n")


def test_answers_lead_to_repair_and_proof(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    jumper = "trial:ground-jumper:box=yes"
    said = wirecheck("troubleshoot", "heater.wiring", "--seen", CLASSIC, "--answer", jumper).out
    assert "TO MEND\n  Run a new ground lead box.GND to pilot.HOOD" in said
    assert said.index("TO MEND") < said.index("TO PROVE IT")


def test_json_goes_round_by_the_names_of_readings(wirecheck: CommandLine) -> None:
    """Another program asks, answers, and asks again until it is told the repair."""
    wirecheck.file("heater.wiring", HEATER)
    answers: list[str] = []
    for _round in range(10):
        given = [word for answer in answers for word in ("--answer", answer)]
        call = ["troubleshoot", "heater.wiring", "--seen", "no spark", "--as", "json", *given]
        diagnosis = json.loads(wirecheck(*call).out)["files"][0]["diagnosis"]
        if diagnosis["ending"]:
            break
        asked = diagnosis["next"]["reading"]
        answers.append(f"{asked['reading']}={asked['choices'][0] if asked['choices'] else 0}")
    assert len(answers) > 1
    assert diagnosis["ending"]["repair"]
    fault = diagnosis["groups"][0]["suspects"][0]["faults"][0]
    assert fault["likelihood_from"] == "common practice, no source"


def test_a_unit_that_works_ends_with_0(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    seen = "pilot lights, spark on, the main lights, it runs on"
    answer = wirecheck("troubleshoot", "heater.wiring", "--seen", seen)
    assert answer.code == 0
    assert "the unit works" in answer.out.replace("\n    ", " ")


def test_mistakes_of_the_drawing_come_first(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", NO_BURNER_GROUND)
    answer = wirecheck("troubleshoot", "heater.wiring", "--seen", "no spark")
    assert answer.code == 1
    assert answer.out.index("The drawing itself has 1 finding") < answer.out.index("WHAT IT MAY")


def test_what_cannot_be_used_ends_with_2(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    wirecheck.file("odd.wiring", UNKNOWN_KIND)
    said = wirecheck("troubleshoot", "heater.wiring", "--seen", "purple smoke")
    assert said.code == 2
    assert "--seen:1:1: problem: “purple smoke” is not understood" in said.out
    assert "heater.wiring:1:1" not in said.out
    answered = wirecheck("troubleshoot", "heater.wiring", "--answer", "look:gass=1")
    assert answered.code == 2
    assert "did you mean look:gas?" in answered.out
    bare = wirecheck("troubleshoot", "heater.wiring", "--answer", "trial:ground-jumper:box").out
    assert "write trial:ground-jumper:box=VALUE" in bare.replace("\n    ", " ")
    maybe = ("--answer", "trial:ground-jumper:box=maybe")
    said = wirecheck("troubleshoot", "heater.wiring", *maybe)
    assert "--answer:1:1: problem: answer with yes or no, or with a number: 1 the main" in said.out
    assert "odd.wiring:2:13: problem" in wirecheck("troubleshoot", "odd.wiring").out
    nobody = wirecheck("troubleshoot", "heater.wiring", "--calls", "limit")
    assert nobody.code == 2
    assert "--calls:1:1: problem: " in nobody.out
    assert "calls for no heat" in nobody.out


def test_a_smell_of_gas_is_answered_with_what_to_do(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("troubleshoot", "heater.wiring", "--seen", "I smell gas, no spark")
    assert answer.code == 2
    said = answer.out.replace("\n    ", " ").replace("\n  ", " ")
    assert "leave now, with everybody; touch no switch" in said
    assert "WHAT IT MAY BE" not in answer.out
