"""Which equations of a body give an unknown together with others that are known by now?

A student who knows a force may leave it out of an equation all the same.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from tutor.homework.sheet import Sheet
from tutor.homework.vectors import Vector

WELL = 0.25
"""One rather takes an equation in which a force has this much of itself or more."""


def equations_beside(sheet: Sheet, name: str, open_names: Sequence[str]) -> Iterator[Vector]:
    """The equations that give `name` together with others that are known by now.

    They are without what is open and without those others; only such as one would take.
    """
    spare = sheet.size - len(open_names)
    others = [other for other in sheet.part if other not in open_names and other != name]
    for count in range(1, spare + 1):
        for more in combinations(others, count):
            for n in sheet.equations(name, (*open_names, *more)):
                if abs(sheet.part[name].share(n)) > WELL:
                    yield n
