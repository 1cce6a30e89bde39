"""The call of a burner passes every safety, whichever way it comes.

A second thermostat landed behind the limit, a spare contact across it: with the safety open the
call still arrives by the other way.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.bypasses import Bypass, bypasses
from wirecheck.rules.call_chain.contacts import is_thermostat, names, sides, switch
from wirecheck.rules.call_chain.words import SAFETY_CAUTION, called, dangers
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part aid is thermostat
part box is pilot-ignition-control
part pilot is pilot-burner
wire xfmr.R to limit to stat to box.TH
wire limit.2 to aid to box.TH
wire xfmr.C to box.COM
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""
_ONE_CALL = _GOOD.replace("wire limit.2 to aid", "wire xfmr.R to aid")
_SWITCHED = _GOOD.replace("aid is thermostat", "aid is service-switch").replace(
    "wire limit.2 to aid to box.TH", "wire xfmr.R to aid to limit.2"
)
_SIDE_BY_SIDE = _SWITCHED.replace("service-switch", "high-limit")
_BESIDE = _ONE_CALL.replace("limit to stat to", "limit to").replace("part stat is thermostat\n", "")

RULE = Rule(
    name="safety-bypassed",
    title="Every way of the call passes every safety",
    family="call and safety chain",
    breaks=Breaks.SAFETY,
    why=(
        "Contacts side by side pass the current when either is closed. A safety stops the burner "
        "only where every way of the call goes through it."
    ),
    blind_spots=(
        "A limit meant for one zone alone (a floor limit) looks like one that was left out of the "
        "other calls, unless it acts through that zone's own valve or relay."
    ),
    caution=SAFETY_CAUTION,
    sources=(PRACTICE,),
    faults={
        "one-call": Fault(
            "only one call goes through {safety}; by way of {path} it goes past: move {safety} "
            "to where all calls have come together, or to their common feed",
            "The burner runs on through {danger} while {path} calls.",
        ),
        "other-path": Fault(
            "current gets past {safety} by way of {path}: open that way, so that every way to "
            "{call} goes through {safety}",
            "With {safety} open the burner runs on through {danger}.",
        ),
        "beside-call": Fault(
            "{safety} stands beside {path} in the call to {call}, so that either of them calls "
            "alone: put {safety} in line with {path}",
            "With {safety} open the burner runs on through {danger}.",
        ),
        "side-by-side": Fault(
            "{safety} stand side by side in the call to {call}: current passes while any of them "
            "is closed; put them one behind the other",
            "With one of them open the burner runs on through {danger}.",
        ),
    },
    bad=(
        Example(_ONE_CALL, (("one-call", "limit"),)),
        Example(_SWITCHED, (("other-path", "limit"),)),
        Example(_BESIDE, (("beside-call", "limit"),)),
        Example(_SIDE_BY_SIDE, (("side-by-side", "limit"),)),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find safeties that stand on some ways of a burner's call but not on all."""
    wired = facts.as_wired
    for bypass in facts.once(bypasses):
        if bypass.inverted:
            continue
        past = bypass.safeties
        yield RULE.finding(
            facts,
            _fault(bypass),
            facts.place(sides(wired, past[0])[0]),
            leads=_leads_past(wired, bypass),
            terminals=[side for contact in past for side in sides(wired, contact)],
            safety=names(wired, past),
            path=names(wired, bypass.path) or "a lead",
            danger=dangers(past),
            call=called(facts, bypass.chain),
        )


def _leads_past(facts: Facts, bypass: Bypass) -> tuple[int, ...]:
    """The leads of a way from a supply to the call that the safeties do not stand in."""
    past = {(contact.a, contact.b) for contact in bypass.safeties}
    chain = bypass.chain

    def passes(contact: Element) -> bool:
        of_other = switch(contact).moved_by == "control" and contact.part is not chain.part
        return (contact.a, contact.b) not in past and not of_other

    hots = {feed.source[0] for feed in chain.feeds}
    trace = facts.sides.search((chain.call,), hots.__contains__, through=passes)
    return trace.leads if trace else ()


def _fault(bypass: Bypass) -> str:
    if bypass.mutual:
        return "side-by-side"
    if bypass.one_call:
        return "one-call"
    # To open a way on which a thermostat stands would be to cut the thermostat out.
    return "beside-call" if any(map(is_thermostat, bypass.path)) else "other-path"
