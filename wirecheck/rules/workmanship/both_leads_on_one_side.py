"""The two leads of a switch are on its two sides.

A part named alone at the end of a lead takes that lead on its first side, at the start on its
second.  Two leads that so land on one side leave the part out of the circuit.  A fuse or breaker
that is left out so, however its leads are named, protects nothing, and everything works.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from itertools import permutations
from typing import Final

from wirecheck.circuit.nets import Element
from wirecheck.language.edit import move_end
from wirecheck.model.diagram import NamedAlone, Part, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part fan is relay
wire xfmr.R to limit
wire limit to stat to fan.A
wire fan.B to xfmr.C
wire xfmr.C to earth: green
"""

_FUSED = """\
part xfmr is transformer
part fuse is fuse: 3 A
part stat is thermostat
part fan is relay
wire xfmr.R to fuse.1
wire fuse.2 to stat.R
wire stat.W to fan to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="both-leads-on-one-side",
    title="The two leads of a switch are on its two sides",
    family="workmanship",
    breaks=Breaks.OPERATION,
    why=(
        "With both leads on one screw the switch is bypassed. More often the leads are right and "
        "the text is not: name the terminals, and it says what is there."
    ),
    blind_spots="Which of the two leads belongs on the other side; for a switch it is all one.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "safety": Fault(
            "the leads {both} both land on {full}, and {empty} is empty: {part} is out of the "
            "circuit; land one of them on {empty}",
            "The unit runs whether {part} is open or closed.",
            Breaks.SAFETY,
        ),
        "part": Fault(
            "the leads {both} both land on {full}, and {empty} is empty: {part} is out of the "
            "circuit; land one of them on {empty}",
            "{part} does nothing.",
        ),
        "fuse": Fault(
            "{part} protects nothing: the leads {both} all land on {full}, and {empty} is empty; "
            "land {moved} on {empty}, so that the current goes through {part}",
            "Everything works; a short beyond {part} is not cut off: leads and transformer burn.",
            Breaks.SAFETY,
        ),
    },
    bad=(
        Example(_GOOD.replace("xfmr.R to limit", "limit to xfmr.R"), (("safety", "limit"),)),
        Example(
            _GOOD.replace("fan.A", "fan").replace("fan.B to xfmr.C", "xfmr.C to fan"),
            (("part", "fan"),),
        ),
        Example(_FUSED.replace("fuse.2", "fuse.1"), (("fuse", "fuse"),)),
        Example(_FUSED.replace("fuse.1", "fuse.2"), (("fuse", "fuse"),)),
    ),
    good=(Example(_GOOD), Example(_FUSED)),
    covers=True,
)


#: Families of what a lead from a fuse's feed may run to without anything being fed past the fuse.
_NOT_PROTECTED: Final = frozenset({"overcurrent", "strip", "mains"})


def check(facts: Facts) -> Iterator[Finding]:
    """Find fuses and breakers, and parts named alone, whose leads all land on one side."""
    told: set[str] = set()
    for fuse in facts.of("overcurrent"):
        for landed, empty in permutations(map(fuse.terminal, fuse.structure.through or ())):
            if len(facts.nets.leads_at(landed)) > 1 and not facts.is_wired(empty):
                found = _fuse(facts, fuse, landed, empty)
                told.update([fuse.key] if found else [])
                yield from [found] if found else []
    for alone in facts.diagram.named_alone:
        part = facts.diagram.parts[alone.part]
        other = _other_side(part, alone.landed)
        leads = facts.nets.leads_at(alone.landed)
        number = _lead_of(facts, alone)
        if part.key in told or other is None or number is None:
            continue
        if len(leads) < 2 or facts.is_wired(other):
            continue
        told.add(part.key)
        is_safety = any(switch.safety for switch in part.structure.switches)
        moved = move_end(facts.diagram, number, alone.landed, other)
        yield RULE.finding(
            facts,
            "safety" if is_safety else "part",
            alone.span,
            leads=leads,
            terminals=(alone.landed, other),
            edits=(moved,) if moved else (),
            both=" and ".join(facts.lead(number) for number in leads),
            full=facts.show(alone.landed),
            empty=facts.show(other),
            part=part.name,
        )


def _fuse(facts: Facts, fuse: Part, landed: Terminal, empty: Terminal) -> Finding | None:
    """A fuse that is fed by one of its leads while others carry on what it is to protect.

    Leads from fuse to fuse carry on the feed alone: one that nothing hangs on is a spare.
    """
    leads = facts.nets.leads_at(landed)
    feeds = [number for number in leads if _reaches(facts, number, landed, _is_source)]
    onward = [
        number
        for number in leads
        if number not in feeds and _reaches(facts, number, landed, _is_protected, contacts=False)
    ]
    if not feeds or not onward:
        return None
    is_line_side = landed.name == (fuse.structure.through or ("",))[0]
    moved = onward if is_line_side else feeds
    edits = [move_end(facts.diagram, number, landed, empty) for number in moved]
    return RULE.finding(
        facts,
        "fuse",
        fuse.name_span,
        leads=leads,
        terminals=(landed, empty),
        edits=tuple(edit for edit in edits if edit),
        both=both([facts.lead(number) for number in leads]),
        moved=both([facts.lead(number) for number in moved]),
        full=facts.show(landed),
        empty=facts.show(empty),
        part=fuse.name,
    )


def _reaches(
    facts: Facts,
    number: int,
    landed: Terminal,
    is_goal: Callable[[Facts, Terminal], bool],
    *,
    contacts: bool = True,
) -> bool:
    """Whether a lead leads to such a terminal, away from where it landed."""
    far = facts.other_end(number, landed)
    through = None if contacts else _no_contact
    found = facts.sides.search((far,), partial(is_goal, facts), through=through, without=landed)
    return found is not None


def _is_source(facts: Facts, end: Terminal) -> bool:
    part = facts.part(end)
    is_mains = part is not None and part.family == "mains" and facts.role(end) == "line-hot"
    return is_mains or any(end == supply.hot for supply in facts.supplies)


def _is_protected(facts: Facts, end: Terminal) -> bool:
    part = facts.part(end)
    return part is not None and part.family not in _NOT_PROTECTED


def _no_contact(_contact: Element) -> bool:
    return False


def _other_side(part: Part, landed: Terminal) -> Terminal | None:
    through = part.structure.through or ()
    return next((part.terminal(name) for name in through if name != landed.name), None)


def _lead_of(facts: Facts, alone: NamedAlone) -> int | None:
    """The lead whose end was typed as the part's name alone; None if it could not be read."""
    leads = facts.nets.leads_at(alone.landed)
    return next((n for n in leads if facts.end_span(n, alone.landed) == alone.span), None)
