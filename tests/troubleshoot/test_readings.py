"""What is never asked for, over all examples, and what is said beside what is asked."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from hypothesis import given, settings

from tests.contract.source import ROOT
from tests.sequence.test_rewired import rewired
from tests.troubleshoot.units import example
from wirecheck import load_text
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Terminal
from wirecheck.troubleshoot.conversation import Conversation
from wirecheck.troubleshoot.dictionary import Dictionary
from wirecheck.troubleshoot.endings import CAUTIONS, PROOF
from wirecheck.troubleshoot.modes import modes
from wirecheck.troubleshoot.reading import Reading
from wirecheck.troubleshoot.words import range_words

EXAMPLES = sorted(path.stem for path in (ROOT / "examples").glob("*.wiring"))
PROBED = ("volts", "ohms", "microamps")


def nets_of(known: Dictionary, *roles: str) -> set[int]:
    """The nets of terminals that play some roles, worked out from the diagram alone."""
    nets = Nets(known.diagram)
    parts = known.diagram.parts.values()
    grounds = {nets.net(end) for part in parts for end in part.with_role("burner-ground")}
    return {nets.net(end) for part in parts for end in part.with_role(*roles)} - grounds


def probes(known: Dictionary) -> Iterator[tuple[Reading, Terminal]]:
    for reading in known.all_readings:
        if reading.kind in PROBED:
            yield from ((reading, end) for end in reading.points)
            if reading.lead is not None:
                lead = known.diagram.leads[reading.lead]
                yield from ((reading, end) for end in (lead.a, lead.b))


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_probe_goes_on_the_spark_nor_volts_on_the_flame_signal(name: str) -> None:
    known = example(name)
    spark, flame = nets_of(known, "spark", "electrode"), nets_of(known, "sense", "rod")
    looked = 0
    for reading, end in probes(known):
        net = Nets(known.diagram).net(end) if looked == 0 else known.nets.net(end)
        assert net not in spark, reading.ask
        if reading.kind == "volts":
            assert net not in flame, reading.ask
        looked += 1
    assert looked


@pytest.mark.parametrize("name", EXAMPLES)
def test_nothing_is_bridged_but_the_burner_ground_and_never_without_its_caution(name: str) -> None:
    known = example(name)
    for reading in known.all_readings:
        if reading.about == "ground-jumper":
            roles = [spec.role for end in reading.points if (spec := known.diagram.spec(end))]
            assert roles == ["burner-ground", "burner-metal"]
            assert any("for this test only" in each for each in reading.cautions)
        else:
            assert not re.search(r"jumper(?! for)|bridge|bypass", reading.ask), reading.ask


@pytest.mark.parametrize("name", EXAMPLES)
def test_line_voltage_and_moved_leads_have_their_caution(name: str) -> None:
    known = example(name)
    line = {
        known.nets.net(end)
        for part in known.diagram.parts.values()
        for end in part.with_role("line-hot", "line-hot-2", "line-hot-3")
    }
    for reading in known.readings:
        if reading.kind == "volts" and {known.nets.net(end) for end in reading.points} & line:
            assert any("Line voltage" in each for each in reading.cautions), reading.ask
        if reading.kind == "ohms":
            assert "Power and gas off" in reading.ask
            assert any("Power off at the disconnect" in each for each in reading.cautions)


def test_no_words_send_a_flame_to_gas_or_take_a_safety_away() -> None:
    said = " ".join(
        [mode.repair for mode in modes().values()]
        + [reading.ask for name in EXAMPLES[:3] for reading in example(name).all_readings]
    )
    assert not re.search(r"\b(match|lighter|torch|candle)\b|open flame", said)
    assert not re.search(r"\b(bypass|remove|take out) (the |a )?(limit|safety|switch)", said)
    assert "never bridge" in modes()["end-switch-open"].repair
    assert any("No flame to look for gas" in each for each in CAUTIONS)
    assert any("licensed people decide" in each for each in CAUTIONS)
    assert any("Leak-test" in each for each in PROOF)


@settings(max_examples=8, deadline=None, derandomize=True)
@given(rewired())
def test_however_it_is_wired_it_goes_on_to_an_end_and_touches_no_spark(text: str) -> None:
    known = Dictionary(load_text(text).diagram)
    spark, flame = nets_of(known, "spark", "electrode"), nets_of(known, "sense", "rod")
    for reading, end in probes(known):
        assert known.nets.net(end) not in spark
        assert reading.kind != "volts" or known.nets.net(end) not in flame
    conversation = Conversation.begun(known)
    for step in range(6):
        diagnosis = conversation.diagnosis
        assert (diagnosis.advice is None) != (diagnosis.ending is None)
        if diagnosis.advice is None:
            return
        outcomes = diagnosis.advice.outcomes
        conversation = conversation.answer(
            diagnosis.advice.reading, outcomes[step % len(outcomes)].value
        )


def test_a_one_rod_lead_carries_the_spark_and_gets_no_microammeter() -> None:
    kinds = {reading.kind for reading in example("workshop-heater-one-rod").readings}
    assert "microamps" not in kinds
    assert "trial" in kinds


@pytest.mark.parametrize("name", ["furnace-room-heater", "hangar-heater-direct"])
def test_no_volts_are_read_at_a_burner(name: str) -> None:
    """It is beside the spark, and a screw may earth it: 24 V there say nothing of its lead."""
    known = example(name)
    burners = {key for key, part in known.diagram.parts.items() if part.family == "burner"}
    assert burners
    volts = [each for each in known.readings if each.kind == "volts"]
    assert volts
    assert not any(end.part in burners for each in volts for end in each.points)


@pytest.mark.parametrize(
    ("key", "values", "words"),
    [
        ("volts:limit.1:xfmr.c:idle", (25.2, 26.0), "about 26 V"),
        ("volts:limit.1:xfmr.c:idle", (0.0, 0.1), "0 V"),
        ("volts:limit.1:xfmr.c:idle", (5.0, 19.0), "5.0 to 19 V"),
        ("microamps:box", (0.0, 0.0), "0 uA"),
        ("microamps:box", (0.0, 0.7), "under 2 uA, or unsteady"),
        ("microamps:box", (3.6, 3.6), "2 uA or more, steady"),
    ],
)
def test_outcomes_are_told_as_a_meter_shows_them(
    key: str, values: tuple[float, ...], words: str
) -> None:
    assert range_words(example("furnace-room-heater").by_key[key], values) == words
