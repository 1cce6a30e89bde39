"""Blade and end switch of the damper move.

An end switch that is welded shut says "open" whatever the blade does; a blade that is stuck shut
leaves no way out for the combustion products.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.damper.hookup import CALL, PROVED
from wirecheck.rules.damper.words import SHUT_VENT
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

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


def _found(what: str) -> str:
    return _GOOD.replace("vent is vent-damper", f"vent is vent-damper: {what}")


RULE = Rule(
    name="damper-found-bad",
    title="The damper's blade and end switch work",
    family="vent damper",
    breaks=Breaks.OPERATION,
    why=(
        "The end switch is the only thing that tells the control where the blade is. Welded, it "
        "lets the burner fire into a shut vent."
    ),
    blind_spots="An end switch that was not tested with the blade held shut.",
    caution=SHUT_VENT,
    sources=(PRACTICE, Source("ANSI Z21.66", "standard", from_memory=True)),
    faults={
        "welded": Fault(
            "the end switch of {damper} was found welded: it proves nothing; replace the damper's "
            "drive, and do not run the burner until then",
            "The burner lights at once on a call, damper open or not.",
            Breaks.SAFETY,
        ),
        "never-makes": Fault(
            "the end switch of {damper} was found never to make: replace the damper's drive",
            "The damper opens, and the burner never lights.",
        ),
        "blade-shut": Fault(
            "the blade of {damper} was found stuck shut: free or replace it, and prove that its "
            "end switch stays open while it is shut",
            "The burner does not light; if the end switch fails too, it fires into a shut vent.",
        ),
        "blade-open": Fault(
            "the blade of {damper} was found stuck open: free or replace it",
            "The burner lights as it should; the vent stays open and draws warm air off all day.",
        ),
    },
    bad=(
        Example(_found("end-switch welded"), (("welded", "end-switch welded"),)),
        Example(_found("end-switch never-makes"), (("never-makes", "end-switch never-makes"),)),
        Example(_found("stuck closed"), (("blade-shut", "stuck closed"),)),
        Example(_found("stuck open"), (("blade-open", "stuck open"),)),
    ),
    good=(Example(_GOOD),),
)

_FAULTS = {
    ("end-switch", "welded"): "welded",
    ("end-switch", "never-makes"): "never-makes",
    ("stuck", "closed"): "blade-shut",
    ("stuck", "open"): "blade-open",
}


def check(facts: Facts) -> Iterator[Finding]:
    """Find dampers with something recorded as found bad."""
    for damper in facts.of("vent-damper"):
        for attribute in damper.found_wrong():
            fault = _FAULTS.get((attribute.name, str(attribute.value)))
            if fault is not None:
                yield RULE.finding(
                    facts,
                    fault,
                    attribute.span,
                    terminals=damper.with_role(CALL, PROVED),
                    damper=damper.name,
                )
