"""Reading numbers with units as people type them: ``24V``, ``10-30 s``, ``120/208/240 V``."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache
from typing import Final, NamedTuple

from wirecheck.model.quantity import UNITS, Quantity

_NUMBER = r"(?:\d{1,12}(?:\.\d{0,12})?|\.\d{1,12})"
_AMOUNT = re.compile(
    rf"({_NUMBER}(?:\s*/\s*{_NUMBER})*)(?:\s*-\s*({_NUMBER}))?\s*((?:[^\W\d_]+2?|%)?)"
)
_FRACTION = re.compile(r"(?:(\d{1,6})[\s-]+)?(\d{1,6})\s*/\s*(\d{1,6})\s*([^\W\d_]+2?)")
_FRACTION_SIGN = re.compile(r"(?<=\d)(?=[\u00bc-\u00be\u2150-\u215f])")
_PLAIN: Final = {
    "\N{GREEK SMALL LETTER MU}": "u",
    "\N{GREEK CAPITAL LETTER OMEGA}": "ohm",
    "\N{DEGREE SIGN}": "",
    "\N{FRACTION SLASH}": "/",
    "\N{EN DASH}": "-",
    "\N{MINUS SIGN}": "-",
}
_TO_PLAIN: Final = str.maketrans(_PLAIN)


class Amount(NamedTuple):
    """Numbers (one, or a list), the upper end of a range, and the unit as typed ("" if none)."""

    numbers: tuple[float, ...]
    high: float | None
    unit: str

    @property
    def symbol(self) -> str | None:
        """The unit as it is printed; None if there is no such unit."""
        unit = UNITS.get(self.unit.casefold())
        return unit.symbol if unit else None

    def __str__(self) -> str:
        """As a technician writes it."""
        numbers = "/".join(f"{number:g}" for number in self.numbers)
        if self.high is not None:
            numbers += f"-{self.high:g}"
        return f"{numbers} {self.symbol or self.unit}".strip()

    def quantities(self) -> tuple[Quantity, ...]:
        """The numbers in their unit, which has to be known."""
        symbol = UNITS[self.unit.casefold()].symbol
        if self.high is not None:
            return (Quantity(self.numbers[-1], self.high, symbol),)
        return tuple(Quantity(number, number, symbol) for number in self.numbers)


def plain(text: str) -> str:
    """The text with signs as they are on a plain keyboard: ``µA`` is ``uA``, ``°F`` is ``F``."""
    if text.isascii():
        return text
    spaced = _FRACTION_SIGN.sub(" ", text)
    return unicodedata.normalize("NFKC", spaced).translate(_TO_PLAIN)


def amount_of(text: str) -> Amount | None:
    """Read a number, a range or a list of numbers, with or without a unit, known or not."""
    match = _AMOUNT.fullmatch(plain(text).strip())
    if match is None:
        return None
    numbers, high, unit = match.groups()
    if high is not None and "/" in numbers:
        return None
    return Amount(
        tuple(float(number) for number in numbers.split("/")),
        None if high is None else float(high),
        unit,
    )


def decimal_of(text: str) -> str | None:
    """The decimal form of a fraction: ``1.5 in`` for ``1 1/2 in``; None if it is none."""
    match = _FRACTION.fullmatch(plain(text).strip())
    if match is None or int(match[3]) == 0:
        return None
    return f"{int(match[1] or 0) + int(match[2]) / int(match[3]):.6g} {match[4]}"


def each_quantity(value: object) -> tuple[Quantity, ...]:
    """The quantities of a value: itself, those of a list, none of anything else."""
    if isinstance(value, Quantity):
        return (value,)
    if isinstance(value, tuple):
        return tuple(each for each in value if isinstance(each, Quantity))
    return ()


@lru_cache(maxsize=4096)
def parse_quantity(text: str) -> Quantity | None:
    """Read one quantity, ``24 V`` or ``10-30 s``; None if it is anything else."""
    amount = amount_of(text)
    if amount is None or amount.symbol is None or len(amount.numbers) != 1:
        return None
    (quantity,) = amount.quantities()
    return quantity if quantity.low <= quantity.high else None
