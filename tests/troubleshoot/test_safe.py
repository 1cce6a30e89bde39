"""Where the power stays off, and where the gas stays shut."""

from __future__ import annotations

from tests.sequence.heater import HEATER
from tests.troubleshoot.units import dictionary, example, talk
from wirecheck.troubleshoot.conversation import Conversation
from wirecheck.troubleshoot.reading import Stage

ASTRAY = HEATER.replace("box.SPARK to pilot.SPARK", "box.SPARK to valve.PV")


def asked(conversation: Conversation) -> set[Stage]:
    """The stages of all that is asked for, nothing being known."""
    stages = set()
    while (advice := conversation.diagnosis.advice) is not None:
        stages |= {each.stage for each in (advice.reading, *advice.others)}
        conversation = conversation.answer(advice.reading, None)
    return stages


def test_with_the_spark_on_other_leads_no_power_goes_on() -> None:
    conversation = talk("no spark", dictionary(ASTRAY))
    assert "The power stays off: box.SPARK" in conversation.diagnosis.remarks[0]
    assert asked(conversation) <= {Stage.OFF}


def test_with_a_safety_finding_the_gas_stays_shut() -> None:
    conversation = talk("no spark", example("sense-on-spark"))
    assert "the gas stays shut" in conversation.diagnosis.remarks[0]
    assert asked(conversation).isdisjoint({Stage.RUN, Stage.WARM})


def test_gas_that_nobody_called_for_is_shut_first() -> None:
    conversation = talk("the main burns with no call")
    assert "shut the gas cock now" in conversation.diagnosis.remarks[0]
    assert asked(conversation).isdisjoint({Stage.RUN, Stage.WARM})
    modes = {fault.mode for group in conversation.diagnosis.groups
             for suspect in group.suspects for fault in suspect.faults}  # fmt: skip
    assert {"calls-always", "first-output-welded"} & modes


def test_a_burner_past_an_open_limit_is_shut_first() -> None:
    diagnosis = talk("main-flame on when limit open").diagnosis
    assert "shut the gas cock now" in diagnosis.dangers[0]
    assert diagnosis.remarks[0] == diagnosis.dangers[0]
    assert not talk("no spark").diagnosis.dangers
