"""Volts where loads lie in series: solved once for all states that join the same nets."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cached_property

from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.steady import Steady, SteadyStates
from wirecheck.circuit.switching import Network, holds
from wirecheck.model.diagram import EARTH, Diagram
from wirecheck.properties.contacts import Contacts
from wirecheck.properties.unit import Unit, Whole
from wirecheck.sequence.answers import Answer, View, coil_answer

#: With less than this across it nothing acts (common practice, no source).
_LEAST_VOLTS = 0.05
#: So many different circuits of one unit are solved at the most.
MOST_SOLVED = 400


def part_of(diagram: Diagram, parts: frozenset[str]) -> tuple[Diagram, tuple[int, ...]]:
    """The diagram of some parts with the leads among them, and the numbers of those leads."""
    known = {*parts, *diagram.splices, EARTH.part}
    numbers = tuple(
        number
        for number, lead in enumerate(diagram.leads)
        if lead.a.part in known and lead.b.part in known
    )
    return (
        replace(
            diagram,
            parts={key: part for key, part in diagram.parts.items() if key in parts},
            leads=tuple(diagram.leads[number] for number in numbers),
        ),
        numbers,
    )


def with_strips(diagram: Diagram, parts: frozenset[str]) -> frozenset[str]:
    """Parts, and the strips and other parts that only join leads."""
    joining = (key for key, part in diagram.parts.items() if part.family in _JOINING)
    return parts | frozenset(joining)


#: Families through which current passes on its way to another part.
_JOINING = ("strip", "valve-adapter", "burner", "mains")


class SeriesVolts:
    """The circuit of one unit by itself, solved where volts decide.

    Attributes:
        bounded: why not every state was solved, or "".
    """

    def __init__(self, whole: Whole, unit: Unit, view: View, contacts: Contacts) -> None:
        """Nothing is solved before it is asked for."""
        self._whole = whole
        self._unit = unit
        self._view = view
        self._contacts = contacts
        self.bounded = ""
        self._answers: dict[bytes, list[tuple[ElementKey, float]]] = {}

    @cached_property
    def _states(self) -> SteadyStates:
        alone, _numbers = part_of(
            self._whole.diagram, with_strips(self._whole.diagram, self._unit.parts)
        )
        return SteadyStates(Nets(alone), poor_bonds=self._view is View.DANGER)

    def at(self, closed: Mapping[ElementKey, int], state: int) -> Steady:
        """The circuit in one state."""
        return self._states.at(
            tuple(holds(closed.get(key, 0), state) for key in self._states.contacts)
        )

    def acting(
        self,
        series: int,
        closed: Mapping[ElementKey, int],
        network: Network[int],
        fed: Mapping[ElementKey, int],
    ) -> dict[ElementKey, int]:
        """When each load acts, of the states in ``series``."""
        from wirecheck.properties.states import rated_volts

        elements = {key: self._whole.element(key) for key in fed}
        joined = _Joined(self._joined(network), series)
        found = dict.fromkeys(fed, 0)
        solved = 0
        while series:
            if solved == MOST_SOLVED:
                self.bounded = f"loads in series: {MOST_SOLVED} of their circuits solved"
                break
            state = (series & -series).bit_length() - 1
            stands, alike = joined.alike(series, state)
            series ^= alike
            if stands not in self._answers:
                solved += 1
                steady = self.at(closed, state)
                self._answers[stands] = [(key, steady.load_volts.get(key, 0.0)) for key in fed]
            for key, volts in self._answers[stands]:
                if volts < _LEAST_VOLTS:
                    continue
                element = elements[key]
                answer = coil_answer(
                    element.part,
                    volts,
                    rated_volts(element),
                    is_open=bool(fed[key]) and self._view is View.DANGER,
                )
                if answer is not Answer.NO and answer.counts(self._view):
                    found[key] |= alike
        return found

    def _joined(self, network: Network[int]) -> list[int]:
        """For each two nets that loads or sources end at, when they are joined."""
        ends = [*self._unit.loads, *self._unit.sources]
        elements = [self._whole.element(key) for key in ends]
        nets = dict.fromkeys(net for each in elements for net in (each.net_a, each.net_b))
        nets[self._whole.nets.net(EARTH)] = None
        tables = []
        waiting = list(nets)
        while waiting:
            reached = network.reached(waiting.pop())
            tables += [reached.get(net, 0) for net in waiting]
        return tables


class _Joined:
    """When pairs of nets are joined, of some states; tables that are the same there are one."""

    def __init__(self, tables: list[int], states: int) -> None:
        size = states.bit_length() // 8 + 1
        number: dict[int, int] = {}
        self._which = [number.setdefault(table & states, len(number)) for table in tables]
        self._tables = list(number)
        self._bits = [table.to_bytes(size, "little") for table in number]

    def alike(self, states: int, state: int) -> tuple[bytes, int]:
        """Which pairs are joined in a state, and in which of some states it is the same ones."""
        place, bit = divmod(state, 8)
        stands = [bits[place] >> bit & 1 for bits in self._bits]
        for table, is_joined in zip(self._tables, stands, strict=True):
            common = states & table
            states = common if is_joined else states ^ common
        return bytes([stands[which] for which in self._which]), states
