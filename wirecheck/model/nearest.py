"""The nearest right word to a wrong one, and lists of words for messages."""

from __future__ import annotations

from collections.abc import Iterable, Sequence


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word that was most likely meant, or None if none is close.

    Case is ignored; of equally close words the first in the order given wins.
    """
    from difflib import get_close_matches  # only a wrong word needs it

    by_key: dict[str, str] = {}
    for candidate in known:
        by_key.setdefault(candidate.casefold(), candidate)
    matches = get_close_matches(word.casefold(), by_key, n=1, cutoff=0.6)
    if matches:
        return by_key[matches[0]]
    bare = _letters(word)
    for candidate in by_key.values():
        if bare and _letters(candidate) == bare:
            return candidate
    return None


def _letters(word: str) -> str:
    return "".join(character for character in word.casefold() if character.isalnum())


def either(words: Sequence[str]) -> str:
    """``a, b or c``."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} or {words[-1]}"


def both(words: Sequence[str]) -> str:
    """``a, b and c``."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} and {words[-1]}"
