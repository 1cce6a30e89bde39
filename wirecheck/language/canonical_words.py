"""The one way in which an attribute is written: quantities with a blank and their unit's symbol.

Only what is understood is rewritten, and only where it then says the same.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from decimal import Decimal
from itertools import pairwise

from wirecheck.language.spelling import spell_word
from wirecheck.language.statements import Name, Words, end_of, start_of
from wirecheck.model.diagram import Value, key_of
from wirecheck.model.kind import AttributeSpec
from wirecheck.model.quantity import Quantity
from wirecheck.parts.amounts import each_quantity, parse_quantity
from wirecheck.parts.attributes import understood
from wirecheck.parts.typed_values import Fault

Specs = Mapping[str, AttributeSpec]


def attribute_text(words: Words, specs: Specs | None) -> str:
    """One attribute; ``specs`` is None where nothing is known of whose attribute it is."""
    texts = tuple(word.text if isinstance(word, Name) else str(word) for word in words)
    found = Fault("", 0, 0) if specs is None else understood(texts, specs)
    if specs is not None and not isinstance(found, Fault):
        name, value = found
        written = _written(texts, specs[name], name, value)
        if understood(written, specs) == found:
            first, *more = written
            return " ".join([spell_word(first, first=True), *map(_spell_next, more)])
    text = spell_word(texts[0], first=True)
    for (before, word), typed in zip(pairwise(words), texts[1:], strict=True):
        blank = "" if end_of(before) == start_of(word) else " "  # an inch mark reads like a quote
        text += blank + _spell_next(typed)
    return text


def _spell_next(word: str) -> str:
    return spell_word(word, first=False)


def amount_text(typed: str) -> str:
    """A quantity in a claim."""
    quantity = parse_quantity(typed)
    return typed if quantity is None else " ".join(_amount((quantity,)))


def _written(
    texts: tuple[str, ...], spec: AttributeSpec, name: str, value: Value
) -> tuple[str, ...]:
    names = (name, *spec.also)
    keyed = (len(texts) > 1 or spec.flag) and key_of(texts[0]) in map(key_of, names)
    key = (_as_known(texts[0], names),) if keyed else ()
    quantities = each_quantity(value)
    if quantities:
        return (*key, *_amount(quantities))
    choices = (*spec.choices, *spec.spellings)
    rest = texts[len(key) :]
    if choices:
        rest = tuple(
            "/".join(_as_known(half, choices) for half in word.split("/")) for word in rest
        )
    return (*key, *rest)


def _as_known(word: str, known: Iterable[str]) -> str:
    """A word in the case in which the part library has it."""
    return next((each for each in known if key_of(each) == key_of(word)), word)


def _amount(quantities: tuple[Quantity, ...]) -> tuple[str, str]:
    first = quantities[0]
    if first.low != first.high:
        return f"{_number(first.low)}-{_number(first.high)}", first.unit
    return "/".join(_number(quantity.low) for quantity in quantities), first.unit


def _number(value: float) -> str:
    """A number with every digit it was typed with, and none more."""
    if value.is_integer():
        return str(int(value))
    return format(Decimal(repr(value)), "f")
