"""The fault modes, with how likely each is, and what a reading costs; read when first asked for."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from wirecheck.resources import shared_text

FILE = "fault-modes.toml"


@dataclass(frozen=True, slots=True)
class Mode:
    """A way in which things fail.

    Attributes:
        key: its name.
        likelihood: beside the other modes; no share of one.
        source: where the likelihood comes from.
        what: what is wrong, with ``{it}`` and ``{there}`` to be filled in.
        repair: what mends it, likewise.
        loose_ohm: resistance of a poor lead, as it would be typed.
        weak: share of its volts that a weak supply gives.
    """

    key: str
    likelihood: float
    source: str
    what: str
    repair: str
    loose: str = ""
    weak: float = 1.0


@cache
def modes() -> Mapping[str, Mode]:
    """Every mode, by its key, in the order of the file."""
    return {key: Mode(key, **stated) for key, stated in _file()["modes"].items()}


@cache
def costs() -> Mapping[str, float]:
    """What each kind of reading costs, in minutes of work with its risk counted in."""
    stated = _file()["costs"].items()
    return {kind: float(minutes) for kind, minutes in stated if kind != "source"}


@cache
def _file() -> dict[str, Any]:
    return tomllib.loads(shared_text(FILE))
