"""Switches in a plain row: nothing is landed between them, so that their order matters to nobody.

They commute for the current always.  For safety they do in the ungrounded lead only: in the lead
that is grounded an earth fault between two of them bypasses those on its one side, and the order
says which.  (That safeties interrupt the ungrounded conductor: IEC 60204-1, 9.4.3, and NFPA 79,
9.1.4, from memory.)
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.compare.wired import Wired
from wirecheck.model.diagram import Terminal


class Placed(NamedTuple):
    """A contact in a row: the terminal that faces the row's first end, and the other one."""

    contact: Element
    near: Terminal
    far: Terminal


class Row(NamedTuple):
    """Contacts in a row, one alone included.

    Attributes:
        contacts: in the order from the first end to the last.
        first, last: the nets of its ends.
        commutes: whether their order matters to nobody.
    """

    contacts: tuple[Placed, ...]
    first: int
    last: int
    commutes: bool


def rows(wired: Wired) -> tuple[Row, ...]:
    """Every row of plain contacts, in the order of the text."""
    plain = {
        end: contact
        for contact in wired.contacts()
        if _is_plain(wired, contact)
        for end in (wired.lead(contact.a), wired.lead(contact.b))
    }
    found: list[Row] = []
    seen: set[Terminal] = set()
    for end, contact in plain.items():
        if end not in seen:
            row = _row(wired, plain, contact)
            seen.update(side for placed in row.contacts for side in (placed.near, placed.far))
            found.append(row)
    return tuple(found)


def _is_plain(wired: Wired, contact: Element) -> bool:
    """Whether a contact is wired at both sides and nothing else of its part hangs on them."""
    if not wired.is_live(contact) or wired.net_of[contact.a] == wired.net_of[contact.b]:
        return False
    beside = [
        other
        for end in (contact.a, contact.b)
        for other in wired.elements_at[wired.lead(end)]
        if other is not contact and wired.is_live(other)
    ]
    return not beside


def _row(wired: Wired, plain: dict[Terminal, Element], start: Element) -> Row:
    a, b = wired.lead(start.a), wired.lead(start.b)
    before = list(_onward(wired, plain, a, start))
    after = list(_onward(wired, plain, b, start))
    if after and before and after[-1].contact is before[0].contact:  # a ring of contacts
        before = []
    turned = [Placed(each.contact, each.far, each.near) for each in reversed(before)]
    contacts = (*turned, Placed(start, a, b), *after)
    first, last = wired.net_of[contacts[0].near], wired.net_of[contacts[-1].far]
    return Row(contacts, first, last, not {first, last} & wired.grounded)


def _onward(
    wired: Wired, plain: dict[Terminal, Element], end: Terminal, start: Element
) -> Iterator[Placed]:
    """The contacts that follow behind one terminal, as long as nothing hangs between."""
    while (net := _bare(wired, end)) is not None:
        near = next(each for each in wired.ports_on(net) if each != end)
        contact = plain.get(near)
        if contact is None or contact is start:
            return
        a, b = wired.lead(contact.a), wired.lead(contact.b)
        end = b if near == a else a
        yield Placed(contact, near, end)


def _bare(wired: Wired, end: Terminal) -> int | None:
    """The net of a terminal, if just one other port is on it."""
    net = wired.net_of[end]
    is_bare = len(wired.ports_on(net)) == 2 and net not in wired.touches
    return net if is_bare and not wired.is_open_ended(net) else None
