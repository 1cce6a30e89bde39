"""What the ladder consists of: rails with rungs, the ignition section, and what is left.

A *section* is a pair of rails and everything on a way from the one to the other. A *link* is what
lies on no such way, drawn between named nets. Every branch of the diagram is in exactly one
section, one ignition section or one link, or is named among the spare contacts.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from typing import NamedTuple

import networkx as nx

from wirecheck.circuit.nets import Nets
from wirecheck.drawing.ladder.branches import Branch, branches
from wirecheck.drawing.ladder.series_parallel import Leaf, Tree, split
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.kind import SourceSpec, TerminalSpec
from wirecheck.rules.facts import Facts


class Section(NamedTuple):
    """Two rails, the sources that feed them, and the rungs between them (none: no tree)."""

    left: int
    right: int
    sources: tuple[Branch, ...]
    tree: Tree | None


class Ignition(NamedTuple):
    """The high voltage and the flame signal of one control and its burner.

    The left rail is the control's burner-ground terminal, the right one the metal of the burner.
    Where a lead joins them they are one net, which is here split in two so that the way round can
    be seen: the number of the right one is then `-1 - net`, see `real_net`.
    """

    control: Part
    burner: Part
    ground: Terminal
    metal: Terminal
    left: int
    right: int
    tree: Tree | None


class Link(NamedTuple):
    """What lies on no way between two rails, drawn between two named nets."""

    left: int
    right: int
    tree: Tree


@dataclass(frozen=True)
class Plan:
    """The whole ladder.

    Attributes:
        sections: line voltage first, then each further source in the order of the text.
        ignition: one for each control that has a burner.
        links: what fits in no rung; branches bypassed, with both ends on one net, come last.
        spare: contacts and loads with an end that need not be wired and is not; named, not drawn.
    """

    sections: tuple[Section, ...]
    ignition: tuple[Ignition, ...]
    links: tuple[Link, ...]
    spare: tuple[Branch, ...]


def real_net(number: int) -> int:
    """Return the net in the diagram of a net in the plan."""
    return number if number >= 0 else -1 - number


def plan(nets: Nets) -> Plan:
    """Sort every branch of a diagram into its place."""
    everything = branches(nets)
    sections, rest = _sections([b for b in everything if not b.is_signal])
    ignition, signal_rest = _ignition(nets, [b for b in everything if b.is_signal])
    rest = [branch for branch in [*rest, *signal_rest] if branch.type != "bond"]
    spare = tuple(branch for branch in rest if _is_spare(nets, branch, everything))
    rest = [branch for branch in rest if branch not in spare]
    closed = {net for section in sections for net in (section.left, section.right)}
    closed |= {net for one in ignition for net in (one.left, one.right)}
    through = [b for b in rest if b.net_a != b.net_b]
    bypassed = (Link(b.net_a, b.net_b, Leaf(b)) for b in rest if b.net_a == b.net_b)
    rights = {section.right for section in sections} | {one.right for one in ignition}
    links = (*_links(nets, through, closed, rights), *bypassed)
    return Plan(tuple(sections), tuple(ignition), links, spare)


def _is_spare(nets: Nets, branch: Branch, everything: Sequence[Branch]) -> bool:
    """Say whether one end of a branch is on no lead, and no terminal there need be."""
    return any(_is_idle_net(nets, net, everything) for net in (branch.net_a, branch.net_b))


def _is_idle_net(nets: Nets, number: int, everything: Sequence[Branch]) -> bool:
    """Say whether nothing is wired to a net; one inside a device goes by the nets beyond it."""
    if not all(map(_is_inner, _specs(nets, number))):
        return _is_unwired(nets, number)
    beside = [b for b in everything if number in (b.net_a, b.net_b)]
    beyond = {net for b in beside for net in (b.net_a, b.net_b)} - {number}
    return sum(not _is_unwired(nets, net) for net in beyond) < _ENDS


def _is_unwired(nets: Nets, number: int) -> bool:
    needed = any(spec is not None and spec.must for spec in _specs(nets, number))
    return not needed and not any(map(nets.is_wired, nets.members[real_net(number)]))


def _is_inner(spec: TerminalSpec | None) -> bool:
    return spec is not None and spec.inner


def _specs(nets: Nets, number: int) -> list[TerminalSpec | None]:
    return [nets.diagram.spec(terminal) for terminal in nets.members[real_net(number)]]


_ENDS = 2
"""A way through a device has two."""


# ---- rails and rungs -------------------------------------------------------------------------


def _sections(power: list[Branch]) -> tuple[list[Section], list[Branch]]:
    """Return the sections, and the branches that are on no way between two rails.

    No rung leads through the rail of another source. Only the line's rungs may, as a line that is
    joined to the control circuit by mistake is still fed from its own end.
    """
    fed = _rails([b for b in power if b.type == "source"])
    every = {net for rails in fed for net in rails}
    line = {net for rails, sources in fed.items() if _is_line(sources) for net in rails}
    sections = []
    rest = [b for b in power if b.type != "source"]
    for (left, right), sources in fed.items():
        if left == right:
            rest += sources
            continue
        tree, left_over = split(rest, left, right, line if _is_line(sources) else every)
        rest = list(left_over)
        sections.append(Section(left, right, tuple(sources), tree))
    return [one for one in sections if not _is_idle(one, sections)], rest


def _is_line(sources: list[Branch]) -> bool:
    return any(source.part.family == "mains" for source in sources)


def _is_idle(section: Section, sections: list[Section]) -> bool:
    """Say whether a section has no rungs while another one of the same supply has some."""
    supplies = {source.part.key for source in section.sources}
    return section.tree is None and any(
        other.tree is not None and supplies & {source.part.key for source in other.sources}
        for other in sections
    )


def _rails(sources: list[Branch]) -> dict[tuple[int, int], list[Branch]]:
    """Return the sources by the two nets they feed; two hot legs of one supply are rails too."""
    line_first = sorted(sources, key=lambda b: b.part.family != "mains")
    fed: dict[tuple[int, int], list[Branch]] = {}
    for branch in line_first:
        pair = (branch.net_a, branch.net_b)
        back = pair[::-1]
        fed.setdefault(back if back in fed else pair, []).append(branch)
    for leg, other in combinations(line_first, 2):
        if leg.part is other.part and leg.part.family == "mains":
            both = leg._replace(b=other.a, net_b=other.net_a, spec=_between_legs(leg))
            fed.setdefault((both.net_a, both.net_b), [both])
    return dict(sorted(fed.items(), key=lambda rails: not _is_line(rails[1])))


def _between_legs(leg: Branch) -> SourceSpec | None:
    """Return a supply between two hot legs: the whole of its volts."""
    spec = leg.spec
    return replace(spec, share=1.0) if isinstance(spec, SourceSpec) else None


# ---- high voltage and flame signal -----------------------------------------------------------


def _ignition(nets: Nets, signal: list[Branch]) -> tuple[list[Ignition], list[Branch]]:
    """Return a section for each control with a burner, and the signal branches left over."""
    facts = Facts(nets.diagram, nets)
    found: list[Ignition] = []
    rest = signal
    for control in facts.of("ignition-control"):
        burner = facts.companion(control, "burner")
        ground = facts.terminal(control, "burner-ground")
        metal = facts.terminal(burner, "burner-metal") if burner else None
        if burner is None or ground is None or metal is None:
            continue
        left, right = nets.net(ground), nets.net(metal)
        if left == right:
            right = -1 - right
        ours = [_split_ground(b, burner, right) for b in rest if b.part in (control, burner)]
        tree, left_over = split(ours, left, right)
        others = [b for b in rest if b.part not in (control, burner)]
        rest = sorted([*others, *left_over], key=lambda b: b.number)
        found.append(Ignition(control, burner, ground, metal, left, right, tree))
    return found, rest


def _split_ground(branch: Branch, burner: Part, metal: int) -> Branch:
    """Return the branch with the burner's end of a net that was split in two."""
    if metal >= 0 or branch.part is not burner:
        return branch
    swap = {real_net(metal): metal}
    return branch._replace(
        net_a=swap.get(branch.net_a, branch.net_a), net_b=swap.get(branch.net_b, branch.net_b)
    )


# ---- what fits in no rung --------------------------------------------------------------------


def _links(nets: Nets, rest: list[Branch], closed: set[int], rights: set[int]) -> Iterator[Link]:
    """Yield what is left as networks between two nets each, as few and as whole as can be."""
    while rest:
        left_over: list[Branch] = []
        for group in _groups(rest, closed):
            left, right = _ends(nets, group, closed)
            if left in rights and right not in rights:
                left, right = right, left
            tree, others = split(group, left, right, closed)
            if tree is None:
                yield from (Link(b.net_a, b.net_b, Leaf(b)) for b in others)
            else:
                yield Link(left, right, tree)
                left_over += others
        rest = left_over


def _groups(rest: list[Branch], closed: set[int]) -> list[list[Branch]]:
    """Return the branches that hang together otherwise than through a rail."""
    graph: nx.Graph[tuple[str, int]] = nx.Graph()
    for branch in rest:
        graph.add_node(("branch", branch.number))
        for net in {branch.net_a, branch.net_b} - closed:
            graph.add_edge(("branch", branch.number), ("net", net))
    by_number = {branch.number: branch for branch in rest}
    return [
        [by_number[number] for number in sorted(n for kind, n in together if kind == "branch")]
        for together in nx.connected_components(graph)
    ]


def _ends(nets: Nets, group: list[Branch], closed: set[int]) -> tuple[int, int]:
    """Choose where a network on no way between rails begins and ends.

    It begins where the call would come in if a control is in it, and ends on a rail if it touches
    one; otherwise it runs from its first net to the one farthest from there.
    """
    rails = list(dict.fromkeys(n for b in group for n in (b.net_a, b.net_b) if n in closed))
    inner = [n for b in group for n in (b.net_a, b.net_b) if n not in closed]
    if len(rails) > 1:
        return rails[0], rails[1]
    called = [net for net in inner if _takes_call(nets, net)]
    if called and rails:
        return called[0], rails[0]
    start = (rails or called or inner)[0]
    return start, _farthest(group, start)


def _takes_call(nets: Nets, net: int) -> bool:
    specs = _specs(nets, net)
    return any(spec is not None and spec.role in {"call", "damper-proved"} for spec in specs)


def _farthest(group: list[Branch], start: int) -> int:
    graph: nx.Graph[int] = nx.Graph((b.net_a, b.net_b) for b in group)
    reached: dict[int, int] = nx.single_source_shortest_path_length(graph, start)
    return max(reached, key=lambda net: reached[net])
