"""A number stands in another unit than the rest of the line."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.about import Fx, Value
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import SLIGHTLY
from tutor.judge.true_equation import TrueTerm
from tutor.statics.words import unit_in_words

FACTORS = (1000.0, 0.001, 1e6, 1e-6)


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.per_unit == 0.0 or not spot.numeric:
        return
    for factor in FACTORS:
        yield spot.per_unit * factor


def look(case: Case) -> Saying:
    return Saying(f"The figures in {case.this_line} fit, but not their units")


def reason(case: Case) -> str:
    return (
        f"This problem counts forces in {unit_in_words(case.problem.force)} and lengths in "
        f"{unit_in_words(case.problem.length)}; "
        "every number without a unit is read so. A unit may be written behind any number."
    )


def place(case: Case) -> Saying:
    if case.force is None:
        return Saying(
            f"The numbers of {case.this_line} are in another unit", "write the units behind them."
        )
    return Saying(
        "is in another unit", "write its unit behind it.", of=f"The number of {case.thing}"
    )


KIND = Kind(
    code="unit",
    called="another unit",
    rare=SLIGHTLY,
    why="Newtons and kilonewtons, or millimetres and metres, stand side by side in one calculation.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(
        Example(Fx(), "A_x + 5000 = 0"),
        Example(Value("AD"), "-6250"),
    ),
    touches="size",
)
