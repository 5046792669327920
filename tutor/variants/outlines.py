"""Where are the joints, and what acts on them, with the numbers that a choice picks?

As `made` puts them in, but without making a problem of each choice: what is worked out for a number, or
for a few together, is kept.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from tutor.model import Joint, Load, Problem, Spread, Support
from tutor.model.parts import AXES
from tutor.model.support import reactions_of
from tutor.model.vary import Of, Vary
from tutor.notation import Exact
from tutor.statics.many import Outline, Pair
from tutor.variants.makes import joint_at, load_with, support_at

Picks = tuple[int, ...]


class NumbersByPlace:
    """The numbers of a `[vary]` by their place in its choices."""

    def __init__(self, vary: Vary) -> None:
        self._choices = vary.choices

    def columns(self, of: Of) -> dict[tuple[str, str], int]:
        """The choice that gives a part of each of its joints or members a number."""
        return {
            (name, choice.part): column
            for column, choice in enumerate(self._choices)
            if choice.of == of
            for name in (choice.joints or ("",))
        }

    def number(self, column: int, picks: Picks) -> Exact:
        return self._choices[column].values[picks[column]]


class MovedPlaces:
    """What moves the joints and fixed points of a problem."""

    def __init__(self, problem: Problem, vary: Vary) -> None:
        self._problem = problem
        self._kept = NumbersByPlace(vary)
        self._moved = self._kept.columns("joints")
        self._factors = {part: column for (_, part), column in self._kept.columns("scale").items()}
        self._own = [(joint, self._concerned(joint.name)) for joint in problem.joints]
        self._supports = [(s, self._concerned(s.joint)) for s in problem.supports]
        self._at: dict[tuple[str, Picks], Pair] = {}
        self._along: dict[tuple[str, Picks], tuple[Pair, ...]] = {}
        self.columns = tuple(sorted({*self._moved.values(), *self._factors.values()}))

    def _concerned(self, joint: str) -> tuple[int, ...]:
        own = {column for (name, _), column in self._moved.items() if name == joint}
        return tuple(sorted(own | set(self._factors.values())))

    def outline(self, picks: Picks) -> Outline:
        """The outline of the truss with these picks, not mirrored.

        Raises ValueError where a support has other reactions than in the problem as written.
        """
        at = tuple(self._joint(joint, columns, picks) for joint, columns in self._own)
        supports = (self._reactions(each, columns, picks) for each, columns in self._supports)
        return Outline(at, tuple(pair for pairs in supports for pair in pairs))

    def _joint(self, joint: Joint, columns: Sequence[int], picks: Picks) -> Pair:
        key = joint.name, tuple(picks[column] for column in columns)
        if key not in self._at:
            self._at[key] = self._placed(joint, picks).at
        return self._at[key]

    def _placed(self, joint: Joint, picks: Picks) -> Joint:
        places = {key: self._kept.number(column, picks) for key, column in self._moved.items()}
        return joint_at(joint, places, self._times(picks))

    def _times(self, picks: Picks) -> dict[str, Exact]:
        return {part: self._kept.number(column, picks) for part, column in self._factors.items()}

    def _reactions(
        self, support: Support, columns: Sequence[int], picks: Picks
    ) -> tuple[Pair, ...]:
        key = support.joint, tuple(picks[column] for column in columns)
        if key not in self._along:
            joint = self._problem.joint[support.joint]
            usual = reactions_of(support, joint)
            own = reactions_of(support_at(support, self._times(picks)), self._placed(joint, picks))
            if [r.name for r in usual] != [r.name for r in own]:
                raise ValueError(support.joint)
            self._along[key] = tuple((r.direction.x, r.direction.y) for r in own)
        return self._along[key]


@dataclass(frozen=True)
class Varying:
    """A load at a joint whose numbers are given by some of the choices."""

    load: Load
    row: int
    columns: Mapping[tuple[str, str], int]


class Acting:
    """What acts on the joints of a problem."""

    def __init__(self, problem: Problem, vary: Vary) -> None:
        self._problem = problem
        self._kept = NumbersByPlace(vary)
        self._rows = {joint.name: 2 * k for k, joint in enumerate(problem.joints)}
        self._same = [0.0] * (2 * len(problem.joints))
        self._varying: list[Varying] = []
        self._spread_columns = self._kept.columns("spread")
        self._vectors: dict[tuple[int, Picks], Pair] = {}
        columns = self._kept.columns("loads")
        for load in problem.given_loads:
            own = {key: column for key, column in columns.items() if key[0] == load.joint}
            row = self._rows[load.joint]
            if own:
                self._varying.append(Varying(load, row, own))
            else:
                self._same[row] += load.vector[0]
                self._same[row + 1] += load.vector[1]

    def loads(self, picks: Picks, at: Sequence[Pair]) -> list[float]:
        """The loads of these picks on joints at these places: x and y of each joint, not mirrored."""
        found = list(self._same)
        for place, varying in enumerate(self._varying):
            x, y = self._vector(place, varying, picks)
            found[varying.row] += x
            found[varying.row + 1] += y
        for spread in self._problem.spreads:
            for row, x, y in self._of_spread(spread, picks, at):
                found[row] += x
                found[row + 1] += y
        return found

    def _vector(self, place: int, varying: Varying, picks: Picks) -> Pair:
        key = place, tuple(picks[column] for column in varying.columns.values())
        if key not in self._vectors:
            sizes = {
                part: self._kept.number(column, picks) for part, column in varying.columns.items()
            }
            self._vectors[key] = load_with(varying.load, sizes).vector
        return self._vectors[key]

    def _of_spread(
        self, spread: Spread, picks: Picks, at: Sequence[Pair]
    ) -> Iterator[tuple[int, float, float]]:
        """Half of what lies on each member, at each of its joints: the row, and (x, y)."""
        ends = [
            (self._rows[member.start], self._rows[member.end])
            for name in spread.on
            if (member := self._problem.member.get(name)) is not None
        ]
        for way, size in spread.pushes:
            part = "total" if spread.total else way
            columns = (self._spread_columns.get((name, part)) for name in spread.on)
            column = next((column for column in columns if column is not None), None)
            value = (size if column is None else self._kept.number(column, picks)).value
            upright = AXES[way][0] == 0
            lengths = [_measure(spread, at[one // 2], at[two // 2], upright) for one, two in ends]
            whole = (math.fsum(lengths) or 1.0) if spread.total else 1.0
            for rows, length in zip(ends, lengths, strict=True):
                half = value * length / whole / 2
                for row in rows:
                    yield row, AXES[way][0] * half, AXES[way][1] * half


def _measure(spread: Spread, one: Pair, other: Pair, upright: bool) -> float:
    """What a size along a push is multiplied by: the length, or the projection across the push."""
    if spread.per == "length":
        return math.dist(one, other)
    axis = 0 if upright else 1
    return abs(one[axis] - other[axis])
