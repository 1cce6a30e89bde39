"""Making sense of the attributes typed for a part or a lead.

One attribute is a list of words.  It is understood as ``name value``, as a bare word where one
attribute alone has it as a choice, as a bare quantity where one attribute alone takes its unit,
or as the name of a flag.  What cannot be understood becomes a problem that says what would be.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final, NamedTuple

from wirecheck.model.diagram import Attribute, Value, key_of
from wirecheck.model.finding import Problem
from wirecheck.model.kind import FLAG_SET, AttributeSpec
from wirecheck.model.nearest import either, nearest
from wirecheck.model.text import Span
from wirecheck.parts.amounts import Amount, amount_of, decimal_of, parse_quantity
from wirecheck.parts.typed_values import (
    TAKES,
    Fault,
    choice_of,
    quantity_value,
    takes,
    unknown_unit,
    value_of,
)

__all__ = ["Understood", "Word", "interpret", "parse_quantity", "understood"]

#: How a comment begins elsewhere.
COMMENT_SIGNS: Final = ("//", "--", "/*")
#: Longer attributes are not searched for a missing comma.
_MOST_WORDS: Final = 12
#: So many different attributes are remembered for one kind before they are forgotten again.
_MOST_REMEMBERED: Final = 4096

Understood = tuple[str, Value]


class Word(NamedTuple):
    """One word of an attribute as typed; quotes are taken off a quoted one."""

    text: str
    quoted: bool
    span: Span


def interpret(
    words: Sequence[Word], specs: Mapping[str, AttributeSpec], owner: str
) -> Attribute | Problem:
    """What one attribute says.

    Args:
        words: its words, at least one.
        specs: the attributes there are, by name; the same object each time for one owner.
        owner: what has them, for messages: ``a transformer``, ``a lead``.
    """
    texts = tuple(word.text for word in words)
    span = words[0].span
    if len(words) > 1:
        span = Span(span.source, span.start, words[-1].span.end)
    found = understood(texts, specs)
    if not isinstance(found, Fault):
        return Attribute(found[0], found[1], span)
    fault = _slip(texts, _vocabulary(specs)) or found
    first, last = words[fault.first].span, words[min(fault.last, len(words) - 1)].span
    message = fault.message.replace(_OWNER, owner)
    return Problem(message, Span(span.source, first.start, last.end), fault.nearest)


def understood(texts: tuple[str, ...], specs: Mapping[str, AttributeSpec]) -> Understood | Fault:
    """Name and value of the attribute these words state; what was understood is remembered."""
    vocabulary = _vocabulary(specs)
    known = vocabulary.remembered.get(texts)
    if known is not None:
        return known
    found = _understand(texts, vocabulary)
    if not isinstance(found, Fault):
        if len(vocabulary.remembered) >= _MOST_REMEMBERED:
            vocabulary.remembered.clear()
        vocabulary.remembered[texts] = found
    return found


class _Vocabulary:
    """The attributes of one kind, by everything that may begin them."""

    def __init__(self, specs: Mapping[str, AttributeSpec]) -> None:
        self.specs = specs
        self.names: dict[str, str] = {}
        self.takers: dict[str, list[str]] = {}
        for name, spec in specs.items():
            for spelling in (name, *spec.also):
                self.names[key_of(spelling)] = name
            for dimension in spec.units:
                self.takers.setdefault(dimension, []).append(name)
        self.bare = [name for name, spec in specs.items() if spec.choices and not spec.keyed]
        self.remembered: dict[tuple[str, ...], Understood] = {}


#: By identity: a kind's attributes are one object, kept here so that its identity stays its own.
_vocabularies: dict[int, _Vocabulary] = {}
_MOST_VOCABULARIES: Final = 512
#: Stands in remembered faults for whatever the attributes belong to.
_OWNER: Final = "\x00"


def _vocabulary(specs: Mapping[str, AttributeSpec]) -> _Vocabulary:
    vocabulary = _vocabularies.get(id(specs))
    if vocabulary is None:
        if len(_vocabularies) >= _MOST_VOCABULARIES:
            _vocabularies.clear()
        vocabulary = _vocabularies[id(specs)] = _Vocabulary(specs)
    return vocabulary


def _understand(texts: tuple[str, ...], vocabulary: _Vocabulary) -> Understood | Fault:
    name = vocabulary.names.get(key_of(texts[0]))
    if name is not None:
        return _keyed(name, texts, vocabulary.specs[name])
    if len(texts) == 1:
        found = _bare_choice(texts[0], vocabulary)
        if found is not None:
            return found
    amount = amount_of(" ".join(texts))
    if amount is not None:
        return _bare_quantity(amount, len(texts) - 1, vocabulary)
    return _unknown(texts, vocabulary)


def _keyed(name: str, texts: tuple[str, ...], spec: AttributeSpec) -> Understood | Fault:
    if spec.flag:
        if len(texts) == 1:
            return name, FLAG_SET
        return Fault(f"{name} stands alone; it takes nothing behind it", 1, len(texts) - 1)
    if len(texts) == 1:
        example = f", as in {name} {spec.default}" if spec.default else ""
        return Fault(f"{name} needs a value: {takes(spec)}{example}", 0, 0)
    value = value_of(name, texts[1:], spec)
    return value if isinstance(value, Fault) else (name, value)


def _bare_choice(word: str, vocabulary: _Vocabulary) -> Understood | Fault | None:
    having = [
        (name, choice)
        for name in vocabulary.bare
        if (choice := choice_of(word, vocabulary.specs[name])) is not None
    ]
    if len(having) < 2:
        return having[0] if having else None
    ways = [f"{name} {choice}" for name, choice in having]
    return Fault(f"“{word}” can mean more than one thing here; write {either(ways)}", 0, 0)


def _bare_quantity(amount: Amount, last: int, vocabulary: _Vocabulary) -> Understood | Fault:
    place = Fault("", 0, last)
    if amount.symbol is None:
        return _counted(amount, place, vocabulary) or _no_such_unit(amount, place, vocabulary)
    dimension = amount.quantities()[0].dimension
    takers = vocabulary.takers.get(dimension, [])
    alone = [name for name in takers if not vocabulary.specs[name].keyed]
    if len(alone) == 1:
        value = quantity_value(alone[0], amount, vocabulary.specs[alone[0]], place)
        return value if isinstance(value, Fault) else (alone[0], value)
    if not takers:
        return place._replace(message=f"{_OWNER} takes no {dimension}; {_has(vocabulary)}")
    ways = [f"{name} {amount}" for name in takers]
    return place._replace(
        message=f"say what {amount} is: write {either(ways)}",
        nearest=ways[0] if len(ways) == 1 else None,
    )


def _counted(amount: Amount, place: Fault, vocabulary: _Vocabulary) -> Fault | None:
    """The fault of a count without its name, or with the name behind it: ``4``, ``2 poles``."""
    counts = [name for name, spec in vocabulary.specs.items() if spec.whole]
    unit = key_of(amount.unit)
    ways = [
        f"{name} {amount._replace(unit='')}" for name in counts if unit in ("", name, name[:-1])
    ]
    if ways:
        near = ways[0] if len(ways) == 1 else None
        return place._replace(message=f"say what the number is: write {either(ways)}", nearest=near)
    if unit:
        return None
    return place._replace(message="a number alone says nothing; write its name and its unit")


def _no_such_unit(amount: Amount, place: Fault, vocabulary: _Vocabulary) -> Fault:
    """The fault of an unknown unit; one like no other is answered with what is taken here."""
    fault = unknown_unit(amount, place)
    if fault.nearest or not vocabulary.takers:
        return fault
    taken = either([TAKES[dimension][0] for dimension in vocabulary.takers])
    return place._replace(message=f"no unit is written {amount.unit}; {_OWNER} takes {taken}")


def _unknown(texts: tuple[str, ...], vocabulary: _Vocabulary) -> Fault:
    last = len(texts) - 1
    decimal = decimal_of(" ".join(texts))
    if decimal:
        return Fault(f"write the fraction as a decimal: {decimal}", 0, last, decimal)
    words = [*vocabulary.names.values()]
    if last == 0:
        begun = _begun(texts[0], vocabulary)
        if begun:
            message = f"{_OWNER} has no attribute “{texts[0]}”; did you mean {either(begun)}?"
            return Fault(message, 0, 0, begun[0] if len(begun) == 1 else None)
        for name in vocabulary.bare:
            spec = vocabulary.specs[name]
            words += [*spec.choices, *filter(_is_word, spec.spellings)]
    near = nearest(texts[0], words)
    hint = f"did you mean {near}?" if near else _has(vocabulary)
    return Fault(f"{_OWNER} has no attribute “{texts[0]}”; {hint}", 0, 0, near)


def _begun(word: str, vocabulary: _Vocabulary) -> list[str]:
    """The bare choices that a word of a letter or two may be short for."""
    choices = [choice for name in vocabulary.bare for choice in vocabulary.specs[name].choices]
    return [choice for choice in choices if len(word) <= 2 and choice.startswith(key_of(word))]


def _is_word(spelling: str) -> bool:
    """Whether it reads as a word, not as a code that any slip resembles."""
    return len(spelling) > 3


def _has(vocabulary: _Vocabulary) -> str:
    names = list(vocabulary.specs)
    return f"it has {', '.join(names)}" if names else "it has none"


def _slip(texts: tuple[str, ...], vocabulary: _Vocabulary) -> Fault | None:
    """What the words tell of a slip that is common enough to have words of its own."""
    for place, text in enumerate(texts):
        if text.startswith(COMMENT_SIGNS):
            return Fault("a comment begins with #", place, len(texts) - 1, "#")
    if len(texts) == 1:
        return _name_left_out(texts[0], vocabulary)
    return (
        _missing_comma(texts, vocabulary.specs)
        or _missing_hyphen(texts, vocabulary)
        or _name_last(texts, vocabulary)
        or _unknown_rest(texts, vocabulary)
        or _other_unit(texts, vocabulary)
    )


def _missing_comma(texts: tuple[str, ...], specs: Mapping[str, AttributeSpec]) -> Fault | None:
    """The fault of two or more attributes run together, if that is what the words are."""
    cuts = _cuts(texts, specs) if len(texts) <= _MOST_WORDS else None
    if not cuts:
        return None
    ends = [*cuts, len(texts)]
    pieces = [" ".join(texts[start:end]) for start, end in zip([0, *cuts], ends, strict=True)]
    return Fault(f"a comma is missing after {pieces[0]}", 0, len(texts) - 1, ", ".join(pieces))


def _missing_hyphen(texts: tuple[str, ...], vocabulary: _Vocabulary) -> Fault | None:
    """The fault of a name, or of a choice, typed as two words."""
    joined = "-".join(texts[:2])
    name = vocabulary.names.get(key_of(joined))
    if name:
        return Fault(f"{name} is one word, with its hyphen", 0, 1, name)
    chosen = _bare_choice(joined, vocabulary) if len(texts) == 2 else None
    if chosen is None or isinstance(chosen, Fault):
        return None
    return Fault(f"write it as one word, {chosen[1]}", 0, 1, str(chosen[1]))


def _name_last(texts: tuple[str, ...], vocabulary: _Vocabulary) -> Fault | None:
    """The fault of an attribute's name behind its value: ``lp gas``."""
    turned = (texts[-1], *texts[:-1])
    if vocabulary.names.get(key_of(texts[-1])) is None or texts[0][:1].isdigit():
        return None
    if isinstance(understood(turned, vocabulary.specs), Fault):
        return None
    near = " ".join(turned)
    return Fault(f"the name stands before its value: write {near}", 0, len(texts) - 1, near)


def _name_left_out(word: str, vocabulary: _Vocabulary) -> Fault | None:
    """The fault of a choice that needs its attribute's name before it: ``solid``."""
    if vocabulary.names.get(key_of(word)) is not None:
        return None
    if _bare_choice(word, vocabulary) is not None:
        return None
    ways = [
        f"{name} {choice}"
        for name, spec in vocabulary.specs.items()
        if spec.keyed and len(spec.choices) > 1 and (choice := choice_of(word, spec)) is not None
    ]
    if not ways:
        return None
    near = ways[0] if len(ways) == 1 else None
    return Fault(f"say what is {word}: write {either(ways)}", 0, 0, near)


def _unknown_rest(texts: tuple[str, ...], vocabulary: _Vocabulary) -> Fault | None:
    """The fault of words behind an attribute that begins without a name: ``18 AWG blu``."""
    if vocabulary.names.get(key_of(texts[0])) is not None:
        return None
    for cut in range(min(len(texts) - 1, _MOST_WORDS), 0, -1):
        if not isinstance(understood(texts[:cut], vocabulary.specs), Fault):
            fault = understood(texts[cut:], vocabulary.specs)
            if isinstance(fault, Fault):
                message = f"a comma is missing after {' '.join(texts[:cut])}; {fault.message}"
                return Fault(message, cut + fault.first, cut + fault.last, fault.nearest)
    return None


def _other_unit(texts: tuple[str, ...], vocabulary: _Vocabulary) -> Fault | None:
    """The fault of an amount in another spelling of its unit, run on: ``18 ga green``."""
    amount = understood(texts[:2], vocabulary.specs) if len(texts) > 2 else None
    if not isinstance(amount, Fault) or amount.nearest is None or not texts[0][:1].isdigit():
        return None
    if isinstance(understood(tuple(amount.nearest.split()), vocabulary.specs), Fault):
        return None
    message = f"{amount.message}, and put a comma behind it"
    return Fault(message, amount.first, amount.last, amount.nearest)


def _cuts(texts: tuple[str, ...], specs: Mapping[str, AttributeSpec]) -> list[int]:
    """Where commas make attributes of all the words, the first pieces as long as can be."""
    for cut in range(len(texts) - 1, 0, -1):
        if isinstance(understood(texts[:cut], specs), Fault):
            continue
        if not isinstance(understood(texts[cut:], specs), Fault):
            return [cut]
        further = _cuts(texts[cut:], specs)
        if further:
            return [cut, *(cut + more for more in further)]
    return []
