"""Where no probe goes, where none goes on a volts range, and where there is line voltage.

The spark output stands at some 20 kV while it sparks: no meter goes on it, on its lead or on the
electrode, with the power on or off, nor on anything that is one conductor with them.  The flame
rod and its lead stand beside it; a volts range there sees the spark, and loads the flame signal.
"""

from __future__ import annotations

from collections.abc import Iterable

from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Part, Terminal
from wirecheck.sequence.flame import terminal_of

#: Roles of terminals at line voltage.
LINE_ROLES = ("line-hot", "line-hot-2", "line-hot-3")


class NoGo:
    """What of one diagram is not to be touched.

    Attributes:
        astray: where the spark output reaches what is no burner: its terminal, and one of those
            that it reaches.  Then no power is put on the unit at all.
        live: a terminal of the control circuit that the line reaches; then likewise.
    """

    def __init__(self, nets: Nets, conduction: Conduction) -> None:
        """Look up the nets."""
        self._nets = nets
        self._conduction = conduction
        parts = nets.diagram.parts.values()
        controls = [part for part in parts if part.family == "ignition-control"]
        # One conductor with the control's own ground, nothing can get to high voltage there.
        grounds = {
            nets.net(ground) for part in controls for ground in part.with_role("burner-ground")
        }
        self._spark_ends = _ends(parts, "spark", "electrode")
        self._flame_ends = _ends(parts, "sense", "rod")
        self._spark = {nets.net(end) for end in self._spark_ends} - grounds
        self._flame = {nets.net(end) for end in self._flame_ends} - grounds
        self._line = {conduction.region(nets.net(end)) for end in _ends(parts, *LINE_ROLES)}
        self.astray = self._find_astray(controls)
        self.live = next((end for end in nets.net_of if self._is_live(end)), None)

    @property
    def keeps_power_off(self) -> str:
        """Why the unit gets no power at all as drawn; "" if it may."""
        show = self._nets.diagram.show
        if self.astray:
            spark, other = map(show, self.astray)
            return (
                f"The power stays off: {spark}, at some 20 kV while it sparks, is joined to "
                f"{other}. Mend that first."
            )
        if self.live:
            shown = show(self.live)
            return f"The power stays off: {shown} would be at line voltage. Mend that first."
        return ""

    def forbids(self, terminal: Terminal, *, volts: bool) -> bool:
        """Whether no probe goes on a terminal, or none on a volts range."""
        net = self._nets.net(terminal)
        if terminal in self._spark_ends or net in self._spark:
            return True
        spec = self._nets.diagram.spec(terminal)
        if spec is not None and spec.inner:
            return True
        return volts and (terminal in self._flame_ends or net in self._flame)

    def at_line_voltage(self, terminal: Terminal) -> bool:
        """Whether a conductor or a contact leads from it to the line."""
        return self._conduction.region(self._nets.net(terminal)) in self._line

    def senses_by_spark_lead(self, control: Part) -> bool:
        """Whether the flame signal of a control runs where its spark does: over the sense link."""
        sense = terminal_of(control, "sense")
        cold = terminal_of(control, "spark-coil-cold")
        if sense is None or self._nets.net(sense) in self._spark:
            return True
        ends = {sense.name, cold.name if cold else ""}
        return any(set(link.between) == ends for link in control.structure.links)

    def _is_live(self, terminal: Terminal) -> bool:
        """Whether the line reaches a terminal that is not made for it."""
        spec = (
            self._nets.diagram.spec(terminal) if terminal.part in self._nets.elements_of else None
        )
        made = spec is None or spec.circuit in ("line", "any", "earth")
        return not made and self.at_line_voltage(terminal)

    def _find_astray(self, controls: list[Part]) -> tuple[Terminal, Terminal] | None:
        for control in controls:
            for spark in control.with_role("spark"):
                if self._nets.net(spark) not in self._spark:
                    continue
                for member in self._nets.members[self._nets.net(spark)]:
                    spec = self._nets.diagram.spec(member)
                    if spec is not None and spec.circuit not in ("ignition", "flame"):
                        return spark, member
        return None


def _ends(parts: Iterable[Part], *roles: str) -> set[Terminal]:
    return {end for part in parts for end in part.with_role(*roles)}
