"""The problems of a document, each told once however many of its diagrams have it."""

from __future__ import annotations

from collections.abc import Iterable

from wirecheck.model.finding import Problem
from wirecheck.notes.build import label_of
from wirecheck.notes.document import Block


class Problems:
    """Collects problems; the first to tell of one is kept."""

    def __init__(self, file: str) -> None:
        """Start with none; ``file`` is the document."""
        self._file = file
        self._told: dict[tuple[str, str], Problem] = {}

    def add(self, problems: Iterable[Problem]) -> None:
        """Take in problems of the document itself."""
        for each in problems:
            self._told.setdefault((str(each.span), each.message), each)

    def add_of(
        self, block: Block, problems: Iterable[Problem], variant: str | None = None, start: int = 0
    ) -> None:
        """Take in problems of a block's diagram; of what stands elsewhere say in which it is one.

        What a block says can be right by itself, and wrong in one that builds on it.

        Args:
            block: which.
            problems: of its diagram.
            variant: name of the variant; None for what the block says without one.
            start: where in the block that variant begins.
        """
        label = label_of(block)
        if variant is not None:
            label += f", variant {variant}"
        for each in problems:
            key = (str(each.span), each.message)
            if key not in self._told:
                elsewhere = self._stands_elsewhere(each, block, start)
                message = f"{each.message} (in {label})" if elsewhere else each.message
                self._told[key] = each._replace(message=message)

    def _stands_elsewhere(self, problem: Problem, block: Block, start: int) -> bool:
        if problem.span.source is not block.source:
            return problem.span.file == self._file
        return problem.span.start < start

    def in_order(self) -> tuple[Problem, ...]:
        """All of them, those of the document before those of included files."""
        return tuple(
            sorted(
                self._told.values(),
                key=lambda each: (
                    each.span.file != self._file,
                    each.span.file,
                    each.span.line,
                    each.span.column,
                ),
            )
        )
