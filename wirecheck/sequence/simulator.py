"""Runs a diagram through a script: the circuit settles, the controls step, gas burns or does not.

At every moment in which something is due, contacts take their positions, the circuit is solved,
coils and motors follow its volts, until nothing changes any more; then gas, spark and flame are
worked out and the controls take their transitions, until they too rest.  Then time jumps to the
next thing due.  A circuit that never rests (a relay that opens its own coil) is reported as
chattering and the run ends there.
"""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.circuit.companions import Companions
from wirecheck.circuit.netlist import ElementKey, Netlist, highest, netlist
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.solve import CLOSED_OHM, Case, solve
from wirecheck.model.diagram import Part
from wirecheck.model.kind import SourceSpec
from wirecheck.sequence.answers import OPENS, View
from wirecheck.sequence.burner import BurnerState
from wirecheck.sequence.control import ControlMachine, Inputs, Phase
from wirecheck.sequence.flame import Electrodes
from wirecheck.sequence.plant import FAN_OFF_S, FAN_ON_S, Plant
from wirecheck.sequence.script import Script, Stimulus
from wirecheck.sequence.trace import Trace

#: Rounds after which a circuit that has not come to rest counts as chattering.
MOST_ROUNDS = 60
#: Amperes, as a multiple of its rated ones, that a transformer does not survive (common practice).
BURNS_OUT = 4.0
#: Steps after which a run ends however much is still due.
MOST_STEPS = 20_000


class Steady(NamedTuple):
    """The circuit at rest: volts across every load, and amperes in every contact and secondary."""

    load_volts: dict[ElementKey, float]
    contact_amps: dict[ElementKey, float]
    source_amps: dict[ElementKey, float]


class Simulation:
    """One run of one diagram."""

    def __init__(self, nets: Nets, script: Script, view: View = View.OPERATION) -> None:
        """Prepare the run; `run` carries it out."""
        self.nets = nets
        self.script = script
        self.view = view
        self.net = netlist(nets)
        self.plant = Plant(nets, view)
        self.trace = Trace(script.until_s)
        companions = Companions(nets.diagram)
        self.machines = [
            ControlMachine(part)
            for part in nets.diagram.parts.values()
            if part.family == "ignition-control"
        ]
        self.burners = [
            BurnerState(
                machine.part,
                companions.of(machine.part, "burner"),
                companions.of(machine.part, "gas-valve"),
                Electrodes(nets, machine.part),
                self.plant,
                false_flame=script.false_flame,
            )
            for machine in self.machines
        ]
        self.now_s = 0.0
        self.power = True
        self.burnt_out: set[int] = set()
        self._fan_due_s: float | None = None
        self._solved: dict[tuple[object, ...], Steady] = {}
        self._pending = list(script.stimuli)

    def run(self) -> Trace:
        """Run the script to its end."""
        for _step in range(MOST_STEPS):
            self._apply_stimuli()
            for arrived in self.plant.finish_travel(self.now_s):
                self._note_arrival(arrived)
            if not self._rest():
                break
            due = self._next_due()
            if due is None or due > self.script.until_s:
                break
            self.now_s = due
        return self.trace

    # ---- one moment ------------------------------------------------------------------------

    def _apply_stimuli(self) -> None:
        while self._pending and self._pending[0].time_s <= self.now_s + 1e-9:
            self._apply(self._pending.pop(0))

    def _apply(self, stimulus: Stimulus) -> None:
        if stimulus.what == "call":
            self.plant.call = stimulus.state == "on"
            self._record("call", stimulus.state)
        elif stimulus.what == "position":
            self.plant.forced[stimulus.part] = stimulus.state
            name = self.nets.diagram.parts[stimulus.part].name
            self._record(name, stimulus.state or "as usual")
        elif stimulus.what == "power":
            self.power = stimulus.state == "on"
            self._record("power", stimulus.state)
        elif stimulus.what == "gas":
            for burner in self.burners:
                burner.gas_supply = stimulus.state == "on"
            self._record("gas supply", stimulus.state)
        else:
            for burner in self.burners:
                burner.blow_out()
            self._record("draught", "blows the flame out")

    def _rest(self) -> bool:
        """Let circuit, flames and controls come to rest; False if they never do."""
        seen: set[tuple[object, ...]] = set()
        for _round in range(MOST_ROUNDS):
            if not self._settle_circuit(seen):
                return False
            for burner, machine in zip(self.burners, self.machines, strict=True):
                burner.settle(self.now_s, machine.outputs)
                self._record_burner(burner, machine)
            if not any([self._step(m, b) for m, b in zip(self.machines, self.burners, strict=True)]):
                self._watch_fan()
                return True
        self._record("circuit", "never rests", "control and circuit chase each other")
        return False

    def _settle_circuit(self, seen: set[tuple[object, ...]]) -> bool:
        for _round in range(MOST_ROUNDS):
            closed = self._positions()
            steady = self._solve(closed)
            if self._blow(steady):
                continue
            changed = self.plant.set_volts(steady.load_volts)
            self.plant.start_travel(self.now_s)
            if not changed and self._positions() == closed:
                self._record_loads(steady)
                self.steady = steady
                return True
        self._record("circuit", "chatters", "a contact opens the coil that holds it closed")
        return False

    def _positions(self) -> tuple[bool, ...]:
        by_control = self._control_contacts()
        return tuple(
            self.plant.closed(key, self.nets.elements_of[key.part][key.number], by_control)
            for key in self.net.switches
        )

    def _control_contacts(self) -> dict[ElementKey, bool]:
        """Positions of the contacts that controls move: the first feeds gas, the second main gas."""
        positions: dict[ElementKey, bool] = {}
        for machine in self.machines:
            outputs = machine.outputs
            contacts = [
                ElementKey(machine.part.key, number)
                for number, element in enumerate(self.nets.elements_of[machine.part.key])
                if element.type == "switch"
            ]
            names = (("pilot-contact", "valve-contact"), ("main-contact",))
            for key, on, attributes in zip(contacts, outputs[:2], names, strict=False):
                stuck = next(
                    (machine.part.values[a] for a in attributes if a in machine.part.values), None
                )
                positions[key] = stuck == "stuck-closed" or (on and stuck != "stuck-open")
        return positions

    def _solve(self, closed: tuple[bool, ...]) -> Steady:
        key = (closed, self.power, frozenset(self.burnt_out))
        if key not in self._solved:
            self._solved[key] = steady_state(
                self.nets, self.net, closed, power=self.power, cut=tuple(sorted(self.burnt_out)),
                bonds=self.view is View.DANGER,
            )  # fmt: skip
        return self._solved[key]

    def _blow(self, steady: Steady) -> bool:
        """Open the fuses that carry too much, or burn out the transformer; whether one went."""
        for key, amps in steady.contact_amps.items():
            part = self.nets.diagram.parts[key.part]
            rating = highest(part.values.get("rating")) if part.family == "overcurrent" else 0.0
            if rating and amps > rating and key.part not in self.plant.blown:
                self.plant.blown.add(key.part)
                self._record(part.name, "blows", f"{amps:.0f} A through {rating:g} A")
                return True
        for key, amps in steady.source_amps.items():
            part = self.nets.diagram.parts[key.part]
            branch = self.net.series[key]
            rated = _rated_amps(part, self.nets.elements_of[key.part][key.number].spec)
            if rated and amps > BURNS_OUT * rated and branch not in self.burnt_out:
                self.burnt_out.add(branch)
                self._record(part.name, "burns out", f"short circuit: about {amps:.0f} A")
                return True
        return False

    def _step(self, machine: ControlMachine, burner: BurnerState) -> bool:
        before = machine.phase, machine.deadline_s
        reason = machine.step(self.now_s, self._inputs(machine, burner))
        if reason is not None:
            self._record(machine.part.name, machine.phase.value, reason)
        return (machine.phase, machine.deadline_s) != before

    def _inputs(self, machine: ControlMachine, burner: BurnerState) -> Inputs:
        part = machine.part
        powered = self.plant.acts(part, "electronics")
        call = self._call_volts(part) >= OPENS * 24.0 or powered
        return Inputs(call, powered, burner.flame_signal)

    def _call_volts(self, part: Part) -> float:
        call, common = part.with_role("call"), part.with_role("control-common")
        if not call or not common:
            return 0.0
        return self.steady_volts(self.net.node_of[call[0]], self.net.node_of[common[0]])

    def steady_volts(self, a: int, b: int) -> float:
        """Volts between two nodes as the circuit stands."""
        closed = self._positions()
        case = _case(
            self.net, closed, power=self.power, cut=tuple(sorted(self.burnt_out)),
            bonds=self.view is View.DANGER,
        )  # fmt: skip
        volts = abs(solve(self.net.circuit, [case]).across(a, b)[0])
        return float(volts) if volts == volts else 0.0

    # ---- time ------------------------------------------------------------------------------

    def _next_due(self) -> float | None:
        due = [stimulus.time_s for stimulus in self._pending[:1]]
        due += [timer.done_s for timer in self.plant.travel.values()]
        due += [m.deadline_s for m in self.machines if m.deadline_s is not None]
        due += [b.deadline_s for b in self.burners if b.deadline_s is not None]
        if self._fan_due_s is not None:
            due.append(self._fan_due_s)
        later = [time_s for time_s in due if time_s > self.now_s + 1e-9]
        return min(later, default=None)

    def _watch_fan(self) -> None:
        """A fan switch follows the heat of the main flame."""
        hot = any(burner.main_flame for burner in self.burners)
        if hot == self.plant.fan_on:
            self._fan_due_s = None
        elif self._fan_due_s is None:
            self._fan_due_s = self.now_s + (FAN_ON_S if hot else FAN_OFF_S)
        elif self._fan_due_s <= self.now_s + 1e-9:
            self.plant.fan_on, self._fan_due_s = hot, None
            self._rest()

    # ---- what is written down --------------------------------------------------------------

    def _record(self, track: str, state: str, reason: str = "") -> None:
        self.trace.record(self.now_s, track, state, reason)

    def _record_loads(self, steady: Steady) -> None:
        for key in steady.load_volts:
            element = self.plant.loads[key]
            if element.name != "electronics":
                name = f"{element.part.name} {element.name}".strip()
                self._record(name, "on" if self.plant.acting.get(key) else "off")

    def _record_burner(self, burner: BurnerState, machine: ControlMachine) -> None:
        many = len(self.burners) > 1
        of = f" of {burner.burner.name}" if many and burner.burner else ""
        spark, reason = burner.spark_shown(machine.outputs)
        self._record(f"spark{of}", spark, reason)
        if not machine.is_direct:
            self._record(f"pilot flame{of}", "on" if burner.pilot_flame else "off")
        main = "on" if burner.main_flame else ("unlit gas" if burner.unlit_main else "off")
        self._record(f"main flame{of}", main)
        signal, why = burner.signal_shown()
        self._record(f"flame signal{of}", signal, why)

    def _note_arrival(self, name: str) -> None:
        part = self.nets.diagram.parts.get(name)
        if part is not None:
            self._record(part.name, "open", "fully open: its end switch makes")


def _rated_amps(part: Part, spec: object) -> float:
    if not isinstance(spec, SourceSpec) or spec.rating is None or not isinstance(spec.volts, str):
        return 0.0
    volts = highest(part.values.get(spec.volts))
    return highest(part.values.get(spec.rating)) / volts if volts else 0.0


def _case(
    net: Netlist, closed: tuple[bool, ...], *, power: bool, cut: tuple[int, ...], bonds: bool
) -> Case:
    flags = [*closed, *([bonds] * len(net.bonds))]
    return Case(flags, cut=cut, supply=1.0 if power else 0.0)


def steady_state(
    nets: Nets,
    net: Netlist,
    closed: tuple[bool, ...],
    *,
    power: bool = True,
    cut: tuple[int, ...] = (),
    bonds: bool = False,
) -> Steady:
    """Solve one position of the switches.

    Args:
        nets: of the diagram; net: its circuit.
        closed: a flag for each contact of ``net.switches``.
        power: whether the supply is on.
        cut: branches that are gone.
        bonds: whether poor bonds to the metal conduct.
    """
    solution = solve(net.circuit, [_case(net, closed, power=power, cut=cut, bonds=bonds)])

    def volts(a: int, b: int) -> float:
        value = abs(solution.across(a, b)[0])
        return float(value) if value == value else 0.0

    load_volts = {}
    for key in net.loads:
        element = nets.elements_of[key.part][key.number]
        load_volts[key] = volts(net.node_of[element.a], net.node_of[element.b])
    contact_amps = {
        key: volts(*net.circuit.switches[number]) / CLOSED_OHM if closed[number] else 0.0
        for number, key in enumerate(net.switches)
    }
    source_amps = {}
    for key, branch in net.series.items():
        a, b, ohms = net.circuit.branches[branch]
        source_amps[key] = 0.0 if branch in cut else volts(a, b) / abs(ohms)
    return Steady(load_volts, contact_amps, source_amps)
