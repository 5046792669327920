"""What may be said of the first wrong place, level by level?

Four levels as everywhere: look, reason, place, line. The first three hold no answer; `right_lines`,
the last, is an explicit call of its own and the only one that shows what would be right.
"""

from __future__ import annotations

from typing import Literal

from tutor.homework.findings import Review
from tutor.homework.sheet import WHOLE, place_in_words
from tutor.homework.work import read_work
from tutor.judge import Equation, Fx, Fy, M, Value, in_words, judge_of, right_line
from tutor.model import Problem

Level = Literal["look", "reason", "place"]
LEVELS: tuple[Level, ...] = ("look", "reason", "place")

NO_CAUSE = {
    "look": "The values found here do not go together with those found before, and no single slip "
    "explains them.",
    "reason": "Put all values at this place back into its equations: what is left over must be "
    "nothing, apart from rounding. Where it is not, the line or its solution has a slip.",
    "place": "Write the lines of {place} again from an empty free-body diagram, with the values you "
    "had before coming to it.",
}


def hint(review: Review, level: Level) -> str:
    """One of the first three hints for the first wrong place; "" where nothing is wrong."""
    if review.first is None:
        return ""
    if not review.accounts:
        return NO_CAUSE[level].format(place=place_in_words(review.first))
    said = _said(review, level)
    if level == "look" and not review.accounts[0].throughout:
        return f"At {place_in_words(review.first)}: {said}"
    return said or NO_CAUSE[level].format(place=place_in_words(review.first))


def _said(review: Review, level: Level) -> str:
    """What the catalogue says, and what it says of a second mistake that fits about as well."""
    best, *others = review.accounts
    also = [a for a in others if a.place == best.place and not best.certain][:1]
    texts = [
        {
            "look": each.mistake.text if best.throughout else each.look,
            "reason": each.mistake.reason,
            "place": each.mistake.place,
        }[level]
        for each in (best, *also)
    ]
    told = [text for text in dict.fromkeys(texts) if text]
    return " Or, which fits as well: ".join(told)


def right_lines(problem: Problem, work: object, review: Review) -> tuple[tuple[str, str], ...]:
    """The last hint: the right lines of the first wrong place, each with its equation in words.

    They are written with the student's senses and with the values that come from elsewhere; what
    was wrong at the place stays unknown in them.
    """
    if review.first is None:
        return ()
    desk = judge_of(problem)
    handed_in = read_work(desk, work)
    here = {
        str(finding.name)
        for finding in review.findings
        if finding.state != "right" and isinstance(finding.name, str)
    }
    own = handed_in.own(without=here)
    return tuple(
        (in_words(about), right_line(problem, about, own)) for about in _abouts(problem, review)
    )


def _abouts(problem: Problem, review: Review) -> tuple[Equation, ...]:
    """The line with the slip where it is known, else those that one writes at the place."""
    about = review.accounts[0].about if review.accounts else None
    if about is not None and not isinstance(about, Value):
        return (about,)
    if review.first == WHOLE:
        return (M(problem.supports[0].joint), Fx(), Fy())
    return (Fx(review.first), Fy(review.first))
