"""The chain of the call begins at the hot side of the supply.

A lead that was to feed the chain stands on another screw: every switch is wired on both sides, and
the whole row hangs on nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.calls import Calls
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import is_drawn, sides
from wirecheck.rules.call_chain.words import called
from wirecheck.rules.empty import needed_and_empty
from wirecheck.rules.facts import Facts, Supply
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part lwco is low-water-cutoff
part stat is thermostat
part box is pilot-ignition-control
wire xfmr.R to limit.1
wire limit.2 to lwco to stat to box.TH
wire xfmr.R to box.24V
wire xfmr.C to box.COM
wire box.GND to earth: green
"""

RULE = Rule(
    name="call-not-fed",
    title="The chain of the call begins at the hot side of the supply",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why="Whatever closes in it, no volts arrive at the end: the burner never starts.",
    blind_spots="A call from a supply that is not drawn beside the one that is.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "open-ended": Fault(
            "no lead brings the hot side to the call of {called}: its chain, as far as {end}, "
            "hangs on nothing; bring {hot} to the head of it, ahead of every safety",
            "Dead: nothing happens on a call.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("xfmr.R to limit.1", "lwco.2 to limit.1"),
            (("open-ended", "limit.2"),),
        ),
    ),
    good=(Example(_GOOD),),
    general=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls on a drawn common whose call reaches no hot side, nor an empty terminal."""
    wired = facts.as_wired
    told = {id(found.chain) for found in facts.once(Calls).on_hot}
    for chain in facts.once(Burners).chains:
        if chain.feeds or id(chain) in told or chain.part.family != "ignition-control":
            continue
        supply = _supply(wired, chain)
        if supply is None or not wired.is_wired(chain.call):
            continue
        contacts = _before(wired, chain)
        ends = [side for contact in contacts for side in sides(wired, contact)]
        traced = all(wired.is_traced(end) for end in (chain.call, *ends))
        empty = not {*wired.once(needed_and_empty)}.isdisjoint(ends)
        if empty or not traced or wired.sides.common_beyond(chain.call):
            continue
        end = _last(wired, chain, [each for each in contacts if is_drawn(wired, each)])
        yield RULE.finding(
            facts,
            "open-ended",
            facts.place(end),
            leads=facts.nets.leads_at(end),
            terminals=dict.fromkeys((chain.call, end, supply.hot, *ends)),
            called=called(facts, chain),
            end=facts.show(end),
            hot=facts.show(supply.hot),
        )


def _supply(facts: Facts, chain: Chain) -> Supply | None:
    """The supply whose common the control is on; a tied source of its own is none."""
    supplies = facts.sides.common_on(chain.common)
    return next((s for s in supplies if s.part.family == "transformer"), None)


def _before(facts: Facts, chain: Chain) -> list[Element]:
    """The contacts that may join the call, nearest first; nothing lies beyond an empty side."""
    graph = facts.conduction.contacts
    reached, found = {facts.net(chain.call)}, list[Element]()
    waiting = [facts.net(chain.call)]
    for net in waiting:
        for _here, there, contact in graph.edges(net, data="element") if net in graph else ():
            if contact.part is not chain.part and there not in reached:
                reached.add(there)
                found.append(contact)
                if is_drawn(facts, contact):
                    waiting.append(there)
    return found


def _last(facts: Facts, chain: Chain, contacts: list[Element]) -> Terminal:
    """The far end of the chain: of the last contact the side away from the call."""
    if not contacts:
        number = facts.nets.leads_at(chain.call)[0]
        return facts.other_end(number, chain.call)
    last = contacts[-1]
    nearer = {net for each in contacts[:-1] for net in (each.net_a, each.net_b)}
    nearer.add(facts.net(chain.call))
    return last.b if last.net_a in nearer else last.a
