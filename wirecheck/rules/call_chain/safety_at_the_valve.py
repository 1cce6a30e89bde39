"""Safeties stand ahead of the control, not between the control and its valve.

A limit in the lead to the main operator shuts the main gas behind the control's back: the pilot
stays lit, or a direct control takes it for a lost flame and tries again.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.contacts import key_of_contact, names, sides
from wirecheck.rules.call_chain.safeties import Safeties, Standing
from wirecheck.rules.call_chain.valve_circuit import ValveCircuit
from wirecheck.rules.call_chain.words import SAFETY_CAUTION
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is pilot-ignition-control
part valve is gas-valve-3-wire
part pilot is pilot-burner
wire xfmr.R to limit to stat to box.TH
wire xfmr.C to box.COM
wire box.PV to valve.PV
wire box.MV to valve.MV
wire box.VC to valve.C
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""
_NO_LIMIT = _GOOD.replace("R to limit to stat", "R to stat")
_MAIN = _NO_LIMIT.replace("box.MV to", "box.MV to limit to")
_PILOT = _NO_LIMIT.replace("box.PV to", "box.PV to limit to")
_COMMON = _NO_LIMIT.replace("box.VC to", "box.VC to limit to")
_DIRECT = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is direct-ignition-control
part valve is gas-valve-2-wire
part burner is direct-burner
wire xfmr.R to stat to box.TH
wire xfmr.C to box.COM
wire box.V to limit to valve.1
wire box.VC to valve.C
wire box.GND to burner.FRAME: green
wire box.SENSE to burner.ROD
wire box.SPARK to burner.SPARK: ignition-cable
"""

RULE = Rule(
    name="safety-at-the-valve",
    title="No safety stands between an ignition control and its valve",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why=(
        "The control must lose its call when a safety opens. In a valve lead the safety shuts the "
        "gas while the control goes on as if it ran."
    ),
    blind_spots="A valve fed through a relay of its own.",
    caution=SAFETY_CAUTION,
    sources=(PRACTICE,),
    faults={
        "main": Fault(
            "{safety} stands between {output} and {operator}: the control does not know when it "
            "opens; move it into the call lead, and run this lead straight",
            "When {safety} opens the main gas shuts, the pilot stays lit and the control stays "
            "as it is.",
        ),
        "pilot": Fault(
            "{safety} stands between {output} and {operator}: the control does not know when it "
            "opens; move it into the call lead, and run this lead straight",
            "When {safety} opens the pilot goes out, the control sparks again and begins another "
            "trial.",
        ),
        "direct": Fault(
            "{safety} stands between {output} and {operator}: the control does not know when it "
            "opens; move it into the call lead, and run this lead straight",
            "When {safety} opens the control takes it for a lost flame: it tries again and may "
            "lock out.",
        ),
        "common": Fault(
            "{safety} stands in the valve's common lead, between {output} and {operator}, where "
            "an earth fault bypasses it; move it into the call lead, and run this lead straight",
            "When {safety} opens the valve shuts without the control knowing; after an earth "
            "fault at the valve it does not even shut.",
            Breaks.SAFETY,
        ),
    },
    bad=(
        Example(_MAIN, (("main", "limit"),)),
        Example(_PILOT, (("pilot", "limit"),)),
        Example(_DIRECT, (("direct", "limit"),)),
        Example(_COMMON, (("common", "limit"),)),
    ),
    good=(Example(_GOOD),),
)

_FAULTS = {"main-valve": "main", "pilot-valve": "pilot", "valve-feed": "direct"}


def check(facts: Facts) -> Iterator[Finding]:
    """Find safeties between the outputs of a control and the operators of its valve."""
    wired = facts.as_wired
    at_valve = facts.once(ValveCircuit).safeties
    for safety in facts.once(Safeties).standing(Standing.AT_VALVE):
        contact = safety.contact
        found = at_valve[key_of_contact(contact)]
        yield RULE.finding(
            facts,
            _FAULTS.get(facts.role(found.output), "common"),
            facts.place(sides(wired, contact)[0]),
            terminals=sides(wired, contact),
            safety=names(wired, [contact]),
            output=facts.show(found.output),
            operator=facts.show(found.operator),
        )
