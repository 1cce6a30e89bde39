"""All four leads run between a damper and its control.

Constant power, the call, the call once proved, and the common: each has its own terminal, and
without the call, its way back or the common the damper does not open or the burner does not light.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import add_lead
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.damper.hookup import CALL, COMMON, HOT, PROVED, ROLES, Hookup, hookups
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


def _without(pin: str) -> str:
    return _GOOD.replace(f"{pin}, ", "").replace(f", {pin}", "")


_UNFED = _GOOD.replace("wire xfmr.R to box.24V\n", "")
_STAYS_OPEN = "The burner lights; the damper stays open after it, and warm air goes up the vent."

RULE = Rule(
    name="damper-lead-missing",
    title="Each of the four leads between a damper and its control is there",
    family="vent damper",
    breaks=Breaks.OPERATION,
    why=(
        "The control waits for the damper's end switch. A damper without power, call or common "
        "does not open; one without its proved lead opens for nothing."
    ),
    blind_spots="A damper that gets its power from somewhere that was not drawn.",
    caution=SHUT_VENT,
    sources=(PRACTICE,),
    faults={
        "hot": Fault(
            "no lead brings constant 24 V from {control} to {damper}: run one",
            SAME_WITH_SPRING,
            Breaks.WORKMANSHIP,
        ),
        "hot-to-shut": Fault(
            "no lead brings constant 24 V from {control} to {damper}, which needs it to shut: run "
            "one",
            _STAYS_OPEN,
        ),
        "feed": Fault(
            "no lead brings constant 24 V to {control}, from where {damper} gets it: run one from "
            "the hot side",
            SAME_WITH_SPRING,
            Breaks.WORKMANSHIP,
        ),
        "feed-to-shut": Fault(
            "no lead brings constant 24 V to {control}, from where {damper} gets it and needs it "
            "to shut: run one from the hot side",
            _STAYS_OPEN,
        ),
        "call": Fault(
            "no lead brings the call from {control} to {damper}: run one",
            "The damper does not open, and the burner never lights.",
        ),
        "proved": Fault(
            "no lead brings the call back from {damper} to {control}: run one",
            "The damper opens, and the burner never lights.",
        ),
        "common": Fault(
            "no lead joins {damper} to {control}, the common: run one",
            "The damper's motor does not run, and the burner never lights.",
        ),
        "common-by-metal": Fault(
            "no lead joins {damper} to {control}, the common: its current goes back over earth; "
            "run one",
            "Works as long as earth carries the motor's current, and stops with no warning.",
            Breaks.WORKMANSHIP,
        ),
    },
    bad=(
        Example(_without("D-HOT to HOT"), (("hot", "vent"),)),
        Example(
            _without("D-HOT to HOT").replace("vent-damper", "vent-damper: action power-both"),
            (("hot-to-shut", "vent"),),
        ),
        Example(_UNFED, (("feed", "box"),)),
        Example(
            _UNFED.replace("vent-damper", "vent-damper: action power-both"),
            (("feed-to-shut", "box"),),
        ),
        Example(_without("D-CALL to CALL"), (("call", "vent"),)),
        Example(_without("D-PROVED to PROVED"), (("proved", "vent"),)),
        Example(_without("D-COM to COM"), (("common", "vent"),)),
        Example(
            _without("D-COM to COM") + "wire vent.COM to earth\nwire xfmr.C to earth: green\n",
            (("common-by-metal", "vent.COM"),),
        ),
    ),
    good=(Example(_GOOD),),
)

_FAULTS = {HOT: "hot", CALL: "call", PROVED: "proved", COMMON: "common"}


def check(facts: Facts) -> Iterator[Finding]:
    """Find dampers with leads to their control left out."""
    wired = facts.as_wired
    for hookup in facts.once(hookups):
        if not any(facts.is_wired(hookup.at_damper(role)) for role in ROLES):
            continue  # not wired at all: told of the part
        for role in hookup.missing:
            damper, control = hookup.at_damper(role), hookup.at_control(role)
            if _may_be_there(facts, hookup, role):
                continue
            yield RULE.finding(
                facts,
                _fault(wired, hookup, _FAULTS[role]),
                facts.place(damper),
                terminals=(damper, control),
                edits=_run(facts, damper, control),
                damper=facts.show(damper),
                control=facts.show(control),
            )
        if HOT not in hookup.missing:
            yield from _unfed(facts, hookup)


def _unfed(facts: Facts, hookup: Hookup) -> Iterator[Finding]:
    """The damper hangs on the control's constant 24 V, and nothing feeds that."""
    wired = facts.as_wired
    (feed,) = hookup.control.with_role("control-hot")
    damper = hookup.at_damper(HOT)
    empty = not facts.is_wired(feed) and wired.joined(damper, hookup.at_control(HOT))
    if empty and facts.supplies and wired.is_traced(damper) and not wired.hot_supplies(damper):
        yield RULE.finding(
            facts,
            _fault(wired, hookup, "feed"),
            hookup.control.name_span,
            terminals=(feed, damper),
            damper=facts.show(damper),
            control=facts.show(feed),
        )


def _fault(facts: Facts, hookup: Hookup, fault: str) -> str:
    """A spring shuts the damper without the constant 24 V; a motor that is to shut it cannot."""
    needs_hot = fault in ("hot", "feed") and not hookup.shut_by_spring
    if fault == "common" and facts.joined(hookup.at_damper(COMMON), hookup.at_control(COMMON)):
        return "common-by-metal"
    return f"{fault}-to-shut" if needs_hot else fault


def _may_be_there(facts: Facts, hookup: Hookup, role: str) -> bool:
    """Whether the lead was not traced, or something else is said of it or takes its place."""
    ends = (hookup.at_damper(role), hookup.at_control(role))
    if not all(map(facts.as_wired.is_traced, ends)):
        return True
    return hookup.plugged and role in (CALL, PROVED)


def _run(facts: Facts, damper: Terminal, control: Terminal) -> tuple[Edit, ...]:
    """Run the lead, where both its terminals are free."""
    if facts.is_wired(damper) or facts.is_wired(control):
        return ()
    return (add_lead(facts.diagram, control, damper),)
