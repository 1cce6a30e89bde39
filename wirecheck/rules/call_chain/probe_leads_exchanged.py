"""A low-water probe control is fed at its feed terminal, and passes the call on at its output.

Fed at the output it has power only over its own contact, which needs power to close: it never does.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import swap_ends
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.call_chain.words import SAFETY_CAUTION
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part probe is low-water-probe
part stat is thermostat
part box is pilot-ignition-control
part pilot is pilot-burner
wire xfmr.R to probe.R
wire probe.OUT to stat to box.TH
wire probe.C to xfmr.C
wire xfmr.C to box.COM
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""
_BAD = _GOOD.replace("to probe.R", "to probe.OUT").replace("wire probe.OUT", "wire probe.R")

RULE = Rule(
    name="probe-leads-exchanged",
    title="A low-water probe is fed at its feed terminal, not at its output",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why=(
        "The probe control needs power to see the water and to close its contact. Behind its own "
        "contact it gets none."
    ),
    blind_spots="Terminals whose printed labels were read wrong when the file was typed.",
    caution=SAFETY_CAUTION,
    sources=(PRACTICE,),
    faults={
        "exchanged": Fault(
            "the leads on {feed} and {out} are exchanged: {probe} is fed at its output; swap them",
            "{probe} has no power and its contact stays open: the burner never lights.",
        ),
    },
    bad=(Example(_BAD, (("exchanged", "probe.OUT"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find probes whose feed the hot side reaches over their own contact alone."""
    for probe in facts.of("low-water-probe"):
        (feed,), (out,) = probe.with_role("probe-hot"), probe.with_role("probe-out")
        if _is_fed_backwards(facts.as_wired, probe, feed, out):
            yield RULE.finding(
                facts,
                "exchanged",
                facts.place(out),
                leads=(*facts.nets.leads_at(feed), *facts.nets.leads_at(out)),
                terminals=(feed, out),
                edits=_swap(facts, feed, out),
                feed=facts.show(feed),
                out=facts.show(out),
                probe=probe.name,
            )


def _is_fed_backwards(facts: Facts, probe: Part, feed: Terminal, out: Terminal) -> bool:
    if facts.joined(feed, out) or not (facts.is_traced(feed) and facts.is_traced(out)):
        return False
    supplies = facts.hot_supplies(feed)
    ways = (facts.conduction.way(facts.net(s.hot), facts.net(feed)) for s in supplies)
    return bool(supplies) and all(
        any(contact.part is probe for contact in way.series) for way in ways
    )


def _swap(facts: Facts, feed: Terminal, out: Terminal) -> tuple[Edit, ...]:
    """Swap the two leads, where there is one on each terminal."""
    at_feed, at_out = facts.nets.leads_at(feed), facts.nets.leads_at(out)
    if len(at_feed) != 1 or len(at_out) != 1:
        return ()
    return swap_ends(facts.diagram, at_feed[0], feed, at_out[0], out)
