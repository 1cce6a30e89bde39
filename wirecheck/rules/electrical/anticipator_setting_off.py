"""The heat anticipator is set to the current that runs through it.

It warms the thermostat a little while the burner runs, so that heating stops before the room is
too warm.  Set below the current it warms too much, set above it warms too little.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.language.edit import set_attribute
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.quantity import Quantity
from wirecheck.rules.electrical.behind import fed_through
from wirecheck.rules.electrical.words import amps, takers_words
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: So far off, as a share of the current, a setting still does (common practice, no source).
TOLERANCE: Final = 0.2
#: A load whose current is not typed may take so much more or less than usual, as a share of it:
#: a control 0.1 to 0.2 A (common practice, no source).
UNSURE: Final = 1 / 3
#: No anticipator's scale goes further, nor are a thermostat's contacts made for more (common
#: practice, no source).
MOST_A: Final = 1.2

_GOOD = """\
part xfmr is transformer
part stat is thermostat: anticipator 0.4 A
part zone is zone-valve: 0.4 A
wire xfmr.R to stat to zone to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="anticipator-setting-off",
    title="The heat anticipator is set to the current that runs through it",
    family="electrical",
    breaks=Breaks.OPERATION,
    why=(
        "It is a heater in series with the call. Too low a setting stops the burner long before "
        "the room is warm, too high a one lets the room overshoot."
    ),
    blind_spots=(
        "Loads that are not drawn. Where what a load takes is not typed, its usual value counts, "
        "give or take a third."
    ),
    caution="",
    sources=(PRACTICE,),
    faults={
        "too-low": Fault(
            "the anticipator of {stat} is set to {setting}, and {current} run through it "
            "({takers}): set it to {current}",
            "Short cycles: the burner stops before the room is warm, and starts again soon.",
        ),
        "too-much": Fault(
            "{current} run through {stat} ({takers}), more than an anticipator's scale reaches "
            "and a thermostat's contact is made for: let a relay take the load",
            "The anticipator burns through or the contact welds: no heat, or heat that never ends.",
        ),
        "too-high": Fault(
            "the anticipator of {stat} is set to {setting}, and {current} run through it "
            "({takers}): set it to {current}",
            "Long cycles: the room gets warmer than the setting before the burner stops.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("anticipator 0.4 A", "anticipator 0.2 A"),
            (("too-low", "anticipator 0.2 A"),),
        ),
        Example(
            _GOOD.replace("zone-valve: 0.4 A", "zone-valve: 1.5 A"),
            (("too-much", "anticipator 0.4 A"),),
        ),
        Example(
            _GOOD.replace("anticipator 0.4 A", "anticipator 0.8 A"),
            (("too-high", "anticipator 0.8 A"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find thermostats with a typed anticipator setting that their loads do not agree with."""
    wired = facts.as_wired
    for stat in wired.of("thermostat"):
        setting = stat.given.get("anticipator")
        behind = fed_through(wired, stat) if setting else None
        if setting is None or behind is None or not isinstance(setting.value, Quantity):
            continue
        usual = sum(taker.amps for taker in behind.takers)
        unsure = UNSURE * sum(taker.amps for taker in behind.takers if not taker.taken_known)
        too_low = setting.value.high_base < (1 - TOLERANCE) * (usual - unsure)
        too_high = setting.value.low_base > (1 + TOLERANCE) * (usual + unsure)
        if too_low or (too_high and behind.all_drawn):
            too_much = usual - unsure > MOST_A
            edit = set_attribute(wired.diagram, stat.key, "anticipator", amps(usual))
            yield RULE.finding(
                wired,
                "too-much" if too_much else "too-low" if too_low else "too-high",
                setting.span,
                terminals=stat.with_role("thermostat-feed", "thermostat-heat"),
                edits=() if too_much else (edit,),
                stat=stat.name,
                setting=str(setting.value),
                current=amps(usual),
                takers=takers_words(behind.takers),
            )
