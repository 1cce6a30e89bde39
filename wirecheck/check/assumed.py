"""What a check takes as given because the text does not say it."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Diagram, Part
from wirecheck.model.finding import Assumed


def assumptions(diagram: Diagram) -> Iterator[Assumed]:
    """Name every default in use, a line a part, and a supply that is not drawn."""
    has_mains = any(part.family == "mains" for part in diagram.parts.values())
    for part in diagram.parts.values():
        if part.family == "transformer" and not has_mains:
            what = f"{part.name} is powered: no mains is drawn"
            yield Assumed(what, "the part of the circuit drawn", part.span)
        yield from _defaults(part)


def _defaults(part: Part) -> Iterator[Assumed]:
    by_source: dict[str, list[str]] = {}
    for name, spec in part.kind.attributes.items():
        if name not in part.given and name in part.values:
            value = part.values[name]
            if value not in spec.found_wrong:
                source = "what else is drawn" if spec.default_from else spec.source
                by_source.setdefault(source, []).append(f"{name} {_words(value)}")
    for source, words in by_source.items():
        yield Assumed(f"{part.name}: {', '.join(words)}", source, part.span)


def _words(value: object) -> str:
    return "/".join(map(str, value)) if type(value) is tuple else str(value)
