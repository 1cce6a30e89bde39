"""From the words typed for one attribute to its value, or to what is wrong with them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, NamedTuple

from wirecheck.model.diagram import Value, key_of
from wirecheck.model.kind import AttributeSpec
from wirecheck.model.nearest import either, nearest
from wirecheck.model.quantity import UNITS, Quantity
from wirecheck.parts.amounts import Amount, amount_of, decimal_of

#: A list of values ends somewhere: more taps than this no transformer has.
MOST_VALUES: Final = 8
#: Thinnest gauge that is a wire at all: ASTM B258 ends at 56 (from memory).
THINNEST_AWG: Final = 56

#: What an attribute of a dimension takes, and how that is written.
TAKES: Final = {
    "volts": ("volts", "24 V"),
    "amps": ("amperes", "0.4 A"),
    "volt-amps": ("volt-amperes", "40 VA"),
    "watts": ("watts", "10 W"),
    "ohms": ("ohms", "60 ohm"),
    "gauge": ("a gauge", "18 AWG"),
    "area": ("a cross-section", "0.75 mm2"),
    "length": ("a length", "3 ft"),
    "time": ("a time", "90 s"),
    "frequency": ("a frequency", "60 Hz"),
    "temperature": ("a temperature", "200 F"),
    "percent": ("percent", "10 %"),
}
#: What a rule divides an inch into.
_FRACTIONS_OF: Final = frozenset({2.0, 4.0, 8.0, 16.0, 32.0, 64.0})
_MAY_BE_ZERO: Final = frozenset({"gauge", "time", "temperature", "percent"})

#: Words people write for a unit.
_UNIT_WORDS: Final = {
    "volt": "V", "volts": "V", "vac": "V", "vdc": "V", "millivolt": "mV", "millivolts": "mV",
    "amp": "A", "amps": "A", "ampere": "A", "amperes": "A", "milliamp": "mA", "milliamps": "mA",
    "microamp": "uA", "microamps": "uA", "watt": "W", "watts": "W", "ohms": "ohm", "kohms": "kohm",
    "k": "kohm", "gauge": "AWG", "ga": "AWG", "inch": "in", "inches": "in", "foot": "ft",
    "feet": "ft", "meter": "m", "meters": "m", "metre": "m", "metres": "m", "sec": "s",
    "secs": "s", "second": "s", "seconds": "s", "mins": "min", "minute": "min", "minutes": "min",
    "percent": "%", "deg": "F", "degrees": "F", "degree": "F", "sqmm": "mm2",
    "hertz": "Hz", "hz": "Hz",
}  # fmt: skip


class Fault(NamedTuple):
    """What is wrong with some words, which of them (a slice), and what would be right there."""

    message: str
    first: int
    last: int
    nearest: str | None = None


def value_of(name: str, texts: Sequence[str], spec: AttributeSpec) -> Value | Fault:
    """Read the words behind an attribute's name; the fault's words count from the name (0)."""
    end = len(texts)
    if spec.units and (amount := amount_of(" ".join(texts))):
        return quantity_value(name, amount, spec, Fault("", 1, end))
    if len(texts) == 1:
        word = texts[0]
        chosen = choice_of(word, spec)
        if chosen is not None:
            return chosen
        if spec.text and word:
            return word
        if spec.whole:
            return _whole(name, word, spec)
    return _not_taken(name, texts, spec)


def choice_of(word: str, spec: AttributeSpec) -> str | None:
    """The choice that a word means; with a tracer, two of them joined by a slash."""
    found = _one_choice(word, spec)
    if found is None and spec.tracer and word.count("/") == 1:
        ground, tracer = (_one_choice(half, spec) for half in word.split("/"))
        if ground and tracer and ground != tracer:
            return f"{ground}/{tracer}"
    return found


def _one_choice(word: str, spec: AttributeSpec) -> str | None:
    key = key_of(word)
    for choice in spec.choices:
        if key_of(choice) == key:
            return choice
    for spelling, choice in spec.spellings.items():
        if key_of(spelling) == key:
            return choice
    return None


def quantity_value(
    name: str, amount: Amount, spec: AttributeSpec, place: Fault
) -> Quantity | tuple[Quantity, ...] | Fault:
    """An amount as the value of an attribute; ``place`` says which words it stands in."""
    typed = str(amount)
    if not amount.unit:
        fitting = _units_for(spec)
        message = f"{typed} has no unit; {name} takes {takes(spec)}, as in {fitting[0]}"
        near = f"{typed} {fitting[1]}"
        return place._replace(message=message, nearest=near)
    if amount.symbol is None:
        return unknown_unit(amount, place)
    values = amount.quantities()
    if values[0].dimension not in spec.units:
        meant = TAKES[values[0].dimension][0]
        message = f"{name} takes {takes(spec)}, as in {_units_for(spec)[0]}; {typed} is {meant}"
        return place._replace(message=message)
    if len(values) == 2 and not spec.several and values[0].low < values[1].low in _FRACTIONS_OF:
        decimal = f"{values[0].low / values[1].low:.6g} {amount.symbol}"
        return place._replace(
            message=f"write the fraction as a decimal: {decimal}", nearest=decimal
        )
    message = _out_of_range(name, values, spec)
    if message:
        return place._replace(message=message)
    return values if len(values) > 1 else values[0]


def _out_of_range(name: str, values: tuple[Quantity, ...], spec: AttributeSpec) -> str:
    """What is wrong with quantities of the right dimension; "" if nothing is."""
    first = values[0]
    most = MOST_VALUES if spec.several else 1
    if first.low > first.high:
        return f"a range runs from low to high: {first.high:g}-{first.low:g} {first.unit}"
    if len(values) > most:
        return f"{name} takes {'one value' if most == 1 else f'at most {most} values'}"
    if len({value.low for value in values}) < len(values):
        return f"{name} has a value twice"
    if first.dimension not in _MAY_BE_ZERO and min(value.low for value in values) <= 0:
        return f"{name} has to be more than 0 {first.unit}"
    if first.dimension == "gauge" and first.high > THINNEST_AWG:
        return f"no wire is as thin as {first}"
    return ""


def unknown_unit(amount: Amount, place: Fault) -> Fault:
    """What to say of an amount whose unit is not known; ``place`` says where it stands."""
    symbols = [unit.symbol for unit in UNITS.values()]
    near = _UNIT_WORDS.get(amount.unit.casefold()) or nearest(amount.unit, symbols)
    hint = f"write {near}" if near else f"units are {either(symbols)}"
    typed = amount._replace(unit="")
    message = f"no unit is written {amount.unit}; {hint}"
    return place._replace(message=message, nearest=f"{typed} {near}" if near else None)


def takes(spec: AttributeSpec) -> str:
    """What an attribute takes, in words."""
    if spec.units:
        return either([TAKES[dimension][0] for dimension in spec.units])
    if spec.whole:
        return f"a whole number from 1 to {spec.most}"
    return either(spec.choices) if spec.choices else "a word, or a text in double quotes"


def _units_for(spec: AttributeSpec) -> tuple[str, str]:
    """An example of what an attribute takes, and its unit."""
    example = spec.default or TAKES[spec.units[0]][1]
    return example, example.split()[-1]


def _whole(name: str, word: str, spec: AttributeSpec) -> int | Fault:
    if word.isascii() and word.isdigit() and len(word) < 10 and 1 <= int(word) <= spec.most:
        return int(word)
    return Fault(f"{name} takes {takes(spec)}, not “{word}”", 1, 1)


def _not_taken(name: str, texts: Sequence[str], spec: AttributeSpec) -> Fault:
    joined = " ".join(texts)
    decimal = decimal_of(joined) if spec.units else None
    if decimal:
        return Fault(f"write the fraction as a decimal: {decimal}", 1, len(texts), decimal)
    near = nearest(joined, [*spec.choices, *spec.spellings]) if spec.choices else None
    if spec.text:
        message = f"put “{joined}” in double quotes" if joined else f"{name} is empty"
        return Fault(message, 1, len(texts), f'"{joined}"' if joined else None)
    return Fault(f"{name} takes {takes(spec)}, not “{joined}”", 1, len(texts), near)
