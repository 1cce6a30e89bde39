"""How each gas valve hangs on its ignition control: one reading, shared by the rules.

A valve gets one verdict, so that leads landed wrong give one finding however many terminals they
leave empty.
"""

from __future__ import annotations

from collections.abc import Iterator
from enum import Enum, auto
from typing import NamedTuple

from wirecheck.model.diagram import Part, Terminal
from wirecheck.rules.facts import Facts
from wirecheck.rules.valve.feeds import Feeds, Source

#: The operators of a valve, the pilot operator first.
OPERATOR_ROLES = ("pilot-operator", "main-operator", "operator")
_WANTED = {"pilot-operator": Source.PILOT, "main-operator": Source.MAIN}


class Verdict(Enum):
    """What is wrong with the way a valve is connected."""

    TWO_CONTROLS = auto()
    PAST_CONTROL = auto()
    TIED = auto()
    NOT_TIED = auto()
    OFF = auto()
    OUT_OF_ORDER = auto()


class Fed(NamedTuple):
    """A terminal of a valve, what feeds it and what should.

    ``wanted`` is the terminal of the control that belongs on it; of a two-wire valve with nothing
    on its operator that is the output for the main operator.
    """

    terminal: Terminal
    sources: frozenset[Source]
    want: Source
    wanted: Terminal

    @property
    def right(self) -> bool:
        """Whether what should feed it does."""
        return self.want in self.sources


class Arrangement(NamedTuple):
    """A valve and its control.

    Attributes:
        control: the first that drives it, or else the one it belongs to by the leads.
        valve: the valve.
        operators: its operators, the pilot operator first.
        common: the common of its operators.
        controls: every control with an output on one of its terminals.
    """

    control: Part
    valve: Part
    operators: tuple[Fed, ...]
    common: Fed
    controls: tuple[Part, ...]

    @property
    def terminals(self) -> tuple[Fed, ...]:
        """The operators and the common."""
        return (*self.operators, self.common)

    @property
    def direct(self) -> bool:
        """Whether one output drives every operator."""
        return all(fed.want is Source.BOTH for fed in self.operators)

    @property
    def redundant(self) -> bool:
        """Whether main gas needs every operator, not the main one alone."""
        return self.valve.values.get("seats", "redundant") == "redundant"


def arrangements(facts: Facts) -> tuple[Arrangement, ...]:
    """The valves that an ignition control is to drive; use it as ``facts.once(arrangements)``."""
    feeds = facts.once(Feeds)
    owners: dict[str, Part] = {}
    for control in facts.of("ignition-control"):
        valve = facts.companion(control, "gas-valve")
        if valve is not None:
            owners.setdefault(valve.key, control)
    found = (_arrangement(facts, feeds, valve, owners) for valve in facts.of("gas-valve"))
    return tuple(arrangement for arrangement in found if arrangement is not None)


def judged(facts: Facts, verdict: Verdict) -> Iterator[Arrangement]:
    """The valves with one verdict, judged by where the leads land, broken or not."""
    wired = facts.as_wired
    verdicts = wired.once(_verdicts)
    return (arrangement for arrangement, found in verdicts if found is verdict)


def _verdicts(facts: Facts) -> tuple[tuple[Arrangement, Verdict | None], ...]:
    return tuple((found, _verdict(facts, found)) for found in facts.once(arrangements))


# ---- reading -----------------------------------------------------------------------------------


def _arrangement(
    facts: Facts, feeds: Feeds, valve: Part, owners: dict[str, Part]
) -> Arrangement | None:
    if valve.with_role("generator-hot"):
        return None  # it has a flame supervision of its own
    operators = valve.with_role(*OPERATOR_ROLES)
    (common,) = valve.with_role("operator-common")
    controls = {
        output.control.key: output.control
        for end in (*operators, common)
        for output in feeds.reaching(end)
    }
    control = next(iter(controls.values()), owners.get(valve.key))
    if control is None:
        return None
    reader = _Reader(facts, feeds, control)
    return Arrangement(
        control=control,
        valve=valve,
        operators=tuple(reader.operator(end, common) for end in operators),
        common=reader.common(common),
        controls=tuple(controls.values()),
    )


class _Reader:
    """Reads the terminals of one valve as seen from its control."""

    def __init__(self, facts: Facts, feeds: Feeds, control: Part) -> None:
        self._facts = facts
        self._feeds = feeds
        self._control = control
        self._outputs = feeds.of_control(control)

    def operator(self, end: Terminal, common: Terminal) -> Fed:
        sources = self._sources(end)
        want = _WANTED.get(self._facts.role(end))
        if Source.BOTH in self._outputs:
            want = Source.BOTH
        elif want is None:
            either = sources | self._sources(common)
            want = Source.PILOT if Source.PILOT in either else Source.MAIN
        return self._fed(end, sources, want, self._outputs[want])

    def common(self, end: Terminal) -> Fed:
        (wanted,) = self._control.with_role("valve-common")
        return self._fed(end, self._sources(end), Source.COMMON, wanted)

    def _fed(self, end: Terminal, sources: set[Source], want: Source, wanted: Terminal) -> Fed:
        traced = self._facts.is_traced(end) and self._facts.is_traced(wanted)
        if not sources and not traced:
            sources = {want}
        return Fed(end, frozenset(sources), want, wanted)

    def _sources(self, end: Terminal) -> set[Source]:
        sources = {output.source for output in self._feeds.reaching(end)}
        if self._feeds.is_common(end, self._control):
            sources.add(Source.COMMON)
        elif self._feeds.is_live(end):
            sources.add(Source.HOT)
        return sources


# ---- judging -----------------------------------------------------------------------------------


def _verdict(facts: Facts, found: Arrangement) -> Verdict | None:
    feeds = facts.once(Feeds)
    if len(found.controls) > 1:
        return Verdict.TWO_CONTROLS
    if any(_passes_control(operator, found.common) for operator in found.operators):
        return Verdict.PAST_CONTROL
    if not found.direct and _tied(feeds, found):
        return Verdict.TIED
    return _of_landing(found)


def _passes_control(operator: Fed, common: Fed) -> bool:
    """Whether an operator is fed while the control is off, its other side left aside if empty."""
    if Source.HOT in operator.sources:
        return not common.sources & {Source.PILOT, Source.MAIN, Source.BOTH}
    return Source.HOT in common.sources and Source.COMMON in operator.sources


def _tied(feeds: Feeds, found: Arrangement) -> bool:
    """Whether pilot and main operator, or the outputs for them, are one conductor."""
    outputs = feeds.of_control(found.control)
    if feeds.is_common(outputs[Source.PILOT], found.control):
        return False  # that is a short, whatever the valve does
    if feeds.may_join(outputs[Source.PILOT], outputs[Source.MAIN]):
        return True
    if len(found.operators) != 2:
        return False
    pilot, main = found.operators
    driven = (pilot.sources | found.common.sources) & {Source.PILOT, Source.MAIN}
    return bool(driven) and feeds.may_join(pilot.terminal, main.terminal)


def _of_landing(found: Arrangement) -> Verdict | None:
    operators, common = found.operators, found.common
    if all(fed.right for fed in found.terminals) or _works_all_the_same(found):
        return None
    if all(fed.right or not fed.sources for fed in found.terminals):
        some = any(fed.right for fed in operators)
        return Verdict.NOT_TIED if found.direct and common.right and some else Verdict.OFF
    return Verdict.OUT_OF_ORDER


def _works_all_the_same(found: Arrangement) -> bool:
    """A coil does not care which way round; a single seat opens by its main operator alone."""
    turned_round = all(Source.COMMON in fed.sources for fed in found.operators)
    if turned_round and all(fed.want in found.common.sources for fed in found.operators):
        return True
    single_seat = found.direct and not found.redundant
    return single_seat and found.operators[-1].right and found.common.right
