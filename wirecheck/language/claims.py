"""Claims and observations: their names and units are checked when read, their truth is not."""

from __future__ import annotations

from wirecheck.language import statements as st
from wirecheck.language.read import Parsed
from wirecheck.language.scope import Scope
from wirecheck.model.diagram import key_of
from wirecheck.model.finding import Problem
from wirecheck.model.nearest import either, nearest
from wirecheck.parts.attributes import parse_quantity

#: Signals that need no part before them where one part has them.
SIGNALS = (
    "spark", "pilot-valve", "main-valve", "pilot-flame", "main-flame", "damper", "blower",
    "circulator", "inducer", "lockout", "call", "flame-signal",
)  # fmt: skip

_UNITS = {"across": "volts", "through": "amps"}


def check_claim(scope: Scope, parsed: Parsed) -> None:
    """Keep the problems of one ``expect`` or ``observe``."""
    statement = parsed.statement
    assert isinstance(statement, st.ExpectStatement | st.ObserveStatement)
    for predicate in statement.predicates:
        _check_unit(scope, parsed, predicate)
        for place in predicate.places:
            _check_place(scope, parsed, place, signal=predicate.about == "state")
    for condition in statement.conditions:
        _check_place(scope, parsed, condition.place, signal=True)


def _check_unit(scope: Scope, parsed: Parsed, predicate: st.Predicate) -> None:
    wanted = _UNITS.get(predicate.about)
    for name in predicate.amount.quantities if predicate.amount else ():
        quantity = parse_quantity(name.text)
        if wanted and (quantity is None or quantity.dimension != wanted):
            message = f"“{name.text}” stands before {predicate.about}, which takes {wanted}"
            scope.problems.append(Problem(message, parsed.at(name)))


def _check_place(scope: Scope, parsed: Parsed, place: st.Place, *, signal: bool) -> None:
    key = key_of(place.name.text)
    if place.terminal is not None:
        part = scope.part(place.name, parsed.source)
        if part is not None and not signal:
            scope.terminal(part, place.terminal, parsed.source)
        return
    if key in scope.parts or key in scope.splices or key == "earth" or (signal and key in SIGNALS):
        return
    names = [part.name for part in scope.parts.values()] + (list(SIGNALS) if signal else [])
    near = nearest(place.name.text, names)
    hint = f"; did you mean {near}?" if near else f"; signals are {either(sorted(SIGNALS))}"
    message = f"“{place.name.text}” is neither a part nor a signal{hint}"
    scope.problem(message, parsed.at(place.name), near)
