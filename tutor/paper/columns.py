"""How do the numbers of a table stand: with their points below one another, at the right of a column?"""

from __future__ import annotations

import re
from collections.abc import Sequence

NUMBER = re.compile(r"(−?\d+)(\.\d+)?((?: .*)?)")
DIGIT = "\u2007"
"""A space as wide as a digit."""
POINT = "\u2008"
"""A space as wide as a point."""


def aligned(rows: Sequence[Sequence[str]]) -> tuple[tuple[str, ...], ...]:
    """The same rows, with each column of numbers filled up by spaces to one width.

    A column is one of numbers where each of its cells begins with one, or is empty: "7.5", "−12",
    "40 T", "3 to the left". What stands behind a number stays behind it.
    """
    columns = [_aligned(column) for column in zip(*rows, strict=True)]
    return tuple(zip(*columns, strict=True))


def is_numbers(column: Sequence[str]) -> bool:
    """Whether a column holds numbers and nothing else; the empty cells of one do not count."""
    found = [NUMBER.fullmatch(cell.strip(DIGIT + POINT)) for cell in column if cell]
    return bool(found) and all(each is not None and not each[3] for each in found)


def _aligned(column: Sequence[str]) -> list[str]:
    found = [NUMBER.fullmatch(cell) for cell in column if cell]
    if not found or None in found:
        return list(column)
    wide = max(len(each[1]) for each in found if each)
    behind = max(len(each[2] or "") for each in found if each)
    return [_filled(cell, wide, behind) if cell else cell for cell in column]


def _filled(cell: str, wide: int, behind: int) -> str:
    found = NUMBER.fullmatch(cell)
    assert found is not None
    whole, part, rest = found[1], found[2] or "", found[3]
    missing = behind - len(part)
    space = ("" if part else POINT) + DIGIT * (missing if part else missing - 1) if missing else ""
    return f"{whole:{DIGIT}>{wide}}{part}{space}{rest}"
