"""Which attributes the parts and kinds of one text take, as far as that text says."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from wirecheck.language.statements import KindStatement, PartStatement, Statement
from wirecheck.model.diagram import key_of
from wirecheck.model.kind import AttributeSpec
from wirecheck.parts.library import kind, kind_names


class KnownKinds:
    """The kinds and parts stated in one text, by what they are made from."""

    def __init__(self, statements: Iterable[Statement | None]) -> None:
        """Look through the statements; of two with one name the first counts."""
        self._kinds: dict[str, str] = {}
        self._parts: dict[str, str] = {}
        for statement in statements:
            if isinstance(statement, KindStatement):
                self._kinds.setdefault(key_of(statement.name.text), key_of(statement.kind.text))
            elif isinstance(statement, PartStatement):
                self._parts.setdefault(key_of(statement.name.text), key_of(statement.kind.text))

    def of_kind(self, name: str) -> Mapping[str, AttributeSpec] | None:
        """The attributes of a kind of the library or of one made from it; None if not known."""
        key, seen = key_of(name), set[str]()
        while key in self._kinds and key not in seen:
            seen.add(key)
            key = self._kinds[key]
        return kind(key).attributes if key in kind_names() else None

    def of_part(self, name: str) -> Mapping[str, AttributeSpec] | None:
        """The attributes of a part; None if its kind is not known."""
        return self.of_kind(self._parts.get(key_of(name), ""))
