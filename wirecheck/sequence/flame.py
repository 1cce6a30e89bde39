"""Spark and flame signal: where the high voltage goes, and what current comes back.

Both are matters of conductors, not of switch positions: the spark leaves SPARK and must jump from
an electrode to the burner's metal and come back to the cold end of the coil; the flame carries a
few microamps of rectified current from the rod to the metal and over the burner ground to the
control.  The spark takes any way through rusty metal, the flame signal none but a lead.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import EARTH, Part, Terminal
from wirecheck.model.kind import GapSpec
from wirecheck.sequence.answers import Answer

#: Volts (rms) that a control puts on the rod, and the resistance of a flame in the conducting
#: direction, in ohm: both usual handbook values (from memory).
ROD_V = 80.0
FLAME_OHM = 10e6
#: What a dirty rod adds, in ohm (common practice, no source).
DIRTY_ROD_OHM = 40e6


def half_wave_ua(volts_rms: float, ohms: float) -> float:
    """Mean of a half-wave rectified sine through ``ohms``, in microamps.

    I = sqrt(2) V / (pi R), the standard half-wave mean (from memory).
    """
    return math.sqrt(2) * volts_rms / (math.pi * ohms) * 1e6


class SparkPath(NamedTuple):
    """Where the spark jumps: its gap, or None with the reason."""

    gap: Element | None
    reason: str


class FlamePath(NamedTuple):
    """Whether a flame is sensed: the rod's gap, how sure, the microamps, or the reason why not."""

    gap: Element | None
    answer: Answer
    microamps: float
    reason: str


class Electrodes:
    """The high-voltage and flame-signal wiring of one control."""

    def __init__(self, nets: Nets, control: Part) -> None:
        """Look up the control's terminals; nothing is judged yet."""
        self.nets = nets
        self.control = control
        self._gaps: dict[int, list[Element]] = {}
        for elements in nets.elements_of.values():
            for element in elements:
                if element.type == "gap":
                    self._gaps.setdefault(element.net_a, []).append(element)

    def _terminal(self, role: str) -> Terminal | None:
        found = self.control.with_role(role)
        return found[0] if found else None

    def _net(self, role: str) -> int | None:
        terminal = self._terminal(role)
        return None if terminal is None else self.nets.net(terminal)

    def spark(self) -> SparkPath:
        """The gap that sparks when the control gives high voltage."""
        spark = self._net("spark")
        if spark is None:
            return SparkPath(None, "the control has no spark")
        shown = self._show("spark")
        if self.control.values.get("spark-coil") == "dead":
            return SparkPath(None, "the spark coil is dead")
        if spark == self.nets.net(EARTH) or spark == self._net("burner-ground"):
            return SparkPath(None, f"the high voltage of {shown} runs to ground")
        gaps = self._gaps.get(spark, [])
        if not gaps:
            return SparkPath(None, f"no electrode is joined to {shown}")
        gap = next((g for g in gaps if _type(g) == "spark"), gaps[0])
        if not self._spark_returns(gap):
            return SparkPath(None, "the spark has no way back: burner metal and control share none")
        return SparkPath(gap, "")

    def _spark_returns(self, gap: Element) -> bool:
        """By the burner ground, or through whatever metal both touch."""
        ground = self._net("burner-ground")
        earth = self.nets.net(EARTH)
        metal = {gap.net_b}
        for element in self.nets.elements_of[gap.part.key]:
            if element.type == "bond" and element.name != "none" and element.net_a == gap.net_b:
                metal.add(earth)
        return ground in metal

    def flame(self) -> FlamePath:
        """How a flame at the burner is seen by the control."""
        sense, ground = self._net("sense"), self._net("burner-ground")
        if sense is None or ground is None:
            return self._unseen("the control has no flame sensing")
        if sense in (ground, self.nets.net(EARTH)):
            return self._unseen(f"{self._show('sense')} is grounded: a grounded rod gives no signal")
        gap, sure = self._sensing_gap(sense)
        if gap is None:
            return self._unseen(f"no flame rod is joined to {self._show('sense')}")
        if not sure and self._linked(sense):
            return self._unseen(
                "the sense link ties rod and electrode together: the signal is erratic"
            )
        ohms = FLAME_OHM + (DIRTY_ROD_OHM if gap.part.values.get("rod") == "dirty" else 0.0)
        microamps = half_wave_ua(ROD_V, ohms)
        if gap.net_b != ground:
            if not self._solid_bond(gap):
                metal = self.nets.diagram.show(gap.b)
                return self._unseen(
                    f"no path back for the flame signal: no lead joins {metal} and "
                    f"{self._show('burner-ground')}"
                )
            sure = False
        threshold = self._threshold_ua()
        if microamps < threshold:
            return FlamePath(
                gap, Answer.NO, microamps, f"{microamps:.1f} uA: the flame rod is dirty"
            )
        return FlamePath(gap, Answer.YES if sure else Answer.MAY, microamps, "")

    def _sensing_gap(self, sense: int) -> tuple[Element | None, bool]:
        """The gap that the control senses by, and whether it is meant for that."""
        at_sense = self._gaps.get(sense, [])
        rod = next((gap for gap in at_sense if _type(gap) == "flame"), None)
        if self._linked(sense):
            spark = self._net("spark")
            at_spark = self._gaps.get(spark, []) if spark is not None else []
            one_rod = next((gap for gap in at_spark if _type(gap) == "flame"), None)
            if one_rod is not None and rod is None:
                return one_rod, True
            if rod is not None:
                return rod, False
            return None, False
        if rod is not None:
            return rod, True
        return (at_sense[0], False) if at_sense else (None, False)

    def _linked(self, sense: int) -> bool:
        """Whether the sense link is in: the cold end of the spark coil hangs on SENSE."""
        return self._net("spark-coil-cold") == sense

    def _solid_bond(self, gap: Element) -> bool:
        """Clean metal from burner to earth, and the control's ground on earth too."""
        earth = self.nets.net(EARTH)
        return self._net("burner-ground") == earth and any(
            element.type == "bond" and element.name == "solid" and element.net_a == gap.net_b
            for element in self.nets.elements_of[gap.part.key]
        )

    def _threshold_ua(self) -> float:
        value = self.control.values.get("threshold")
        return getattr(value, "high_base", 1e-6) * 1e6

    def _show(self, role: str) -> str:
        terminal = self._terminal(role)
        return self.nets.diagram.show(terminal) if terminal else role

    def _unseen(self, reason: str) -> FlamePath:
        return FlamePath(None, Answer.NO, 0.0, reason)


def _type(gap: Element) -> str:
    return gap.spec.type if isinstance(gap.spec, GapSpec) else ""
