"""Which exact number does a value in a file stand for?

A TOML number is the exact decimal it is written as; a text is an exact expression such as
"5*sqrt(3)/2". Bounds: 30 digits, sizes up to 1e12 and, apart from 0, not under 1e-12.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from fractions import Fraction
from typing import Any

from tutor.model.toml_read import Decimals
from tutor.notation import Exact, Unreadable, read_number
from tutor.text import lowered, one_line, shown

DIGITS = 30
LARGEST = 10**12
SMALLEST = Fraction(1, 10**12)
WRITE = 'write a number like 4 or 1.5, or an exact one in quotes like "3/2" or "5*sqrt(3)/2"'


@dataclass(frozen=True)
class Wrong:
    """Why a value is no number: `why` continues "the size of the load …", or where it was `read` as a
    text, "… is “abc”, which …"."""

    why: str
    cure: str = WRITE
    read: str = ""

    @property
    def message(self) -> str:
        """What is wrong, with what was read."""
        return f"is {self.read}, which {self.why}" if self.read else self.why


def kind_of(value: object) -> str:
    """What a TOML value is, in words."""
    for types, words in KINDS:
        if isinstance(value, types):
            return words
    return "a date or time"


KINDS: tuple[tuple[type | tuple[type, ...], str], ...] = (
    (bool, "true or false"),
    ((int, Decimals), "a number"),
    (str, "a text"),
    (list, "a list"),
    (dict, "a table"),
)


def amount(value: Any) -> Exact | Wrong:
    """The number that a TOML value stands for."""
    if isinstance(value, bool):
        return Wrong(f"is {str(value).lower()}, which is not a number")
    if isinstance(value, int):
        if abs(value) > LARGEST:
            return Wrong("is larger than 1e12", "use a larger unit")
        return Exact.of(value)
    if isinstance(value, Decimals):
        return _decimal(value.text)
    if isinstance(value, str):
        return _expression(value)
    return Wrong(f"is {kind_of(value)}, not a number")


def _decimal(written: str) -> Exact | Wrong:
    text = written.replace("_", "").lstrip("+")
    try:
        number = Decimal(text)
    except InvalidOperation:
        return Wrong("cannot be read", read=shown(text))
    if not number.is_finite():
        return Wrong("is no finite number", read=text)
    if len(number.as_tuple().digits) > DIGITS:
        return Wrong(f"has more than {DIGITS} digits", "round it")
    if number and not -13 <= number.adjusted() <= 13:
        return _out_of_bounds(large=number.adjusted() > 0)
    fraction = Fraction(number)
    return _bounded(Exact(text, float(fraction), fraction))


def _expression(written: str) -> Exact | Wrong:
    text = one_line(written)
    if not text:
        return Wrong("is an empty text")
    read = read_number(text)
    if isinstance(read, Unreadable):
        why = one_line(lowered(read.wrong))
        return Wrong(f"cannot be read: {why}", one_line(read.cure), shown(text))
    if not math.isfinite(read.value):
        return Wrong("is no finite number", read=shown(text))
    return _bounded(read)


def _bounded(number: Exact) -> Exact | Wrong:
    if abs(number.value) > LARGEST:
        return _out_of_bounds(large=True)
    if number.fraction is not None and 0 < abs(number.fraction) < SMALLEST:
        return _out_of_bounds(large=False)
    return number


def _out_of_bounds(large: bool) -> Wrong:
    if large:
        return Wrong("is larger than 1e12", "use a larger unit")
    return Wrong("is smaller than 1e-12", "write 0, or use a smaller unit")
