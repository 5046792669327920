"""What is a line judged by besides the problem: the student's senses and earlier values?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from tutor.model import Problem
from tutor.model.direction import Direction
from tutor.notation import Names, Slant, Unreadable, read_value

_OPPOSED = ("left", "down", "C", "against")


@dataclass(frozen=True)
class Carried:
    """A value the student has already found, under their own sense, and its rounding half-width."""

    value: float
    radius: float


@dataclass(frozen=True)
class Given:
    """What a line is judged by besides the problem: the student's senses and earlier values.

    `senses` maps an unknown to the sense the student drew; `known` maps an unknown to its value
    under that sense. `sign(name)` is -1.0 where the student's sense opposes the positive one.
    """

    senses: Mapping[str, str]
    known: Mapping[str, Carried]

    def sign(self, name: str) -> float:
        return -1.0 if self.senses.get(name) in _OPPOSED else 1.0

    @cached_property
    def opposed(self) -> frozenset[str]:
        """The unknowns drawn against their positive sense."""
        return frozenset(name for name, sense in self.senses.items() if sense in _OPPOSED)


def names_of(problem: Problem) -> Names:
    """The table of names for reading lines about `problem`."""
    return Names.of(
        ((m.name, m.start, m.end) for m in problem.members),
        (r.name for r in problem.reactions),
        (j.name for j in problem.joints),
        problem.force,
        problem.length,
        slants_of(problem),
    )


def slants_of(problem: Problem) -> tuple[Slant, ...]:
    """The directions of all unknowns, for reading components."""
    ways = [(r.name, r.direction, r.pull) for r in problem.reactions]
    for member in problem.members:
        start, end = problem.joint[member.start], problem.joint[member.end]
        along = Direction.along(end.x.minus(start.x), end.y.minus(start.y))
        ways.append((member.name, along, False))
    level = {reaction.name for reaction in problem.reactions if reaction.direction.x}
    pushed = any(abs(load.vector[0]) > 1e-12 for load in problem.loads)
    upright = set() if pushed or len(level) > 1 else {f"{name[:-2]}_y" for name in level}
    return tuple(
        Slant(name, way.x, way.y, *_squares(way), pull=pull, alone=name in upright)
        for name, way, pull in ways
    )


_SQUARED_COSINES = {0: Fraction(1), 30: Fraction(3, 4), 45: Fraction(1, 2)}
_SQUARED_COSINES |= {90 - angle: 1 - square for angle, square in _SQUARED_COSINES.items()}


def _squares(way: Direction) -> tuple[Fraction | None, Fraction | None]:
    """The squares of the direction cosines where they are seen to be rational."""
    if way.vector is not None:
        dx, dy = (part.fraction for part in way.vector)
        if dx is None or dy is None:
            return None, None
        square = dx * dx + dy * dy
        return dx * dx / square, dy * dy / square
    turn = None if way.angle is None else way.angle.fraction
    square_x = (
        None if turn is None else _SQUARED_COSINES.get(int(min(turn % 180, 180 - turn % 180)))
    )
    if turn is None or turn.denominator != 1 or square_x is None:
        return None, None
    return square_x, 1 - square_x


def given(
    problem: Problem,
    names: Names,
    senses: Mapping[str, str] | None,
    known: Mapping[str, float | int | str] | None,
) -> Given:
    """The student's senses and values, checked.

    Unknown names may be spelled either way round for a member ("BA"). A number is taken as exact
    to 0.5 % of itself, a string keeps the precision it was written with. ValueError for a name or
    a sense that is not there, or a value that cannot be read.
    """
    drawn: dict[str, str] = {}
    for name, sense in (senses or {}).items():
        own = canonical(problem, name)
        if sense not in senses_for(problem, own):
            raise ValueError(
                f"{name} has no sense {sense!r}: {', '.join(senses_for(problem, own))}"
            )
        drawn[own] = sense
    signs = Given(drawn, {})
    values: dict[str, Carried] = {}
    for name, value in (known or {}).items():
        own = canonical(problem, name)
        values[own] = _carried(problem, names, own, value, signs)
    return Given(drawn, values)


def senses_for(problem: Problem, unknown: str) -> tuple[str, str]:
    """The two senses an unknown can be drawn in, the positive one first."""
    if unknown in problem.member:
        return ("T", "C")
    reaction = problem.reaction[unknown]
    if unknown != f"R_{reaction.joint}":
        return ("right", "left") if reaction.direction.x else ("up", "down")
    return ("along", "against")


def canonical(problem: Problem, name: str) -> str:
    """The one name of an unknown. ValueError where the problem has no such unknown."""
    if name in problem.member or name in problem.reaction:
        return name
    halves = name.split("-") if "-" in name else (name[:1], name[1:])
    if len(halves) == 2 and (member := problem.between(halves[0], halves[1])):
        return member.name
    raise ValueError(f"this truss has no unknown {name!r}")


def _carried(
    problem: Problem, names: Names, unknown: str, value: float | int | str, signs: Given
) -> Carried:
    if not isinstance(value, str):
        return Carried(float(value), abs(value) * 0.005)
    reading = read_value(value, names, unknown)
    if isinstance(reading, Unreadable):
        raise ValueError(reading.message)
    sign = signs.sign(unknown)
    return Carried(
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
    return reaction is not None and any(
        support.joint == reaction.joint and support.kind == "link" for support in problem.supports
    )


def positive_sense(problem: Problem, unknown: str, sense: str, sign: float) -> float:
    """+1.0 or -1.0: whether a word such as "left" or "up" is the positive sense of a reaction.

    "against" is against the student's own arrow, whose `sign` is given; for an inclined reaction,
    against its stated direction. `sense` must fit the reaction, as `fits` tells.
    """
    if sense == "against":
        return -1.0 if unknown == f"R_{problem.reaction[unknown].joint}" else -sign
    direction = problem.reaction[unknown].direction
    way = direction.x if sense in ("left", "right") else direction.y
    return 1.0 if (way > 0) == (sense in ("right", "up")) else -1.0


def fits(problem: Problem, unknown: str, sense: str) -> bool:
    """Whether a reaction can act in the sense of a word such as "left" or "up" at all."""
    direction = problem.reaction[unknown].direction
    if sense in ("left", "right"):
        return direction.x != 0.0
    return sense == "against" or direction.y != 0.0
