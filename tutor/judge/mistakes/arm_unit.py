"""A distance stands in another unit than the others: millimetres beside metres."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.about import M
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import SLIGHTLY
from tutor.judge.true_equation import TrueTerm
from tutor.statics.words import unit_in_words

LENGTHS = (0.001, 1000.0)
"""Millimetres taken for metres, and metres for millimetres."""
FACTORS = (*LENGTHS, 100.0, 0.01, 12.0, 1 / 12)


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.is_moment:
        for factor in FACTORS:
            yield spot.per_unit * factor


def look(case: Case) -> Saying:
    return Saying(f"The distances in {case.this_line} are not all in the same unit")


def reason(case: Case) -> str:
    return (
        f"This problem counts lengths in {unit_in_words(case.problem.length)}; a distance in another unit needs "
        "its unit written behind it, or must be turned into this one."
    )


def place(case: Case) -> Saying:
    if case.force is None:
        return Saying(
            f"The distances beside the numbers of {case.this_line} stand in another unit than "
            "the other arms"
        )
    return Saying(
        "stands in another unit than the other arms", of=f"The distance beside {case.thing}"
    )


KIND = Kind(
    code="arm-unit",
    called="an arm in another unit",
    rare=SLIGHTLY,
    why="One dimension of the picture is given in another unit and copied as it stands.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(M("A"), "14 C_y - 9*12 - 12000*5 - 9*6 - 9*8 = 0"),),
    runs_through=True,
)
