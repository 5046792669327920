"""What of a problem may differ from student to student?

`[vary]` of a problem file: numbers to choose from, whether the truss may be mirrored, conditions that
each student's numbers must meet, and the words around it with gaps that are filled in. Which numbers
a student gets is for `tutor.variants`.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TYPE_CHECKING, Literal, NamedTuple

from tutor.model.parts import turned
from tutor.notation import Exact

if TYPE_CHECKING:
    from tutor.model.problem import Problem
    from tutor.model.spread import Spread

Of = Literal["loads", "spread", "joints", "scale"]
Kind = Literal["nice", "largest", "smallest", "size", "tension", "compression", "zero", "not zero"]
Relation = Literal["<", "<=", ">", ">="]
HOLDS: Mapping[Relation, Callable[[float, float], bool]] = {
    "<": lambda one, other: one < other,
    "<=": lambda one, other: one <= other,
    ">": lambda one, other: one > other,
    ">=": lambda one, other: one >= other,
}
GAP = re.compile(r"\{([^{}]*)\}")


@dataclass(frozen=True)
class VariedPart:
    """One number that varies, alike at all its `joints`: the push `part` of their loads ("down",
    "size" …), their place along `part` ("x" or "y"), or, of "scale", what every place along `part`
    is multiplied by. Of "spread", `joints` are the names of members instead, and `part` is the push, or
    the total, of what lies on them. `values` are what it may be."""

    of: Of
    joints: tuple[str, ...]
    part: str
    values: tuple[Exact, ...]

    @property
    def words(self) -> str:
        """The number as one names it: "C down", "B D y", "scale x"."""
        return " ".join((*(self.joints or (self.of,)), self.part))


@dataclass(frozen=True)
class Condition:
    """What every variant must meet, `text` as the file says it.

    `unknown` is the member or reaction concerned, "" where all member forces are; `limit` is in the
    force unit of the problem.
    """

    text: str
    kind: Kind
    unknown: str = ""
    relation: Relation = "<"
    limit: float = 0.0


@dataclass(frozen=True)
class Vary:
    """All of `[vary]`, with the title and story as they are written, gaps and all."""

    choices: tuple[VariedPart, ...] = ()
    mirror: bool = False
    keep: tuple[Condition, ...] = ()
    title: str = ""
    story: str = ""


def gaps(text: str) -> Iterator[str]:
    """What stands in the braces of a text, in its order."""
    yield from GAP.findall(text)


def filled(text: str, numbers: Mapping[str, str], mirrored: bool) -> str:
    """The text with its gaps filled: "{left|right}" by its side, "{C down}" by its number.

    A gap that is neither stays as it is.
    """

    def fill(gap: re.Match[str]) -> str:
        inner = gap[1]
        one, bar, other = inner.partition("|")
        if bar:
            return other.strip() if mirrored else one.strip()
        return numbers.get(" ".join(inner.split()), gap[0])

    return GAP.sub(fill, text)


class GapName(NamedTuple):
    """What a gap may name: a `part` of a joint or a member, or of the whole truss ("span", "height")."""

    of: str
    part: str

    @property
    def text(self) -> str:
        """As it stands in a gap: "C down", "span"."""
        return f"{self.of} {self.part}" if self.of else self.part


def numbers_of(problem: Problem, mirrored: bool = False) -> dict[str, str]:
    """What a gap may name, as it is written there, each with its number."""
    return {name.text: number for name, number in numbers_named(problem, mirrored).items()}


def numbers_named(problem: Problem, mirrored: bool = False) -> dict[GapName, str]:
    """What a gap may name, each with its number as one writes it in a story: every push ("C down"),
    what lies on each member ("AB down", "AB total"), every place ("C x", "C y"), and the span and height
    of the truss. In a `mirrored` one a push keeps the name that it has in the file, a place the joint."""
    written = turned if mirrored else tuple
    found: dict[GapName, str] = {}
    for load in problem.given_loads:
        polar = [("size", load.size), ("angle", load.angle)]
        for part, number in (*written(load.pushes), *polar):
            if number is not None:
                found.setdefault(GapName(load.joint, part), plain_number(number))
    for spread in problem.spreads:
        for name in spread.on:
            for part, size in parts_of_spread(replace(spread, pushes=written(spread.pushes))):
                found.setdefault(GapName(name, part), plain_number(size))
    for joint in problem.joints:
        found[GapName(joint.name, "x")] = plain_number(joint.x)
        found[GapName(joint.name, "y")] = plain_number(joint.y)
    for name, places in (
        ("span", [j.x for j in problem.joints]),
        ("height", [j.y for j in problem.joints]),
    ):
        if places:
            low, high = min(places, key=lambda p: p.value), max(places, key=lambda p: p.value)
            found[GapName("", name)] = plain_number(high.minus(low))
    return found


def parts_of_spread(spread: Spread) -> tuple[tuple[str, Exact], ...]:
    """The keys that give a load on members its sizes, with these."""
    return tuple(("total" if spread.total else way, size) for way, size in spread.pushes)


def plain_number(number: Exact) -> str:
    """A number for a story: a decimal where it ends soon, else as it was written."""
    return number.text if number.fraction is None else exact(number.fraction).text


def exact(fraction: Fraction) -> Exact:
    """The number, written as a decimal where it ends soon."""
    decimal = f"{float(fraction):.6g}"
    if "e" not in decimal and Fraction(decimal) == fraction:
        return Exact(decimal, float(fraction), fraction)
    return Exact.of(fraction)
