"""The flame signal: what current a flame sends back to the control, and over which conductors.

A flame conducts better one way than the other, so the alternating volts on the rod come back as a
few microamps of direct current: from SENSE over the sense lead to the rod, through the flame to
the burner metal, and over the burner ground to the control.  Each of those must be a conductor;
the signal does not jump rust as the spark does.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from functools import lru_cache
from typing import NamedTuple

import networkx as nx

from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import EARTH, Part, Terminal
from wirecheck.model.kind import GapSpec
from wirecheck.model.quantity import Quantity
from wirecheck.sequence.answers import Answer

#: Volts (rms) that a control puts on the rod, and the resistance of a flame in the conducting
#: direction, in ohm: both usual handbook values (from memory).
ROD_V = 80.0
FLAME_OHM = 10e6
#: What a dirty rod adds, in ohm (common practice, no source).
DIRTY_ROD_OHM = 40e6


def half_wave_ua(volts_rms: float, ohms: float, reverse_ohms: float = math.inf) -> float:
    """Mean of a sine through something that conducts better one way, in microamps.

    I = sqrt(2) V / pi (1/R - 1/Rr), the standard half-wave mean (from memory): nothing if both
    ways are alike, as in a leak.

    Args:
        volts_rms: of the sine.
        ohms: in the conducting direction.
        reverse_ohms: in the other.
    """
    return math.sqrt(2) * volts_rms / math.pi * (1 / ohms - 1 / reverse_ohms) * 1e6


class FlamePath(NamedTuple):
    """How a flame at the burner is sensed.

    Attributes:
        answer: whether the control sees it; *may* means by luck.
        microamps: what a meter in series with the sense lead shows.
        reason: why it is not seen, or by what luck; "" if all is well.
    """

    answer: Answer
    microamps: float
    reason: str


def flame_path(nets: Nets, control: Part, *, dirty: bool = False) -> FlamePath:
    """How a flame at the burner of a control is sensed, by the leads alone.

    Args:
        nets: of the diagram.
        control: the ignition control.
        dirty: take every rod for dirty.
    """
    sense, ground = terminal_of(control, "sense"), terminal_of(control, "burner-ground")
    if sense is None or ground is None:
        return _unseen("the control has no flame sensing")
    if nets.net(sense) in (nets.net(ground), nets.net(EARTH)):
        shown = nets.diagram.show(sense)
        return _unseen(f"{shown} is grounded: a grounded rod gives no signal")
    return _Circle(nets, control, sense, ground).path(dirty=dirty)


class _Circle:
    """The way of the flame current: sense lead, rod, flame, metal, burner ground."""

    def __init__(self, nets: Nets, control: Part, sense: Terminal, ground: Terminal) -> None:
        self._nets = nets
        self._control = control
        self._sense = sense
        self._ground = ground
        self._gaps = gaps_by_net(nets)

    def path(self, *, dirty: bool) -> FlamePath:
        gap, luck = self._sensing_gap(self._nets.net(self._sense))
        if gap is None:
            return _unseen(luck)
        if not self._nets.joined(gap.b, self._ground):
            if not self._solid_way_back(gap):
                return _unseen(self._no_way_back(gap))
            luck = luck or f"over a bond of {gap.part.name} to the metal, not over a lead"
        return self._measured(gap, luck, dirty=dirty)

    def _measured(self, gap: Element, luck: str, *, dirty: bool) -> FlamePath:
        dirty = dirty or gap.part.values.get("rod") == "dirty"
        leads_ohm = self._way_ohms(self._sense, gap.a) + self._way_ohms(gap.b, self._ground)
        ohms = FLAME_OHM + (DIRTY_ROD_OHM if dirty else 0.0) + leads_ohm
        microamps = half_wave_ua(ROD_V, ohms)
        threshold_ua = self._threshold_ua()
        if microamps >= threshold_ua:
            return FlamePath(Answer.MAY if luck else Answer.YES, microamps, luck)
        cause = "the rod is dirty" if dirty else "a lead of it is loose"
        reason = f"a flame signal of {microamps:.1f} uA, {threshold_ua:g} uA are needed: {cause}"
        return FlamePath(Answer.NO, microamps, reason)

    # ---- the rod ---------------------------------------------------------------------------

    def _sensing_gap(self, sense: int) -> tuple[Element | None, str]:
        """The gap that the control senses by, with the luck that takes; or None and why not."""
        at_sense = self._gaps.get(sense, [])
        spark = terminal_of(self._control, "spark")
        at_spark = [] if spark is None else self._gaps.get(self._nets.net(spark), [])
        rod = next((gap for gap in at_sense if _type(gap) == "flame"), None)
        if self._linked(sense):
            one_rod = next((gap for gap in at_spark if _type(gap) == "flame"), None)
            if rod is not None:
                return None, "the sense link ties rod and electrode together: no steady signal"
            return (one_rod, "") if one_rod is not None else (None, self._no_rod(at_spark))
        if rod is not None:
            return rod, ""
        if at_sense:
            return at_sense[0], "by the spark electrode, where it happens to stand in the flame"
        return None, self._no_rod(at_spark)

    def _linked(self, sense: int) -> bool:
        """Whether the sense link is in: the cold end of the spark coil hangs on SENSE."""
        cold = terminal_of(self._control, "spark-coil-cold")
        return cold is not None and self._nets.net(cold) == sense

    def _no_rod(self, at_spark: list[Element]) -> str:
        """Why nothing senses the flame at SENSE."""
        show = self._nets.diagram.show
        missing = f"no flame rod is joined to {show(self._sense)}"
        rod = next((gap for gap in at_spark if _type(gap) == "flame"), None)
        if rod is None:
            return missing
        if any(_type(gap) == "spark" and gap.a == rod.a for gap in at_spark):
            return f"{missing}: the sense link of {self._control.name} is cut, and one rod needs it"
        spark = terminal_of(self._control, "spark")
        return f"{missing}: {show(rod.a)} hangs on {show(spark) if spark else 'the spark'}"

    # ---- the way back ----------------------------------------------------------------------

    def _solid_way_back(self, gap: Element) -> bool:
        """Clean metal from burner to earth, and the control's ground on earth too."""
        return self._nets.joined(self._ground, EARTH) and any(
            element.type == "bond" and element.name == "solid" and element.net_a == gap.net_b
            for element in self._nets.elements_of[gap.part.key]
        )

    def _no_way_back(self, gap: Element) -> str:
        show = self._nets.diagram.show
        ends = f"{show(gap.b)} and {show(self._ground)}"
        return f"no path back for the flame signal: no lead joins {ends}"

    def _way_ohms(self, a: Terminal, b: Terminal) -> float:
        """Ohms found in the leads of the best way between two terminals; 0 where there is none."""
        if not self._nets.joined(a, b):
            return 0.0
        leads = self._nets.diagram.leads

        def loose_ohms(_a: Terminal, _b: Terminal, edge: dict[str, object]) -> float:
            number = edge.get("lead")
            loose = leads[number].given.get("loose") if isinstance(number, int) else None
            return loose.value.high_base if loose and isinstance(loose.value, Quantity) else 0.0

        return float(nx.dijkstra_path_length(self._nets.conductors, a, b, weight=loose_ohms))

    def _threshold_ua(self) -> float:
        value = self._control.values.get("threshold")
        return (value.high_base if isinstance(value, Quantity) else 1e-6) * 1e6


@lru_cache(maxsize=4)
def gaps_by_net(nets: Nets) -> Mapping[int, list[Element]]:
    """Every spark gap and flame, by the net of its electrode or rod; not to be changed.

    Kept for the diagrams asked about last: many controls ask about the same one.
    """
    gaps: dict[int, list[Element]] = {}
    for elements in nets.elements_of.values():
        for element in elements:
            if element.type == "gap":
                gaps.setdefault(element.net_a, []).append(element)
    return gaps


def terminal_of(part: Part, role: str) -> Terminal | None:
    """The terminal of a part that plays a role, if it has one."""
    found = part.with_role(role)
    return found[0] if found else None


def _type(gap: Element) -> str:
    return gap.spec.type if isinstance(gap.spec, GapSpec) else ""


def _unseen(reason: str) -> FlamePath:
    return FlamePath(Answer.NO, 0.0, reason)
