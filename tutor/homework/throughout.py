"""Is one thing wrong with a page from its first line to its last, or with its drawing?

What explains the whole page is weighed against the stories of single slips: it is told where none of
these costs less.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from tutor.homework.account import RIVAL
from tutor.homework.beliefs import Held, held, held_before
from tutor.homework.findings import Finding
from tutor.homework.half_mended import Was
from tutor.homework.misdrawn import misdrawn
from tutor.homework.outcome import (
    ReviewOutcome,
    of_beliefs,
    of_half_mended,
    of_half_uniform,
    of_uniform,
)
from tutor.homework.stories import Stories, Told
from tutor.homework.uniform import Uniform, uniform
from tutor.homework.work import Entry
from tutor.model import Problem

NOT_WELL = 2.5
"""What costs so much is explained no better than by another drawing."""
WELL = 1.4
"""What costs no more leaves room beside a page wrong in one way, and none for one mended in part."""
MOST_BELIEVED = 80
"""On a truss of more joints no belief is looked for."""


class Throughout:
    """What may run through one homework, each looked for when it is asked for."""

    def __init__(
        self,
        problem: Problem,
        entries: Mapping[str, Entry],
        true: Mapping[str, float],
        stories: Stories,
        order: Sequence[str],
    ) -> None:
        self.problem = problem
        self.handed_in = stories.handed_in
        self.entries = entries
        self.true = true
        self.stories = stories
        self.order = order
        self._believed: list[Held] = []
        self._believed_up_to = -math.inf

    @property
    def wrong(self) -> tuple[str, ...]:
        return self.stories.wrong

    def beliefs(self, most: float = math.inf) -> list[Held]:
        """The beliefs that explain the page and do not cost more than `most`."""
        if self._too_large():
            return []
        if most > self._believed_up_to:
            self._believed = held(self.problem, self.handed_in, self.entries, self.wrong, most)
            self._believed_up_to = most
        return [each for each in self._believed if each.cost <= most]

    def _too_large(self) -> bool:
        if len(self.problem.joints) <= MOST_BELIEVED:
            return False
        self.stories.stopped = True
        return True

    def of_uniform(self) -> ReviewOutcome | None:
        """What one factor or one turned sign explains."""
        alike = self._uniform(self.entries)
        if alike is None:
            return None
        single = [
            story.first
            for story, _ in self.stories.told()
            if len(story.turns) == 1 and not story.open and story.turns[0].cost <= WELL
        ]
        partly = len(self.entries) < len(self.problem.unknowns)
        doubtful = partly or bool(single) or bool(self.beliefs())
        return of_uniform(alike, self.wrong, doubtful, single[:1])

    def _uniform(self, entries: Mapping[str, Entry]) -> Uniform | None:
        return uniform(self.problem, self.handed_in, entries, self.true, self.wrong)

    def of_beliefs(self, pairs: Sequence[Told]) -> ReviewOutcome | None:
        """What one belief explains, where nothing cheaper does: on the page, or before it was mended."""
        cost = pairs[0][0].cost if pairs else math.inf
        found = self.beliefs(cost + RIVAL)
        best = found[0].cost if found else math.inf
        if min(cost, best) > WELL and not self._too_large():
            earlier = self._before()
            if earlier is not None and earlier[0].cost < min(cost, best):
                return of_half_mended(self.problem, *earlier, self.order)
            half = self._half_uniform()
            if half is not None:
                return half
        if best > cost or not found:
            return None
        stories = [story for story, _ in pairs]
        return of_beliefs(self.problem, self.handed_in, self.wrong, self.order, found, stories)

    def _before(self) -> tuple[Held, Was] | None:
        """The best belief that ran through the page before the joints worked first were mended."""
        return min(
            held_before(self.problem, self.handed_in, self.entries, self.wrong),
            key=lambda each: each[0].cost,
            default=None,
        )

    def _half_uniform(self) -> ReviewOutcome | None:
        """The same of a page that was wrong in one way, and is so still but for one joint."""
        least = 1e-9
        right = [
            name
            for name, entry in self.entries.items()
            if name not in self.wrong
            and name in self.problem.member
            and abs(entry.value) > max(least, entry.radius)
        ]
        ends = [{self.problem.member[n].start, self.problem.member[n].end} for n in right]
        if not ends or not set.intersection(*ends):
            return None
        return self._half_alike(Was(self.handed_in, self.entries, self.wrong, tuple(right)))

    def _half_alike(self, was: Was) -> ReviewOutcome | None:
        left = {name: entry for name, entry in self.entries.items() if name not in was.mended}
        alike = self._uniform(left)
        return None if alike is None else of_half_uniform(alike, was, self.wrong)

    def of_half_mended(self, was: Was) -> ReviewOutcome | None:
        """What ran through the page at the last check, where it still does through what is left of it."""
        if self._too_large():
            return None
        then = uniform(self.problem, was.bodies, was.entries, self.true, was.wrong)
        half = None if then is None else self._half_alike(was)
        if half is not None:
            return half
        found = held(self.problem, was.bodies, was.entries, was.wrong)
        if not found or found[0].at_whole:
            return None
        told = self.stories.told()
        if told and told[0][0].cost < found[0].cost:
            return None
        return of_half_mended(self.problem, found[0], was, self.order)

    def of_drawing(self, pairs: Sequence[Told]) -> ReviewOutcome | None:
        """What another truss explains, where no slip explains it well."""
        if pairs and pairs[0][0].cost < NOT_WELL:
            return None
        other = misdrawn(self.problem, self.handed_in, self.entries, self.wrong)
        if other is None:
            return None
        findings = {name: Finding(name, "wrong", None, "unclear") for name in self.wrong}
        return ReviewOutcome((other.joint,), (), findings, clear=False, note=other.said)
