"""Each thermostat calls by itself.

Fed from behind another zone's thermostat, or from what is live only while the burner runs, a zone
is warmed by luck: only as long as somebody else calls.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.circuit.nets import Element
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import (
    ContactKey,
    is_drawn,
    is_thermostat,
    names,
    switch,
)
from wirecheck.rules.call_chain.words import called
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: With more thermostats on one burner than these, they are not tried one by one.
MOST_THERMOSTATS: Final = 50

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
wire xfmr.C to earth: green
wire boiler.1 to zone-1.E1..E2 to boiler.2
wire boiler.1 to zone-2.E1..E2 to boiler.2
"""

RULE = Rule(
    name="thermostat-needs-another",
    title="Each thermostat calls by itself",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why="Its room stays cold unless another one calls at the same time.",
    blind_spots="A second thermostat that is to call only together with the first.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "with-another": Fault(
            "{thermostat} calls {call} only while {other} calls too: feed {feed} from the supply "
            "itself, and let {heat} make its own call",
            "{thermostat} alone gets no heat.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("xfmr.R to stat-2", "stat-1.W to stat-2"),
            (("with-another", "stat-2"),),
        ),
    ),
    good=(Example(_GOOD),),
    stands_back_for=("end-switches-in-series", "contact-in-no-circuit", "zone-motor-always-on"),
    general=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find thermostats that call a burner with another one and not without."""
    told: set[int] = set()
    for chain in facts.once(Burners).chains:
        heats = {key: c for key, c in chain.contacts.items() if is_thermostat(c)}
        if (
            _joins_another_control(chain)
            or not chain.feeds
            or not 1 < len(heats) <= MOST_THERMOSTATS
        ):
            continue
        alone = {key for key in heats if _calls_alone(chain, key, heats)}
        others = [heats[key] for key in alone]
        for key, contact in heats.items() if alone else ():
            if key not in alone and is_drawn(facts.as_wired, contact) and id(contact) not in told:
                told.add(id(contact))
                yield _finding(facts, chain, contact, others)


def _joins_another_control(chain: Chain) -> bool:
    """Whether the contacts of another control stand on its way: their leads are mixed up then."""
    on_it = chain.contacts.values()
    return any(switch(c).moved_by == "control" and c.part is not chain.part for c in on_it)


def _calls_alone(chain: Chain, key: ContactKey, heats: dict[ContactKey, Element]) -> bool:
    """Whether one thermostat's call for heat is enough, before the burner runs."""
    others = {
        k
        for k, c in chain.contacts.items()
        if switch(c).moved_by == "control" or (c.part.family == "thermostat" and k not in heats)
    }
    return chain.runs({*(heats.keys() - {key}), *others})


def _finding(facts: Facts, chain: Chain, contact: Element, others: list[Element]) -> Finding:
    ends = (contact.a, contact.b)
    trace = facts.sides.trace(chain.feeds[0].source[0], chain.call)
    own = [number for end in ends for number in facts.nets.leads_at(end)]
    return RULE.finding(
        facts,
        "with-another",
        facts.place(contact.a),
        leads=dict.fromkeys((*own, *(trace.leads if trace else ()))),
        terminals=ends,
        thermostat=contact.part.name,
        call=called(facts, chain),
        other=names(facts.as_wired, others),
        feed=facts.show(contact.a),
        heat=facts.show(contact.b),
    )
