"""End switches of several zones call the boiler side by side.

One behind the other they call it only when every zone is open: one zone alone stays cold.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.contacts import in_text_order
from wirecheck.rules.call_chain.sources import Feed
from wirecheck.rules.call_chain.words import called
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part stat-1 is thermostat
part stat-2 is thermostat
part zone-1 is zone-valve
part zone-2 is zone-valve
part boiler is boiler-call
wire xfmr.R to stat-1 to zone-1.M1
wire xfmr.R to stat-2 to zone-2.M1
wire xfmr.C to zone-1.M2 to zone-2.M2
wire boiler.1 to zone-1.E1..E2 to boiler.2
wire boiler.1 to zone-2.E1..E2 to boiler.2
"""
_BAD = (
    "".join(line for line in _GOOD.splitlines(keepends=True) if "E1" not in line)
    + "wire boiler.1 to zone-1.E1..E2 to zone-2.E1..E2 to boiler.2\n"
)

RULE = Rule(
    name="end-switches-in-series",
    title="End switches of different zones stand side by side",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why="In series the boiler is called only while all the zones are open at once.",
    blind_spots="Two valves that must both be open before the boiler may fire.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "series": Fault(
            "the end switches of {valves} stand in series in the call to {call}: wire them side "
            "by side, so that each zone calls",
            "The boiler fires only while {valves} are all open; a zone alone gets no heat.",
        ),
    },
    bad=(Example(_BAD, (("series", "zone-1.E1..E2"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find calls with the end switches of valves in series that different thermostats move."""
    said: set[frozenset[Terminal]] = set()
    for call, feeds in _calls(facts):
        for feed in feeds:
            switches = in_text_order(_end_switches(facts, feed))
            key = frozenset(contact.a for contact in switches)
            if len({_motor_nets(facts, contact) for contact in switches}) > 1 and key not in said:
                said.add(key)
                yield RULE.finding(
                    facts,
                    "series",
                    facts.place(switches[0].a),
                    terminals=[end for contact in switches for end in (contact.a, contact.b)],
                    valves=both([contact.part.name for contact in switches]),
                    call=call,
                )


def _calls(facts: Facts) -> Iterator[tuple[str, tuple[Feed, ...]]]:
    """Every burner, and every coil its call hangs on, with what feeds it."""
    for chain in facts.once(Burners).chains:
        yield called(facts, chain), chain.feeds
        for coil, feeds in chain.coils():
            yield coil.part.name, feeds


def _end_switches(facts: Facts, feed: Feed) -> list[Element]:
    series = facts.as_wired.conduction.way(*feed.hot).series
    return [contact for contact in series if contact.part.family == "zone-valve"]


def _motor_nets(facts: Facts, contact: Element) -> frozenset[int]:
    """Between which nets the valve's motor lies: the same for valves that one thermostat moves."""
    elements = facts.as_wired.nets.elements_of[contact.part.key]
    return frozenset(net for e in elements if e.type == "load" for net in (e.net_a, e.net_b))
