"""Claims and observations: their names and units are checked when read, their truth is not."""

from __future__ import annotations

from typing import Final

from wirecheck.language.read import Parsed
from wirecheck.language.scope import Scope
from wirecheck.language.statements import ExpectStatement, ObserveStatement, Place, Predicate
from wirecheck.model.diagram import Part, key_of
from wirecheck.model.nearest import both
from wirecheck.parts.amounts import parse_quantity

#: Signals that need no part before them where one part has them.
SIGNALS: Final = (
    "spark", "pilot-valve", "main-valve", "pilot-flame", "main-flame", "damper", "blower",
    "circulator", "inducer", "call", "flame-signal",
)  # fmt: skip

#: Words for a flame that the signal of the valve is spelt more like.
_FLAMES: Final = {"pilot": "pilot-flame", "flame": "main-flame", "burner": "main-flame"}

_TAKES: Final = {"across": ("volts", "volts"), "through": ("amps", "amperes")}


def check_claim(scope: Scope, parsed: Parsed, claim: ExpectStatement | ObserveStatement) -> None:
    """Keep the problems of one ``expect`` or ``observe``."""
    for predicate in claim.predicates:
        _check_amount(scope, parsed, predicate)
        if predicate.about in ("across", "continuity"):
            _check_across(scope, parsed, predicate.places)
        else:
            _check_subject(scope, parsed, predicate.places[0], signal=predicate.about == "state")
    for condition in claim.conditions:
        _check_subject(scope, parsed, condition.place, signal=True)


def _check_amount(scope: Scope, parsed: Parsed, predicate: Predicate) -> None:
    for name in predicate.amount.quantities if predicate.amount else ():
        quantity = parse_quantity(name.text)
        dimension, meant = _TAKES[predicate.about]
        if quantity is None or quantity.dimension != dimension:
            message = f"“{name.text}” stands before {predicate.about}, which takes {meant}"
            scope.problem(message, parsed.at(name))


def _check_across(scope: Scope, parsed: Parsed, places: list[Place]) -> None:
    """Two ends, or one part that has two terminals."""
    alone = len(places) == 1
    for place in places:
        if place.through is not None:
            message = "name two ends: one terminal and another, with “and” between them"
            scope.problem(message, parsed.at(place.name))
        elif place.terminal is not None:
            part = scope.part(place.name, parsed.source)
            if part is not None and scope.terminal(part, place.terminal, parsed.source) and alone:
                _second_end_missing(scope, parsed, place)
        elif scope.is_node(place.name):
            if alone:
                _second_end_missing(scope, parsed, place)
        else:
            part = scope.part(place.name, parsed.source)
            if part is not None and not (alone and _two_terminals(part)):
                message = f"name the terminal of {part.name}; it has {both(_terminals(part))}"
                scope.problem(message, parsed.at(place.name))


def _second_end_missing(scope: Scope, parsed: Parsed, place: Place) -> None:
    scope.problem("the second end is missing: across ONE and OTHER", parsed.at(place.name))


def _terminals(part: Part) -> list[str]:
    return [name for name, spec in part.structure.terminals.items() if not spec.inner]


def _two_terminals(part: Part) -> bool:
    return len(_terminals(part)) == 2


def _check_subject(scope: Scope, parsed: Parsed, place: Place, *, signal: bool) -> None:
    key = key_of(place.name.text)
    if place.terminal is not None or key in scope.parts or key in scope.spoiled:
        scope.part(place.name, parsed.source)
        return
    if not signal:
        scope.part(place.name, parsed.source)
    elif key not in SIGNALS:
        near = _FLAMES.get(key) or scope.nearest_name(place.name.text, *SIGNALS)
        hint = f"did you mean {near}?" if near else f"signals are {both(SIGNALS)}"
        message = f"“{place.name.text}” is neither a part nor a signal; {hint}"
        scope.problem(message, parsed.at(place.name), near)
