"""A force stands in an equation in which it has no part."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge.about import Fy
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import SLIGHTLY
from tutor.judge.true_equation import TrueTerm


def variants(spot: TrueTerm) -> Iterator[float]:
    if spot.per_unit != 0.0:
        return
    ux, uy = spot.unit_vector
    dx, dy = spot.offset
    lengths = (dx, dy, (dx**2 + dy**2) ** 0.5) if spot.is_moment else (1.0,)
    for length in lengths:
        for part in (1.0, ux, uy):
            if part * length != 0.0:
                yield part * length
                yield -part * length


def look(case: Case) -> Saying:
    return Saying(f"There is a term too many in {case.this_line}")


def reason(case: Case) -> str:
    return f"{_no_part(case)}; and {_not_here(case)}."


def _no_part(case: Case) -> str:
    if case.is_moment:
        return f"A force whose line of action passes through {case.point} has no moment about it"
    return "A force perpendicular to the direction of the sum has no component in it"


def _not_here(case: Case) -> str:
    if case.at_joint:
        return f"only the members that end at {case.body}, and what is applied there, act on it"
    if case.is_cut:
        return f"a member that lies wholly within {case.body} does not enter a sum of it"
    return "a member is inside the truss and does not enter a sum of the whole"


def place(case: Case) -> Saying:
    if case.force is None:
        return Saying(
            f"One number stands for no force on {case.body}", "say what it is, or leave it out."
        )
    if case.spot is None and case.at_joint:
        return Saying(f"does not act on {case.body}", "see where it ends.", of=case.subject)
    if case.spot is None:
        return Saying(
            f"does not enter {case.body} from outside", "see where it acts.", of=case.subject
        )
    if case.is_moment:
        return Saying(
            "does not belong in here", "see where its line of action passes.", of=case.subject
        )
    return Saying(
        "does not belong in here", "does any of it go the way this sum goes?", of=case.subject
    )


KIND = Kind(
    code="extra",
    called="something that does not belong there",
    rare=SLIGHTLY,
    why="Every force in sight is written down, without asking whether it acts on this body and has "
    "a part in this direction or an arm about this point.",
    look=look,
    reason=reason,
    place=place,
    variants=variants,
    examples=(Example(Fy("A"), "A_y + 4/5 F_AD + F_AB = 0"),),
    touches="neither",
    counts="too many",
)
