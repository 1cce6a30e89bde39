"""Claims and observations: ``expect`` and ``observe`` with every name and amount resolved."""

from __future__ import annotations

import math
from typing import Final, Literal, cast

from wirecheck.language import statements as st
from wirecheck.language.read import Parsed
from wirecheck.language.scope import Scope
from wirecheck.language.statements import Name, Place, Predicate
from wirecheck.language.subjects import read_state
from wirecheck.model.claim import About, Bounds, Claim
from wirecheck.model.diagram import EARTH, Part, Terminal, key_of
from wirecheck.model.nearest import both
from wirecheck.model.quantity import Quantity
from wirecheck.model.text import Span
from wirecheck.parts.amounts import parse_quantity

#: A bare value holds within this share of it (common practice, no source).
SHARE: Final = 0.15
#: What still counts as none: of volts, of amperes, and of amperes claimed in microamps.
NONE_V: Final = 1.0
NONE_A: Final = 0.01
NONE_UA_A: Final = 0.5e-6

_TAKES: Final = {"across": ("volts", "volts"), "through": ("amps", "amperes")}
_ABOUT: Final[dict[str, About]] = {
    "across": "volts", "through": "amps", "continuity": "continuity", "state": "state",
}  # fmt: skip

_Ends = tuple[Terminal, Terminal]


def read_claims(
    scope: Scope, parsed: Parsed, statement: st.ExpectStatement | st.ObserveStatement
) -> list[Claim]:
    """The claims of one statement; what the diagram does not have becomes a problem instead."""
    read = [read_state(scope, parsed, each.place, each.state) for each in statement.conditions]
    when = tuple(state for state in read if state)
    phase = key_of(statement.phase.text) if statement.phase else ""
    if statement.phase and any(each.about == "continuity" for each in statement.predicates):
        message = f"continuity is measured with the power off; take “during {phase}” away"
        scope.problem(message, parsed.at(statement.phase))
        return []
    word: Literal["expect", "observe"] = "observe"
    if isinstance(statement, st.ExpectStatement):
        word = "expect"
    found = [_claim(scope, parsed, each) for each in statement.predicates]
    if len(when) < len(read):
        return []
    behind = f" when {' and '.join(map(str, when))}" if when else ""
    behind += f" during {phase}" if phase else ""
    return [
        claim._replace(word=word, text=f"{claim.text}{behind}", when=when, phase=phase)
        for claim in found
        if claim
    ]


def _claim(scope: Scope, parsed: Parsed, predicate: Predicate) -> Claim | None:
    """One claim, without what governs its list."""
    about = _ABOUT[predicate.about]
    bounds, state, ends = None, None, None
    if about == "state":
        state = read_state(scope, parsed, predicate.places[0], cast(Name, predicate.state))
        text = str(state)
    else:
        bounds = _bounds(scope, parsed, predicate)
        if predicate.about == "through":
            ends = _through(scope, parsed, predicate.places[0])
        else:
            ends = _across(scope, parsed, predicate.places)
        amount = bounds.text if bounds else str(predicate.state and predicate.state.text)
        where = " and ".join(_shown(scope, place) for place in predicate.places)
        between = "through" if about == "amps" else "across"
        text = f"{amount} {between} {where}"
    if state is None and (ends is None or (about != "continuity" and bounds is None)):
        return None
    wants = bool(predicate.state) and cast(Name, predicate.state).text == "continuity"
    span = Span(parsed.source, _start(predicate), _end(predicate))
    return Claim("expect", about, text, state, ends, bounds, wants, (), "", span, parsed.span)


def _start(predicate: Predicate) -> int:
    starts = [place.start for place in predicate.places]
    starts += [name.start for name in (predicate.amount.quantities if predicate.amount else [])]
    return min([*starts, *([predicate.state.start] if predicate.state else [])])


def _end(predicate: Predicate) -> int:
    ends = [place.end for place in predicate.places]
    return max([*ends, *([predicate.state.end] if predicate.state else [])])


def _shown(scope: Scope, place: Place) -> str:
    """A place as people read it: the name as declared, the terminal as typed."""
    key = key_of(place.name.text)
    declared = scope.parts.get(key) or scope.splices.get(key)
    shown = declared.name if declared else place.name.text
    shown += f".{place.terminal.text}" if place.terminal else ""
    return shown + (f"..{place.through.text}" if place.through else "")


# ---- amounts -----------------------------------------------------------------------------------


def _bounds(scope: Scope, parsed: Parsed, predicate: Predicate) -> Bounds | None:
    if predicate.amount is None:
        return None
    dimension, meant = _TAKES[predicate.about]
    read: list[Quantity] = []
    for name in predicate.amount.quantities:
        quantity = parse_quantity(name.text)
        if quantity is None or quantity.dimension != dimension:
            message = f"“{name.text}” stands before {predicate.about}, which takes {meant}"
            scope.problem(message, parsed.at(name))
        else:
            read.append(quantity)
    if len(read) < len(predicate.amount.quantities):
        return None
    return _limits(predicate.amount.sense, read)


def _limits(sense: str, read: list[Quantity]) -> Bounds:
    first, last = read[0], read[-1]
    if sense == "at least":
        return Bounds(first.low_base, math.inf, f"at least {first}")
    if sense == "at most":
        return Bounds(-math.inf, first.high_base, f"at most {first}")
    if sense == "between":
        low, high = sorted((first.low_base, last.high_base))
        return Bounds(low, high, f"between {first} and {last}")
    if first.low != first.high:
        return Bounds(first.low_base, first.high_base, str(first))
    value = first.low_base
    if value == 0:
        none = {"volts": NONE_V}.get(first.dimension, NONE_UA_A if first.unit == "uA" else NONE_A)
        return Bounds(0.0, none, str(first))
    return Bounds((1 - SHARE) * value, (1 + SHARE) * value, str(first))


# ---- ends --------------------------------------------------------------------------------------


def _across(scope: Scope, parsed: Parsed, places: list[Place]) -> _Ends | None:
    """Two ends, or one part that has two terminals."""
    alone = len(places) == 1
    found: list[Terminal] = []
    for place in places:
        if place.through is not None:
            message = "name two ends: one terminal and another, with “and” between them"
            scope.problem(message, parsed.at(place.name))
        elif place.terminal is not None:
            terminal = scope.landing(place, parsed.source)
            if terminal is not None:
                found.append(terminal)
        elif scope.is_node(place.name):
            key = key_of(place.name.text)
            found.append(EARTH if key == EARTH.part else Terminal(key, ""))
        else:
            found += _two_terminals(scope, parsed, place, alone=alone)
    if alone and len(found) == 1:
        scope.problem("the second end is missing: across ONE and OTHER", parsed.at(places[0].name))
    return (found[0], found[1]) if len(found) == 2 else None


def _two_terminals(scope: Scope, parsed: Parsed, place: Place, *, alone: bool) -> list[Terminal]:
    """Both terminals of a part that has no more."""
    part = scope.part(place.name, parsed.source)
    if part is None:
        return []
    names = [name for name, spec in part.structure.terminals.items() if not spec.inner]
    if alone and len(names) == 2:
        return [part.terminal(name) for name in names]
    message = f"name the terminal of {part.name}; it has {both(names)}"
    scope.problem(message, parsed.at(place.name))
    return []


def _through(scope: Scope, parsed: Parsed, place: Place) -> _Ends | None:
    """The two terminals of what a current runs through; twice the one it runs through alone."""
    part = scope.part(place.name, parsed.source)
    if part is None:
        return None
    if place.terminal is not None:
        return _between(scope, parsed, part, place.terminal, place.through)
    pair = _way_through(part)
    if pair is None:
        message = f"say where through {part.name}: {part.name}.ONE..OTHER, or one terminal"
        scope.problem(message, parsed.at(place.name))
        return None
    return part.terminal(pair[0]), part.terminal(pair[1])


def _between(
    scope: Scope, parsed: Parsed, part: Part, one: Name, other: Name | None
) -> _Ends | None:
    first = scope.terminal(part, one, parsed.source)
    second = scope.terminal(part, other, parsed.source) if other else first
    if first is None or second is None:
        return None
    if other and not any({first.name, second.name} == set(pair) for pair in _carrying(part)):
        message = (
            f"{part.name} has nothing between {one.text} and {other.text} that carries amperes"
        )
        scope.problem(message, Span(parsed.source, one.start, other.end))
        return None
    return first, second


def _way_through(part: Part) -> tuple[str, str] | None:
    """The terminals between which a part named alone carries its current."""
    pairs = list(dict.fromkeys(_carrying(part)))
    if part.structure.through in pairs:
        return part.structure.through
    flames = [gap.between for gap in part.structure.gaps if gap.type == "flame"]
    pairs = pairs if len(pairs) == 1 else flames
    return pairs[0] if pairs else None


def _carrying(part: Part) -> list[tuple[str, str]]:
    """Terminal pairs of what a current can be told of: contacts, loads, secondaries, the flame."""
    inside = part.structure
    loads = [load for load in inside.loads if load.takes is not None]
    flames = [gap for gap in inside.gaps if gap.type == "flame"]
    secondaries = [source for source in inside.sources if source.fed_by]
    return [spec.between for spec in (*inside.switches, *loads, *secondaries, *flames)]
