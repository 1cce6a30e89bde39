"""The same diagram typed by somebody else: random rewrites that change not one connection.

Leads in another order and from their other ends, over wire-nuts and strips, parts of other names
and in another order, other labels printed on them, switches of a row in another order or turned
round.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping

from tests.benchmarks.mutants import Original
from tests.contract.rewriting import renamed
from wirecheck import load_text
from wirecheck.compare.rows import Row, rows
from wirecheck.compare.wired import Wired
from wirecheck.language.edit import spell
from wirecheck.language.spelling import spell_name
from wirecheck.model.diagram import Diagram, Lead, LeadRole, Terminal

#: Families whose contacts change places in a row: each only lets the current through.
_IN_SERIES = {"safety-switch", "hand-switch", "overcurrent", "operating-control", "thermostat"}


def rewrites(original: Original, count: int, seed: int = 0) -> Iterator[str]:
    """So many texts of the same diagram, the same each time."""
    chance = random.Random(seed)  # noqa: S311
    head, diagram = original.head, original.diagram
    lines = Wired(diagram)
    own_rows = [row for row in rows(lines) if row.commutes]
    for _number in range(count):
        text = _shuffled_parts(head, chance)
        labels = _labels(diagram, chance)
        shown = load_text(text + labels, "labelled").diagram
        places = _places(own_rows, chance)
        leads = [_elsewhere(lead, places) for lead in diagram.leads]
        chance.shuffle(leads)
        body = "".join(
            _typed(shown, lead, at, chance, may_be_spliced=_may_be_spliced(diagram, lead))
            for at, lead in enumerate(leads)
        )
        text = f"{text}{labels}{body}"
        yield renamed(text, shown) if chance.random() < 0.5 else text


def _shuffled_parts(head: str, chance: random.Random) -> str:
    """The parts in another order; they stand one a line."""
    lines = head.splitlines()
    parts = [number for number, line in enumerate(lines) if line.startswith("part ")]
    moved = parts.copy()
    chance.shuffle(moved)
    shuffled = lines.copy()
    for here, there in zip(parts, moved, strict=True):
        shuffled[here] = lines[there]
    return "\n".join(shuffled) + "\n"


def _labels(diagram: Diagram, chance: random.Random) -> str:
    """Labels on some of the parts that have none."""
    lines = []
    for part in diagram.parts.values():
        names = [n for n, spec in part.structure.terminals.items() if not spec.inner]
        if not part.labels and part.kind.numbered is None and chance.random() < 0.3:
            words = [f'"{name}" as "X{number}"' for number, name in enumerate(names)]
            lines.append(f"labels {spell_name(part.name)}: {', '.join(words)}\n")
    return "".join(lines)


def _places(own_rows: list[Row], chance: random.Random) -> Mapping[Terminal, Terminal]:
    """Where the leads of switches in a row land instead: switches change places, or are turned."""
    moved: dict[Terminal, Terminal] = {}
    for row in own_rows:
        free = [each for each in row.contacts if each.contact.part.family in _IN_SERIES]
        order = free.copy()
        chance.shuffle(order)
        for here, there in zip(free, order, strict=True):
            near, far = there.near, there.far
            if chance.random() < 0.5:
                near, far = far, near
            moved |= {here.near: near, here.far: far}
    return moved


def _elsewhere(lead: Lead, places: Mapping[Terminal, Terminal]) -> Lead:
    return lead._replace(a=places.get(lead.a, lead.a), b=places.get(lead.b, lead.b))


def _typed(
    diagram: Diagram, lead: Lead, at: int, chance: random.Random, *, may_be_spliced: bool
) -> str:
    """A lead from either end, straight or over a wire-nut or a strip."""
    ends = [spell(diagram, lead.a), spell(diagram, lead.b)]
    if chance.random() < 0.5:
        ends.reverse()
    word = "jumper" if lead.role is LeadRole.JUMPER else "wire"
    given = dict.fromkeys(
        attribute.span.text
        for name, attribute in lead.given.items()
        if not (name == "length" and lead.shared_length)
    )
    attributes = f": {', '.join(given)}" if given else ""
    ahead = ""
    if chance.random() < 0.15 and may_be_spliced:
        if chance.random() < 0.5:
            ahead = f"splice joint-{at}: wire-nut\n"
            ends.insert(1, f"joint-{at}")
        else:
            ahead = f"part strip-{at} is terminal-strip: terminals 2\n"
            ends.insert(1, f"strip-{at}.1")
    return f"{ahead}{word} {' to '.join(ends)}{attributes}\n"


def _may_be_spliced(diagram: Diagram, lead: Lead) -> bool:
    """Not where it would be a mistake: an ignition lead, a flame lead, a ground."""
    specs = [diagram.spec(end) for end in (lead.a, lead.b) if end.part in diagram.parts]
    return "in" not in lead.given and all(
        spec is not None
        and spec.circuit in ("24V", "any")
        and spec.role not in ("burner-ground", "burner-metal")
        for spec in specs
    )
