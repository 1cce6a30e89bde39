"""What a check finds in what a text says of its wiring: claims that fail, idle acceptances.

They are written down as the rules about wiring are, with a wrong text and the right one, so that
they are explained in the same way.
"""

from __future__ import annotations

from types import MappingProxyType
from typing import Final

from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.text import Span
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

#: A heater that is wired right, for the examples.
_HEATER: Final = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is pilot-ignition-control
part valve is gas-valve-3-wire
part pilot is pilot-burner: two-rod
wire xfmr.R to limit to stat to box.TH
wire xfmr.C to box.COM
wire xfmr.C to earth
plug box to valve: PV, MV, VC to C
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD
"""
_CLAIMED: Final = Source("what the file itself claims", "judgement")
_FAMILY: Final = "what the text says"

REFUTED: Final = Rule(
    name="claim-refuted",
    title="What the file claims with expect holds",
    family=_FAMILY,
    breaks=Breaks.OPERATION,
    why=(
        "The wiring does something else than the sheet says: whoever measures by the sheet looks "
        "for a fault that is not there, or misses one that is. Put the wiring or the sheet right."
    ),
    blind_spots=(
        "A value is computed for the line volts drawn and for parts that are well; no volts are "
        "computed in the spark's and the flame signal's circuits."
    ),
    caution="",
    sources=(_CLAIMED,),
    faults=MappingProxyType(
        {
            about: Fault("claimed {claim}; computed {computed}: {why}", "")
            for about in ("volts", "amps", "continuity", "state")
        }
    ),
    bad=(
        Example(
            f"{_HEATER}expect 24 V across box.PV and box.COM during wait\n",
            (("volts", "24 V across box.PV and box.COM"),),
        ),
        Example(f"{_HEATER}expect spark on during run\n", (("state", "spark on"),)),
    ),
    good=(
        Example(f"{_HEATER}expect 24 V across box.PV and box.COM during trial\n"),
        Example(f"{_HEATER}expect spark off during run\n"),
    ),
)

NEVER_TESTED: Final = Rule(
    name="claim-never-tested",
    title="The phase and the conditions of a claim come about",
    family=_FAMILY,
    breaks=Breaks.OPERATION,
    why=(
        "A claim about what never comes proves nothing, however it reads: either the unit does not "
        "get there as it is wired, or the control is built otherwise."
    ),
    blind_spots=(
        "One call is run with the gas on and one with it shut; what only a flame that blows out "
        "or power that fails brings about is not looked for."
    ),
    caution="",
    sources=(_CLAIMED,),
    faults=MappingProxyType(
        {
            about: Fault("claimed {claim}; that never comes: {why}", "")
            for about in ("volts", "amps", "state")
        }
    ),
    bad=(
        Example(f"{_HEATER}expect main-valve off during lockout\n", (("state", "main-valve off"),)),
    ),
    good=(Example(f"{_HEATER}expect main-valve off during wait\n"),),
)

UNUSED: Final = Rule(
    name="accept-unused",
    title="Each acceptance is for a finding that is there",
    family=_FAMILY,
    breaks=Breaks.WORKMANSHIP,
    why="One that is left over hides the same mistake when somebody makes it again.",
    blind_spots="",
    caution="",
    sources=(PRACTICE,),
    faults=MappingProxyType(
        {"accept": Fault("nothing here is found by {rule}; take “accept {rule}” away", "")}
    ),
    bad=(
        Example(
            _HEATER.replace("-control\n", "-control  # accept burner-ground-missing\n"),
            (("accept", "burner-ground-missing"),),
        ),
    ),
    good=(Example(_HEATER),),
)

WITHOUT_REASON: Final = Rule(
    name="accept-without-reason",
    title="A safety finding is accepted only with a reason",
    family=_FAMILY,
    breaks=Breaks.WORKMANSHIP,
    why="Who reads the sheet next must know why a protection is missing.",
    blind_spots="Whether the reason is a good one nobody checks.",
    caution="",
    sources=(PRACTICE,),
    faults=MappingProxyType(
        {
            "accept": Fault(
                "{rule} is a safety finding here: it is accepted only with a reason, "
                "“# accept {rule}: why”",
                "",
            )
        }
    ),
    bad=(
        Example(
            f"{_HEATER}jumper limit.1 to limit.2  # accept safety-jumpered\n",
            (("accept", "safety-jumpered"),),
        ),
    ),
    good=(Example(f"{_HEATER}jumper limit.1 to limit.2  # accept safety-jumpered: a test rig\n"),),
)

#: All of them, by name.
TEXT_RULES: Final = MappingProxyType(
    {rule.name: rule for rule in (REFUTED, NEVER_TESTED, UNUSED, WITHOUT_REASON)}
)


def text_finding(record: Rule, fault: str, at: Span, message: str = "", **fields: str) -> Finding:
    """Make a finding that is about no lead and no terminal.

    Args:
        record: one of these.
        fault: its code.
        at: the place in the text.
        message: if it is not the fault's, filled with the fields.
        fields: texts for that.
    """
    return Finding(
        rule=record.name,
        fault=fault,
        breaks=record.breaks,
        also_breaks=(),
        message=message or record.faults[fault].message.format_map(fields),
        span=at,
        seen_at_unit="",
        leads=(),
        lead_numbers=(),
        terminals=(),
        at_terminals=(),
        caution=record.caution,
        source="; ".join(map(str, record.sources)),
    )
