"""Which lead lands where on a valve, in words, and the moves that put it right."""

from __future__ import annotations

from itertools import pairwise

from wirecheck.language.edit import move_end
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Edit
from wirecheck.model.nearest import both
from wirecheck.rules.facts import Facts
from wirecheck.rules.valve.arrangement import Arrangement, Fed
from wirecheck.rules.valve.feeds import Feeds, Source


def what_is_where(facts: Facts, found: Arrangement) -> str:
    """The leads landed wrong: ``box.PV is on valve.MV and box.MV on valve.PV``."""
    sources = _sources(facts, found)
    wrong = [fed for fed in found.terminals if not fed.right and fed.sources]
    verbs = ["is on", *["on"] * len(wrong)]
    said = (
        f"{sources[_first(fed)]} {verb} {facts.show(fed.terminal)}"
        for verb, fed in zip(verbs, wrong, strict=False)
    )
    return both(list(said))


def what_to_do(facts: Facts, found: Arrangement) -> str:
    """The moves in words: ``land box.MV on valve.MV and box.VC on valve.C``.

    A lead from elsewhere than the control comes off first: landed beside it, the right lead would
    join the two, a dead short where the one is hot and the other the common.
    """
    moves, landings = [], []
    for fed in found.terminals:
        if fed.right:
            continue
        end, wanted = facts.show(fed.terminal), facts.show(fed.wanted)
        foreign = _foreign(facts, found, fed)
        far = _far_end_to_move(facts, fed, foreign)
        if far is not None:
            moves.append(f"take the lead of {end} off {facts.show(far)} and land it on {wanted}")
            continue
        ends = both([facts.show(facts.other_end(number, fed.terminal)) for number in foreign])
        if foreign:
            moves.append(f"take what comes from {ends} off {end}")
        landings.append(f"{wanted} on {end}")
    if landings:
        moves.append(f"land {both(landings)}")
    return "; then ".join(moves)


def put_right(facts: Facts, found: Arrangement) -> list[Edit]:
    """The moves as edits, where they are plain; none, if one of them is not."""
    at_control = {fed.wanted: fed.terminal for fed in found.terminals}
    edits: list[Edit] = []
    for fed in found.terminals:
        if fed.right:
            continue
        leads = facts.nets.leads_at(fed.terminal)
        if len(leads) != 1:
            return []
        far = _far_end_to_move(facts, fed, _foreign(facts, found, fed))
        right = at_control.get(facts.other_end(leads[0], fed.terminal))
        if far is not None:
            edit = move_end(facts.diagram, leads[0], far, fed.wanted)
        elif right is not None:
            edit = move_end(facts.diagram, leads[0], fed.terminal, right)
        else:
            return []
        edits += [edit] if edit else []
    return edits if _apart(edits) else []


def _foreign(facts: Facts, found: Arrangement, fed: Fed) -> list[int]:
    """The leads on a terminal of the valve that come straight from no output of the control."""
    outputs = {each.wanted for each in found.terminals}
    at = fed.terminal
    return [n for n in facts.nets.leads_at(at) if facts.other_end(n, at) not in outputs]


def _far_end_to_move(facts: Facts, fed: Fed, foreign: list[int]) -> Terminal | None:
    """Where the lead of a terminal has its wrong end, if the right one has no lead yet."""
    if len(foreign) != 1 or foreign != list(facts.nets.leads_at(fed.terminal)):
        return None
    far = facts.other_end(foreign[0], fed.terminal)
    return None if facts.is_wired(fed.wanted) or facts.part(far) is None else far


def _apart(edits: list[Edit]) -> bool:
    """Whether no two of the edits change the same text."""
    spans = sorted((edit.span.start, edit.span.end) for edit in edits)
    return all(left[1] <= right[0] for left, right in pairwise(spans))


def _sources(facts: Facts, found: Arrangement) -> dict[Source, str]:
    """What to call each source, by the terminal of the control it comes from."""
    outputs = facts.as_wired.once(Feeds).of_control(found.control)
    names = {source: facts.show(terminal) for source, terminal in outputs.items()}
    names[Source.COMMON] = facts.show(found.common.wanted)
    names[Source.HOT] = "the hot side"
    return names


def _first(fed: Fed) -> Source:
    return min(fed.sources, key=list(Source).index)
