"""Pilot systems on which the pilot and the main operator are fed as one."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.model.diagram import Part, Terminal
from wirecheck.rules.facts import Facts
from wirecheck.rules.valve.arrangement import Arrangement, Verdict, arrangements, judged
from wirecheck.rules.valve.feeds import Feeds, Source


class Tie(NamedTuple):
    """Two terminals that are one conductor and should not be.

    Attributes:
        pilot: the control's pilot output, or the pilot operator where only the operators are tied.
        main: likewise.
        output: the control's pilot output.
        fed: whether the pilot output feeds them.
        concerned: every terminal whose landing this explains.
        adapter: the adapter that ties them, if one does.
        lead: else the lead that does: a jumper, or the one typed last; None if contacts do.
    """

    pilot: Terminal
    main: Terminal
    output: Terminal
    fed: bool
    concerned: tuple[Terminal, ...]
    adapter: Part | None
    lead: int | None


def ties(facts: Facts) -> Iterator[Tie]:
    """Ties between the outputs of a control, then those between the operators of a valve alone."""
    wired = facts.as_wired
    feeds = wired.once(Feeds)
    valves: dict[str, Arrangement] = {}
    for found in wired.once(arrangements):
        valves.setdefault(found.control.key, found)
    tied = set()
    for control in wired.of("ignition-control"):
        outputs = feeds.of_control(control)
        if Source.BOTH in outputs or feeds.is_common(outputs[Source.PILOT], control):
            continue
        ends = outputs[Source.PILOT], outputs[Source.MAIN]
        if feeds.may_join(*ends):
            tied.add(control.key)
            yield _tie(wired, ends, ends, valves.get(control.key), fed=True)
    for found in judged(facts, Verdict.TIED):
        if found.control.key not in tied:
            first, second = found.operators
            outputs = feeds.of_control(found.control)
            pair = outputs[Source.PILOT], outputs[Source.MAIN]
            fed = Source.PILOT in first.sources | found.common.sources
            yield _tie(wired, (first.terminal, second.terminal), pair, found, fed=fed)


def _tie(
    wired: Facts,
    ends: tuple[Terminal, Terminal],
    outputs: tuple[Terminal, Terminal],
    valve: Arrangement | None,
    *,
    fed: bool,
) -> Tie:
    at_valve = [fed.terminal for fed in valve.terminals] if valve else []
    adapters = (
        adapter
        for adapter in wired.of("valve-adapter")
        if wired.joined(wired.terminal(adapter, "adapter-feed"), ends[1])
    )
    adapter = next(adapters, None)
    by_lead = adapter is None and wired.joined(*ends)
    return Tie(
        *ends,
        outputs[0],
        fed,
        concerned=(*ends, *outputs, *at_valve),
        adapter=adapter,
        lead=wired.sides.cause(wired.nets.path(*ends)) if by_lead else None,
    )
