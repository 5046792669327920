"""The size of a member force is right, but tension and compression are swapped."""

from __future__ import annotations

from tutor.judge.about import Value
from tutor.judge.example import Example
from tutor.judge.kind import Case, Kind
from tutor.judge.saying import Saying
from tutor.judge.scale import HARDLY


def look(case: Case) -> Saying:
    return Saying("The size is right, but not what the force does to the member")


def reason(case: Case) -> str:
    return (
        "A force drawn pulling on the joint that comes out positive is tension (T); coming out "
        "negative it is compression (C). Drawn pushing, it is the other way round."
    )


def place(case: Case) -> Saying:
    return Saying(
        "has the wrong letter", "does its arrow, read with its sign, pull or push?", of=case.subject
    )


KIND = Kind(
    code="tension-compression",
    called="tension and compression exchanged",
    rare=HARDLY,
    why="The letter is chosen by the look of the arrow on the member instead of on the joint.",
    look=look,
    reason=reason,
    place=place,
    examples=(Example(Value("AD"), "6.25 T"),),
)
