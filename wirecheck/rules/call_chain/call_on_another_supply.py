"""The call of a control comes from the supply that its common goes back to.

Hot from one transformer and common to another close no circuit: each thermostat may call, and
nothing flows.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.words import called
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.earthed import carries_current
from wirecheck.rules.facts import Facts, Supply
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part other is transformer
part stat is thermostat
part box is pilot-ignition-control
part aid is relay
wire xfmr.R to stat to box.TH
wire xfmr.C to box.COM
wire other.R to aid to other.C
wire box.GND to earth: green
"""

RULE = Rule(
    name="call-on-another-supply",
    title="The call of a control comes from the supply that its common goes back to",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why="Between the hot side of one supply and the common of another nothing flows.",
    blind_spots="Commons that are joined where it is not drawn.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "two-supplies": Fault(
            "{call} is called from {hot}, and {common} goes back to {back}, which is another "
            "supply: bring the call from {right}",
            "Dead: nothing happens on a call.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("xfmr.R to stat", "other.R to stat").replace(
                "other.R to aid to other.C", "xfmr.R to aid to xfmr.C"
            ),
            (("two-supplies", "box.TH"),),
        ),
    ),
    good=(Example(_GOOD),),
    stands_back_for=("line-and-24-volts-joined", "own-supply-tied", "common-on-another-hot"),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls with the hot side of one supply and the common of another."""
    wired = facts.as_wired
    for chain in facts.once(Burners).chains:
        if chain.part.family != "ignition-control":
            continue
        hot, back = _mixed(wired, chain)
        if hot is None or back is None:
            continue
        trace = wired.sides.trace(hot.hot, chain.call)
        way = wired.sides.path(back.common, chain.common)
        yield RULE.finding(
            facts,
            "two-supplies",
            facts.place(chain.call),
            leads=dict.fromkeys((*(trace.leads if trace else ()), *(way.leads if way else ()))),
            terminals=(chain.call, chain.common, hot.hot, back.hot, back.common),
            call=called(facts, chain),
            hot=facts.show(hot.hot),
            common=facts.show(chain.common),
            back=facts.show(back.common),
            right=facts.show(back.hot),
        )


def _mixed(facts: Facts, chain: Chain) -> tuple[Supply | None, Supply | None]:
    """The supply that calls a control and the one its common is on, if these are two."""
    call, common = chain.call, chain.common
    if not (facts.is_traced(call) and facts.is_traced(common)):
        return None, None
    hots = facts.sides.hot_beyond(call)
    backs = facts.sides.common_beyond(common)
    if not hots or not backs or facts.sides.common_beyond(call):
        return None, None
    at_earth = carries_current(facts, common)
    for supply in hots:
        on_common = any(supply is back for back in backs)
        if on_common or (at_earth and carries_current(facts, supply.common)):
            return None, None
    return hots[0], backs[0]
