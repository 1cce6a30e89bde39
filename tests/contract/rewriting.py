"""The same diagram written another way: each function changes the text and not one connection.

They work on statements as the examples write them: one run a line, parts declared on lines of
their own.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterator

from wirecheck.language.spelling import spell_in_part, spell_name
from wirecheck.model.diagram import Diagram, Part, key_of

_RUN = re.compile(r"^(wire|jumper) ([^:]*?)((?:: .*)?)$")
_STOP = re.compile(r"\s+to\s+")
_QUOTED = re.compile(r'("(?:[^"]|"")*"|#.*)')
_AWG_IN_MM2 = {"18": "0.75", "16": "1.5", "14": "2.5", "12": "4"}

#: Families whose contacts may change places in a row: each only lets the current through.
_IN_SERIES = {"safety-switch", "hand-switch", "overcurrent", "operating-control", "thermostat"}


def renamed(text: str, diagram: Diagram) -> str:
    """Every part and splice gets another name, longer and in other letters."""
    names = {key: f"{key[-1]}-größe{n}" for n, key in enumerate((*diagram.parts, *diagram.splices))}

    def head(words: str) -> str:
        def other(match: re.Match[str]) -> str:
            return names.get(key_of(match[0]), match[0])

        return re.sub(r"(?<![\w.\"-])[\w-]+(?=\.|\s|$)", other, words)

    def line(match: re.Match[str]) -> str:
        keyword, words, rest = match[1], match[2], match[3]
        if keyword.lstrip() == "part":
            name, _is, kind = words.partition(" is ")
            return f"{keyword} {head(name)} is {kind}{rest}"
        return f"{keyword} {head(words)}{rest}"

    statement = re.compile(
        r"^( *(?:part|splice|wire|jumper|plug|labels|set|remove wire|remove part|expect)) "
        r"([^:\n]*)(.*)$",
        flags=re.MULTILINE,
    )
    return statement.sub(line, text)


def spliced(text: str, diagram: Diagram) -> str:
    """The first lead of every run goes over a wire-nut; an ignition cable is never spliced."""
    lines, nuts = [], 0
    for line in text.splitlines():
        match = _RUN.match(line)
        if match is None or "ignition-cable" in line:
            lines.append(line)
            continue
        nuts += 1
        first, *stops = _STOP.split(match[2].strip())
        lines.append(f"splice nut-{nuts}: wire-nut")
        lines.append(f"{match[1]} {' to '.join([first, f'nut-{nuts}', *stops])}{match[3]}")
    assert not diagram.splices.keys() & {f"nut-{n}" for n in range(nuts + 1)}
    return "\n".join(lines) + "\n"


def backwards(text: str, diagram: Diagram) -> str:
    """Every run is written from its last end to its first, parts passed from behind."""

    def turned(match: re.Match[str]) -> str:
        stops = _STOP.split(match[2].strip())
        last = len(stops) - 1
        turned = [_from_behind(diagram, stop, at, last) for at, stop in enumerate(stops)]
        return f"{match[1]} {' to '.join(reversed(turned))}{match[3]}"

    return "\n".join(_RUN.sub(turned, line) for line in text.splitlines()) + "\n"


def _from_behind(diagram: Diagram, stop: str, at: int, last: int) -> str:
    """A stop as it is written when the run comes from the other side."""
    if ".." in stop:
        part, _dot, contact = stop.partition(".")
        entered, left = contact.split("..")
        return f"{part}.{left}..{entered}"
    part_drawn = diagram.parts.get(key_of(stop))
    if part_drawn is None:
        return stop
    first, second = _through(diagram, part_drawn)
    if at in (0, last):
        return f"{stop}.{second if at == 0 else first}"
    return f"{stop}.{second}..{first}"


def _through(diagram: Diagram, part: Part) -> tuple[str, str]:
    assert part.structure.through is not None
    one, other = map(part.terminal, part.structure.through)
    return spell_in_part(diagram, one), spell_in_part(diagram, other)


def reordered(text: str, diagram: Diagram) -> str:
    """Switches next to each other in a run change places, where nothing else hangs between."""
    landed = Counter(end for lead in diagram.leads for end in (lead.a, lead.b))
    free = {
        spell_name(part.name)
        for part in diagram.parts.values()
        if part.family in _IN_SERIES
        and part.structure.through
        and all(landed[part.terminal(side)] == 1 for side in part.structure.through)
    }

    def swapped(match: re.Match[str]) -> str:
        stops = _STOP.split(match[2].strip())
        for begin, end in _rows(stops, free):
            stops[begin:end] = reversed(stops[begin:end])
        return f"{match[1]} {' to '.join(stops)}{match[3]}"

    return "\n".join(_RUN.sub(swapped, line) for line in text.splitlines()) + "\n"


def _rows(stops: list[str], free: set[str]) -> Iterator[tuple[int, int]]:
    """Where rows of free switches begin and end in a run, its two ends left out."""
    begin = None
    for at in range(1, len(stops)):
        is_free = stops[at] in free and at < len(stops) - 1
        if is_free and begin is None:
            begin = at
        elif not is_free and begin is not None:
            yield begin, at
            begin = None


def in_capitals(text: str, _diagram: Diagram) -> str:
    """Everything but quoted text and comments in capitals."""
    return "".join(
        piece if at % 2 else piece.upper() for at, piece in enumerate(_QUOTED.split(text))
    )


def metric(text: str, _diagram: Diagram) -> str:
    """Gauges in square millimetres, inches and feet in millimetres and metres."""

    def size(match: re.Match[str]) -> str:
        return f"{_AWG_IN_MM2[match[1]]} mm2"

    text = re.sub(r"\b(\d+) AWG\b", size, text)
    text = re.sub(r"\b(\d+) in\b", lambda m: f"{int(m[1]) * 25} mm", text)
    return re.sub(r"\b(\d+) ft\b", lambda m: f"{int(m[1]) * 0.3:.1f} m", text)


def with_carriage_returns(text: str, _diagram: Diagram) -> str:
    """Lines end as other systems end them."""
    return text.replace("\n", "\r\n")


def with_byte_order_mark(text: str, _diagram: Diagram) -> str:
    """A byte-order mark stands in front."""
    return "\ufeff" + text


REWRITINGS: tuple[Callable[[str, Diagram], str], ...] = (
    renamed,
    spliced,
    backwards,
    reordered,
    in_capitals,
    metric,
    with_carriage_returns,
    with_byte_order_mark,
)
