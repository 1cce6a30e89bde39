"""Every lead joins what is not joined without it.

One whose two ends are on one conductor already does nothing, and hides the day the other one comes
off.  Earths are the exception: the more, the better.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import remove_lead
from wirecheck.model.diagram import EARTH, OPEN_END, UNKNOWN_END, Lead, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part fan is relay
part lamp is lamp
wire xfmr.R to stat to fan to xfmr.C
wire stat.W to lamp to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="lead-does-nothing",
    title="Every lead joins what is not joined without it",
    family="workmanship",
    breaks=Breaks.WORKMANSHIP,
    why=(
        "A lead too many misleads whoever traces the circuit, and often it is one that was meant "
        "for the terminal beside."
    ),
    blind_spots="Leads doubled on purpose, for current.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "doubled": Fault(
            "a second lead runs from {a} to {b}: take it out, or land it where it was meant to go",
            "It works; the lead does nothing.",
        ),
        "joined": Fault(
            "{a} and {b} are one conductor without this lead{way}: take it out, or land it where "
            "it was meant to go",
            "It works; the lead does nothing.",
        ),
    },
    bad=(
        Example(
            _GOOD + "wire fan.A to stat.W\n",
            (("doubled", "fan.A to stat.W"),),
        ),
        Example(_GOOD + "wire fan.A to lamp.L\n", (("joined", "fan.A to lamp.L"),)),
    ),
    good=(Example(_GOOD), Example(_GOOD + "wire fan.B to earth: green\n")),
    general=True,
)


class _Joined:
    """Conductors as they grow, lead by lead, with the tree that holds each together."""

    def __init__(self) -> None:
        self._parent: dict[Terminal, Terminal] = {}

    def root(self, terminal: Terminal) -> Terminal:
        parent = self._parent
        while (above := parent.get(terminal)) is not None:
            if (top := parent.get(above)) is not None:
                parent[terminal] = top
            terminal = above
        return terminal

    def join(self, a: Terminal, b: Terminal) -> bool:
        """Join two terminals; False if they are joined already."""
        one, other = self.root(a), self.root(b)
        if one == other:
            return False
        self._parent[other] = one
        return True


def check(facts: Facts) -> Iterator[Finding]:
    """Find leads that close a loop of leads and links, earths and burner grounds left out."""
    joined, by_leads = _Joined(), _Joined()
    for part in facts.diagram.parts.values():
        for link in part.structure.links:
            a, b = (part.terminal(name) for name in link.between)
            if facts.role(a) != "burner-ground" != facts.role(b):
                joined.join(a, b)
                if part.family == "strip":
                    by_leads.join(a, b)
    runs: set[frozenset[Terminal]] = set()
    for number, lead in enumerate(facts.diagram.leads):
        ends = frozenset((lead.a, lead.b))
        if not lead.conducts or any(_is_ground(facts, end) for end in ends):
            continue
        loops = not joined.join(lead.a, lead.b)
        if not by_leads.join(lead.a, lead.b) or (loops and not _is_to_valve_common(facts, lead)):
            yield _finding(facts, number, is_doubled=ends in runs)
        runs.add(ends)


def _is_ground(facts: Facts, end: Terminal) -> bool:
    """Whether leads to this end may be as many as they like, or are none."""
    if end == EARTH or end.part in (OPEN_END, UNKNOWN_END):
        return True
    spec = facts.diagram.spec(end)
    return spec is not None and (spec.circuit == "earth" or spec.role == "burner-ground")


def _is_to_valve_common(facts: Facts, lead: Lead) -> bool:
    """Whether a lead brings the common to where a control gives it to the valve.

    The two are one inside the control, but each is a terminal with a lead of its own.
    """
    return lead.a.part != lead.b.part and "valve-common" in (facts.role(lead.a), facts.role(lead.b))


def _finding(facts: Facts, number: int, *, is_doubled: bool) -> Finding:
    lead = facts.diagram.leads[number]
    way = ", inside the device" if lead.a.part == lead.b.part else ""
    return RULE.finding(
        facts,
        "doubled" if is_doubled else "joined",
        lead.span,
        leads=(number,),
        terminals=(lead.a, lead.b),
        edits=(remove_lead(facts.diagram, number),),
        a=facts.show(lead.a),
        b=facts.show(lead.b),
        way=way,
    )
