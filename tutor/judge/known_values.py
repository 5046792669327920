"""What is a line judged by besides the problem: the student's senses and earlier values?"""

from __future__ import annotations

import math
from collections.abc import Mapping

from tutor.judge.same import SAME
from tutor.model import Problem
from tutor.model.naming import unknown_called
from tutor.notation import Names, Unreadable, read_line, value_of
from tutor.notation.elements.fact import fact, kept

_OPPOSED = ("left", "down", "C", "against")


@fact
class KnownValue:
    """A value the student has already found, under their own sense, and its rounding half-width."""

    value: float
    radius: float


@fact
class KnownValues:
    """What a line is judged by besides the problem: the student's senses and earlier values.

    `senses` maps an unknown to the sense the student drew; `known` maps an unknown to its value
    under that sense. `sign(name)` is -1.0 where the student's sense opposes the positive one.
    """

    senses: Mapping[str, str]
    known: Mapping[str, KnownValue]

    def sign(self, name: str) -> float:
        return -1.0 if self.senses.get(name) in _OPPOSED else 1.0

    @kept
    def as_put_in(self) -> KnownValues:
        """The same values without their rounding, as numbers in a line."""
        exact = {name: KnownValue(each.value, 0.0) for name, each in self.known.items()}
        return KnownValues(self.senses, exact)

    @kept
    def opposed(self) -> frozenset[str]:
        """The unknowns drawn against their positive sense."""
        return frozenset(name for name, sense in self.senses.items() if sense in _OPPOSED)


NOTHING_OWN = KnownValues({}, {})
"""No sense drawn and no value found yet."""


def checked_known(
    problem: Problem,
    names: Names,
    senses: Mapping[str, str] | None,
    known: Mapping[str, float | int | str] | None,
) -> KnownValues:
    """The student's senses and values, checked.

    Unknowns may be spelled in every way that the notation reads. A number is taken as exact to
    0.5 % of itself, a string keeps the precision it was written with. ValueError for a name or a
    sense that is not there, or a value that cannot be read.
    """
    drawn: dict[str, str] = {}
    for name, sense in (senses or {}).items():
        own = unknown_called(problem, name)
        if sense not in senses_for(problem, own):
            raise ValueError(
                f"{name} has no sense {sense!r}: {', '.join(senses_for(problem, own))}"
            )
        drawn[own] = sense
    signs = KnownValues(drawn, {})
    values: dict[str, KnownValue] = {}
    for name, value in (known or {}).items():
        own = unknown_called(problem, name)
        values[own] = _carried(problem, names, own, value, signs)
    return KnownValues(drawn, values)


def senses_for(problem: Problem, unknown: str) -> tuple[str, str]:
    """The two senses an unknown can be drawn in, the positive one first."""
    if unknown in problem.member:
        return ("T", "C")
    reaction = problem.reaction[unknown]
    if reaction.axis:
        return ("right", "left") if reaction.axis == "x" else ("up", "down")
    return ("along", "against")


def inclined_in_words(problem: Problem, unknown: str, sense: str) -> str:
    """Which way an inclined reaction acts on the joint in a sense: "up and to the left"."""
    direction, flip = problem.reaction[unknown].direction, 1.0 if sense == "along" else -1.0
    x, y = direction.x * flip, direction.y * flip
    return f"{'up' if y > 0 else 'down'} and to the {'right' if x > 0 else 'left'}"


def _carried(
    problem: Problem, names: Names, unknown: str, value: float | int | str, signs: KnownValues
) -> KnownValue:
    if not isinstance(value, str):
        if not math.isfinite(value):
            raise ValueError(f"{unknown} is no number: {value!r}")
        return KnownValue(float(value), abs(value) * SAME)
    reading = value_of(read_line(value, names), reaction="_" in unknown)
    if isinstance(reading, Unreadable):
        raise ValueError(reading.message)
    sign = signs.sign(unknown)
    return KnownValue(
        sign * signed(problem, unknown, reading.value, reading.letter, reading.sense, sign),
        reading.radius,
    )


def signed(
    problem: Problem,
    unknown: str,
    number: float,
    letter: str | None,
    sense: str | None,
    sign: float,
) -> float:
    """The value in the positive sense that a typed number stands for.

    A letter T or C, or a word such as "left", decides by itself, whatever sign stands beside it; a
    plain number is read in the student's own sense, whose `sign` is given.
    """
    if letter is not None:
        return abs(number) if letter == "T" else -abs(number)
    if sense is not None and unknown in problem.reaction:
        return positive_sense(problem, unknown, sense, sign) * abs(number)
    return sign * number


def is_link(problem: Problem, unknown: str) -> bool:
    """Whether an unknown is the force in a short link, which pulls or pushes like a member."""
    reaction = problem.reaction.get(unknown)
    return reaction is not None and reaction.pull


def positive_sense(problem: Problem, unknown: str, sense: str, sign: float) -> float:
    """+1.0 or -1.0: whether a word such as "left" or "up" is the positive sense of a reaction.

    "against" is against the student's own arrow, whose `sign` is given; for an inclined reaction,
    against its stated direction. `sense` must fit the reaction, as `fits` tells.
    """
    if sense == "against":
        return -sign if problem.reaction[unknown].axis else -1.0
    direction = problem.reaction[unknown].direction
    x, y = way_of(sense)
    return 1.0 if x * direction.x + y * direction.y > 0 else -1.0


def way_of(sense: str) -> tuple[int, int]:
    """Which way a word such as "left" or "up and left" points along x and along y: 1, -1 or 0."""
    return WAYS.get(sense, (0, 0))


_LEVEL, _UPRIGHT = {"right": 1, "left": -1}, {"up": 1, "down": -1}
WAYS: Mapping[str, tuple[int, int]] = {
    **{word: (x, 0) for word, x in _LEVEL.items()},
    **{word: (0, y) for word, y in _UPRIGHT.items()},
    **{f"{up} and {to}": (x, y) for up, y in _UPRIGHT.items() for to, x in _LEVEL.items()},
}
"""Every word for a way, as the notation gives them."""


def can_act(problem: Problem, unknown: str, sense: str) -> bool:
    """Whether a reaction can act in the sense of a word such as "left" or "up" at all."""
    direction = problem.reaction[unknown].direction
    if sense == "against":
        return True
    x, y = way_of(sense)
    along = [one * other for one, other in ((x, direction.x), (y, direction.y)) if one]
    return all(each > 0 for each in along) or all(each < 0 for each in along)
