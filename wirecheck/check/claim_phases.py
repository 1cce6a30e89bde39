"""Phases that a control has not, however it is wired: it is built otherwise."""

from __future__ import annotations

from typing import Final

from wirecheck.model.diagram import Part
from wirecheck.sequence.control import Phase

#: Attributes under which a control has no such phase, with their values, and what it does instead.
_WITHOUT: Final = {
    Phase.LOCKOUT.value: (
        ("retry", "continuous", "waits and tries again, it never locks out (retry continuous)"),
        ("retry", "none", "never ends its trial (retry none)"),
    ),
    Phase.WAIT.value: (
        ("retry", "lockout", "locks out after one trial, it does not wait (retry lockout)"),
        ("retry", "none", "never ends its trial (retry none)"),
        ("tries", 1, "locks out after one trial (tries 1)"),
    ),
    Phase.DAMPER_OPENING.value: (
        ("damper-socket", "no", "waits for no damper: it has no damper socket"),
        ("damper-plug", "fitted", "waits for no damper: its shorting plug is in"),
    ),
}


def built_without(control: Part, phase: str) -> str:
    """Why a control that is well has no such phase, in words behind its name; "" if it may."""
    for name, value, words in _WITHOUT.get(phase, ()):
        if control.values.get(name) == value:
            return words
    return ""
