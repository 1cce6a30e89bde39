"""Every safety that is there stands ahead of the burner it is to stop.

Mounted, screwed down and forgotten at the other end, or wired into the circuit of something
else: its opening does nothing to the gas.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.calls import Calls
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.common_lead import CommonLeads
from wirecheck.rules.call_chain.contacts import key_of_contact, names, sides
from wirecheck.rules.call_chain.jumpered_contacts import JumperedContacts
from wirecheck.rules.call_chain.on_purpose import may_be_right
from wirecheck.rules.call_chain.safeties import Safeties, Standing
from wirecheck.rules.call_chain.sources import Sources
from wirecheck.rules.call_chain.words import SAFETY_CAUTION, called, dangers
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is pilot-ignition-control
part pilot is pilot-burner
wire xfmr.R to limit to stat to box.TH
wire xfmr.C to box.COM
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""
_PAST = _GOOD.replace("R to limit to stat", "R to stat")
_FAN = _PAST + "part fan is relay\nwire xfmr.R to limit to fan to xfmr.C\n"
_HOT = _PAST + "wire xfmr.R to limit to box.24V\n"
_EXCHANGED = (
    _GOOD.replace("limit is high-limit", "fl is fan-limit-control: link removed").replace(
        "to limit to", "to fl.FAN-1..FAN-2 to"
    )
    + "part fan is relay\nwire xfmr.R to fl.LIMIT-1..LIMIT-2 to fan to xfmr.C\n"
)
_ONE_SIDE = _PAST + "wire xfmr.R to limit.1\n"

RULE = Rule(
    name="safety-not-in-chain",
    title="Every safety stands ahead of a burner",
    family="call and safety chain",
    breaks=Breaks.SAFETY,
    why=(
        "A safety that is in no path of the burner's call, of its relays or of its supply opens "
        "without taking anything away from the gas valve."
    ),
    blind_spots=(
        "A safety that acts on a burner which the file leaves out. A switch for air, flow, "
        "pressure or a door that switches something else than the motor it proves is taken as "
        "meant for that."
    ),
    caution=SAFETY_CAUTION,
    sources=(PRACTICE,),
    faults={
        "one-side": Fault(
            "{empty} has no lead, so {safety} stands in no path of the burner: let the call to "
            "{call} go in at one side of it and out at the other",
            "With {safety} open the burner runs on through {danger}.",
        ),
        "elsewhere": Fault(
            "{safety} stands in no path of the burner: its opening takes nothing away from "
            "{call}{past}; move it into that call lead",
            "With {safety} open the burner runs on through {danger}.",
        ),
        "row": Fault(
            "{safety} stand in no path of the burner: their opening takes nothing away from "
            "{call}{past}; move them into that call lead",
            "With one of them open the burner runs on through {danger}.",
        ),
        "row-open": Fault(
            "{empty} has no lead, so {safety} stand in no path of the burner: let the call to "
            "{call} go through all of them",
            "With one of them open the burner runs on through {danger}.",
        ),
        "fan-and-limit-exchanged": Fault(
            "the fan contact of {part} is in the call to {call}, and its limit contact is not: "
            "exchange the two pairs of leads",
            "The burner never lights, as the fan contact is open while it is cold; once it is "
            "closed, no limit stops the burner.",
        ),
    },
    bad=(
        Example(_EXCHANGED, (("fan-and-limit-exchanged", "fl.LIMIT-1..LIMIT-2"),)),
        Example(_ONE_SIDE, (("one-side", "limit.1"),)),
        Example(_FAN, (("elsewhere", "limit"),)),
        Example(_HOT, (("elsewhere", "limit"),)),
        Example(
            _FAN.replace("limit to fan", "limit to spill to fan").replace(
                "part fan", "part spill is spill-switch\npart fan"
            ),
            (("row", "limit"),),
        ),
        Example(
            _ONE_SIDE.replace("R to limit.1", "R to spill to limit.1").replace(
                "part box", "part spill is spill-switch\npart box"
            ),
            (("row-open", "limit.1"),),
        ),
    ),
    good=(Example(_GOOD),),
)


class _Idle(NamedTuple):
    """A safety ahead of no burner, and where what holds it turns off from a call.

    ``branch`` is the same for safeties in one row; ``past`` are the leads that lead past it.
    """

    contact: Element
    call: Chain
    branch: int
    past: tuple[int, ...]


def check(facts: Facts) -> Iterator[Finding]:
    """Find safeties that are ahead of no burner; those in one row are one finding."""
    rows: dict[tuple[int, str], list[_Idle]] = {}
    for idle in _idle(facts):
        if _is_fan_in_its_place(facts, idle.contact):
            yield _finding(facts, [idle], "fan-and-limit-exchanged")
        else:
            rows.setdefault((idle.branch, idle.call.part.key), []).append(idle)
    for row in rows.values():
        has_gap = bool(_empty(facts.as_wired, row))
        one = "one-side" if has_gap else "elsewhere"
        yield _finding(facts, row, one if len(row) == 1 else "row-open" if has_gap else "row")


def _idle(facts: Facts) -> Iterator[_Idle]:
    wired, calls = facts.as_wired, facts.once(Calls)
    common = facts.once(CommonLeads)
    jumpered = facts.once(JumperedContacts)
    explained = calls.led_past | calls.ahead_of_hot
    for safety in facts.once(Safeties).standing(Standing.NOWHERE, Standing.EMPTY):
        contact = safety.contact
        key = key_of_contact(contact)
        call = _nearest_call(facts, contact)
        landed = [side for side in sides(wired, contact) if wired.is_wired(side)]
        if call is None or not landed or key in explained or jumpered.explains(key):
            continue
        if common.holds(contact) or _is_ahead_of_what_is_not_fed(wired, contact, call):
            continue
        one_side = len(landed) < len(sides(wired, contact))
        if not may_be_right(wired, contact, one_side=one_side):
            yield _Idle(contact, call, *_turn(wired, contact, call))


def _finding(facts: Facts, row: list[_Idle], fault: str) -> Finding:
    wired, call = facts.as_wired, row[0].call
    safeties = [idle.contact for idle in row]
    ends = [side for contact in safeties for side in sides(wired, contact)]
    landed = [side for side in ends if wired.is_wired(side)]
    empty = _empty(wired, row)
    past = list(dict.fromkeys(number for idle in row for number in idle.past))
    own = [number for side in landed for number in facts.nets.leads_at(side)]
    them = "it" if len(row) == 1 else "them"
    words = f", which the lead {facts.lead(past[0])} feeds past {them}" if len(past) == 1 else ""
    return RULE.finding(
        facts,
        fault,
        facts.place(landed[0]),
        leads=dict.fromkeys((*own, *(past or facts.nets.leads_at(call.call)))),
        terminals=dict.fromkeys(ends),
        past=words,
        safety=names(wired, safeties),
        empty=both([facts.show(end) for end in empty]),
        danger=dangers(safeties),
        call=called(facts, call),
        part=safeties[0].part.name,
    )


def _empty(facts: Facts, row: list[_Idle]) -> list[Terminal]:
    ends = (side for idle in row for side in sides(facts, idle.contact))
    return [side for side in ends if not facts.is_wired(side)]


def _is_ahead_of_what_is_not_fed(facts: Facts, contact: Element, call: Chain) -> bool:
    """Whether it stands in the line, and none feeds the transformer behind the call."""
    windings = [winding for feed in call.feeds for winding in feed.windings]
    at_line = bool(facts.once(Legs).at(contact.a))
    return at_line and bool(windings) and not any(map(facts.once(Sources).feeds, windings))


def _turn(facts: Facts, contact: Element, call: Chain) -> tuple[int, tuple[int, ...]]:
    """What tells the row that holds a safety, and the leads of a call where that turns off."""
    trace = facts.sides.trace(call.feeds[0].source[0], call.call)
    graph = facts.conduction.contacts
    on_the_way: set[int] = set()
    if trace is not None:
        on_the_way |= {net for each in trace.contacts for net in (each.net_a, each.net_b)}
        on_the_way |= {facts.net(trace.start), facts.net(trace.end)}
    turns: set[int] = set()
    reached, waiting = {contact.net_a, contact.net_b}, [contact.net_a, contact.net_b]
    while waiting:
        here = waiting.pop()
        if here in on_the_way:
            turns.add(here)
            continue
        for there in graph.adj[here] if here in graph else ():
            if there not in reached:
                reached.add(there)
                waiting.append(there)
    leads = facts.diagram.leads
    past = tuple(n for n in (trace.leads if trace else ()) if facts.net(leads[n].a) in turns)
    return min(reached - turns, default=-1 - min(reached)), past


def _is_fan_in_its_place(facts: Facts, contact: Element) -> bool:
    """Whether the fan contact of the same device stands in the call of a burner."""
    if contact.part.family != "fan-limit-control":
        return False
    beside = facts.as_wired.nets.elements_of[contact.part.key]
    fans = (each for each in beside if each.type == "switch" and each.name == "fan")
    return any(facts.once(Burners).on(each) for each in fans)


def _nearest_call(facts: Facts, contact: Element) -> Chain | None:
    """The call of a burner, if there is one that is fed: one of the same supply first."""
    region = facts.as_wired.conduction.region
    fed = [chain for chain in facts.once(Burners).chains if chain.feeds]
    beside = (chain for chain in fed if region(chain.feeds[0].hot[0]) == region(contact.net_a))
    return next(beside, fed[0] if fed else None)
