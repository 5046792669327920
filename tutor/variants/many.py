"""Which of many choices of numbers surely meet the conditions of a problem, and which surely do not?

All are worked out side by side; what is left open, at a limit or for a truss that hardly stands, is for
`misses`, which looks at one choice at a time and says what is wrong.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property

from tutor.model import Problem
from tutor.model.naming import unknown_called
from tutor.model.support import kind_of_support, push_along
from tutor.model.vary import Vary
from tutor.statics.many import Forces, ManyTrusses, Outline
from tutor.statics.many_drawn import crossings
from tutor.variants.conditions import AsWritten
from tutor.variants.makes import picks_at
from tutor.variants.mirror import mirrored
from tutor.variants.outlines import Acting, MovedPlaces, Picks
from tutor.variants.sure import Sure, TrussForces, all_sure, surely_met

MOST_MEMBERS = 120
"""Of larger trusses so few are solved in a second that they are looked at one by one."""


class Many:
    """The choices of one problem, held against it as it is written."""

    def __init__(self, problem: Problem, vary: Vary, written: AsWritten) -> None:
        self._problem = problem
        self._vary = vary
        self._written = written
        self._places = MovedPlaces(problem, vary)
        self._acting = Acting(problem, vary)
        names = problem.unknowns
        self._members = slice(len(problem.reactions), len(names))
        self._column = {name: k for k, name in enumerate(names)}
        for condition in vary.keep:
            if condition.unknown:
                own = unknown_called(problem, condition.unknown)
                self._column[condition.unknown] = self._column[own]

    def met(self, indices: Sequence[int]) -> list[Sure]:
        """Whether the choices of these numbers meet every condition; None where that is left open."""
        if not indices or len(self._problem.members) > MOST_MEMBERS:
            return [None] * len(indices)
        chosen = [picks_at(self._vary, index) for index in indices]
        try:
            outlines, of = self._outlines([picks for picks, _ in chosen])
        except ValueError:
            return [None] * len(indices)
        loads = [
            self._acting.loads(picks, outlines[k].at)
            for (picks, _), k in zip(chosen, of, strict=True)
        ]
        forces = ManyTrusses(self._problem, outlines).forces(of, loads)
        drawn = self._drawn(outlines, any(turned for _, turned in chosen))
        steps = [self._steps(outline) for outline in outlines]
        moves = bool(self._places.columns)
        return [
            all_sure(
                (
                    drawn[k] if moves or turned else True,
                    self._met(found, turned, steps[k]),
                )
            )
            for (_, turned), k, found in zip(chosen, of, forces, strict=True)
        ]

    def _outlines(self, chosen: Sequence[Picks]) -> tuple[list[Outline], list[int]]:
        """The different outlines, and which of them each choice has."""
        first: dict[Picks, int] = {}
        outlines: list[Outline] = []
        of: list[int] = []
        for picks in chosen:
            key = tuple(picks[column] for column in self._places.columns)
            if key not in first:
                first[key] = len(outlines)
                outlines.append(self._places.outline(picks))
            of.append(first[key])
        return outlines, of

    def _drawn(self, outlines: Sequence[Outline], turned: bool) -> list[Sure]:
        """Whether each outline can be drawn as well as the truss as written."""
        if not turned and not self._places.columns:
            return [True] * len(outlines)
        written = Outline(tuple(joint.at for joint in self._problem.joints), ())
        before, *found = crossings(self._problem, [written, *outlines])
        return [None if each is None or before is None else each <= before for each in found]

    def _steps(self, outline: Outline) -> tuple[tuple[float, float], ...]:
        at = dict(zip(self._problem.joint, outline.at, strict=True))
        return tuple(
            (at[m.end][0] - at[m.start][0], at[m.end][1] - at[m.start][1])
            for m in self._problem.members
        )

    def _met(
        self, found: Forces | None, turned: bool, steps: tuple[tuple[float, float], ...]
    ) -> Sure:
        """Whether a truss that can be drawn stands and meets the rest, with these forces."""
        if found is None:
            return None
        if turned:
            if self._turns is None:
                return None
            values = [f * sign for f, sign in zip(found.values, self._turns, strict=False)]
            found = found._replace(values=values + found.values[self._members])
        pushes = self._pushes[turned]
        pulled = [joint for joint, k, push in pushes if found.values[k] * push < 0]
        if any(joint not in self._written.pulling for joint in pulled):
            return False
        case = TrussForces(found, self._column, self._members, steps)
        answer: Sure = True
        for condition in self._vary.keep:
            met = surely_met(condition, case)
            if met is False:
                return False
            answer = answer and met
        return answer

    @cached_property
    def _mirrored(self) -> Problem:
        return mirrored(self._problem)

    @cached_property
    def _turns(self) -> list[float] | None:
        """What each reaction is multiplied by where the truss is mirrored: 1.0, or -1.0 for one that is
        positive the same way as before; None where it has others."""
        turned = self._mirrored.reactions
        if [r.name for r in turned] != [r.name for r in self._problem.reactions]:
            return None
        ways = (
            there.direction.y * here.direction.y - there.direction.x * here.direction.x
            for here, there in zip(self._problem.reactions, turned, strict=True)
        )
        return [1.0 if way > 0 else -1.0 for way in ways]

    @cached_property
    def _pushes(self) -> Mapping[bool, list[tuple[str, int, float]]]:
        """The joints of supports that only push, with the place of the reaction and the way of the push
        along it, as written and mirrored."""
        return {
            False: self._pushing(self._problem),
            True: self._pushing(self._mirrored) if self._vary.mirror else [],
        }

    def _pushing(self, problem: Problem) -> list[tuple[str, int, float]]:
        return [
            (support.joint, self._column[reaction.name], push_along(support, reaction))
            for support in problem.supports
            if kind_of_support(support).only_pushes
            for reaction in problem.reactions
            if reaction.joint == support.joint
        ]
