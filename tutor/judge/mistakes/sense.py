"""A force enters against the sense the student drew for it."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.about import Fy, Value
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.true_equation import TrueTerm
from tutor.text import raised


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.sense < 0 and not (spot.lost_minus or spot.turned_already):
        yield -spot.per_unit


def look(case: Case) -> Saying:
    return Saying(f"{raised(case.this_line)} does not go with one of the arrows you drew yourself")


def reason(case: Case) -> str:
    return (
        "Any sense may be assumed for an unknown force, but the line must then follow the arrow as "
        "it was drawn; the result tells by its sign whether the guess was right."
    )


def place(case: Case) -> Saying:
    return Saying("stands here against the arrow you drew for it", of=case.subject)


KIND = Kind(
    code="sense",
    called="a force against its own arrow",
    why="The line is written from habit, right and up and pulling being plus, while the arrow on "
    "the diagram was drawn the other way.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(
        Example(Fy(), "A_y + C_y - 12 - 6 - 8 = 0", senses={"A_y": "down"}),
        Example(Value("A_x"), "-5", senses={"A_x": "left"}),
    ),
    touches="neither",
    in_sum=True,
)
