"""How large is a unit of force or length, and how may it be spelled?

Sources: the SI; the international avoirdupois pound 0.45359237 kg and standard gravity
9.80665 m/s2, which make the pound-force 4.4482216152605 N exactly; the international inch 0.0254 m
(NIST Special Publication 811, Appendix B; values from memory).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from itertools import product

NEWTONS: Mapping[str, Fraction] = {
    "N": Fraction(1),
    "kN": Fraction(1000),
    "MN": Fraction(1_000_000),
    "lb": Fraction("4.4482216152605"),
    "kip": Fraction("4448.2216152605"),
}
METRES: Mapping[str, Fraction] = {
    "mm": Fraction(1, 1000),
    "cm": Fraction(1, 100),
    "m": Fraction(1),
    "in": Fraction("0.0254"),
    "ft": Fraction("0.3048"),
}
FORCES = "|".join(sorted((*NEWTONS, "kips", "lbs", "k"), key=len, reverse=True))
"""The units of force as people write them, for a regular expression, the longest first."""
FORCES_AND_SIGNS = "|".join(
    sorted((*NEWTONS, "kips", "lbf", "lbs", "k", "#"), key=len, reverse=True)
)
"""The same with lbf and the sign for pounds."""
OTHER_UNITS = frozenset(
    [
        "kg",
        "g",
        "t",
        "Pa",
        "kPa",
        "MPa",
        "GPa",
        "psi",
        "ksi",
        "psf",
        "km",
        "dm",
        "um",
        "µm",
        "nm",
        "mN",
        "GN",
        "GPa",
        "yd",
        "mi",
        "lbm",
        "slug",
        "kgf",
        "tf",
        "s",
        "min",
        "h",
        "J",
        "W",
        "dyn",
        "dyne",
        "ton",
        "tons",
        "tonne",
        "tonnes",
        "grad",
    ]
)
"""Units that students write and that stand for no force or length a truss here is given in."""

_ALIASES: Mapping[str, str] = {
    "newton": "N", "newtons": "N", "Newton": "N", "Newtons": "N", "kilonewton": "kN", "kilonewtons": "kN",
    "KN": "kN", "Kn": "kN", "kn": "kN", "lbf": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb", "kips": "kip", "kipf": "kip",
    "inch": "in", "inches": "in", "foot": "ft", "feet": "ft",
}  # fmt: skip
_ANGLES: Mapping[str, str] = {
    "°": "deg", "deg": "deg", "degs": "deg", "degree": "deg", "degrees": "deg",
    "rad": "rad", "rads": "rad", "radian": "rad", "radians": "rad",
}  # fmt: skip


_SINGLE = {name: name for name in (*NEWTONS, *METRES)} | dict(_ALIASES)


def _products() -> Iterator[tuple[str, str]]:
    """Moments in one word: kNm, Nmm, lbft, ftlb."""
    for force, length in product(("N", "kN", "MN"), ("mm", "cm", "m")):
        yield force + length, f"{force}*{length}"
    for force, length in product(("lb", "lbf", "lbs", "kip", "kips"), ("in", "ft")):
        yield force + length, f"{_SINGLE[force]}*{length}"
        yield length + force, f"{_SINGLE[force]}*{length}"


SPELLED: Mapping[str, str] = _SINGLE | dict(_products())
"""Every exact spelling of a unit, and the unit it means, e.g. "kNm" and "kN*m"."""

LOOSELY: Mapping[str, str] = {
    word.lower(): unit for word, unit in _SINGLE.items() if word not in ("MN", "m")
} | {"knm": "kN*m"}
"""Spellings in any case, save those that would be another unit in another case (mN, M)."""


def angle_unit(word: str) -> str | None:
    """ "deg" or "rad" where `word` spells one of them."""
    return _ANGLES.get(word.lower())


@dataclass(frozen=True, slots=True)
class UnitMeaning:
    """What a unit means: its size in the problem's own units and its powers of force and length."""

    size: Fraction
    value: float
    force: int
    length: int


@lru_cache(maxsize=1024)
def unit_meaning(unit: str, force: str, length: str) -> UnitMeaning:
    """The meaning of `unit` (units joined by "*") where the problem's own are `force`, `length`."""
    size, forces, lengths = Fraction(1), 0, 0
    for part in unit.split("*"):
        if part in NEWTONS:
            size *= NEWTONS[part] / NEWTONS[force]
            forces += 1
        else:
            size *= METRES[part] / METRES[length]
            lengths += 1
    return UnitMeaning(size, float(size), forces, lengths)
