"""How a state looks: no state is told from another by its colour alone."""

from __future__ import annotations

from typing import NamedTuple

#: Colours that people with any usual colour blindness tell apart (Okabe and Ito, "Color universal
#: design", from memory), and greys.
_ORANGE, _SKY, _GREEN, _BLUE, _RED = "#e69f00", "#56b4e9", "#009e73", "#0072b2", "#d55e00"
_DARK, _PALE, _WHITE = "#404040", "#e4e4e4", "#ffffff"


class Paint(NamedTuple):
    """Fill, hatching (matplotlib's letters), edge and lettering of a bar."""

    fill: str
    hatch: str = ""
    edge: str = "#202020"
    letters: str = "#101010"
    dashed: bool = False


_BY_STATE = {
    "trial": Paint("#f8dfa6", "////", edge=_ORANGE),
    "proving": Paint("#f8dfa6", "....", edge=_ORANGE),
    "run": Paint(_GREEN, letters=_WHITE),
    "wait": Paint(_WHITE, "", edge=_DARK, dashed=True),
    "damper-opening": Paint(_PALE, "\\\\\\\\", edge=_DARK),
    "lockout": Paint("#f6d3c0", "xxxx", edge=_RED),
    "held": Paint("#f6d3c0", "++++", edge=_RED),
    "lighting": Paint(_WHITE, "....", edge=_BLUE),
    "unlit gas": Paint("#f6d3c0", "xxxx", edge=_RED),
    "none": Paint(_WHITE, "", edge=_RED, letters=_RED, dashed=True),
    "may": Paint(_WHITE, "////", edge=_DARK),
    "chatters": Paint("#f6d3c0", "||||", edge=_RED),
    "opening": Paint(_PALE, "////", edge=_DARK),
    "starting": Paint(_PALE, "////", edge=_DARK),
    "closing": Paint(_PALE, "\\\\\\\\", edge=_DARK),
    "stopping": Paint(_PALE, "\\\\\\\\", edge=_DARK),
    "false": Paint("#f6d3c0", "++++", edge=_RED),
    "through the metal": Paint("#f6d3c0", "xx", edge=_RED),
}
_ALARMS = ("burns out", "destroyed", "blows", "trips")
_BY_TRACK = {
    "call": Paint(_DARK, letters=_WHITE),
    "spark": Paint("#fff3c4", "||||", edge=_DARK),
    "pilot flame": Paint(_SKY),
    "main flame": Paint(_BLUE, letters=_WHITE),
}
_ACTING = Paint("#bdbdbd")
_CUT_OFF = Paint(_WHITE, "", edge=_RED, letters=_RED, dashed=True)


def paint(track: str, state: str, *, moves: bool) -> Paint:
    """How a state of a track is drawn.

    Args:
        track: its name.
        state: as in the trace.
        moves: the track is that of a damper or a valve, which is open when it acts.
    """
    if state in _ALARMS:
        return _BY_STATE["unlit gas"]
    if state in ("off", "no signal") or (state == "open" and not moves):
        return _CUT_OFF
    if state in _BY_STATE:
        return _BY_STATE[state]
    return _BY_TRACK.get(track.partition(" of ")[0], _ACTING)
