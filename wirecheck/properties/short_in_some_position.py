"""No source is shorted, in any position of the switches."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks
from wirecheck.properties.heater import otherwise
from wirecheck.properties.property import VOLTS_CAUTION, Broken, Property
from wirecheck.properties.states import States

PROPERTY = Property(
    name="short-in-some-position",
    title="No supply is shorted in any position of the switches.",
    breaks=Breaks.SAFETY,
    why="A fuse opens, or a transformer burns out, when the switches come to stand like that.",
    blind_spots="A short through a coil found shorted is not looked at.",
    caution=VOLTS_CAUTION,
    bad=otherwise("wire xfmr.C to box", "wire stat.W to box.COM: white\nwire xfmr.C to box"),
)


def broken(states: States) -> Iterator[Broken]:
    """Sources whose ends some position joins."""
    whole = states.whole
    seen = set()
    for settled in states.all_settled:
        for feed in settled.feeds.each:
            if feed.short and feed.key not in seen:
                seen.add(feed.key)
                part = whole.diagram.parts[feed.key.part]
                element = whole.element(feed.key)
                yield PROPERTY.broken(
                    settled,
                    feed.short,
                    f"{part.name} is shorted",
                    about=(part.key,),
                    terminals=(element.a, element.b),
                )
