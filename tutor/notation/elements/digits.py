"""What number do these digits spell, and how far may it have been rounded?

An integer of one or two figures is exact. A decimal, or an integer of three figures or more, may be
a rounded number: it stands for itself plus or minus half its last place.
"""

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache

from tutor.notation.elements.unreadable import Broken

MOST_DIGITS = 30
LARGEST = 10**12
_SMALLEST_EXPONENT = -30
_EXACT = Fraction(0)
_SHORT = re.compile(r"([0-9]{1,12})(?:\.([0-9]{0,12}))?")
_PLAIN = re.compile(r"[0-9]*\.?[0-9]*")
_GROUPED = re.compile(r"[1-9][0-9]{0,2}(,[0-9]{3})+(\.[0-9]*)?|[1-9][0-9]{0,2}(\.[0-9]{3})+,[0-9]+")


@lru_cache(maxsize=2048)
def spelled(word: str) -> tuple[Fraction, Fraction]:
    """The value of "12", "12.5", "12,5", ".5" or "1.2e3", and half its last place or 0.

    Raises Broken, with columns counted from the start of `word`.
    """
    if word.isdigit() and len(word) < 3:
        return Fraction(int(word)), _EXACT
    if (short := _SHORT.fullmatch(word)) is not None:
        return _value(short[1], short[2] or "")
    mantissa, _, power = word.lower().partition("e")
    if len(mantissa) > MOST_DIGITS and (count := sum(map(str.isdigit, mantissa))) > MOST_DIGITS:
        raise Broken("digits", 0, len(word), count=count)
    whole, places = _split(mantissa, word)
    exponent = int(power or 0)
    digits = int(whole + places)
    if digits and exponent + len(str(digits)) - len(places) > 13:
        raise Broken("too-big", 0, len(word))
    if exponent < _SMALLEST_EXPONENT:
        raise Broken("too-small", 0, len(word))
    if digits * Fraction(10) ** (max(min(exponent, 99), -99) - len(places)) > LARGEST:
        raise Broken("too-big", 0, len(word))
    return _value(whole, places, max(min(exponent, 99), -99))


def _value(whole: str, places: str, exponent: int = 0) -> tuple[Fraction, Fraction]:
    """The value and half the last place of digits before and after the point."""
    top, bottom, half = _place(exponent - len(places))
    rounded = places or len(whole.lstrip("0")) >= 3
    return Fraction(int(whole + places) * top, bottom), half if rounded else _EXACT


@lru_cache(maxsize=256)
def _place(power: int) -> tuple[int, int, Fraction]:
    """A power of ten as a numerator and a denominator, and half of it."""
    top, bottom = 10 ** max(power, 0), 10 ** max(-power, 0)
    return top, bottom, Fraction(top, 2 * bottom)


def figures(word: str) -> int:
    """How many significant figures the digits of a number show ("0.050" has two)."""
    if word.isdigit():
        return len(word.lstrip("0")) or 1
    mantissa = re.split("[eE]", word, maxsplit=1)[0]
    digits = re.sub("[^0-9]", "", mantissa)
    return len(digits.lstrip("0")) or 1


def _split(mantissa: str, word: str) -> tuple[str, str]:
    """The digits before and after the decimal point or comma."""
    if _PLAIN.fullmatch(mantissa) and mantissa != ".":
        whole, _, places = mantissa.partition(".")
        return whole, places
    if "," not in mantissa:
        raise Broken("number", 0, len(word))
    if re.fullmatch(r"[1-9][0-9]{0,2},[0-9]{3}", mantissa):
        whole, _, places = mantissa.partition(",")
        raise Broken("comma", 0, len(word), one=whole + places, other=f"{whole}.{places}")
    if _GROUPED.fullmatch(mantissa):
        point = "." if mantissa.rfind(".") > mantissa.rfind(",") else ","
        if mantissa.count(",") > 1 and "." not in mantissa:
            point = "none"
        whole, _, places = mantissa.rpartition(point) if point in mantissa else (mantissa, "", "")
        plain = re.sub("[.,]", "", whole) + ("." + places if places else "")
        raise Broken("comma/grouped", 0, len(word), one=plain)
    if mantissa.count(",") == 1 and "." not in mantissa:
        whole, _, places = mantissa.partition(",")
        return whole, places
    raise Broken("number", 0, len(word))
