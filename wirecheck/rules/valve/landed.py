"""Which lead lands where on a valve, in words, and the moves that put it right."""

from __future__ import annotations

from itertools import pairwise

from wirecheck.language.edit import move_end
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


def put_right(facts: Facts, found: Arrangement) -> list[Edit]:
    """Move each lead's end at the valve to the terminal it is for, where that is plain."""
    at_control = {fed.wanted: fed.terminal for fed in found.terminals}
    edits: list[Edit] = []
    for fed in found.terminals:
        if fed.right:
            continue
        leads = facts.nets.leads_at(fed.terminal)
        right = at_control.get(facts.other_end(leads[0], fed.terminal)) if leads else None
        if len(leads) != 1 or right is None:
            return []
        edit = move_end(facts.diagram, leads[0], fed.terminal, right)
        edits += [edit] if edit else []
    return edits if _apart(edits) else []


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
