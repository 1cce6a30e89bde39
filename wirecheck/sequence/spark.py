"""Where the spark jumps: from SPARK over the ignition cable to an electrode, and back.

Some 20 kV leave SPARK, must jump from an electrode to the burner's metal, and come back to the
cold end of the coil: over the burner ground, or through any metal that both touch, rusty or not.
"""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import EARTH, Part, Terminal
from wirecheck.model.kind import GapSpec
from wirecheck.sequence.flame import gaps_by_net, terminal_of


class SparkPath(NamedTuple):
    """The gap the spark jumps, or None; and why there is none, or what is odd about it."""

    gap: Element | None
    reason: str


def spark_path(nets: Nets, control: Part) -> SparkPath:
    """Where the spark of a control jumps when it has high voltage."""
    spark = terminal_of(control, "spark")
    ground = terminal_of(control, "burner-ground")
    if spark is None or ground is None:
        return SparkPath(None, "the control has no spark")
    if control.values.get("spark-coil") == "dead":
        return SparkPath(None, f"the spark coil of {control.name} is dead")
    return _from(nets, spark, ground)


def _from(nets: Nets, spark: Terminal, ground: Terminal) -> SparkPath:
    """Where high voltage at one terminal jumps to come back at the other."""
    shown = nets.diagram.show(spark)
    if nets.net(spark) in (nets.net(EARTH), nets.net(ground)):
        return SparkPath(None, f"the high voltage of {shown} runs to ground")
    gaps = gaps_by_net(nets).get(nets.net(spark), [])
    if not gaps:
        return SparkPath(None, f"no electrode is joined to {shown}")
    gap = next((each for each in gaps if _is_electrode(each)), gaps[0])
    if nets.net(ground) not in _metal_of(nets, gap):
        ends = f"{nets.diagram.show(gap.b)} and {nets.diagram.show(ground)}"
        return SparkPath(None, f"no path back for the spark: neither lead nor metal joins {ends}")
    if not _is_electrode(gap):
        return SparkPath(gap, f"the spark jumps from the flame rod, {nets.diagram.show(gap.a)}")
    return SparkPath(gap, "")


def _metal_of(nets: Nets, gap: Element) -> set[int]:
    """The nets that the burner's metal touches, by a lead or by any bond."""
    metal = {gap.net_b}
    for element in nets.elements_of[gap.part.key]:
        if element.type == "bond" and element.name != "none" and element.net_a == gap.net_b:
            metal.add(nets.net(EARTH))
    return metal


def _is_electrode(gap: Element) -> bool:
    return isinstance(gap.spec, GapSpec) and gap.spec.type == "spark"
