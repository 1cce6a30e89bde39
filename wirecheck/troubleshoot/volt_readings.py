"""Volts worth reading: never where the spark or the flame signal is.

What is hot is read against the common of its supply and the common against the hot side, terminal
by terminal; beside that across contacts and loads.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import EARTH, Part, Terminal
from wirecheck.model.kind import LoadSpec, SourceSpec, SwitchSpec
from wirecheck.sequence.no_go import NoGo
from wirecheck.troubleshoot.modes import costs
from wirecheck.troubleshoot.moments import Moments
from wirecheck.troubleshoot.reading import Reading, Stage

#: Metal of the unit: the ground of the line, and the burner, that sits on the cabinet.
BARE_ROLES = ("line-ground", "burner-metal")
#: What is moved otherwise than by the heat of the unit.
NO_HEAT = ("control", "hand", "door", "overcurrent", "motor", "coil")
LINE_CAUTION = "Line voltage: insulated probes, one hand, dry footing; for people licensed for it."
SPARK_CAUTION = "It sparks now: hands and probes away from the ignition cable, some 20 kV."

_WHEN = {
    Stage.IDLE: "with the power on and no call",
    Stage.TRIAL: "on a call with the gas cock shut, while it should try to light",
    Stage.RUN: "on a call with the gas on, when it should have lit, {at} s into the call",
    Stage.WARM: "on a call, when it has had some minutes",
}


class _Supply(NamedTuple):
    """A supply and the regions of its two sides."""

    hot: Terminal
    common: Terminal
    hot_region: int
    common_region: int


class VoltReadings:
    """The volts of one diagram that can be read."""

    def __init__(self, nets: Nets, moments: Moments) -> None:
        """Look up supplies and what is not to be touched."""
        self._nets = nets
        self._moments = moments
        self._conduction = Conduction(nets)
        self._no_go = NoGo(nets, self._conduction)
        self._supplies = list(self._find_supplies())

    def all(self) -> Iterator[Reading]:
        """Every reading, each once."""
        seen: set[frozenset[Terminal]] = set()
        for red, black in self._pairs():
            pair = frozenset((red, black))
            if pair not in seen and self.may_read(red, black):
                seen.add(pair)
                yield from self._in_stages(red, black)

    def may_read(self, red: Terminal, black: Terminal) -> bool:
        """Whether a meter on a volts range may go there."""
        ends = (red, black)
        if self._nets.joined(red, black) and red.part == black.part:
            return False
        return red != black and not any(self._no_go.forbids(end, volts=True) for end in ends)

    def reading(
        self, red: Terminal, black: Terminal, stage: Stage, control: Part | None
    ) -> Reading:
        """One reading, in the words it is asked in."""
        show = self._nets.diagram.show
        at_s = self._moments.at_s(stage, control)
        when = _WHEN[stage].format(at=f"{at_s:.0f}")
        line = any(self._no_go.at_line_voltage(end) for end in (red, black))
        key = ":".join(("volts", *map(_slug, (red, black)), stage.value))
        if control is not None and len(self._moments.controls) > 1:
            key += f":{control.key}"
        cautions: tuple[str, ...] = (LINE_CAUTION,) if line else ()
        if stage in (Stage.TRIAL, Stage.RUN):
            cautions += (SPARK_CAUTION,)
        return Reading(
            key,
            "volts",
            stage,
            f"Read the AC volts from {show(red)} to {show(black)}, {when}",
            "V",
            costs()["line-volts" if line else "volts"],
            cautions=cautions,
            points=(red, black),
            part=control.key if control else "",
            at_s=at_s,
        )

    # ---- which pairs -------------------------------------------------------------------------

    def _pairs(self) -> Iterator[tuple[Terminal, Terminal]]:
        """Each terminal against the other side of its supply; then across loads and contacts."""
        for terminal in self._nets.conductors:
            if not self._nets.is_wired(terminal) or self._is_bare(terminal):
                continue
            for other in self._references(terminal):
                yield terminal, other
        for part, elements in self._nets.elements_of.items():
            for element in elements:
                if self._is_across(element):
                    yield element.a, element.b
            yield from self._outputs(self._nets.diagram.parts.get(part))

    def _is_bare(self, terminal: Terminal) -> bool:
        """Whether it is metal that screws may earth: volts there say nothing of any lead."""
        spec = self._nets.diagram.spec(terminal)
        return terminal == EARTH or (spec is not None and spec.role in BARE_ROLES)

    def _is_across(self, element: Element) -> bool:
        spec = element.spec
        if isinstance(spec, LoadSpec):
            return spec.takes is not None and spec.volts is not None
        if isinstance(spec, SwitchSpec):
            return spec.moved_by != "control"
        return isinstance(spec, SourceSpec)

    def _outputs(self, part: Part | None) -> Iterator[tuple[Terminal, Terminal]]:
        """What a control feeds, against its own common."""
        if part is None or part.family != "ignition-control":
            return
        common = part.with_role("control-common")[0]
        for terminal in part.with_role(
            "call", "pilot-valve", "main-valve", "valve-feed", "damper-call", "damper-proved"
        ):
            if self._nets.is_wired(terminal):
                yield terminal, common

    def _find_supplies(self) -> Iterator[_Supply]:
        for elements in self._nets.elements_of.values():
            for each in elements:
                if isinstance(each.spec, SourceSpec):
                    regions = (self._region(each.a), self._region(each.b))
                    yield _Supply(each.a, each.b, *regions)

    def _region(self, terminal: Terminal) -> int:
        return self._conduction.region(self._nets.net(terminal))

    def _references(self, terminal: Terminal) -> Iterator[Terminal]:
        region = self._region(terminal)
        fed = next((each for each in self._supplies if each.hot_region == region), None)
        if fed is not None:
            yield fed.common
            return
        back = [each for each in self._supplies if each.common_region == region]
        own = (each for each in back if self._hangs_on(terminal.part, each))
        supply = next(own, back[0] if len(back) == 1 else None)
        if supply is not None:
            yield supply.hot

    def _hangs_on(self, part: str, supply: _Supply) -> bool:
        return any(
            self._region(end) == supply.hot_region
            for element in self._nets.elements_of.get(part, ())
            for end in (element.a, element.b)
        )

    # ---- when --------------------------------------------------------------------------------

    def _in_stages(self, red: Terminal, black: Terminal) -> Iterator[Reading]:
        yield self.reading(red, black, Stage.IDLE, None)
        if "burner" in (self._family(red), self._family(black)):
            return  # beside the spark no probe is held on a call
        controls = self._concerned(red, black) or [None]
        for control in controls:
            yield self.reading(red, black, Stage.TRIAL, control)
            yield self.reading(red, black, Stage.RUN, control)
        if self._is_late(red, black) or self._is_across_limit(red, black):
            yield self.reading(red, black, Stage.WARM, None)

    def _concerned(self, red: Terminal, black: Terminal) -> list[Part | None]:
        """The controls in whose circuit it is read."""
        regions = {self._region(red), self._region(black)}
        found: list[Part | None] = [
            control
            for control in self._moments.controls
            if red.part == control.key
            or any(self._region(end) in regions for end in control.with_role("call"))
        ]
        return found

    def _family(self, terminal: Terminal) -> str:
        part = self._nets.diagram.parts.get(terminal.part)
        return part.family if part else ""

    def _is_across_limit(self, red: Terminal, black: Terminal) -> bool:
        """Whether a contact lies between them that may open with heat."""
        return any(
            {red, black} == {element.a, element.b}
            and isinstance(element.spec, SwitchSpec)
            and element.spec.moved_by not in NO_HEAT
            and element.spec.running == "closed"
            for element in self._nets.elements_of.get(red.part, ())
        )

    def _is_late(self, red: Terminal, black: Terminal) -> bool:
        """Whether a good unit shows something else there once it is warm."""
        return self._moments.is_late(red, black)


def _slug(terminal: Terminal) -> str:
    return f"{terminal.part}.{terminal.name}".casefold().rstrip(".")
