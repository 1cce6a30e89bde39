"""The page a text report is written for: how wide it is, and whether it has colour."""

from __future__ import annotations

from typing import Any, NamedTuple

import click

from wirecheck.model.finding import Breaks
from wirecheck.report.visible import folded

#: Width of a report that goes to a file or a pipe, and the most that is comfortable to read.
PLAIN_WIDTH = 80
WIDEST = 100
#: Narrower than this no phone is; a terminal that says so does not know.
NARROWEST = 30

_INDENT = "  "


class Page(NamedTuple):
    """Where a report is read.

    Attributes:
        width: in cells.
        colour: whether the reader's terminal shows it.
        to_pipe: the reader is a program, an editor or a file: a line that it may look for, such as
            a finding's first, is then never folded.
    """

    width: int = PLAIN_WIDTH
    colour: bool = False
    to_pipe: bool = True

    def strong(self, text: str) -> str:
        """Print a place or a heading."""
        return click.style(text, bold=True) if self.colour else text

    def faint(self, text: str) -> str:
        """Print what stands beside the matter."""
        return click.style(text, dim=True) if self.colour else text

    def alarm(self, text: str) -> str:
        """Print a caution."""
        return click.style(text, fg="yellow", bold=True) if self.colour else text

    def item(self, text: str, indent: str = _INDENT) -> list[str]:
        """Fold a text that stands indented; what runs on is indented once more."""
        return folded(text, self.width, indent, f"{indent}{_INDENT}")

    def heading(self, text: str) -> list[str]:
        """Fold a heading over indented lines."""
        return [self.strong(line) for line in self.item(text, "")]

    def named(self, name: str, text: str) -> list[str]:
        """Fold an indented text behind its name: ``caution: …``."""
        first, *rest = self.item(f"{name}: {text}")
        return [first.replace(f"{name}:", self.strong(f"{name}:"), 1), *rest]

    def plain_headline(self, text: str) -> list[str]:
        """Fold a line that stands by itself, unless a program may look for it."""
        return [text] if self.to_pipe else folded(text, self.width, "", _INDENT)

    def headline(self, place: str, word: str, text: str) -> list[str]:
        """Fold a line that begins with a place and a word for what is wrong there."""
        first, *rest = self.plain_headline(f"{place}: {word}: {text}")
        behind = first.removeprefix(f"{place}: {word}:")
        if self.colour and behind != first:
            coloured = click.style(word, **_WORDS.get(word, {}))
            first = f"{self.strong(f'{place}:')} {coloured}:{behind}"
        return [first, *rest]


#: How the words for what is wrong are coloured; none is told by its colour alone.
_WORDS: dict[str, dict[str, Any]] = {
    str(Breaks.SAFETY): {"fg": "red", "bold": True},
    str(Breaks.OPERATION): {"fg": "yellow", "bold": True},
    str(Breaks.WORKMANSHIP): {"fg": "cyan"},
    "problem": {"fg": "magenta", "bold": True},
}
