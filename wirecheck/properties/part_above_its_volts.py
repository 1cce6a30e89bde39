"""No part gets more volts than it is made for, in any position of the switches."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks
from wirecheck.properties.heater import otherwise
from wirecheck.properties.property import VOLTS_CAUTION, Broken, Property
from wirecheck.properties.states import States, rated_volts

#: Rated volts of a source against those of what it feeds: more is too much (the usual tolerance
#: at the top; common practice, no source).
MOST_SHARE = 1.10
#: A source of no more than this is the generator of a standing pilot: it gives what its plate says
#: with nothing connected and about half of that under load, and no operator made for one suffers.
GENERATOR_V = 2.0

PROPERTY = Property(
    name="part-above-its-volts",
    title="No part gets more than 110 % of its rated volts.",
    breaks=Breaks.SAFETY,
    why="Coils overheat and electronics die; with the line on a 24 V part somebody gets a shock.",
    blind_spots=(
        "Volts by nameplate: what the line has beyond its nominal volts is not looked at, nor are "
        "the millivolts of a pilot generator."
    ),
    caution=VOLTS_CAUTION,
    bad=otherwise("wire line.N", "wire line.L1 to stat.R: black\nwire line.N"),
)


def broken(states: States) -> Iterator[Broken]:
    """Loads across a source of too many volts."""
    whole = states.whole
    for settled in states.all_settled:
        for key in settled.fed:
            element = whole.element(key)
            rated = rated_volts(element)
            for feed in settled.feeds.each:
                if feed.volts > GENERATOR_V and feed.volts > MOST_SHARE * rated > 0:
                    shown = feed.across(element.net_a, element.net_b)
                    if shown:
                        name = f"{element.part.name} {element.name}".strip()
                        what = f"{feed.volts:.3g} V lie across {name}, made for {rated:g} V"
                        yield PROPERTY.broken(
                            settled, shown, what, loads=(key,), about=(feed.key.part,)
                        )
                        break
