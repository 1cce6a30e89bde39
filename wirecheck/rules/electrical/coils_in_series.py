"""Every coil lies straight across its supply; none gets its current through another.

Two coils in series share the volts: neither pulls in, or only the smaller one does.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.electrical.load_on_other_volts import LEAST, MOST
from wirecheck.rules.electrical.loads import Loading, Taker, loadings, takers
from wirecheck.rules.electrical.states import running
from wirecheck.rules.electrical.words import volts
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part fan is relay
part pump is relay
wire xfmr.R to stat to fan.A
wire fan.A to pump.A
wire fan.B to xfmr.C
wire pump.B to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="coils-in-series",
    title="Every coil lies straight across its supply",
    family="electrical",
    breaks=Breaks.OPERATION,
    why="In series they share the volts, so that none has what it needs to pull in.",
    blind_spots="Loads made to work in series, whose rated volts are not typed.",
    caution="",
    sources=(
        PRACTICE,
        Source("NFPA 79", "standard", "9.1.4"),
    ),
    faults={
        "series": Fault(
            "{loads} are in series between {hot} and {common}: {shares}; feed each of them "
            "from the switched side, and bring each back to {common} by a lead of its own",
            "{loads} do not pull in, or hum and chatter.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("wire fan.A to pump.A", "wire fan.B to pump.A").replace(
                "wire fan.B to xfmr.C\n", ""
            ),
            (("series", "fan.B"),),
        ),
    ),
    good=(Example(_GOOD),),
    stands_back_for=(
        "valve-leads-out-of-order",
        "valve-lead-astray",
        "hot-and-common-exchanged",
        "call-fed-from-common",
        "line-and-24-volts-joined",
    ),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find loads between which and a side of their supply there is only another load."""
    wired = facts.as_wired
    for loading in loadings(wired):
        for chain in _chains(wired, loading) if loading.alone and loading.aside else ():
            solved = running(wired)
            wrong = [t for t in chain if not LEAST <= solved.load_v(t) / t.rated_v <= MOST]
            if wrong and all(solved.load_v(taker) > 0 for taker in chain):
                yield _finding(wired, loading, chain)


def _chains(facts: Facts, loading: Loading) -> Iterator[list[Taker]]:
    """Groups of loads that hang together by conductors on neither side of the supply.

    Only those that reach both sides: others are not fed at all.
    """
    region = facts.conduction.region
    at = facts.once(_by_region)
    sides = facts.once(_sides)
    seen: set[tuple[str, int]] = set()
    for first in loading.aside:
        chain: dict[tuple[str, int], Taker] = {}
        reached: set[int] = set()
        waiting = [first]
        while waiting:
            taker = waiting.pop()
            key = (taker.part.key, taker.number)
            if key in seen:
                continue
            seen.add(key)
            chain[key] = taker
            for net in (taker.element.net_a, taker.element.net_b):
                here = region(net)
                reached.add(here)
                if here not in sides:
                    waiting += at[here]
        if {loading.hot, loading.common} <= reached and len(chain) > 1:
            yield list(chain.values())


def _sides(facts: Facts) -> set[int]:
    """The regions of all supplies, and of earth."""
    sides = {at for loading in loadings(facts) for at in (loading.hot, loading.common)}
    return sides | {facts.conduction.region(facts.earth)}


def _by_region(facts: Facts) -> dict[int, list[Taker]]:
    region = facts.conduction.region
    found: dict[int, list[Taker]] = {}
    for taker in takers(facts):
        for net in (taker.element.net_a, taker.element.net_b):
            found.setdefault(region(net), []).append(taker)
    return found


def _finding(facts: Facts, loading: Loading, chain: list[Taker]) -> Finding:
    solved = running(facts)
    region = facts.conduction.region
    inner = [
        end
        for taker in chain
        for end in (taker.element.a, taker.element.b)
        if region(facts.net(end)) not in (loading.hot, loading.common)
    ]
    leads = dict.fromkeys(number for end in inner for number in facts.nets.leads_at(end))
    shares = [f"{t.name} gets {volts(solved.load_v(t))} of its {volts(t.rated_v)}" for t in chain]
    return RULE.finding(
        facts,
        "series",
        facts.place(inner[0]),
        leads=leads,
        terminals=inner,
        loads=both([taker.name for taker in chain]),
        hot=facts.show(loading.supply.hot),
        common=facts.show(loading.supply.common),
        shares=both(shares),
    )
