"""The tap that is wired suits the line that is drawn.

Line volts on a tap for more give a weak secondary that fails when the valve is to pull in; on a tap
for less they give too much for everything that hangs on it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from wirecheck.language.edit import move_end
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.parts.amounts import each_quantity
from wirecheck.parts.structure import LOW_VOLTAGE_V
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs, rated_volts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: So far apart, in parts of one, two nominal voltages count as the same, as 115 and 120 V
#: (common practice, no source).
NEAR: Final = 0.1

#: From so many times their volts on coils are said to burn out and not only to run hot (common
#: practice, no source).
BURNS: Final = 1.5

_GOOD = """\
part line is mains: 240 V
part xfmr is transformer: primary 120/240 V
part fan is relay
part stat is thermostat
wire line.L1 to xfmr.240V: black
wire line.L2 to xfmr.N: red
wire line.G to earth: green
wire xfmr.R to stat to fan to xfmr.C
wire xfmr.C to earth: green
"""
_208 = _GOOD.replace("mains: 240 V", "mains: 208 V").replace("120/240", "120/208/240")

RULE = Rule(
    name="wrong-primary-tap",
    title="The primary tap that is wired suits the line volts",
    family="supply",
    breaks=Breaks.OPERATION,
    why=(
        "The secondary follows the line: on a tap for more, valve and relays chatter or never pull "
        "in; on a tap for less, coils overheat and controls fail."
    ),
    blind_spots="Nominal volts as typed: what the supply really has is measured, not drawn.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "too-low": Fault(
            "the {rated} V primary of {part} gets {line} V at {tap}, so {secondary} V come out "
            "instead of {nominal} V: {mend}",
            "Weak secondary: relays and valves chatter or do not pull in under load.",
        ),
        "too-high": Fault(
            "the {rated} V primary of {part} gets {line} V at {tap}, so {secondary} V come out "
            "instead of {nominal} V: {mend}",
            "Coils and controls {harm}.",
        ),
    },
    bad=(
        Example(
            _208,
            (("too-low", "xfmr.240V"),),
        ),
        Example(
            _GOOD.replace("xfmr.240V", "xfmr.120V"),
            (("too-high", "xfmr.120V"),),
        ),
    ),
    good=(Example(_GOOD), Example(_208.replace("xfmr.240V", "xfmr.208V"))),
)


class _Winding(NamedTuple):
    part: Part
    hot: Terminal
    neutral: Terminal
    rated: float
    secondary: float


def check(facts: Facts) -> Iterator[Finding]:
    """Find primaries with other nominal volts across them than they are made for."""
    legs = facts.once(Legs)
    if not all("volts" in source.part.given for source in legs.sources):
        return
    for winding in _windings(facts):
        line = legs.volts(winding.hot, winding.neutral)
        if line and not _near(line, winding.rated):
            yield _finding(facts, winding, line)


def _near(volts: float, rated: float) -> bool:
    return abs(volts / rated - 1) <= NEAR


def _windings(facts: Facts) -> Iterator[_Winding]:
    """The wired primary windings whose volts were typed."""
    for part in facts.diagram.parts.values():
        for spec in part.structure.sources:
            if not spec.fed_volts or spec.fed_volts not in part.given:
                continue
            rated = each_quantity(part.values.get(spec.fed_volts))
            for (a, b), volts in zip(spec.fed_by, rated, strict=False):
                hot, neutral = part.terminal(a), part.terminal(b)
                if facts.is_wired(hot) and facts.is_wired(neutral):
                    secondary = rated_volts(part.values, spec.volts)
                    yield _Winding(part, hot, neutral, volts.high_base, secondary)


def _finding(facts: Facts, winding: _Winding, line: float) -> Finding:
    given = winding.secondary * line / winding.rated
    harm = "burn out" if given > BURNS * winding.secondary else "run hot"
    tap = _right_tap(winding, line)
    mend = f"move the lead to {facts.show(tap)}" if tap else f"it needs a primary of {line:.0f} V"
    return RULE.finding(
        facts,
        "too-low" if line < winding.rated else "too-high",
        facts.place(winding.hot),
        leads=facts.nets.leads_at(winding.hot)[:1],
        terminals=(winding.hot, winding.neutral),
        edits=_moved(facts, winding, tap),
        breaks=Breaks.SAFETY if given > LOW_VOLTAGE_V >= winding.secondary else Breaks.OPERATION,
        rated=f"{winding.rated:.0f}",
        part=winding.part.name,
        line=f"{line:.0f}",
        tap=facts.show(winding.hot),
        secondary=f"{given:.1f}".removesuffix(".0"),
        harm=harm,
        nominal=f"{winding.secondary:.0f}",
        mend=mend,
    )


def _right_tap(winding: _Winding, line: float) -> Terminal | None:
    """Another tap of the same transformer that suits the line."""
    part = winding.part
    for spec in part.structure.sources:
        rated = each_quantity(part.values.get(spec.fed_volts or ""))
        for (a, _b), volts in zip(spec.fed_by, rated, strict=False):
            if _near(line, volts.high_base):
                return part.terminal(a)
    return None


def _moved(facts: Facts, winding: _Winding, tap: Terminal | None) -> tuple[Edit, ...]:
    leads = facts.nets.leads_at(winding.hot)
    if tap is None or len(leads) != 1 or facts.is_wired(tap):
        return ()
    edit = move_end(facts.diagram, leads[0], winding.hot, tap)
    return (edit,) if edit else ()
