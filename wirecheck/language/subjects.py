"""What a claim or a condition speaks of: ``box.spark``, ``limit``, or ``main-valve`` alone."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final, NamedTuple, cast

from wirecheck.language.read import Parsed
from wirecheck.language.scope import Scope
from wirecheck.language.statements import Name, Place
from wirecheck.model.claim import Signal, State, Subject
from wirecheck.model.diagram import Part, key_of
from wirecheck.model.nearest import both, either
from wirecheck.model.text import Span

#: Signals that need no part before them where one part has them.
SIGNALS: Final = (
    "spark", "pilot-valve", "main-valve", "pilot-flame", "main-flame", "damper", "blower",
    "circulator", "inducer", "call", "flame-signal",
)  # fmt: skip
#: The phases of a control.
PHASES: Final = ("idle", "damper-opening", "trial", "proving", "run", "wait", "lockout")

#: Words for a flame that the signal of the valve is spelt more like.
_FLAMES: Final = {"pilot": "pilot-flame", "flame": "main-flame", "burner": "main-flame"}
#: What moves air and water, by the word for it.
_MOVES: Final = {"blower": "air", "circulator": "water", "inducer": "combustion-air"}

_ON_OFF: Final = {"on": True, "off": False}
_FLAME: Final = {"on": True, "lit": True, "off": False, "out": False}
_VALVE: Final = {"on": True, "open": True, "off": False, "closed": False}
_CONTACT: Final = {"closed": True, "on": True, "open": False, "off": False}
#: The words for the states of each signal, and which of them mean on; others are on or off.
_STATES: Final[dict[Signal, dict[str, bool]]] = {
    "pilot-flame": _FLAME,
    "main-flame": _FLAME,
    "pilot-valve": _VALVE,
    "main-valve": _VALVE,
    "contact": _CONTACT,
    "blade": {"open": True, "closed": False},
}
#: What each signal is called where its states are told.
_CALLED: Final[dict[Signal, str]] = {
    "pilot-flame": "a flame",
    "main-flame": "a flame",
    "pilot-valve": "a valve",
    "main-valve": "a valve",
    "contact": "a contact",
    "blade": "a damper or zone valve",
}


class _Meant(NamedTuple):
    """A signal of a part, and its name in it."""

    signal: Signal
    name: str = ""


def read_state(scope: Scope, parsed: Parsed, place: Place, word: Name) -> State | None:
    """A subject and its state; None, with a problem, if the diagram has no such thing."""
    found = _subject(scope, parsed, place, key_of(word.text))
    if found is None:
        return None
    states = _STATES.get(found.signal, _ON_OFF)
    on = states.get(key_of(word.text))
    if on is None:
        what = _CALLED.get(found.signal, found.shown)
        message = f"{what} is {either(list(states))}, not {word.text}"
        scope.problem(message, parsed.at(word))
        return None
    return State(found, on, key_of(word.text), Span(parsed.source, place.start, word.end))


def _subject(scope: Scope, parsed: Parsed, place: Place, state: str) -> Subject | None:
    key = key_of(place.name.text)
    if place.terminal is None and key in SIGNALS and key not in scope.parts:
        return _word_alone(scope, parsed, place.name, key)
    if place.terminal is None and not (key in scope.parts or key in scope.spoiled):
        _neither(scope, parsed, place.name)
        return None
    part = scope.part(place.name, parsed.source)
    if part is None:
        return None
    if place.through is not None:
        span = Span(parsed.source, place.start, place.end)
        scope.problem(f"name one thing of {part.name} that has a state", span)
        return None
    meant = _of(scope, parsed, part, place.terminal) if place.terminal else _alone(part, state)
    if meant is None:
        if place.terminal is None:
            _say_which(scope, parsed, part, place.name)
        return None
    shown = f"{part.name}.{place.terminal.text}" if place.terminal else part.name
    return Subject(meant.signal, part.key, meant.name, shown)


def _neither(scope: Scope, parsed: Parsed, name: Name) -> None:
    near = _FLAMES.get(key_of(name.text)) or scope.nearest_name(name.text, *SIGNALS)
    if near is None and scope.lacks_a_file:
        return
    hint = f"did you mean {near}?" if near else f"signals are {both(SIGNALS)}"
    message = f"“{name.text}” is neither a part nor a signal; {hint}"
    scope.problem(message, parsed.at(name), near)


# ---- a signal alone ----------------------------------------------------------------------------


def _word_alone(scope: Scope, parsed: Parsed, name: Name, word: str) -> Subject | None:
    """The one part that has a signal."""
    owners = [(part, meant) for part in scope.parts.values() for meant in _owned(part, word)]
    controls = [each for each in owners if each[0].family == "ignition-control"]
    owners = controls or owners
    if len(owners) == 1:
        part, meant = owners[0]
        return Subject(meant.signal, part.key, meant.name, word)
    if owners:
        dotted = [
            f"{part.name}.{word}" if word in _words(part) else part.name for part, _ in owners
        ]
        scope.problem(f"say which {word} is meant: {either(dotted)}", parsed.at(name))
    elif not (scope.lacks_a_file or scope.spoiled):
        scope.problem(f"nothing in this diagram has a {word}", parsed.at(name))
    return None


def _owned(part: Part, word: str) -> Iterator[_Meant]:
    """What of a part a signal alone may mean."""
    moved = _MOVES.get(word)
    if moved is not None:
        if any(load.moves == moved for load in part.structure.loads):
            yield _Meant("load")
    elif word == "damper":
        if part.family == "vent-damper":
            yield _Meant("blade")
    elif part.family in ("ignition-control", "gas-valve", "thermostat"):
        meant = _words(part).get(word)
        if meant is not None:
            yield meant


# ---- a part, and a signal of it ----------------------------------------------------------------


def _of(scope: Scope, parsed: Parsed, part: Part, name: Name) -> _Meant | None:
    words = _words(part)
    meant = words.get(key_of(name.text))
    if meant is None:
        near = scope.nearest_name(name.text, *words)
        near = near if near in words else None
        if scope.find_terminal(part, name.text):
            hint = "is a terminal: claim volts across it and another"
        else:
            hint = f"is no signal of {part.name}" + (f"; did you mean {near}?" if near else "")
        has = f"; {part.name} has {both(list(words))}" if words and not near else ""
        scope.problem(f"{name.text} {hint}{has}", parsed.at(name), near)
    return meant


def _words(part: Part) -> dict[str, _Meant]:
    """Every signal of a part by the word for it."""
    words: dict[str, _Meant] = {}
    if part.family == "ignition-control":
        signals = ["spark", "main-flame", "flame-signal", "main-valve", "call"]
        if part.with_role("main-valve"):
            signals += ["pilot-flame", "pilot-valve"]
        words.update((word, _Meant(cast(Signal, word))) for word in signals)
        words.update((phase, _Meant("phase", phase)) for phase in PHASES)
    elif part.family == "burner":
        signals = ["spark", "pilot-flame", "main-flame", "flame-signal"]
        words.update((word, _Meant(cast(Signal, word))) for word in signals)
    elif part.family == "vent-damper":
        words["damper"] = _Meant("blade")
    elif part.family == "thermostat":
        words["call"] = _Meant("contact", "heat")
    loads = [load.name for load in part.structure.loads if load.volts is not None]
    if part.family == "gas-valve":
        if "pilot operator" in loads:
            words["pilot-valve"] = _Meant("pilot-valve")
        if "main operator" in loads or "operator" in loads:
            words["main-valve"] = _Meant("main-valve")
    words.update((_hyphened(name), _Meant("load", name)) for name in loads if name)
    names = (switch.name for switch in part.structure.switches if switch.name)
    words.update((_hyphened(name), _Meant("contact", name)) for name in names)
    return words


def _alone(part: Part, state: str) -> _Meant | None:
    """What a part named alone means; None where it must be said."""
    if part.family == "burner":
        return _Meant("pilot-flame" if "pilot" in part.kind.attributes else "main-flame")
    if part.family == "gas-valve":
        valves = [
            each for word, each in _words(part).items() if word in ("pilot-valve", "main-valve")
        ]
        return valves[0] if len(valves) == 1 else None
    if part.family in _ALONE:
        return _ALONE[part.family]
    contacts = {switch.name for switch in part.structure.switches}
    loads = [load for load in part.structure.loads if load.volts is not None]
    if loads and (state in _ON_OFF or not contacts):
        return _Meant("load")
    return _Meant("contact", *contacts) if len(contacts) == 1 else None


#: What a part of a family means alone; of a control it must be said.
_ALONE: Final = {
    "vent-damper": _Meant("blade"),
    "zone-valve": _Meant("blade"),
    "thermostat": _Meant("contact", "heat"),
    "ignition-control": None,
}


def _say_which(scope: Scope, parsed: Parsed, part: Part, name: Name) -> None:
    words = [f"{part.name}.{word}" for word in _words(part)]
    hint = f"say what of it: {either(words)}" if words else "nothing of it is on or off"
    scope.problem(f"{part.name} is a {part.kind.title}; {hint}", parsed.at(name))


def _hyphened(name: str) -> str:
    return key_of("-".join(_bare(name.split())))


def _bare(words: Iterable[str]) -> Iterator[str]:
    return (word.strip(",") for word in words)
