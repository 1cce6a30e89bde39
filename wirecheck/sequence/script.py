"""What happens to the unit from outside: the call, the gas, the power, a flame blown out."""

from __future__ import annotations

from typing import Literal, NamedTuple

#: When the thermostats call, in seconds from the start.
CALL_AT_S = 10.0
#: How long the call lasts if nothing else is said.
CALL_LENGTH_S = 600.0
#: How long the unit is watched after the call.
WATCH_S = 120.0

#: What an event changes: the ``position`` of contacts (``open``, ``closed``, or "" for as they
#: were), the ``call`` for heat, ``gas``, ``power``, and ``flame``: blown out once.
Change = Literal["position", "call", "gas", "power", "flame"]


class Stimulus(NamedTuple):
    """One event: at ``time_s`` the ``what`` becomes ``state``.

    Attributes:
        time_s: seconds from the start.
        what: what changes.
        state: what it becomes.
        part: key of the part, for a position or a call; "" for all that call.
        contact: name of one contact of that part; "" for all of its contacts.
    """

    time_s: float
    what: Change
    state: str
    part: str = ""
    contact: str = ""


class Script(NamedTuple):
    """A run from standby: its stimuli in order of time, and when to stop looking.

    Attributes:
        stimuli: what happens.
        until_s: end of the run.
        false_flame: a flame signal is there from the start with no flame (a failed detector).
        dirty_rods: every flame rod is dirty.
    """

    stimuli: tuple[Stimulus, ...]
    until_s: float
    false_flame: bool = False
    dirty_rods: bool = False


class Opening(NamedTuple):
    """A contact that opens: its part's key, its name ("" for all of the part), and when.

    ``after_s`` counts from the call; None: it stands open from the start.
    """

    part: str
    contact: str = ""
    after_s: float | None = None


def heat_call(  # noqa: PLR0913 - one for each thing that can happen
    *,
    length_s: float = CALL_LENGTH_S,
    calling: tuple[str, ...] = (),
    opened: tuple[Opening, ...] = (),
    gas: bool = True,
    dirty_rods: bool = False,
    false_flame: bool = False,
    flame_lost_s: float | None = None,
    power_lost_s: float | None = None,
    power_back_s: float | None = None,
    watch_s: float = WATCH_S,
) -> Script:
    """One call for heat.

    Args:
        length_s: of the call, seconds.
        calling: keys of the parts that call; none: all that can.
        opened: contacts that open, and stay open.
        gas: whether the gas is on.
        dirty_rods: whether every flame rod is dirty.
        false_flame: whether a flame signal is there with no flame.
        flame_lost_s: seconds after the call at which the flame goes out once.
        power_lost_s: seconds after the call at which the power fails.
        power_back_s: seconds after the call at which it comes back.
        watch_s: how long the unit is watched after the call ends.
    """
    stimuli = [
        Stimulus(0.0 if after_s is None else CALL_AT_S + after_s, "position", "open", part, contact)
        for part, contact, after_s in opened
    ]
    if not gas:
        stimuli.append(Stimulus(0.0, "gas", "off"))
    later: tuple[tuple[float | None, Change, str], ...] = (
        (flame_lost_s, "flame", "out"),
        (power_lost_s, "power", "off"),
        (power_back_s, "power", "on"),
    )
    for part in calling or ("",):
        stimuli.append(Stimulus(CALL_AT_S, "call", "on", part))
        stimuli.append(Stimulus(CALL_AT_S + length_s, "call", "off", part))
    stimuli += [
        Stimulus(CALL_AT_S + after_s, what, state)
        for after_s, what, state in later
        if after_s is not None
    ]
    stimuli.sort(key=lambda stimulus: stimulus.time_s)
    until_s = max(CALL_AT_S + length_s, *(each.time_s for each in stimuli)) + watch_s
    return Script(tuple(stimuli), until_s, false_flame, dirty_rods)
