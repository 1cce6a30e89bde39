"""Ways of a call that lead past safeties."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import (
    ContactKey,
    in_text_order,
    is_safety,
    key_of_contact,
    makes_call,
    switch,
)
from wirecheck.rules.call_chain.safeties import Safeties, Standing
from wirecheck.rules.facts import Facts


class Bypass(NamedTuple):
    """Safeties of one burner that one way leads past.

    Attributes:
        chain: the burner's.
        safeties: those it leads past.
        path: the contacts on it that are not on every way.
        one_call: it is a call of its own beside the one that the safeties stand in.
        inverted: the contact of a relay that closes when the safeties open its coil circuit.
        mutual: the safeties lead past each other, side by side.
    """

    chain: Chain
    safeties: list[Element]
    path: list[Element]
    one_call: bool
    inverted: Element | None
    mutual: bool = False


def bypasses(facts: Facts) -> tuple[Bypass, ...]:
    """Every way past safeties, burner by burner."""
    by_chain: dict[int, tuple[Chain, list[Element]]] = {}
    for safety in facts.once(Safeties).standing(Standing.PAST):
        if safety.chain is not None:
            by_chain.setdefault(id(safety.chain), (safety.chain, []))[1].append(safety.contact)
    return tuple(
        bypass
        for chain, past in by_chain.values()
        for bypass in _merged(list(_of_chain(chain, past)))
    )


def _of_chain(chain: Chain, past: list[Element]) -> Iterator[Bypass]:
    """Group the safeties that one way leads past."""
    every = {key_of_contact(safety) for safety in past}
    together = chain.runs(every)
    groups: dict[tuple[ContactKey, ...], tuple[list[Element], list[Element]]] = {}
    for safety in past:
        way = chain.path(every if together else {key_of_contact(safety)})
        groups.setdefault(tuple(map(key_of_contact, way)), ([], way))[0].append(safety)
    for found, way in groups.values():
        safeties = found
        path = [contact for contact in way if not chain.is_stopped_by(contact)]
        if any(contact.part.family == "vent-damper" for contact in path):
            continue  # a damper's leads in another order: told of the damper
        inverted, one_call = _inverted(chain, safeties, way), _is_one_call(chain, path)
        if one_call and inverted is None:
            safeties = [safety for safety in safeties if not _is_of_one_zone(chain, safety)]
        if safeties:
            yield Bypass(chain, safeties, path, one_call, inverted)


def _merged(found: list[Bypass]) -> Iterator[Bypass]:
    """Bypasses of one chain; two that lead past each other are one."""
    while found:
        first = found.pop(0)
        partner = next((other for other in found if _are_mutual(first, other)), None)
        if partner is None:
            yield first
        else:
            found.remove(partner)
            yield first._replace(
                safeties=in_text_order([*first.safeties, *partner.safeties]), mutual=True
            )


def _are_mutual(one: Bypass, other: Bypass) -> bool:
    def keys(contacts: list[Element]) -> set[ContactKey]:
        return set(map(key_of_contact, contacts))

    return keys(one.path) == keys(other.safeties) and keys(other.path) == keys(one.safeties)


def _is_of_one_zone(chain: Chain, safety: Element) -> bool:
    """Whether it guards one zone (a floor limit) while another stops the burner when it is hot."""
    return (
        switch(safety).moved_by == "temperature"
        and not chain.is_direct(safety)
        and any(
            is_safety(other)
            and switch(other).moved_by == "temperature"
            and chain.is_stopped_by(other)
            for other in chain.contacts.values()
        )
    )


def _is_one_call(chain: Chain, path: list[Element]) -> bool:
    """Whether the way past the safeties is a call, and so is the way through them."""
    beside = [
        contact
        for contact in chain.contacts.values()
        if contact not in path and not chain.is_stopped_by(contact)
    ]
    return any(map(makes_call, path)) and any(map(makes_call, beside))


def _inverted(chain: Chain, safeties: list[Element], way: list[Element]) -> Element | None:
    """The resting contact on the way whose coil the safeties let go."""
    keys = set(map(key_of_contact, safeties))
    for contact in way:
        if switch(contact).normal == "closed" and keys & chain.ahead_of_coil(contact):
            return contact
    return None
