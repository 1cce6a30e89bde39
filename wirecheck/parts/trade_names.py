"""What else the trade calls a kind of part: for those who type that, which kind was meant."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final, NamedTuple

from wirecheck.model.diagram import key_of
from wirecheck.model.nearest import either, nearest
from wirecheck.parts.library import kind_names

_CONTROLS: Final = ("pilot-ignition-control", "direct-ignition-control")
_BURNERS: Final = ("pilot-burner", "direct-burner")
_VALVES: Final = ("gas-valve-2-wire", "gas-valve-3-wire")

#: The kinds that a word of the trade may mean, the likelier one first.
KINDS: Final = {
    "aquastat": ("operating-control",),
    "beacon": ("lamp",),
    "boiler": ("boiler-control", "boiler-call"),
    "burner": _BURNERS,
    "circuit-breaker": ("breaker",),
    "damper": ("vent-damper",),
    "disconnect": ("service-switch",),
    "e-stop": ("emergency-stop",),
    "electrode": _BURNERS,
    "emergency-switch": ("service-switch", "emergency-stop"),
    "fan": ("blower",),
    "fan-and-limit": ("fan-limit-control",),
    "fan-control": ("fan-limit-control",),
    "fan-limit": ("fan-limit-control",),
    "flame-rod": _BURNERS,
    "flame-sensor": _BURNERS,
    "gas-valve": _VALVES,
    "igniter": _BURNERS,
    "ignition-control": _CONTROLS,
    "ignition-module": _CONTROLS,
    "ignition-rod": _BURNERS,
    "ignitor": _BURNERS,
    "interlock-switch": ("door-switch",),
    "light": ("lamp",),
    "limit": ("high-limit",),
    "limit-switch": ("high-limit",),
    "line": ("mains",),
    "lwco": ("low-water-cutoff", "low-water-probe"),
    "millivolt-valve": ("millivolt-gas-valve",),
    "module": _CONTROLS,
    "operating-limit": ("operating-control",),
    "operator": ("operating-control", *_VALVES),
    "panel-switch": ("door-switch",),
    "pilot": ("pilot-burner", "standing-pilot-burner"),
    "power": ("mains",),
    "power-supply": ("mains", "transformer"),
    "power-switch": ("service-switch",),
    "probe": ("low-water-probe",),
    "pump": ("circulator",),
    "pump-relay": ("switching-relay",),
    "redundant-gas-valve": _VALVES,
    "room-thermostat": ("thermostat",),
    "spark-electrode": _BURNERS,
    "spark-module": _CONTROLS,
    "spark-rod": _BURNERS,
    "standing-pilot": ("standing-pilot-burner",),
    "stat": ("thermostat",),
    "strip": ("terminal-strip",),
    "terminal-block": ("terminal-strip",),
    "t-stat": ("thermostat",),
    "tstat": ("thermostat",),
    "valve": (*_VALVES, "zone-valve"),
    "xfmr": ("transformer",),
    "xformer": ("transformer",),
}  # fmt: skip
#: The words that name a terminal of those kinds rather than the whole part.
TERMINALS: Final = {
    "electrode": "SPARK",
    "flame-rod": "ROD",
    "flame-sensor": "ROD",
    "igniter": "SPARK",
    "ignition-rod": "SPARK",
    "ignitor": "SPARK",
    "spark-electrode": "SPARK",
    "spark-rod": "SPARK",
}


class Meant(NamedTuple):
    """The kinds a word may mean, the likelier first, in words and by name."""

    words: str
    nearest: str


def kind_meant(word: str, own: Iterable[str] = ()) -> Meant | None:
    """What was meant by a word that is no kind: by its sense first, then by its letters.

    ``own`` are the names of the user's own kinds.  Blanks and underscores count as hyphens.
    """
    key = key_of(re.sub(r"[\s_]+", "-", word))
    kinds = KINDS.get(key)
    if kinds is not None:
        terminal = TERMINALS.get(key)
        words = either(kinds) + (f" (its terminal {terminal})" if terminal else "")
        return Meant(words, kinds[0])
    near = nearest(word, [*kind_names(), *own])
    return Meant(near, near) if near else None


def is_trade_name(word: str) -> bool:
    """Whether a word is one of the trade's for a kind that bears another name here."""
    return key_of(word) in KINDS
