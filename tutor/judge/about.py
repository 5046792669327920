"""Which equation or value is a line meant to be?

`Fx()`, `Fy()`, `M(at=...)` and `Along(degrees)` without a joint are of the whole body; with a joint
they are of that joint, with a `part` of the joints on one side of a section. x is to the right, y is up, moments are counter-clockwise, angles in degrees
from +x.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TypeGuard, overload

from tutor.model import Problem
from tutor.model.naming import joint_called, unknown_called
from tutor.statics.body import (
    SUM_X,
    SUM_Y,
    Equilibrium,
    FreeBody,
    Moment,
    Projection,
    Sum,
    joint_body,
    part,
    whole,
)


@dataclass(frozen=True)
class Fx:
    """The sum of forces to the right."""

    joint: str | None = None
    part: tuple[str, ...] = ()


@dataclass(frozen=True)
class Fy:
    """The sum of forces upward."""

    joint: str | None = None
    part: tuple[str, ...] = ()


@dataclass(frozen=True)
class Along:
    """The sum of forces along a direction."""

    degrees: float
    joint: str | None = None
    part: tuple[str, ...] = ()


@dataclass(frozen=True)
class M:
    """The sum of moments about a joint (its name) or a point (x, y), of the whole body."""

    at: str | tuple[float, float]
    joint: str | None = None
    part: tuple[str, ...] = ()


@dataclass(frozen=True)
class Value:
    """The value of one unknown: a member ("AB") or a reaction ("A_x")."""

    unknown: str


Equation = Fx | Fy | Along | M
ROUNDED_DIRECTION = 0.06
"""A direction this near to a member's own, or to the one square to it (degrees), is meant to be that one."""
LARGEST = 1e12
Asked = Equation | Value


def is_asked(about: object) -> TypeGuard[Asked]:
    """Whether `about` is an equation or a value, its joints names and its numbers within bounds."""
    if isinstance(about, Value):
        return True
    if not isinstance(about, (Fx, Fy, Along, M)) or not isinstance(about.part, tuple):
        return False
    if not (about.joint is None or isinstance(about.joint, str)):
        return False
    if isinstance(about, Along):
        return is_bounded(about.degrees)
    if isinstance(about, M) and not isinstance(about.at, str):
        return isinstance(about.at, tuple) and len(about.at) == 2 and all(map(is_bounded, about.at))
    return True


def is_bounded(value: object) -> TypeGuard[int | float]:
    """Whether it is a number that a place or a direction can have."""
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return False
    return abs(value) <= LARGEST


@overload
def about_called(problem: Problem, about: Value) -> Value: ...
@overload
def about_called(problem: Problem, about: Equation) -> Equation: ...
def about_called(problem: Problem, about: Asked) -> Asked:
    """The same with each name as the problem has it, however it was spelled.

    ValueError for a name that the problem does not have, TypeError for what is no equation or value with numbers that
    can be.
    """
    if not is_asked(about):
        raise TypeError(
            f"a line is about Fx(), Fy(), M(at=…), Along(…) or Value(…), with joints by name and "
            f"numbers up to {LARGEST:g}, not about {about!r}"
        )
    if isinstance(about, Value):
        return Value(unknown_called(problem, about.unknown))
    if isinstance(about, M) and isinstance(about.at, str):
        about = replace(about, at=joint_called(problem, about.at))
    here = isinstance(about.joint, str) and about.joint in problem.joint
    if about.part == () and (about.joint is None or here):
        return about
    joint = None if about.joint is None else joint_called(problem, about.joint)
    return replace(about, joint=joint, part=tuple(joint_called(problem, j) for j in about.part))


def body_of(problem: Problem, about: Equation) -> FreeBody:
    """The free body that `about` is an equation of. KeyError for an unknown joint."""
    return _body(Same(problem), about.joint, about.part)


def point_of(problem: Problem, about: M) -> tuple[float, float]:
    """The moment point in problem coordinates. KeyError for an unknown joint."""
    return problem.joint[about.at].at if isinstance(about.at, str) else about.at


def sum_of(problem: Problem, about: Equation) -> Sum:
    """The projection or moment that `about` asks for."""
    match about:
        case Fx():
            return SUM_X
        case Fy():
            return SUM_Y
        case Along(degrees=degrees, joint=joint):
            return Projection(degrees if joint is None else lined_up(problem, joint, degrees))
        case M():
            return Moment(point_of(problem, about))


def lined_up(problem: Problem, joint: str, degrees: float) -> float:
    """A direction typed in rounded degrees, as the member's own or the one square to it.

    Any direction that is near to neither stays as it is.
    """
    here = problem.joint[joint].at
    for member in problem.meeting[joint]:
        there = problem.joint[member.other(joint)].at
        own = math.degrees(math.atan2(there[1] - here[1], there[0] - here[0]))
        off = (degrees - own + 45.0) % 90.0 - 45.0
        if abs(off) <= ROUNDED_DIRECTION:
            return degrees - off
    return degrees


def equation_of(problem: Problem, about: Equation) -> Equilibrium:
    """The true equilibrium equation that `about` asks for; the last few thousand are kept."""
    return _equation(Same(problem), about)


class Same:
    """A problem as a key: the same object, not an equal one, so that no truss need be compared."""

    __slots__ = ("problem",)

    def __init__(self, problem: Problem) -> None:
        self.problem = problem

    def __hash__(self) -> int:
        return id(self.problem)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Same) and other.problem is self.problem


@lru_cache(maxsize=1024)
def _body(same: Same, joint: str | None, side: tuple[str, ...]) -> FreeBody:
    if side:
        return part(same.problem, side)
    return whole(same.problem) if joint is None else joint_body(same.problem, joint)


@lru_cache(maxsize=4096)
def _equation(same: Same, about: Equation) -> Equilibrium:
    return Equilibrium(body_of(same.problem, about), sum_of(same.problem, about))


def in_words(about: Asked) -> str:
    """A short name for people: "ΣFx at joint C", "ΣM about A", "the value of AB"."""
    if isinstance(about, Value):
        return f"the value of {about.unknown}"
    return f"{sum_in_words(about)} {at_body(about)}"


def sum_in_words(about: Equation) -> str:
    """What an equation adds up, and not of which body: "ΣFx", "ΣM about A", "ΣF along 30°"."""
    match about:
        case M(at=str(name)):
            return f"ΣM about {name}"
        case M(at=(x, y)):
            return f"ΣM about the point ({x:g}, {y:g})"
        case Along(degrees=degrees):
            return f"ΣF along {degrees:.4g}°"
        case Fy():
            return "ΣFy"
        case _:
            return "ΣFx"


def at_body(about: Equation) -> str:
    """Of which body an equation is: "at joint C", "of the whole truss"."""
    return f"{'at' if about.joint and not about.part else 'of'} {body_in_words(about)}"


def body_in_words(about: Equation) -> str:
    """The free body of an equation: "joint C", "the part with A, B", "the whole truss"."""
    if about.part:
        return f"the part with {', '.join(about.part)}"
    return f"joint {about.joint}" if about.joint else "the whole truss"


def as_text(about: Asked) -> str:
    """One line of text that `from_text` reads back; used in kept lessons."""
    match about:
        case Value(unknown=unknown):
            return f"value {unknown}"
        case M(at=str(name)):
            text = f"M {name}"
        case M(at=(x, y)):
            text = f"M {x!r} {y!r}"
        case Along(degrees=degrees):
            text = f"along {degrees!r}"
        case _:
            text = type(about).__name__
    if about.part:
        return f"{text} of {' '.join(about.part)}"
    return f"{text} @ {about.joint}" if about.joint else text


_NUMBER = r"-?[0-9.]+(?:e[+-]?[0-9]+)?"


def from_text(text: str) -> Asked:
    """The about that `as_text` wrote. ValueError for anything else."""
    text, _, cut = text.partition(" of ")
    words, _, joint = text.partition(" @ ")
    place, side = joint or None, tuple(cut.split())
    if words in ("Fx", "Fy"):
        return Fx(place, side) if words == "Fx" else Fy(place, side)
    if match := re.fullmatch(r"value (\S+)", words):
        return Value(match[1])
    if match := re.fullmatch(rf"along ({_NUMBER})", words):
        return Along(float(match[1]), place, side)
    if match := re.fullmatch(rf"M ({_NUMBER}) ({_NUMBER})", words):
        return M((float(match[1]), float(match[2])), place, side)
    if match := re.fullmatch(r"M (\S+)", words):
        return M(match[1], place, side)
    raise ValueError(f"no equation is called {text!r}")
