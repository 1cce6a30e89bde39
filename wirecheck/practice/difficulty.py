"""How hard a mistake is to find, by what somebody sees who works the unit."""

from __future__ import annotations

from enum import Enum

from wirecheck.practice.behaviour import Behaviour


class Difficulty(Enum):
    """The value is the word for it on the command line.

    EASY: on a call for heat nothing happens, or something burns out.  MEDIUM: it begins, and does
    not go as it should.  HARD: a call goes just as with the right wiring; what protects is wrong.
    """

    EASY = "easy"
    MEDIUM = "medium"
    HARD = "hard"


def difficulty(right: Behaviour, wrong: Behaviour) -> Difficulty:
    """How hard it is to see the difference between two units."""
    if wrong.call == right.call:
        return Difficulty.HARD
    if right.begins and (wrong.destroys or not wrong.begins):
        return Difficulty.EASY
    return Difficulty.MEDIUM
