"""What hangs together with a terminal that no supply reaches: where a lead is missing or astray."""

from __future__ import annotations

from typing import Final, NamedTuple

from wirecheck.model.diagram import Terminal
from wirecheck.rules.facts import Facts

#: So many conductors are followed.
_FAR: Final = 12


class Branch(NamedTuple):
    """Leads of a branch, and the sides of the contacts in it."""

    leads: tuple[int, ...]
    terminals: tuple[Terminal, ...]


def dead_branch(facts: Facts, end: Terminal) -> Branch:
    """Follow leads and contacts from a terminal, nearest first; earth is no branch of anything."""
    graph, members = facts.conduction.contacts, facts.nets.members
    nets, waiting = [facts.net(end)], [facts.net(end)]
    terminals = [end]
    while waiting and len(nets) < _FAR:
        here = waiting.pop(0)
        for _here, there, contact in graph.edges(here, data="element") if here in graph else ():
            terminals += [contact.a, contact.b]
            if there not in nets and there != facts.earth:
                nets.append(there)
                waiting.append(there)
    small = (net for net in nets if net != facts.earth and len(members[net]) < _FAR)
    leads = (n for net in small for each in members[net] for n in facts.nets.leads_at(each))
    own = facts.nets.leads_at(end)
    specs = ((each, facts.diagram.spec(each)) for each in terminals)
    outer = (each for each, spec in specs if spec is not None and not spec.inner)
    return Branch(tuple(dict.fromkeys((*own, *leads))), tuple(dict.fromkeys(outer)))
