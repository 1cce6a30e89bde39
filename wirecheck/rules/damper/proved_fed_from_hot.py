"""What the damper has proved reaches the control through its end switch only.

Joined to constant 24 V, the terminal behind the end switch feeds spark and gas as long as there
is power.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.bridge import Bridge
from wirecheck.rules.call_chain.loops import Bridged
from wirecheck.rules.damper.hookup import CALL, HOT, PROVED, is_constant
from wirecheck.rules.damper.words import SHUT_VENT
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

RULE = Rule(
    name="proved-fed-from-hot",
    title="The control's proved terminal is fed by the damper's end switch only",
    family="vent damper",
    breaks=Breaks.SAFETY,
    why=(
        "Everything in the control hangs on this terminal. Constant 24 V there is a call that "
        "passes thermostat, limits and damper."
    ),
    blind_spots="Constant 24 V that gets there through a contact which was not typed.",
    caution=SHUT_VENT,
    sources=(PRACTICE,),
    faults={
        "no-call": Fault(
            "{way} puts constant 24 V on {proved}: take it off, so that the end switch alone "
            "feeds {proved}",
            "The burner fires as soon as there is power, with no call and the damper shut.",
        ),
    },
    bad=(
        Example(
            _GOOD + "jumper box.D-HOT to box.D-PROVED\n",
            (("no-call", "box.D-HOT to box.D-PROVED"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls whose proved terminal is one conductor with constant 24 V, the call not."""
    wired = facts.as_wired
    for control in facts.of("ignition-control"):
        call, proved = control.with_role(CALL)[0], control.with_role(PROVED)[0]
        hot = _hot(wired, control, proved)
        if hot is None or wired.sides.same(call, proved):
            continue
        bridge = Bridge(facts, Bridged((), (hot, proved), wired.net(proved)))
        yield RULE.finding(
            facts,
            "no-call",
            bridge.span,
            leads=bridge.leads,
            terminals=dict.fromkeys((hot, proved, *bridge.ends)),
            edits=bridge.edits,
            way=bridge.words,
            proved=facts.show(proved),
        )


def _hot(facts: Facts, control: Part, proved: Terminal) -> Terminal | None:
    """Constant 24 V on a conductor: of the control and of the supplies the one nearest by."""
    own = control.with_role(HOT)[0]
    found = [supply.hot for supply in facts.sides.hot_on(proved)]
    if facts.sides.same(own, proved) and is_constant(facts, own):
        found.append(own)
    return min(found, key=lambda hot: len(facts.nets.path(hot, proved)), default=None)
