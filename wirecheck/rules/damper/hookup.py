"""Which damper belongs to which control, and where each of its four leads lands."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from typing import Final, NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Part, Terminal
from wirecheck.rules.call_chain.contacts import makes_call, switch
from wirecheck.rules.facts import Facts

#: The same four words on the control and on the damper.
HOT: Final = "damper-hot"
CALL: Final = "damper-call"
PROVED: Final = "damper-proved"
COMMON: Final = "damper-common"
ROLES: Final = (HOT, CALL, PROVED, COMMON)


class Hookup(NamedTuple):
    """A control and the damper drawn for it.

    Attributes:
        control: the ignition control.
        damper: the vent damper.
        landed: by the damper's terminal (its role), the roles of the control's terminals that
            its lead reaches; several where the control's own terminals are one conductor, none
            where no lead reaches any.
        plugged: the shorting plug is fitted.
        in_call_lead: the damper stands in the call lead ahead of the control, not in its socket.
    """

    control: Part
    damper: Part
    landed: dict[str, frozenset[str]]
    plugged: bool
    in_call_lead: bool

    def at_damper(self, role: str) -> Terminal:
        """The damper's terminal of a role."""
        return self.damper.with_role(role)[0]

    def at_control(self, role: str) -> Terminal:
        """The control's terminal of a role."""
        return self.control.with_role(role)[0]

    @property
    def missing(self) -> tuple[str, ...]:
        """Roles whose lead reaches nothing of the control."""
        return tuple(role for role in ROLES if not self.landed[role])

    @property
    def wrong(self) -> tuple[str, ...]:
        """Roles whose lead reaches other terminals of the control than its own."""
        return tuple(r for r in ROLES if self.landed[r] and r not in self.landed[r])

    @property
    def shut_by_spring(self) -> bool:
        """Whether the damper does without the constant 24 V: a spring shuts it."""
        return self.damper.values.get("action") == "spring-shut"


def hookups(facts: Facts) -> tuple[Hookup, ...]:
    """Every control with its damper, as wired.  Use it as ``facts.once(hookups)``."""
    return tuple(_hookups(facts.as_wired))


def _hookups(facts: Facts) -> Iterator[Hookup]:
    controls = list(facts.of("ignition-control"))
    dampers = list(facts.of("vent-damper"))
    for damper in dampers:
        found = [_hookup(facts, control, damper) for control in controls]
        reached = [hookup for hookup in found if _belongs(hookup)]
        if reached:
            yield reached[0]
        elif len(controls) == 1 and len(dampers) == 1:
            yield found[0]


def _hookup(facts: Facts, control: Part, damper: Part) -> Hookup:
    landed = {role: _reached(facts, damper.with_role(role)[0], control, damper) for role in ROLES}
    plugged = str(control.values.get("damper-plug")) == "fitted"
    ahead = plugged and CALL not in landed[CALL] and CALL in landed[PROVED]
    return Hookup(control, damper, landed, plugged, ahead)


def _belongs(hookup: Hookup) -> bool:
    """Whether a lead of the damper reaches what only this control has: its call or proved."""
    return any({CALL, PROVED} & roles for roles in hookup.landed.values())


def _reached(facts: Facts, start: Terminal, control: Part, damper: Part) -> frozenset[str]:
    """Roles of the control's terminals on a conductor, or behind safeties and fuses in its lead."""
    reached = {facts.sides.conductor(start)}
    waiting = deque([start])
    while waiting:
        here = waiting.popleft()
        found = _roles_on(facts, here, control)
        if found:
            return found
        for contact in _let_through(facts, here, damper):
            for side in (contact.a, contact.b):
                if facts.sides.conductor(side) not in reached:
                    reached.add(facts.sides.conductor(side))
                    waiting.append(side)
    return frozenset()


def _roles_on(facts: Facts, terminal: Terminal, control: Part) -> frozenset[str]:
    """Which damper terminals of the control a conductor is, counting its supply's two sides."""
    sides = facts.sides
    found = {role for role in ROLES if sides.same(terminal, control.with_role(role)[0])}
    if sides.hot_on(terminal):
        found.add(HOT)
    if sides.common_on(terminal):
        found.add(COMMON)
    return frozenset(found)


def _let_through(facts: Facts, terminal: Terminal, damper: Part) -> Iterator[Element]:
    """Contacts on a conductor that are closed unless something is wrong."""
    graph, net = facts.conduction.contacts, facts.net(terminal)
    if net in graph:
        for _a, _b, contact in graph.edges(net, data="element"):
            if _passes(contact) and contact.part is not damper:
                yield contact


def is_constant(facts: Facts, terminal: Terminal) -> bool:
    """Whether a terminal for constant 24 V has them with no call; in a sketch it is taken to."""
    hots = {supply.hot for supply in facts.supplies}
    if not hots:
        return True
    return facts.sides.search((terminal,), hots.__contains__, through=_passes) is not None


def _passes(contact: Element) -> bool:
    """Whether a contact is closed unless something is wrong."""
    return switch(contact).moved_by != "control" and not makes_call(contact)
