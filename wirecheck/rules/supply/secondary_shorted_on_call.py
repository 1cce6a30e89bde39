"""Between the two sides of the 24 V secondary stands a load on every way through contacts.

A call lead landed on the common is a short that waits for the thermostat: the unit looks dead, and
the fuse goes each time it calls.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.language.edit import move_end, remove_lead
from wirecheck.model.diagram import LeadRole, Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.empty import needed_and_empty
from wirecheck.rules.facts import Facts, Supply
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.sides import Trace, is_overcurrent
from wirecheck.rules.supply.mismatched import mismatched
from wirecheck.rules.supply.own_supply_tied import ties
from wirecheck.rules.workmanship.bridged_in_passing import bridging_leads

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part fan is relay
wire xfmr.R to stat.R
wire stat.W to fan.A
wire fan.B to xfmr.C
wire xfmr.C to earth: green
"""

_BURNER = """\
part xfmr is transformer
part stat is thermostat
part box is pilot-ignition-control
wire xfmr.R to stat to box.TH
wire xfmr.C to box.COM
wire xfmr.C to earth: green
"""

#: What the hot end of a load is for.
_LOADS: Final = frozenset({"call", "coil", "operator", "motor", "load-hot"})

RULE = Rule(
    name="secondary-shorted-on-call",
    title="Whatever contacts close, a load stands between the two sides of the secondary",
    family="supply",
    breaks=Breaks.SAFETY,
    why=(
        "When the contacts close nothing but the copper limits the current: some 12 A from a "
        "transformer of 40 VA. The contacts weld, or the transformer burns out."
    ),
    blind_spots=(
        "Contacts that never close together for a reason outside the diagram. The two throws of "
        "one relay contact are known never to."
    ),
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "through-contacts": Fault(
            "{hot} reaches {common} through {contacts} at {terminal} with no load between: move "
            "the lead on {terminal} to {home}",
            "A dead short with {contacts} closed: the fuse blows, a contact welds or the "
            "transformer burns out.",
        ),
        "joined": Fault(
            "the {noun} {lead} joins what {contacts} make hot to {common}, with no load between: "
            "take it {off}",
            "A dead short with {contacts} closed: the fuse blows, a contact welds or the "
            "transformer burns out.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("stat.W to fan.A", "stat.W to fan.B") + "wire fan.A to xfmr.R\n",
            (("through-contacts", "stat.W"),),
        ),
        Example(
            _BURNER + "jumper box.TH to box.VC\n",
            (("joined", "box.TH to box.VC"),),
        ),
    ),
    good=(Example(_GOOD),),
    stands_back_for=("both-leads-on-one-side",),
    covers=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find supplies whose sides contacts can join."""
    sides = facts.sides
    for supply in facts.supplies:
        hot, common = supply.hot, supply.common
        if sides.may_join(hot, common) and not sides.same(hot, common):
            trace = sides.trace(hot, common)
            if trace is None or not trace.can_close or _is_told_elsewhere(facts, supply, trace):
                continue
            yield _finding(facts, supply, trace)


def _finding(facts: Facts, supply: Supply, trace: Trace) -> Finding:
    contacts = [contact for contact in trace.contacts if not is_overcurrent(contact)]
    words = both(list(dict.fromkeys(contact.part.name for contact in contacts)))
    terminal = _on_common(facts, supply, trace)
    tail = facts.sides.path(terminal, supply.common)
    cause = mismatched(facts, tail.leads if tail else (), on_call=True)
    if cause is not None and terminal not in facts.diagram.leads[cause][:2]:
        return _joined(facts, supply, cause, words)
    leads = facts.nets.leads_at(terminal)
    homes = [end for end in facts.once(needed_and_empty) if facts.role(end) in _LOADS]
    home = homes[0] if len(homes) == 1 else None
    far = [facts.other_end(number, terminal) for number in leads[:1]]
    return RULE.finding(
        facts,
        "through-contacts",
        facts.place(terminal),
        leads=leads[:1],
        terminals=dict.fromkeys((supply.hot, supply.common, terminal, *far, *homes[:1])),
        edits=_moved(facts, leads, terminal, home),
        hot=facts.show(supply.hot),
        common=facts.show(supply.common),
        terminal=facts.show(terminal),
        home=facts.show(home) if home else "the load it was meant for",
        contacts=words,
    )


def _joined(facts: Facts, supply: Supply, cause: int, contacts: str) -> Finding:
    """Tell of a lead beyond the contacts that brings what they feed to the common."""
    lead = facts.diagram.leads[cause]
    is_jumper = lead.role is LeadRole.JUMPER
    return RULE.finding(
        facts,
        "joined",
        facts.lead_span(cause),
        leads=(cause,),
        terminals=dict.fromkeys((lead.a, lead.b, supply.hot, supply.common)),
        edits=(remove_lead(facts.diagram, cause),) if is_jumper else (),
        noun="jumper" if is_jumper else "lead",
        lead=facts.lead(cause),
        common=facts.show(supply.common),
        off="out" if is_jumper else "off and land it where it belongs",
        contacts=contacts,
    )


def _is_told_elsewhere(facts: Facts, supply: Supply, trace: Trace) -> bool:
    """Whether a damper's end switch closes it, a lead meant to pass a load, or fuses alone.

    Nor is it a mistake of its own where a supply is tied to a call, whose contacts join its sides.
    """
    if trace.contacts[-1].part.family == "vent-damper" and not _is_jumped(facts, supply, trace):
        return True
    if not facts.once(bridging_leads).isdisjoint(trace.leads):
        return True
    if facts.sides.copper(supply.hot, supply.common) is not None:
        return True
    ends = {facts.sides.conductor(end) for number in trace.leads for end in _ends(facts, number)}
    calls = (tie.call for tie in facts.once(ties) if tie.supply.part.key == supply.part.key)
    return any(
        {facts.sides.conductor(call.feed), facts.sides.conductor(call.call)} <= ends
        for call in calls
    )


def _is_jumped(facts: Facts, supply: Supply, trace: Trace) -> bool:
    """Whether what joins the last contact to the common is no lead of its own part to a control."""
    last = trace.contacts[-1].part
    tail = facts.sides.path(_on_common(facts, supply, trace), supply.common)
    cause = mismatched(facts, tail.leads if tail else (), on_call=True)
    if cause is None:
        return False
    parts = [facts.part(end) for end in _ends(facts, cause)]
    controls = [part for part in parts if part and part.family == "ignition-control"]
    return not (last in parts and len(controls) == 1)


def _ends(facts: Facts, number: int) -> tuple[Terminal, Terminal]:
    lead = facts.diagram.leads[number]
    return lead.a, lead.b


def _on_common(facts: Facts, supply: Supply, trace: Trace) -> Terminal:
    """The side of the last contact that is on the common."""
    last = trace.contacts[-1]
    return last.a if facts.sides.same(last.a, supply.common) else last.b


def _moved(
    facts: Facts, leads: list[int], terminal: Terminal, home: Terminal | None
) -> tuple[Edit, ...]:
    """Take the far end of the one lead there to the one load whose terminal is empty."""
    if home is None or len(leads) != 1:
        return ()
    far = facts.other_end(leads[0], terminal)
    edit = move_end(facts.diagram, leads[0], far, home)
    return (edit,) if edit else ()
