"""Which operators of a gas valve open, as its leads are landed.

The two coils and their common are a circuit of at most three nodes, so the volts at each coil
follow from what its ends are landed on and, where the common is landed on nothing, from the two
coils as a divider.  Safety counts an operator that may open as open, operation as shut.
"""

from __future__ import annotations

from collections.abc import Set as AbstractSet
from typing import Final, NamedTuple, cast

from wirecheck.model.quantity import Quantity
from wirecheck.rules.facts import Facts
from wirecheck.rules.valve.arrangement import Arrangement, Fed
from wirecheck.rules.valve.feeds import Source

#: Nominal volts of the control circuit (common practice, no source).
CONTROL_V: Final = 24.0

#: What is live besides the common: in the trial, and once the flame is proved.
TRIAL: Final = frozenset({Source.HOT, Source.PILOT, Source.BOTH})
RUN: Final = TRIAL | {Source.MAIN}


class Operator(NamedTuple):
    """The volts at one operator, and the part of its rated volts at which it opens.

    ``may`` and ``surely`` are fractions of the rated volts.
    """

    volts: float
    rated_v: float
    may: float
    surely: float

    @property
    def may_open(self) -> bool:
        """Whether safety has to count it as open."""
        return self.volts >= self.may * self.rated_v

    @property
    def opens(self) -> bool:
        """Whether operation may count on it."""
        return self.volts >= self.surely * self.rated_v


def operators(facts: Facts, found: Arrangement, live: AbstractSet[Source]) -> tuple[Operator, ...]:
    """The operators of a valve, pilot first, while some sources are live."""
    common = _potential(found.common, live)
    ends = [_potential(fed, live) for fed in found.operators]
    held = [volts for volts in ends if volts is not None]
    if common is None and len(held) == 2:
        first, second = (_coil_ohms(facts, fed) for fed in found.operators)
        common = (held[0] * second + held[1] * first) / (first + second)
    values = found.valve.values
    rated, opens = cast(Quantity, values["volts"]), cast(Quantity, values["opens"])
    return tuple(
        Operator(
            0.0 if end is None or common is None else abs(end - common),
            rated.high_base,
            opens.low_base / 100,
            opens.high_base / 100,
        )
        for end in ends
    )


def _potential(fed: Fed, live: AbstractSet[Source]) -> float | None:
    """Volts of a terminal against the common; None where nothing holds it."""
    if Source.COMMON in fed.sources:
        return 0.0
    return CONTROL_V if fed.sources & live else None


def _coil_ohms(facts: Facts, fed: Fed) -> float:
    """Impedance of the coil behind an operator's terminal, in ohm; coils of no rating are alike."""
    # Solving circuits needs numpy, which a check of right wiring can do without.
    from wirecheck.circuit.netlist import load_ohms

    part = facts.diagram.parts[fed.terminal.part]
    coil = next(load for load in part.structure.loads if fed.terminal.name in load.between)
    return abs(load_ohms(coil, part.values) or 1.0)
