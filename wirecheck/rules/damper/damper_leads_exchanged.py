"""Each lead between a damper and its control lands on the terminals of one name.

The harness has four leads of one length.  Re-made by hand, two of them change places easily.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import swap_ends
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.damper.crossings import OUTCOMES, crossed_over, told_elsewhere
from wirecheck.rules.damper.hookup import CALL, COMMON, HOT, PROVED, Hookup, hookups
from wirecheck.rules.damper.words import SAME_WITH_SPRING, SHUT_VENT
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part box is pilot-ignition-control
part vent is vent-damper
part pilot is pilot-burner
wire xfmr.R to stat to box.TH
wire xfmr.R to box.24V
wire xfmr.C to box.COM
plug box to vent: D-HOT to HOT, D-CALL to CALL, D-PROVED to PROVED, D-COM to COM
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""


def _crossed(*order: str) -> str:
    return _GOOD.replace(
        "D-HOT to HOT, D-CALL to CALL, D-PROVED to PROVED, D-COM to COM",
        "D-HOT to {}, D-CALL to {}, D-PROVED to {}, D-COM to {}".format(*order),
    )


_SWAP = "{one} and {other} are exchanged: {lands}; swap the two leads"

RULE = Rule(
    name="damper-leads-exchanged",
    title="The leads between a damper and its control keep their order",
    family="vent damper",
    breaks=Breaks.OPERATION,
    why=(
        "The motor has to get the call, and the control has to get it back through the end switch "
        "only. In another order neither happens, or the control is fed with no call."
    ),
    blind_spots="Terminals whose printed labels were read wrong when the file was typed.",
    caution=SHUT_VENT,
    sources=(PRACTICE,),
    faults={
        **{pair: Fault(_SWAP, *outcome) for pair, outcome in OUTCOMES.items()},
        "order": Fault(
            "the leads of {damper} are out of order at {control}: {lands}; land each on the "
            "terminal of its own name",
            "The damper does not open, or the burner does not light.",
        ),
        "astray": Fault(
            "{one} lands on the wrong terminal of {control}: {lands}; move it to {right}",
            "The damper does not open, or the burner does not light.",
        ),
        "hot-astray": Fault(
            "{one} lands on the wrong terminal of {control}: {lands}; move it to {right}",
            SAME_WITH_SPRING,
            Breaks.WORKMANSHIP,
        ),
    },
    bad=(
        Example(_crossed("HOT", "PROVED", "CALL", "COM"), (("call-proved", "CALL"),)),
        Example(_crossed("CALL", "HOT", "PROVED", "COM"), (("hot-call", "HOT"),)),
        Example(_crossed("PROVED", "CALL", "HOT", "COM"), (("hot-proved", "HOT"),)),
        Example(_crossed("COM", "CALL", "PROVED", "HOT"), (("hot-common", "HOT"),)),
        Example(_crossed("HOT", "COM", "PROVED", "CALL"), (("call-common", "CALL"),)),
        Example(_crossed("HOT", "CALL", "COM", "PROVED"), (("proved-common", "PROVED"),)),
        Example(_crossed("CALL", "PROVED", "HOT", "COM"), (("order", "HOT"),)),
        Example(
            _crossed("HOT", "CALL", "PROVED", "COM").replace("D-PROVED to", "D-HOT to"),
            (("astray", "PROVED"),),
        ),
        Example(
            _crossed("HOT", "CALL", "PROVED", "COM").replace("D-HOT to", "D-CALL to"),
            (("hot-astray", "HOT"),),
        ),
    ),
    good=(Example(_GOOD),),
    covers=True,
)

_SHORT = {HOT: "hot", CALL: "call", PROVED: "proved", COMMON: "common"}


def check(facts: Facts) -> Iterator[Finding]:
    """Find dampers whose leads land on the control in another order."""
    for hookup in facts.once(hookups):
        wrong = [role for role in hookup.wrong if not told_elsewhere(hookup, role)]
        while wrong:
            one = wrong.pop(0)
            other = next((r for r in wrong if crossed_over(hookup, one, r)), None)
            if other:
                wrong.remove(other)
                yield _finding(facts, hookup, f"{_SHORT[one]}-{_SHORT[other]}", (one, other))
            elif wrong:
                yield _finding(facts, hookup, "order", (one, *wrong))
                wrong = []
            else:
                needless = one == HOT and hookup.shut_by_spring
                yield _finding(facts, hookup, "hot-astray" if needless else "astray", (one,))


def _finding(facts: Facts, hookup: Hookup, fault: str, roles: tuple[str, ...]) -> Finding:
    ends = [hookup.at_damper(role) for role in roles]
    lands = [
        f"{facts.show(end)} is on {facts.show(hookup.at_control(_where(hookup, role)))}"
        for role, end in zip(roles, ends, strict=True)
    ]
    return RULE.finding(
        facts,
        fault,
        facts.place(ends[0]),
        leads=dict.fromkeys(number for end in ends for number in facts.nets.leads_at(end)),
        terminals=[*ends, *map(hookup.at_control, roles)],
        edits=_swap(facts, hookup, roles) if len(roles) == 2 else (),
        one=facts.show(ends[0]),
        other=facts.show(ends[-1]),
        lands=both(lands),
        damper=hookup.damper.name,
        control=hookup.control.name,
        right=facts.show(hookup.at_control(roles[0])),
    )


def _where(hookup: Hookup, role: str) -> str:
    """The control's terminal on which a lead of the damper landed."""
    return next(other for other in _SHORT if other in hookup.landed[role])


def _swap(facts: Facts, hookup: Hookup, roles: tuple[str, ...]) -> tuple[Edit, ...]:
    """Swap the two leads at the damper, where there is one on each terminal."""
    one, other = map(hookup.at_damper, roles)
    at_one, at_other = facts.nets.leads_at(one), facts.nets.leads_at(other)
    if len(at_one) != 1 or len(at_other) != 1:
        return ()
    return swap_ends(facts.diagram, at_one[0], one, at_other[0], other)
