"""No lead past a switch touches earth: neither a call lead nor a lead to a valve.

Everything is quiet until the contact before it closes; then the earthed lead is a short circuit.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecheck.circuit.nets import Element
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.contacts import is_thermostat, switch
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.earthed_leads import metal, near_end, place
from wirecheck.rules.facts import Facts, Supply
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.sides import Touch

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part fan is relay
wire xfmr.R to stat.R
wire stat.W to fan.A
wire fan.B to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="switched-lead-earthed",
    title="No lead past a switch touches earth",
    family="common",
    breaks=Breaks.OPERATION,
    why=(
        "The step at which the fuse goes tells which lead it is: on the call, when the pilot valve "
        "is to open, or when the main valve is to."
    ),
    blind_spots="A lead that touches metal only while the unit shakes or is hot.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "short": Fault(
            "the lead {lead} is on {metal}, and its other side leads back to {common}: free it, "
            "renew it where it is chafed, and land it where it belongs",
            "The fuse blows or the transformer burns out as soon as {moment}.",
        ),
        "floating": Fault(
            "the lead {lead} is on {metal}: free it, renew it where it is chafed, and land it "
            "where it belongs",
            "Nothing yet, as {common} is earthed nowhere; the next earth fault shorts it or "
            "jumps a switch.",
            Breaks.WORKMANSHIP,
        ),
    },
    bad=(
        Example(
            _GOOD.replace("stat.W to fan.A", "stat.W to fan.A: touches earth"),
            (("short", "stat.W to fan.A"),),
        ),
        Example(
            _GOOD.replace("stat.W to fan.A", "stat.W to fan.A: touches earth").replace(
                "wire xfmr.C to earth: green\n", ""
            ),
            (("floating", "stat.W to fan.A"),),
        ),
    ),
    good=(Example(_GOOD),),
    stands_back_for=(
        "hot-and-common-exchanged",
        "burner-ground-on-wrong-terminal",
        "line-and-24-volts-joined",
    ),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find conductors that meet earth and that a hot side reaches through contacts only."""
    commons = {
        facts.sides.conductor(com)
        for control in facts.of("ignition-control")
        for com in control.with_role("control-common")
    }
    for conductor, touches in facts.sides.touched.items():
        end = near_end(facts, touches[0])
        supplies = facts.sides.hot_beyond(end)
        if not supplies or conductor in commons:
            continue
        if not facts.sides.hot_on(end) and not facts.sides.common_beyond(end):
            yield _finding(facts, supplies[0], touches)


def _finding(facts: Facts, supply: Supply, touches: list[Touch]) -> Finding:
    first = touches[0]
    end = near_end(facts, first)
    trace = facts.sides.trace(supply.hot, end)
    return RULE.finding(
        facts,
        "short" if facts.is_grounded(supply.common) else "floating",
        place(facts, first),
        leads=[touch.lead for touch in touches],
        terminals=(end, supply.common),
        lead=facts.lead(first.lead),
        metal=metal(facts, first),
        common=facts.show(supply.common),
        moment=_moment(trace.contacts if trace else ()),
    )


def _moment(contacts: Sequence[Element]) -> str:
    """When the last contact on the way closes: a limit is closed already and tells nothing."""
    open_at_rest = [contact for contact in contacts if switch(contact).normal == "open"]
    if not open_at_rest:
        return "there is power"
    last = open_at_rest[-1]
    return f"{_named(last)} {'calls' if is_thermostat(last) else 'closes'}"


def _named(contact: Element) -> str:
    """A contact as people call it: by its part, in a control by its own name too."""
    inner = contact.part.family == "ignition-control"
    return f"{contact.name} in {contact.part.name}" if inner else contact.part.name
