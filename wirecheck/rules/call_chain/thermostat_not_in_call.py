"""A thermostat that is there makes a call.

Its leads may end at the wrong screw: the burner then runs without it, or its call arrives nowhere.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.calls import Calls, breaks_uncalled
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import names, sides
from wirecheck.rules.call_chain.words import UNCALLED_CAUTION, called
from wirecheck.rules.call_chain.zone_motors import always_fed
from wirecheck.rules.empty import homes_of_loose
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: So many nets are followed to where a call ends.
_FAR: Final = 50

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
_PAST = _GOOD.replace("limit to stat to", "limit to") + "wire limit.2 to stat.R\n"
_NOTHING = (
    _GOOD.replace("wire", "part second is thermostat\npart joint is terminal-strip\nwire", 1)
    + "wire limit.2 to second to joint.1\n"
)

RULE = Rule(
    name="thermostat-not-in-call",
    title="Every thermostat that is wired calls for something",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why=(
        "A thermostat whose contact is in no circuit controls nothing. Where the call gets to the "
        "burner without it, the burner fires all the time."
    ),
    blind_spots="A thermostat for something that the file leaves out.",
    caution=UNCALLED_CAUTION,
    sources=(PRACTICE,),
    faults={
        "past": Fault(
            "the call reaches {call} without going through {thermostat}: let it go in at {feed} "
            "and come out at {heat}",
            "The burner fires whether {thermostat} calls or not.",
        ),
        "runs-nothing": Fault(
            "the call of {thermostat} reaches no load: {feed} and {heat} stand in no circuit; "
            "trace its two leads and land them in the call",
            "Nothing happens when {thermostat} calls.",
        ),
    },
    bad=(
        Example(_PAST, (("past", "box.TH"),)),
        Example(_NOTHING, (("runs-nothing", "second"),)),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find thermostats that are wired and in no circuit."""
    wired, calls = facts.as_wired, facts.once(Calls)
    loose = {
        end for number in facts.once(homes_of_loose) for end in facts.diagram.leads[number][:2]
    }
    if not facts.once(Burners).chains or facts.once(always_fed):
        return  # nothing to call, or a zone valve that lacks the thermostat
    for contact in calls.idle_thermostats:
        chain = _uncalled(facts, contact)
        ends = sides(wired, contact)
        if chain is None and (not all(map(wired.is_wired, ends)) or loose.intersection(ends)):
            continue  # what is told is where its lead is to land
        past = chain is not None
        yield RULE.finding(
            facts,
            "past" if past else "runs-nothing",
            facts.place(chain.call if chain else contact.b),
            leads=_leads(wired, contact, chain),
            terminals=dict.fromkeys(
                (*((chain.call,) if chain else ()), *ends, *_dead_ends(wired, contact))
            ),
            breaks=breaks_uncalled(chain, past_safeties=False) if chain else None,
            call=called(facts, chain) if chain else "",
            thermostat=names(wired, [contact]),
            feed=facts.show(contact.a),
            heat=facts.show(contact.b),
        )


def _uncalled(facts: Facts, contact: Element) -> Chain | None:
    """The burner that runs with no call, of the thermostat's supply or the only one there is."""
    calls, burners = facts.once(Calls), facts.once(Burners)
    said = {id(found.chain) for found in calls.on_hot}
    said |= {id(found.chain) for found in calls.straight}
    uncalled = [c for c in burners.chains if id(c) not in said and c.runs_uncalled()]
    region = facts.as_wired.conduction.region
    for chain in uncalled:
        if region(facts.as_wired.net(chain.call)) in (region(contact.net_a), region(contact.net_b)):
            return chain
    return uncalled[0] if len(burners.chains) == 1 and uncalled else None


def _leads(facts: Facts, contact: Element, chain: Chain | None) -> tuple[int, ...]:
    """The thermostat's own leads, after those on the way of the call that goes past it."""
    own = [number for end in sides(facts, contact) for number in facts.nets.leads_at(end)]
    if chain is None or not chain.feeds:
        return tuple(dict.fromkeys(own))
    trace = facts.sides.trace(chain.feeds[0].source[0], chain.call)
    return tuple(dict.fromkeys((*(trace.leads if trace else ()), *own)))


def _dead_ends(facts: Facts, contact: Element) -> Iterator[Terminal]:
    """Empty sides of contacts where the call of a thermostat may end."""
    graph = facts.conduction.contacts
    for start in (contact.net_a, contact.net_b):
        reached, waiting = {start}, [start]
        while waiting and len(reached) < _FAR:
            here = waiting.pop()
            for _here, there, other in graph.edges(here, data="element") if here in graph else ():
                if other.part is not contact.part and there not in reached:
                    reached.add(there)
                    waiting.append(there)
                    yield from (e for e in sides(facts, other) if not facts.is_wired(e))
