"""A force enters a sum the wrong way round."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.about import Fy, Value
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import HARDLY
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    if not spot.is_moment and not spot.has_own_sign:
        yield -spot.per_unit


def look(case: Case) -> Saying:
    if not case.only_turned:
        return Saying(f"Something in {case.this_line} points the other way")
    return Saying(f"The sizes fit, but something in {case.this_line} points the other way")


def reason(case: Case) -> str:
    if case.at_joint:
        return (
            f"On the free-body diagram of {case.body}, every arrow with a component along your positive "
            "direction enters with plus, every arrow against it with minus; a member drawn in "
            "tension pulls away from the joint."
        )
    return (
        f"On the free-body diagram of {case.body}, every arrow with a component along your positive "
        "direction enters with plus, every arrow against it with minus."
    )


def place(case: Case) -> Saying:
    return Saying(
        "has the wrong sign beside the other terms",
        "does its arrow go along your positive direction or against it?",
        of=case.subject,
    )


KIND = Kind(
    code="sign",
    called="a sign turned",
    rare=HARDLY,
    why="The arrow on the diagram and the sign in the line are written at different moments, and "
    "the positive direction is forgotten in between.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(
        Example(Fy(), "A_y + C_y + 12 - 6 - 8 = 0"),
        Example(Value("AD"), "6.25"),
    ),
    touches="neither",
    in_sum=True,
)
