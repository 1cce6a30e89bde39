"""Switching functions: for which positions of its switches a network of contacts conducts.

A function of n variables is its truth table, kept as one whole number: bit s is 1 if the function
holds in state s, and bit i of s is the position of variable i.  Two contacts in series are the
*and* of their tables, two side by side the *or*; one operation of the machine does so for all 2^n
states.  Whatever is asked is thereby answered for every state, none is sampled.

The way of adding an edge at a time until nothing changes, and the elimination of inner nodes
(T[a,b] |= T[a,x] & T[x,b]), are the Boolean forms of closure and star-mesh; they are exact, since
a loop adds nothing to a Boolean path.  (After C. E. Shannon, "A symbolic analysis of relay and
switching circuits", Trans. AIEE 57, 1938; from memory.)
"""

from __future__ import annotations

from collections import deque
from collections.abc import Hashable, Iterable, Iterator, Mapping
from typing import Generic, TypeVar

_Node = TypeVar("_Node", bound=Hashable)


class Positions:
    """Every position of some independent switches.

    Attributes:
        variables: their names, in order; variable i is bit i of the number of a state.
        count: of states, 2 to the power of the variables.
        always: the table of what holds in every state.
    """

    def __init__(self, variables: Iterable[Hashable]) -> None:
        """Make the table of each variable.

        Args:
            variables: each once; the tables take 2^n / 8 bytes each.
        """
        self.variables = tuple(dict.fromkeys(variables))
        self.count = 1 << len(self.variables)
        self.always = (1 << self.count) - 1
        self._tables = {
            name: _alternating(number, self.count) for number, name in enumerate(self.variables)
        }

    def on(self, variable: Hashable) -> int:
        """The states in which a variable is on.

        Raises:
            KeyError: there is no such variable.
        """
        return self._tables[variable]

    def off(self, variable: Hashable) -> int:
        """The states in which a variable is off."""
        return self.always ^ self._tables[variable]

    def but(self, table: int) -> int:
        """The states in which a function does not hold."""
        return self.always ^ table

    def first(self, table: int) -> int:
        """The lowest state in which a function holds.

        Raises:
            ValueError: it holds in none.
        """
        if not table:
            raise ValueError("the function holds in no state")
        return (table & -table).bit_length() - 1

    def state(self, number: int) -> Mapping[Hashable, bool]:
        """Which variables are on in a state."""
        return {name: bool(number >> place & 1) for place, name in enumerate(self.variables)}


def holds(table: int, state: int) -> bool:
    """Whether a function holds in a state."""
    return bool(table >> state & 1)


def _alternating(place: int, count: int) -> int:
    """The table of one variable: runs of 2^place zeros and as many ones, in turn."""
    half = 1 << place
    table, length = ((1 << half) - 1) << half, 2 * half
    while length < count:  # doubled: much cheaper than a division of such long numbers
        table |= table << length
        length *= 2
    return table


class Network(Generic[_Node]):
    """Nodes with contacts between them, each contact by the table of its closed states."""

    def __init__(self, always: int) -> None:
        """No contacts.

        Args:
            always: the table of what holds in every state (`Positions.always`).
        """
        self._always = always
        self._beside: dict[_Node, dict[_Node, int]] = {}

    def add(self, a: _Node, b: _Node, table: int) -> None:
        """Put a contact between two nodes, beside what is there already."""
        if a != b and table:
            self._beside.setdefault(a, {})[b] = self._beside.get(a, {}).get(b, 0) | table
            self._beside.setdefault(b, {})[a] = self._beside.get(b, {}).get(a, 0) | table

    def neighbours(self, node: _Node) -> Mapping[_Node, int]:
        """The nodes that some contact joins to one, and when."""
        return self._beside.get(node, {})

    def reached(self, start: _Node) -> dict[_Node, int]:
        """When each node is joined to one; nodes that never are, are left out."""
        found = {start: self._always}
        waiting = deque([start])
        while waiting:
            here = waiting.popleft()
            at_here = found[here]
            for there, table in self._beside.get(here, {}).items():
                before = found.get(there, 0)
                after = before | (at_here & table)
                if after != before:
                    found[there] = after
                    waiting.append(there)
        return found

    def between(self, a: _Node, b: _Node) -> int:
        """When two nodes are joined: all others are eliminated, those with fewest contacts first.

        The same as ``reached(a)[b]`` by another way; `reached` answers for all nodes at once.
        """
        if a == b:
            return self._always
        beside = {node: dict(others) for node, others in self._beside.items()}
        while inner := [node for node in beside if node not in (a, b)]:
            gone = min(inner, key=lambda node: len(beside[node]))
            others = beside.pop(gone)
            for one in others:
                del beside[one][gone]
            for one, into in others.items():
                for other, out in others.items():
                    if one != other and (table := into & out):
                        beside[one][other] = beside[one].get(other, 0) | table
        return beside.get(a, {}).get(b, 0)

    def way(self, start: _Node, goal: _Node, state: int) -> list[_Node]:
        """A shortest way of closed contacts in one state, both ends included; [] if none."""
        came: dict[_Node, _Node] = {start: start}
        waiting = deque([start])
        while waiting and goal not in came:
            here = waiting.popleft()
            for there, table in self._beside.get(here, {}).items():
                if there not in came and holds(table, state):
                    came[there] = here
                    waiting.append(there)
        return list(_back(came, goal))[::-1] if goal in came else []


def _back(came: Mapping[_Node, _Node], goal: _Node) -> Iterator[_Node]:
    yield goal
    while came[goal] != goal:
        goal = came[goal]
        yield goal
