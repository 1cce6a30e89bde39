"""Every terminal that its device needs has a lead.

A terminal that belongs to a part left out of the sketch is none: what is needed is judged only
beside what is drawn.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import add_lead, move_end
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.words import called
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.empty import (
    Gap,
    any_wired,
    counterparts,
    needed_and_empty,
    one_gap,
    reached_inside,
)
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.workmanship.contact_in_call import call_leads, in_call

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part fan is relay
wire xfmr.R to limit.1
wire limit.2 to stat.R
wire stat.W to fan to xfmr.C
wire xfmr.C to earth: green
"""
_CALL = """\
part xfmr is transformer
part stat is thermostat
part box is pilot-ignition-control
wire xfmr.R to stat to box.TH
wire xfmr.C to box.COM
wire box.GND to earth: green
"""

_BOILER = """\
part line is mains: 120 V
part xfmr is transformer
part boiler is boiler-control
part stat is thermostat
part box is pilot-ignition-control
wire line.L1 to boiler.L1 to xfmr.L1: black
wire line.N to boiler.N to xfmr.N: white
wire line.G to earth: green
wire boiler.R to stat to boiler.W
wire boiler.BURNER-2 to box.TH
wire xfmr.C to box.COM
wire box.GND to earth: green
"""

RULE = Rule(
    name="needed-terminal-empty",
    title="Every terminal that its device needs has a lead",
    family="workmanship",
    breaks=Breaks.OPERATION,
    why="The circuit ends there: what lies beyond does not work.",
    blind_spots="A lead that is there and was not typed.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "empty": Fault(
            "{terminal} ({about}) has no lead, and {part} cannot do without it: run it",
            "The circuit ends there: what hangs on {terminal} does not work.",
        ),
        "contact-one-side": Fault(
            "a contact of {part} is wired at one side alone: {terminal} ({about}) has no lead; "
            "run it, or take the other one off and cap it",
            "The contact switches nothing.",
            Breaks.WORKMANSHIP,
        ),
        "call-ends": Fault(
            "{terminal} ({about}) of {part} has no lead, and its contact stands in the call to "
            "{call}: run the lead that belongs there",
            "Nothing lights on a call.",
        ),
        "call-past": Fault(
            "{terminal} ({about}) of {part} has no lead, and {call} is called past its contact: "
            "let the call go in at one side of it and out at the other",
            "The burner runs with nothing calling for it.",
            Breaks.SAFETY,
        ),
        "no-lead-between": Fault(
            "no lead runs from {terminal} to {other}: run one",
            "The circuit ends there: what hangs on {terminal} does not work.",
        ),
        "not-in-chain": Fault(
            "no lead runs from {terminal} to {other}, and none to {parts}: run the chain from "
            "{terminal} through {parts} to {other}",
            "The circuit ends there: what hangs on {other} does not work.",
        ),
        "on-its-like": Fault(
            "{terminal} has no lead and is fed inside {part}, over {other}: run the lead to "
            "{terminal} itself",
            "It works; who looks for the lead at {terminal} does not find it.",
            Breaks.WORKMANSHIP,
        ),
    },
    bad=(
        Example(_GOOD.replace("fan to xfmr.C", "fan.A"), (("empty", "fan"),)),
        Example(
            _GOOD + "part lamp is lamp\nwire xfmr.R to lamp to xfmr.C\nwire fan.COM to lamp.L\n",
            (("contact-one-side", "fan"),),
        ),
        Example(
            _BOILER + "part lamp is lamp: 24 V\nwire xfmr.R to lamp to xfmr.C\n",
            (("call-ends", "boiler"),),
        ),
        Example(
            _BOILER.replace("boiler.BURNER-2 to", "xfmr.R to boiler.BURNER-1\nwire xfmr.R to"),
            (("call-past", "boiler"),),
        ),
        Example(_GOOD.replace("wire limit.2 to stat.R\n", ""), (("no-lead-between", "limit"),)),
        Example(
            "\n".join(line for line in _CALL.splitlines() if " stat to " not in line) + "\n",
            (("not-in-chain", "xfmr"),),
        ),
        Example(_CALL.replace("box.COM", "box.VC"), (("on-its-like", "box.VC"),)),
    ),
    good=(Example(_GOOD), Example(_CALL)),
    general=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find needed terminals without a lead; the two ends of one missing lead are one finding."""
    for end, like in facts.once(reached_inside).items():
        if not _explained(facts, end):
            yield _on_its_like(facts, end, like)
    empty = [end for end in facts.once(needed_and_empty) if not _explained(facts, end)]
    if not empty:
        return
    pairs = facts.once(counterparts)
    gap = facts.once(one_gap)
    between = (gap.end, gap.other) if gap else ()
    done: set[Terminal] = set()
    for end in empty:
        if end in done:
            continue
        others = (*pairs.get(end, ()), *(between if end in between else ()))
        other = next((other for other in others if other in empty and other != end), None)
        done.add(end)
        if other is not None:
            done.add(other)
            if gap is not None and gap.beside and end in between:
                yield _through(facts, gap)
            else:
                yield _between(facts, end, other)
        else:
            yield _empty(facts, end)


def _explained(facts: Facts, end: Terminal) -> bool:
    """Whether the lead that is missing here landed elsewhere, or comes from a part not wired.

    Where the other end of the lead is wired, what it is wired to is the mistake, if there is one.
    """
    for other in facts.once(counterparts).get(end, ()):
        part = facts.part(other)
        if facts.is_wired(other) or (part is not None and not any_wired(facts, part)):
            return True
    return False


def _between(facts: Facts, end: Terminal, other: Terminal) -> Finding:
    return RULE.finding(
        facts,
        "no-lead-between",
        facts.diagram.parts[end.part].name_span,
        terminals=(end, other),
        edits=(add_lead(facts.diagram, end, other),),
        terminal=facts.show(end),
        other=facts.show(other),
    )


def _through(facts: Facts, gap: Gap) -> Finding:
    """Nothing is offered to be changed: in which order they are to stand is not known."""
    return RULE.finding(
        facts,
        "not-in-chain",
        facts.diagram.parts[gap.end.part].name_span,
        terminals=(gap.end, gap.other),
        terminal=facts.show(gap.end),
        other=facts.show(gap.other),
        parts=both([part.name for part in gap.beside]),
    )


def _on_its_like(facts: Facts, end: Terminal, other: Terminal) -> Finding:
    leads = facts.nets.leads_at(other)
    edit = move_end(facts.diagram, leads[0], other, end) if len(leads) == 1 else None
    return RULE.finding(
        facts,
        "on-its-like",
        facts.place(other),
        leads=leads,
        terminals=(end, other),
        edits=(edit,) if edit else (),
        terminal=facts.show(end),
        other=facts.show(other),
        part=facts.diagram.parts[end.part].name,
    )


def _empty(facts: Facts, end: Terminal) -> Finding:
    part = facts.diagram.parts[end.part]
    spec = part.structure.terminals[end.name]
    fault, chain = "empty" if spec.must else "contact-one-side", None
    if not spec.must:
        chain = in_call(facts, end)
    if chain is not None:
        fault = "call-past" if chain.feeds else "call-ends"
    return RULE.finding(
        facts,
        fault,
        part.name_span,
        leads=call_leads(facts, chain) if chain else (),
        terminals=(end, *((chain.call,) if chain else ())),
        breaks=_breaks(facts, end) if chain is None else None,
        call=called(facts, chain) if chain else "",
        terminal=facts.show(end),
        about=spec.about.split(":")[0].split(";")[0],
        part=part.name,
    )


def _breaks(facts: Facts, end: Terminal) -> Breaks | None:
    """What is worse, or not so bad, than the fault usually is; None: as usual."""
    role = facts.role(end)
    if role == "end-switch":
        return Breaks.OPERATION  # its zone calls nothing
    if role in ("secondary-hot", "secondary-common"):
        chains = facts.once(Burners).chains
        if chains and all(chain.feeds for chain in chains):
            return Breaks.WORKMANSHIP  # another transformer feeds what hangs on it
    return None
