"""What happens to the unit from outside: the call, the gas, the power, a flame blown out."""

from __future__ import annotations

from typing import Literal, NamedTuple

#: When the thermostat calls, in seconds from the start.
CALL_AT_S = 10.0
#: How long the call lasts if nothing else is said.
CALL_LENGTH_S = 600.0

#: What an event changes: ``position`` of a contact (``open``, ``closed``, or "" for as it was),
#: ``call`` of every thermostat, ``gas``, ``power``, and ``flame``: blown out once.
Change = Literal["position", "call", "gas", "power", "flame"]


class Stimulus(NamedTuple):
    """One event: at ``time_s`` the ``what`` of ``part`` (or of the whole unit) becomes ``state``."""

    time_s: float
    what: Change
    state: str
    part: str = ""


class Script(NamedTuple):
    """A run from standby: its stimuli in order of time, and when to stop looking.

    Attributes:
        stimuli: what happens.
        until_s: end of the run.
        false_flame: a flame signal is there from the start with no flame (a failed detector).
    """

    stimuli: tuple[Stimulus, ...]
    until_s: float
    false_flame: bool = False


def heat_call(
    *,
    length_s: float = CALL_LENGTH_S,
    opened: tuple[str, ...] = (),
    gas: bool = True,
    flame_lost_s: float | None = None,
    power_lost_s: float | None = None,
    power_back_s: float | None = None,
    watch_s: float = 120.0,
) -> Script:
    """One call for heat.

    Args:
        length_s: of the call, seconds.
        opened: keys of parts whose contacts stand open throughout.
        gas: whether the gas is on.
        flame_lost_s: seconds after the call at which the flame goes out once.
        power_lost_s: seconds after the call at which the power fails.
        power_back_s: seconds after the call at which it comes back.
        watch_s: how long the unit is watched after the call ends.
    """
    stimuli = [Stimulus(0.0, "position", "open", part) for part in opened]
    if not gas:
        stimuli.append(Stimulus(0.0, "gas", "off"))
    stimuli.append(Stimulus(CALL_AT_S, "call", "on"))
    if flame_lost_s is not None:
        stimuli.append(Stimulus(CALL_AT_S + flame_lost_s, "flame", "out"))
    if power_lost_s is not None:
        stimuli.append(Stimulus(CALL_AT_S + power_lost_s, "power", "off"))
    if power_back_s is not None:
        stimuli.append(Stimulus(CALL_AT_S + power_back_s, "power", "on"))
    stimuli.append(Stimulus(CALL_AT_S + length_s, "call", "off"))
    stimuli.sort(key=lambda stimulus: stimulus.time_s)
    return Script(tuple(stimuli), CALL_AT_S + length_s + watch_s)
