"""A text on its way from the diagram as found to the one with the new devices in it."""

from __future__ import annotations

from collections.abc import Iterable

from wirecheck.language.edit import apply
from wirecheck.language.load import load_text
from wirecheck.language.read import Parsed, read_text
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Edit
from wirecheck.model.text import SourceFile, Span


class NotInTextError(Exception):
    """The replacement cannot be made in the text; says why."""


class Rewriting:
    """A text on its way.

    Attributes:
        built: the text as it stands now, read.
        set_aside: statements that name what is no longer there; they stand as comments.
    """

    def __init__(self, diagram: Diagram) -> None:
        """Start from the text as found.

        Raises:
            NotInTextError: it is not all in one file.
        """
        if len(diagram.sources) > 1:
            raise NotInTextError("it includes other files: replace in a file that stands alone")
        self.name = diagram.source.name
        self.built = load_text(diagram.source.text, self.name)
        self.set_aside: list[str] = []

    @property
    def diagram(self) -> Diagram:
        """The diagram as the text states it now."""
        return self.built.diagram

    @property
    def source(self) -> SourceFile:
        """The text as it stands now."""
        return self.diagram.source

    def change(self, edits: Iterable[Edit | None]) -> None:
        """Make some edits and read the text again."""
        made = []
        for edit in edits:
            if edit is None:
                raise NotInTextError("a statement to change cannot be read")
            made.append(edit)
        if made:
            self.built = load_text(apply(self.source.text, made), self.name)

    def statements(self) -> list[Parsed]:
        """The statements of the text as it stands now."""
        return read_text(self.source.text, self.name).statements

    def aside(self, span: Span) -> Edit:
        """A statement that names what is no longer there, as a comment for somebody to look at."""
        self.set_aside.append(span.text)
        return Edit("set", "", span, "\n".join(f"# {line}" for line in span.text.split("\n")))
