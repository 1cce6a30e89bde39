"""What happens to the unit from outside: the call, the gas, the power, a flame blown out."""

from __future__ import annotations

from typing import Literal, NamedTuple

#: The power comes on so long before the call, which begins at 0.
BEFORE_CALL_S = 10.0
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
        time_s: seconds from the call.
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
        starts_s: when the power comes on.
        until_s: end of the run.
        false_flame: a flame signal is there from the start with no flame (a failed detector).
        dirty_rods: every flame rod is dirty.
    """

    stimuli: tuple[Stimulus, ...]
    starts_s: float
    until_s: float
    false_flame: bool = False
    dirty_rods: bool = False


class Opening(NamedTuple):
    """A contact that opens: its part's key, its name ("" for all of the part), and when.

    ``after_s`` counts from the call; None: it stands open from the first.
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
        flame_lost_s: seconds from the call at which the flame goes out once.
        power_lost_s: seconds from the call at which the power fails.
        power_back_s: seconds from the call at which it comes back.
        watch_s: how long the unit is watched after the call ends.
    """
    starts_s = -BEFORE_CALL_S
    stimuli = [
        Stimulus(starts_s if after_s is None else after_s, "position", "open", part, contact)
        for part, contact, after_s in opened
    ]
    if not gas:
        stimuli.append(Stimulus(starts_s, "gas", "off"))
    later: tuple[tuple[float | None, Change, str], ...] = (
        (flame_lost_s, "flame", "out"),
        (power_lost_s, "power", "off"),
        (power_back_s, "power", "on"),
    )
    for part in calling or ("",):
        stimuli.append(Stimulus(0.0, "call", "on", part))
        stimuli.append(Stimulus(length_s, "call", "off", part))
    stimuli += [
        Stimulus(after_s, what, state) for after_s, what, state in later if after_s is not None
    ]
    stimuli.sort(key=lambda stimulus: stimulus.time_s)
    until_s = max(each.time_s for each in stimuli) + watch_s
    return Script(tuple(stimuli), starts_s, until_s, false_flame, dirty_rods)
