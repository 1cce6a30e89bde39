"""The usual wiring mistakes, built one by one: what the run shows is what is seen at the unit.

Each is looked at twice: for whether it works, where rusty metal carries no current and a coil at
low volts stays shut, and for danger, where it does and they open.
"""

from __future__ import annotations

from typing import Any, NamedTuple

import pytest

from tests.sequence.heater import (
    DAMPERED,
    DIRECT,
    HEATER,
    INDUCED,
    ONE_ROD,
    VALVE_PLUG,
    changed,
    danger_words,
    outcome,
    ran,
    sentence,
    without,
)
from wirecheck.sequence.answers import View
from wirecheck.sequence.script import Opening, heat_call

LIMIT_OPENS = {"opened": (Opening("limit", after_s=50),)}


class Seen(NamedTuple):
    """How a run ends, and what is dangerous in it."""

    outcome: str
    dangers: frozenset[str]


def seen(word: str, *dangers: str) -> Seen:
    return Seen(word, frozenset(dangers))


class Mistake(NamedTuple):
    """A mistake: its name, the text that has it, and what is seen either way."""

    name: str
    text: str
    works: Seen
    endangers: Seen
    script: dict[str, Any] = {}  # noqa: RUF012 - never changed


def both(name: str, text: str, seen_: Seen, **script: Any) -> Mistake:  # noqa: ANN401
    """A mistake that looks the same either way."""
    return Mistake(name, text, seen_, seen_, script)


UNGROUNDED = without(HEATER, "wire box.GND to pilot.HOOD")
UNEARTHED = without(HEATER, "wire xfmr.C to earth")
HOOD_EARTHED = f"{HEATER}wire pilot.HOOD to earth\n"
FUSED = changed(
    HEATER, ("part limit", "part fuse is fuse\npart limit"), ("xfmr.R to", "xfmr.R to fuse to")
)
IN_COMMON = changed(
    HEATER,
    ("xfmr.R to limit to stat", "xfmr.R to stat"),
    ("xfmr.C to box.COM", "xfmr.C to limit to box.COM"),
)
SWAPPED_AT_SUPPLY = changed(
    HEATER,
    ("xfmr.R to limit", "xfmr.C to limit"),
    ("xfmr.C to box.COM", "xfmr.R to box.COM"),
)
SWAPPED_AT_CONTROL = changed(
    HEATER, ("stat to box.TH", "stat to box.COM"), ("xfmr.C to box.COM", "xfmr.C to box.TH")
)
UNTIED = changed(
    without(DIRECT, "part tie is valve-adapter", "plug tie to valve: PV, MV, C"),
    ("plug box to tie: V, VC", "wire box.V to valve.PV\nwire box.VC to valve.C"),
)

IGNITION = [
    both("no burner ground", UNGROUNDED, seen("not-proved")),
    Mistake(
        "no burner ground, the metal well bonded",
        changed(UNGROUNDED, ("burner: two-rod", "burner: two-rod, bond solid")),
        seen("not-proved"),
        seen("by-luck"),
    ),
    both(
        "rod on SPARK as well, SENSE empty",
        changed(HEATER, ("box.SENSE to", "box.SPARK to")),
        seen("not-proved"),
    ),
    Mistake(
        "spark and sense leads exchanged",
        changed(
            HEATER,
            ("box.SPARK to pilot.SPARK", "box.SPARK to pilot.ROD"),
            ("box.SENSE to pilot.ROD", "box.SENSE to pilot.SPARK"),
        ),
        seen("not-proved"),
        seen("by-luck"),
    ),
    both(
        "electrode on SENSE, SPARK empty",
        changed(
            without(HEATER, "wire box.SENSE to pilot.ROD"),
            ("box.SPARK to pilot.SPARK", "box.SENSE to pilot.SPARK"),
        ),
        seen("not-lit", "unlit-gas"),
    ),
    both(
        "sense link fitted with two rods",
        changed(HEATER, ("control: two-rod", "control: two-rod, sense-link fitted")),
        seen("not-proved"),
    ),
    both(
        "sense link cut with one rod",
        changed(ONE_ROD, ("control: one-rod", "control: one-rod, sense-link cut")),
        seen("not-proved"),
    ),
    both("sense lead open", without(HEATER, "wire box.SENSE to pilot.ROD"), seen("not-proved")),
    both(
        "sense lead earthed",
        changed(HEATER, ("to pilot.ROD", "to pilot.ROD: touches earth")),
        seen("not-proved"),
    ),
    both("rod dirty", HEATER, seen("not-proved"), dirty_rods=True),
    both(
        "the one lead of one rod open",
        changed(ONE_ROD, ("ignition-cable", "ignition-cable, broken")),
        seen("not-lit", "unlit-gas"),
    ),
    both(
        "the one lead of one rod earthed",
        changed(ONE_ROD, ("ignition-cable", "ignition-cable, touches earth")),
        seen("not-lit", "unlit-gas"),
    ),
]

SUPPLY = [
    Mistake(
        "COM on R, TH fed from C: shorted always, through rusty metal if through any",
        SWAPPED_AT_SUPPLY,
        seen("runs"),
        seen("burns-out", "short-circuit"),
    ),
    both(
        "COM on R, TH fed from C, the burner earthed by a lead",
        f"{SWAPPED_AT_SUPPLY}wire pilot.HOOD to earth\n",
        seen("burns-out", "short-circuit"),
    ),
    Mistake(
        "call lead and C exchanged at the control: shorted on a call",
        SWAPPED_AT_CONTROL,
        seen("runs"),
        seen("burns-out", "short-circuit"),
    ),
    both(
        "R and C exchanged with C earthed nowhere: works",
        without(SWAPPED_AT_SUPPLY, "wire xfmr.C to earth"),
        seen("runs"),
    ),
    Mistake(
        "R earthed",
        changed(HEATER, ("wire xfmr.C to earth", "wire xfmr.R to earth")),
        seen("runs"),
        seen("burns-out", "short-circuit"),
    ),
    both(
        "R earthed, the burner off the metal, an earth fault past the switches",
        changed(
            HEATER,
            ("wire xfmr.C to earth", "wire xfmr.R to earth\nwire box.TH to earth"),
            ("burner: two-rod", "burner: two-rod, bond none"),
        ),
        seen("no-call", "gas-with-no-call"),
    ),
    both(
        "no earth on the secondary, the burner off the metal",
        changed(UNEARTHED, ("burner: two-rod", "burner: two-rod, bond none")),
        seen("runs"),
    ),
    Mistake(
        "COM off: hidden, by the burner ground",
        without(HEATER, "wire xfmr.C to box.COM"),
        seen("no-start"),
        seen("runs", "common-by-metal"),
    ),
    both(
        "COM off, nothing earthed: dead",
        without(UNEARTHED, "wire xfmr.C to box.COM"),
        seen("no-start"),
    ),
    both(
        "TH earthed: the fuse", f"{FUSED}wire box.TH to earth\n", seen("burns-out", "short-circuit")
    ),
    both(
        "PV earthed: the transformer",
        f"{HEATER}wire box.PV to earth\n",
        seen("burns-out", "short-circuit"),
    ),
    both(
        "MV earthed: the transformer",
        f"{HEATER}wire box.MV to earth\n",
        seen("burns-out", "short-circuit"),
    ),
]

CALL = [
    Mistake(
        "a safety in the common lead, earthed: bypassed already",
        IN_COMMON,
        seen("stops"),
        seen("runs", "safety-open", "common-by-metal"),
        LIMIT_OPENS,
    ),
    both(
        "a safety in the common lead, the burner earthed by a lead",
        f"{IN_COMMON}wire pilot.HOOD to earth\n",
        seen("runs", "safety-open"),
        **LIMIT_OPENS,
    ),
    both(
        "a safety in the common lead, nothing earthed: it works",
        without(IN_COMMON, "wire xfmr.C to earth"),
        seen("stops"),
        **LIMIT_OPENS,
    ),
    both(
        "a safety jumpered",
        f"{HEATER}jumper limit.1 to limit.2\n",
        seen("runs", "safety-open"),
        **LIMIT_OPENS,
    ),
    both(
        "a safety with a path beside it",
        f"{HEATER}part other is operating-control\nwire xfmr.R to other to stat.R\n",
        seen("runs", "safety-open"),
        **LIMIT_OPENS,
    ),
    both(
        "a safety in only one of two calls",
        f"{HEATER}part stat-2 is thermostat\nwire xfmr.R to stat-2 to box.TH\n",
        seen("runs", "safety-open"),
        **LIMIT_OPENS,
    ),
    both(
        "a safety stuck closed",
        changed(HEATER, ("is high-limit", "is high-limit: stuck closed")),
        seen("runs", "safety-open"),
        **LIMIT_OPENS,
    ),
    both(
        "TH and 24V exchanged",
        changed(HEATER, ("stat to box.TH", "stat to box.24V\nwire xfmr.R to box.TH")),
        seen("no-call", "gas-with-no-call"),
    ),
    both(
        "R straight to TH",
        f"{HEATER}wire xfmr.R to box.TH\n",
        seen("no-call", "gas-with-no-call"),
    ),
    both(
        "call lead on 24V, TH empty",
        changed(HEATER, ("stat to box.TH", "stat to box.24V")),
        seen("no-start"),
    ),
    both(
        "thermostat leads joined",
        f"{HEATER}jumper stat.R to stat.W\n",
        seen("no-call", "gas-with-no-call"),
    ),
]

VALVE = [
    both(
        "a safety between MV and the valve",
        changed(
            HEATER,
            ("xfmr.R to limit to stat", "xfmr.R to stat"),
            (VALVE_PLUG, "plug box to valve: PV, VC to C\nwire box.MV to limit to valve.MV"),
        ),
        seen("stops", "safety-open"),
        **LIMIT_OPENS,
    ),
    both(
        "PV tied to MV on a pilot system",
        f"{HEATER}jumper valve.PV to valve.MV\n",
        seen("runs", "main-gas-unproved"),
    ),
    both(
        "a valve adapter left on a pilot system",
        changed(
            HEATER,
            (
                VALVE_PLUG,
                """\
part tie is valve-adapter
wire box.PV to tie.V
wire box.VC to tie.VC
plug tie to valve: PV, MV, C""",
            ),
        ),
        seen("runs", "main-gas-unproved"),
    ),
    both("direct, operators not tied, redundant", UNTIED, seen("not-lit", "unlit-gas")),
    both(
        "direct, operators not tied, single seat",
        changed(UNTIED, ("gas-valve-3-wire", "gas-valve-3-wire: single-seat")),
        seen("not-lit", "unlit-gas"),
    ),
    both(
        "valve fed from the thermostat, past the control",
        changed(
            HEATER,
            (
                VALVE_PLUG,
                "wire stat.W to valve.PV\nwire stat.W to valve.MV\nwire box.VC to valve.C",
            ),
        ),
        seen("runs", "main-gas-unproved"),
    ),
    both("VC off: no gas", changed(HEATER, ("PV, MV, VC to C", "PV, MV")), seen("not-lit")),
    both("PV off: no pilot", changed(HEATER, ("PV, MV, VC", "MV, VC")), seen("not-lit")),
    both("MV off: pilot only", changed(HEATER, ("PV, MV, VC", "PV, VC")), seen("no-main")),
]

DAMPER = [
    both(
        "shorting plug in with a damper",
        changed(DAMPERED, ("control: two-rod", "control: two-rod, damper-plug fitted")),
        seen("runs", "damper-not-open"),
    ),
    both(
        "shorting plug in, damper stuck shut: burns on",
        changed(
            DAMPERED,
            ("control: two-rod", "control: two-rod, damper-plug fitted"),
            ("opening 15 s", "stuck closed"),
        ),
        seen("runs", "damper-not-open"),
    ),
    both(
        "plug out, no damper",
        changed(HEATER, ("control: two-rod", "control: two-rod, damper-plug removed")),
        seen("waits"),
    ),
    both("damper common missing", changed(DAMPERED, (", D-COM to COM", "")), seen("waits")),
    both(
        "damper hot missing, shut by its spring",
        changed(DAMPERED, ("D-HOT to HOT, ", "")),
        seen("runs"),
    ),
    both(
        "damper CALL and PROVED exchanged",
        changed(
            DAMPERED, ("D-CALL to CALL, D-PROVED to PROVED", "D-CALL to PROVED, D-PROVED to CALL")
        ),
        seen("waits"),
    ),
    both(
        "D-PROVED fed from hot",
        f"{DAMPERED}wire box.24V to box.D-PROVED\n",
        seen("no-call", "gas-with-no-call", "damper-not-open"),
    ),
    both(
        "damper on constant power: its end switch passes that on as a call",
        changed(DAMPERED, ("D-CALL to CALL", "D-HOT to CALL"), ("D-HOT to HOT, ", "")),
        seen("keeps-on", "gas-with-no-call"),
    ),
    both(
        "end switch welded",
        changed(DAMPERED, ("opening 15 s", "opening 15 s, end-switch welded")),
        seen("runs", "damper-not-open"),
    ),
]

AIR = [
    both("air switch jumpered", f"{INDUCED}jumper air.1 to air.2\n", seen("runs", "unproved-air")),
    both(
        "air switch stuck closed",
        changed(INDUCED, ("is air-switch", "is air-switch: stuck closed")),
        seen("runs", "unproved-air"),
    ),
    both(
        "pressure switch stuck closed, inducer dead",
        changed(
            INDUCED,
            ("is air-switch", "is pressure-switch: stuck closed"),
            ("is inducer", "is inducer: motor dead"),
        ),
        seen("runs", "unproved-air"),
    ),
    both(
        "inducer dead, air switch well",
        changed(INDUCED, ("is inducer", "is inducer: motor dead")),
        seen("no-start"),
    ),
]

MISTAKES = [*IGNITION, *SUPPLY, *CALL, *VALVE, *DAMPER, *AIR]


@pytest.mark.parametrize("mistake", MISTAKES, ids=[mistake.name for mistake in MISTAKES])
def test_the_run_shows_what_is_seen_at_the_unit(mistake: Mistake) -> None:
    for view, expected in ((View.OPERATION, mistake.works), (View.DANGER, mistake.endangers)):
        run = ran(mistake.text, heat_call(**mistake.script), view)
        assert Seen(outcome(run), frozenset(danger_words(run))) == expected, sentence(run)


def test_a_damper_opened_by_constant_power_is_told_with_what_goes_on() -> None:
    """No limit in the call stops what does not hang on the call: none is said to."""
    exchanged = changed(DAMPERED, ("D-HOT to HOT, D-CALL to CALL", "D-HOT to CALL, D-CALL to HOT"))
    assert sentence(ran(exchanged)) == (
        "goes on after the call has ended: 24 V still reach the ignition of box, and vent opens "
        "with no call too"
    )
