"""The call lands on the call terminal, constant 24 V on the hot terminal, not the other way round.

With the two exchanged the control is called as long as there is power, and thermostat and limits
switch a terminal that only feeds the damper.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import swap_ends
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.call_chain.calls import Calls, breaks_uncalled
from wirecheck.rules.call_chain.contacts import is_safety, names
from wirecheck.rules.call_chain.words import UNCALLED_CAUTION
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is pilot-ignition-control
part pilot is pilot-burner
wire xfmr.R to limit to stat to box.TH
wire xfmr.R to box.24V
wire xfmr.C to box.COM
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""
_BAD = _GOOD.replace("stat to box.TH", "stat to box.24V").replace("R to box.24V", "R to box.TH")

RULE = Rule(
    name="call-and-hot-exchanged",
    title="The leads on the call and the hot terminal of a control are not exchanged",
    family="call and safety chain",
    breaks=Breaks.SAFETY,
    why=(
        "The call terminal on constant 24 V calls as long as there is power; what is ahead of the "
        "hot terminal stops nothing but the damper's supply."
    ),
    blind_spots="Terminals whose printed labels were read wrong when the file was typed.",
    caution=UNCALLED_CAUTION,
    sources=(PRACTICE,),
    faults={
        "exchanged": Fault(
            "{call} is fed with no call and {hot} through {past}: the two leads are exchanged; "
            "swap them",
            "The burner fires as soon as there is power; nothing in the call lead stops it.",
        ),
    },
    bad=(Example(_BAD, (("exchanged", "box.TH"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls called with no call, whose hot terminal has the thermostat ahead of it."""
    wired = facts.as_wired
    for found in facts.once(Calls).on_hot:
        if not found.chain.feeds:
            continue
        past = [c for c in found.ahead if not found.chain.is_stopped_by(c)]
        yield RULE.finding(
            facts,
            "exchanged",
            facts.place(found.call),
            leads=(*facts.nets.leads_at(found.call), *facts.nets.leads_at(found.hot)),
            terminals=(found.call, found.hot),
            edits=_swap(facts, found.call, found.hot),
            breaks=breaks_uncalled(found.chain, past_safeties=any(map(is_safety, past))),
            call=facts.show(found.call),
            hot=facts.show(found.hot),
            past=names(wired, past),
        )


def _swap(facts: Facts, call: Terminal, hot: Terminal) -> tuple[Edit, ...]:
    """Swap the two leads, where there is one on each terminal."""
    at_call, at_hot = facts.nets.leads_at(call), facts.nets.leads_at(hot)
    if len(at_call) != 1 or len(at_hot) != 1:
        return ()
    return swap_ends(facts.diagram, at_call[0], call, at_hot[0], hot)
