"""Which valves feed the burner of a control, and what gas they pass."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal, NamedTuple

from wirecheck.circuit.companions import Companions
from wirecheck.circuit.netlist import ElementKey
from wirecheck.model.diagram import Part, Terminal
from wirecheck.sequence.answers import View
from wirecheck.sequence.coils import Coils

#: What gas a valve passes: that of the pilot, of the main burner, or of both by its operators.
Feeds = Literal["pilot", "main", "both"]


class Flow(NamedTuple):
    """Whether gas flows to the pilot, and to the main burner."""

    pilot: bool
    main: bool


class GasTrain:
    """The valves of one control's burner.

    Attributes:
        valves: the valves, each with what it feeds.
        unclear: why it is not known which valves these are, or "".
    """

    def __init__(self, control: Part, companions: Companions, drawn: int) -> None:
        """Find the valves by the leads.

        Args:
            control: the ignition control.
            companions: of the diagram.
            drawn: how many gas valves the diagram has.
        """
        valves = companions.all_of(control, "gas-valve")
        self.valves = tuple((valve, _feeds(valve, valves, control, companions)) for valve in valves)
        self.unclear = ""
        if not valves:
            self.unclear = (
                f"which of the {drawn} gas valves goes with {control.name} is not clear"
                if drawn
                else "no gas valve is drawn"
            )

    def operators(self, control: Part, coils: Coils) -> Iterator[tuple[ElementKey, Terminal]]:
        """Every operator, with the control's terminal that is to feed it."""
        first = (control.with_role("pilot-valve") or control.with_role("valve-feed"))[0]
        main = (control.with_role("main-valve") or (first,))[0]
        for valve, feeds in self.valves:
            for key in coils.keys(valve, "pilot operator"):
                yield key, first
            alone = not valve.with_role("pilot-operator")
            feed = first if alone and feeds != "main" else main
            for name in ("operator", "main operator"):
                for key in coils.keys(valve, name):
                    yield key, feed

    def flow(self, coils: Coils) -> Flow:
        """What gas flows with the operators as they are, if there is gas at the inlet."""
        through = [_through(valve, feeds, coils) for valve, feeds in self.valves]
        mains = [
            flow.main
            for flow, (_valve, feeds) in zip(through, self.valves, strict=True)
            if feeds != "pilot"
        ]
        # How two main valves are piped is not drawn: looked at for danger side by side, else one
        # behind the other.
        main = any(mains) if coils.view is View.DANGER else bool(mains) and all(mains)
        return Flow(any(flow.pilot for flow in through), main)


def _feeds(valve: Part, valves: tuple[Part, ...], control: Part, companions: Companions) -> Feeds:
    """What a valve feeds, by its operators or by where its lead comes from.

    One with a pilot operator, or alone, feeds both.  Of several the one on MV feeds the main
    burner and that on PV the pilot; with none on MV nobody can say, and each may feed both.
    """
    if len(valves) == 1 or valve.with_role("pilot-operator"):
        return "both"
    by_main = companions.all_of(control, "gas-valve", "main-valve")
    if valve in by_main or valve not in companions.all_of(control, "gas-valve", "pilot-valve"):
        return "main"
    return "pilot" if by_main else "both"


def _through(valve: Part, feeds: Feeds, coils: Coils) -> Flow:
    if not valve.with_role("pilot-operator"):
        opened = coils.acts(valve, "operator") or coils.acts(valve, "main operator")
        return Flow(opened and feeds != "main", opened and feeds != "pilot")
    pilot = coils.acts(valve, "pilot operator")
    main = coils.acts(valve, "main operator")
    single_seat = valve.values.get("seats") == "single-seat"
    return Flow(pilot, main and (pilot or single_seat))
