"""One unit under one fault, run: what is seen of it, and every volt at the moments of a reading.

A fault that blows a fuse or burns out a transformer has done so before anybody comes to look: the
call in which it broke something is run first, and all that is seen and measured is that of the
unit it left behind.
"""

from __future__ import annotations

import math
from functools import cached_property
from typing import NamedTuple

from wirecheck.check.claims import Bench
from wirecheck.circuit.elimination import Elimination
from wirecheck.circuit.elimination import Rest as Solved
from wirecheck.circuit.instrument import OPEN_OHM, Ohmmeter, loose_end, with_leads_off
from wirecheck.circuit.netlist import ElementKey, Netlist, netlist
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.numbered import CLOSED_OHM, Branch, Case, Circuit, SourceBranch
from wirecheck.model.diagram import Diagram, Terminal
from wirecheck.model.kind import FLAG_SET, SourceSpec
from wirecheck.sequence.burner import BURNING
from wirecheck.sequence.plant import Plant
from wirecheck.sequence.script import (
    BEFORE_CALL_S,
    CALL_LENGTH_S,
    Opening,
    Script,
    Stimulus,
    heat_call,
)
from wirecheck.sequence.simulator import Simulation
from wirecheck.sequence.trace import Rest, Trace
from wirecheck.sequence.tracks import track_of
from wirecheck.troubleshoot.alteration import Alteration
from wirecheck.troubleshoot.part_faults import load_attribute

#: Less than this is a short, and no winding either (common practice, no source).
SHORT_OHM = 1.0
#: So long into a call a unit is warm enough that a limit may open, in seconds (common practice, no
#: source).
WARM_S = 300.0
#: So many times a unit is run until nothing more breaks in it.
_MOST_RUNS = 3


class Moment(NamedTuple):
    """A moment of a call.

    Attributes:
        gas: whether the gas cock is open.
        time_s: seconds from the call.
        control: key of the control whose gas cock that is; "" for all.
    """

    gas: bool
    time_s: float
    control: str = ""


class FaultyUnit:
    """A diagram under an alteration.

    Attributes:
        diagram: as the meter finds it: altered, and with what that broke.
        broken: what it broke, as alteration.
        took: names of the parts that it broke, for people.
        trace: of a call with the gas open, on what it left behind.
        off, off_calling: which contacts are closed with the power off, with no call and with one.
    """

    def __init__(
        self,
        drawn: Diagram,
        alters: Alteration,
        seems: Alteration,
        calling: tuple[str, ...] = (),
    ) -> None:
        """Run it until nothing more breaks."""
        self._drawn = drawn
        self._alters, self._seems, self._calling = alters, seems, calling
        self.broken = Alteration()
        self._nets: dict[Alteration, Nets] = {}
        self.took: dict[str, str] = {}
        for _run in range(_MOST_RUNS):
            simulation = self._simulation(gas=True)
            plant = simulation.plant
            self.off = _positions(plant)
            plant.calling = set(self._calling or plant.callers)
            self.off_calling = _positions(plant)
            plant.calling = set()
            self.trace: Trace = simulation.run()
            damage = _damage(simulation)
            if not damage.values:
                break
            self.broken += damage
            names = ((key, drawn.parts[key].name) for key, _name, _value in damage.values)
            self.took.update(names)

    @cached_property
    def diagram(self) -> Diagram:
        """As the meter finds it."""
        return self.nets.diagram

    @cached_property
    def nets(self) -> Nets:
        """Of what the meter finds."""
        return self._nets_of(self._alters + self.broken)

    @property
    def run_nets(self) -> Nets:
        """Of what the run finds."""
        return self._nets_of(self._altered)

    def _nets_of(self, altered: Alteration) -> Nets:
        """Of a diagram so altered; made once for the run and the meter where both see the same."""
        if altered not in self._nets:
            self._nets[altered] = Nets(altered.on(self._drawn))
        return self._nets[altered]

    def solved(self, moment: Moment | None) -> Solved:
        """The circuit at a moment of a call; None: power on, no call."""
        if moment not in self._solutions:
            rest = self._rest(moment)
            flags = tuple(rest.closed[key] for key in self._netlist.switches)
            if flags not in self._solved:
                self._solved[flags] = self._solve(flags)
            self._solutions[moment] = self._solved[flags]
        return self._solutions[moment]

    def volts(self, moment: Moment | None, a: Terminal, b: Terminal) -> float:
        """What a meter shows between two terminals; 0 where no conductor joins them."""
        node_of = self._netlist.node_of
        across = self.solved(moment).across(node_of[a], node_of[b])
        return 0.0 if across is None else abs(across)

    def ohms(self, a: Terminal, b: Terminal, *, calling: bool = False) -> float:
        """What an ohmmeter shows with the power off and every supply taken off; inf: nothing.

        It sends direct current: of a coil it finds the resistive part.
        """
        closed = self.off_calling if calling else self.off
        node_of, meter = self._netlist.node_of, self._netlist.circuit.nodes
        # One volt behind one ohm: the volts that arrive tell the ohms between the probes.
        probes = (Branch(meter, node_of[a], CLOSED_OHM), Branch(meter + 1, node_of[b], CLOSED_OHM))
        flags = [closed[key] for key in self._netlist.switches]
        solved = self._ohmmeter.solve(Case((*flags, *self._bonds), added=probes))
        share = abs(solved.across(meter, meter + 1) or 0.0)
        ohms = share / (1 - share) if share < 1 else math.inf
        return ohms if ohms < OPEN_OHM else math.inf

    def shorted_leads(self, point: Terminal, common: Terminal) -> frozenset[int]:
        """Of the leads at a terminal, all of them taken off there, those that read a short."""
        meter = Ohmmeter(Nets(with_leads_off(self.diagram, point)))
        return frozenset(
            number
            for number in self.nets.leads_at(point)
            if meter.ohms(self.off, loose_end(number), common) < SHORT_OHM
        )

    # ---- running it ------------------------------------------------------------------------

    @cached_property
    def claims(self) -> Bench:
        """A bench on which what was observed is compared with what this unit does."""
        return Bench(self.run_nets, self._call)

    @property
    def _altered(self) -> Alteration:
        """As the run finds it."""
        return self._alters + self._seems + self.broken

    def _simulation(self, *, gas: bool) -> Simulation:
        return Simulation(self.run_nets, self._call(gas=gas))

    def _call(self, *, gas: bool = True, length_s: float = CALL_LENGTH_S) -> Script:
        altered = self._altered
        script = heat_call(
            gas=gas and not altered.gas_off,
            length_s=length_s,
            calling=self._calling,
            false_flame=altered.false_flame,
            opened=tuple(Opening(part, name, WARM_S) for part, name in altered.opens_warm),
        )
        if altered.power_off:
            off = Stimulus(-BEFORE_CALL_S, "power", "off")
            script = script._replace(stimuli=(off, *script.stimuli))
        return script

    @cached_property
    def dry_trace(self) -> Trace:
        """Of a call with the gas cock shut."""
        return self._simulation(gas=False).run()

    def _rest(self, moment: Moment | None) -> Rest:
        is_dry = moment is not None and not moment.gas and self._has_burnt(moment)
        trace = self.dry_trace if is_dry else self.trace
        time_s = -1.0 if moment is None else moment.time_s
        before = [rest for rest in trace.rests if rest.time_s <= time_s]
        return before[-1] if before else trace.rests[0]

    def _has_burnt(self, moment: Moment) -> bool:
        """Whether a flame burnt before a moment: until then the gas cock changes nothing."""
        parts = self._drawn.parts.values()
        controls = [part for part in parts if part.family == "ignition-control"]
        return any(
            change.state == BURNING and change.time_s <= moment.time_s
            for control in controls
            if moment.control in ("", control.key)
            for flame in ("pilot flame", "main flame")
            for change in self.trace.of(track_of(flame, control.name, many=len(controls) > 1))
        )

    # ---- measuring it ----------------------------------------------------------------------

    @cached_property
    def _solutions(self) -> dict[Moment | None, Solved]:
        return {}

    @cached_property
    def _solved(self) -> dict[tuple[bool, ...], Solved]:
        return {}

    @cached_property
    def _netlist(self) -> Netlist:
        return netlist(self.nets)

    @cached_property
    def _elimination(self) -> Elimination:
        return Elimination(self._netlist.circuit)

    @cached_property
    def _ohmmeter(self) -> Elimination:
        """The circuit without its sources, and a meter on two nodes more."""
        circuit = self._netlist.circuit
        branches = tuple(
            each._replace(ohms=max(complex(each.ohms).real, CLOSED_OHM))
            for each in circuit.branches
        )
        meter = (SourceBranch(circuit.nodes, circuit.nodes + 1, 1.0, 1.0),)
        return Elimination(Circuit(circuit.nodes + 2, branches, circuit.switches, meter))

    @cached_property
    def _bonds(self) -> list[bool]:
        """A bond through rust carries no current that could be relied on."""
        elements = self.nets.elements_of
        return [elements[key.part][key.number].name == "solid" for key in self._netlist.bonds]

    def _solve(self, flags: tuple[bool, ...]) -> Solved:
        power = 0.0 if self._alters.power_off else 1.0
        return self._elimination.solve(Case((*flags, *self._bonds), supply=power))


def _positions(plant: Plant) -> dict[ElementKey, bool]:
    at_rest = plant.positions(-BEFORE_CALL_S)
    return {each.key: on for each, on in zip(plant.contacts, at_rest, strict=True)}


def _damage(simulation: Simulation) -> Alteration:
    """What a run broke: fuses and breakers that opened, windings and loads that burnt out."""
    parts = simulation.nets.diagram.parts
    values = [
        (gone.part, _burnt(simulation.nets, gone), "open") for gone in simulation.circuit.gone
    ]
    for key in simulation.plant.blown:
        found = "blown" if "blown" in parts[key].kind.attributes else "tripped"
        values.append((key, found, FLAG_SET))
    return Alteration(values=tuple(sorted(values)))


def _burnt(nets: Nets, key: ElementKey) -> str:
    element = nets.elements_of[key.part][key.number]
    return "winding" if isinstance(element.spec, SourceSpec) else load_attribute(element)
