"""What a property is: its words, its reasons, and the witness that it does not hold.

A property is one statement about everything a unit can be brought to do.  Its module holds the
record ``PROPERTY`` and one function ``broken(states)`` that yields what breaks it, each with a
state of the switches that shows it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final, NamedTuple

from wirecheck.circuit.netlist import ElementKey
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks
from wirecheck.properties.heater import HEATER
from wirecheck.properties.states import Settled, States


class Property(NamedTuple):
    """The record of a property.

    Attributes:
        name: a plain phrase that says what is wrong where it does not hold.
        title: what must hold, as a statement.
        breaks: what is broken with it.
        why: what happens at the unit if it does not hold.
        blind_spots: what it does not look at.
        caution: what to mind if somebody can be hurt, else "".
        bad: a diagram that breaks it.
        good: the same put right.
        source: where the requirement comes from.
    """

    name: str
    title: str
    breaks: Breaks
    why: str
    blind_spots: str
    caution: str
    bad: str
    good: str = HEATER
    source: str = "common practice, no source"

    def broken(  # noqa: PLR0913  # a witness has many sides
        self,
        settled: Settled,
        table: int,
        what: str,
        *,
        loads: tuple[ElementKey, ...] = (),
        about: tuple[str, ...] = (),
        terminals: tuple[Terminal, ...] = (),
    ) -> Broken:
        """Make the witness of the lowest state of a table."""
        state = (table & -table).bit_length() - 1
        return Broken(self, settled, table, state, what, loads, about, terminals)


class Broken(NamedTuple):
    """A property that does not hold.

    Attributes:
        property: which.
        settled: the unit in all its states.
        table: the states that show it; ``state`` one of them.
        what: what happens there, for people.
        loads: what acts or gets volts there and must not.
        about: keys of further parts it is about: the safety, the damper, the control.
        terminals: terminals it is about, where no load is.
    """

    property: Property
    settled: Settled
    table: int
    state: int
    what: str
    loads: tuple[ElementKey, ...]
    about: tuple[str, ...]
    terminals: tuple[Terminal, ...]


#: Where gas may flow that nobody means to.
GAS_CAUTION: Final = (
    "Shut off power and gas before moving leads; wait about five minutes and smell for gas, low "
    "down for LP, before another trial."
)
#: Where volts are that nobody expects.
VOLTS_CAUTION: Final = "Shut off power, and prove it off with a meter, before touching a terminal."

#: A property's function.
Look = Callable[[States], Iterator[Broken]]
