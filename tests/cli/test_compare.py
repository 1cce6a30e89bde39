"""``wirecheck compare``: its forms and how it ends."""

import pytest

from tests.cli.command_line import UNKNOWN_KIND, CommandLine, process
from tests.sequence.heater import HEATER

WRONG = HEATER.replace("wire box.GND to pilot.HOOD\n", "")
TURNED = HEATER.replace("xfmr.R to limit to stat", "xfmr.R to stat to limit.2..1")


@pytest.fixture
def heaters(wirecheck: CommandLine) -> CommandLine:
    for name, text in (("key", HEATER), ("same", TURNED), ("wrong", WRONG), ("odd", UNKNOWN_KIND)):
        wirecheck.file(f"{name}.wiring", text)
    return wirecheck


def test_two_that_do_the_same_end_with_0(heaters: CommandLine) -> None:
    answer = heaters("compare", "key.wiring", "same.wiring")
    assert (answer.code, answer.err) == (0, "")
    assert answer.out == ("key.wiring and same.wiring: they do the same: they are wired alike\n")


def test_two_that_differ_end_with_1_and_say_where(heaters: CommandLine) -> None:
    answer = heaters("compare", "key.wiring", "wrong.wiring")
    assert answer.code == 1
    assert "burner ground:\n  no lead joins box.GND to pilot.HOOD\n" in answer.out
    assert "seen in every position of the switches:" in answer.out
    assert "wrong.wiring: box: pilot lights, spark goes on" in answer.out
    assert answer.out.endswith("they do not do the same: 1 difference in the wiring\n")


@pytest.mark.parametrize(
    "names", [("key.wiring", "odd.wiring"), ("key.wiring", "nowhere"), ("key.wiring", ".")]
)
def test_what_cannot_be_used_ends_with_2(heaters: CommandLine, names: tuple[str, str]) -> None:
    answer = heaters("compare", *names)
    assert answer.code == 2
    assert f"{names[1]}:" in answer.out


def test_the_document_names_leads_with_their_places(heaters: CommandLine) -> None:
    document = heaters("compare", "wrong.wiring", "key.wiring", "--as", "json").document
    assert document["same"] is False
    (difference,) = document["differences"]
    (lead,) = difference["second_leads"]
    assert (lead["lead"], lead["file"], lead["line"]) == ("box.GND to pilot.HOOD", "key.wiring", 13)
    same = heaters("compare", "key.wiring", "same.wiring", "--as", "json").document
    assert (same["same"], same["how"]) == (True, "structure")
    odd = heaters("compare", "key.wiring", "nowhere", "--as", "json").document
    assert (odd["same"], odd["how"]) == (None, None)


def test_one_of_the_two_may_come_from_standard_input(heaters: CommandLine) -> None:
    heaters.file("key.wiring", HEATER)
    piped = process("compare", "key.wiring", "-", given=HEATER.encode())
    assert piped.code == 0
    assert heaters("compare", "-", "-").code == 2
