"""Which stories are there of how a homework went wrong, over all readings of what is blank?"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from functools import cached_property

from tutor.homework.accounts import Explained
from tutor.homework.chain import within_reach
from tutor.homework.places import Search, Story
from tutor.homework.reading import (
    FilledIn,
    blank_members,
    plain_reading,
    readings_by_supports,
    readings_of_blank_joint,
)
from tutor.homework.rounding import Correctness
from tutor.homework.sheet import WHOLE, Bodies
from tutor.homework.walks import weighed
from tutor.homework.work import Entry
from tutor.model import Problem

WORKED_WRONG, HIDDEN, IN_DOUBT = 0.2, 0.3, 0.06
"""A result is rather left out where one was in doubt of it; common practice, no source."""
CLEARLY_SAID, CLEARLY, BETTER, SECOND = 1.15, 0.35, 0.04, 0.1
"""What costs no more is clearly so; how much cheaper another is clearly, and at all; what coming second costs."""
WELL_EXPLAINED, NOT_NEEDED = 1.15, 1.2
LEAST_WRITTEN = 2
FORGOTTEN = 6
"""Fewer blanks than one in so many members were forgotten; more of them may not have been reached."""
MOST_READ, MOST_JOINTS, LEAST_READ = 200, 3000, 4
"""Readings of blank joints, and such joints, gone through, times the unknowns of the truss; and at least."""

Told = tuple[Story, FilledIn]


def _cost(told: Told) -> float:
    return told[0].cost


def _at(told: Told, cost: float) -> Told:
    """The same story at another cost."""
    story, read = told
    return replace(story, doubt=story.doubt + cost - story.cost), read


class Stories:
    """The stories of one homework, each with the reading it belongs to.

    `unsettled` is whether a joint with a blank explains it a little better than the place that is named.
    """

    def __init__(
        self,
        problem: Problem,
        handed_in: Bodies,
        entries: Mapping[str, Entry],
        true: Mapping[str, float],
        correctness: Correctness,
    ) -> None:
        self.problem = problem
        self.handed_in = handed_in
        self.entries = entries
        self.true = true
        self.wrong = tuple(name for name in entries if name in correctness.wrong)
        self.right = correctness.right | correctness.undecided
        self.reading = plain_reading(problem, handed_in, entries, true, self.right)
        self.stopped = False
        self.unsettled = False
        self.explained = Explained(problem)

    def told(self) -> list[Told]:
        """The stories of every reading, cheapest first.

        A body with all its entries comes before any with a blank that was not reached as yet; such a
        one only comes beside it, where it explains clearly better what is written. Where it explains
        that a little better, nothing is settled.
        """
        complete = [] if self.forgotten else self._of_complete_bodies()
        if not complete:
            return self._sorted(self._of_blanks())
        best = min(map(_cost, complete))
        if self.blank > 1 or best <= CLEARLY_SAID:
            return self._sorted(complete)
        better = [t for t in self._of_blanks(sparing=True) if _cost(t) <= best - BETTER]
        beside = [_at(t, best + SECOND) for t in better if _cost(t) <= best - CLEARLY]
        self.unsettled = bool(better) and not beside
        found = self._sorted((*complete, *beside))
        first = next(told for told in found if told[1] is complete[0][1])
        return [_at(first, _cost(found[0])), *(told for told in found if told is not first)]

    def _sorted(self, found: Iterable[Told]) -> list[Told]:
        """Cheapest first, where several cost about the same by how many walks leave so."""
        return weighed(sorted(found, key=_cost), self.handed_in)

    def _of_blanks(self, sparing: bool = False) -> list[Told]:
        """The stories of every reading of what is blank.

        `sparing` a joint at which nothing wrong is written: the work may not have got to it.
        """
        plain = self.reading
        given = (self.problem, self.handed_in, self.entries, self.true, self.right)
        dark = [n for n, s in self.handed_in.items() if blank_members(self.problem, s)]
        told = [(s, plain) for s in self._of(plain) if s.first not in dark]
        if any(name not in self.entries for name in self.problem.reaction):
            doubt = NOT_NEEDED if self.right and any(map(self._alone, told)) else WORKED_WRONG
            for read in readings_by_supports(*given):
                told += self._doubted(read, WHOLE, doubt)
                told += self._from_joints(read)
        return told + self._of_blank_joints(self._doubtful(dark, sparing))

    def _from_joints(self, read: FilledIn) -> Iterator[Told]:
        """The stories of a walk whose joints gave the reactions, with its mistake at one of these."""
        for story in self._of(read):
            if len(story.turns) == 1 and story.first != WHOLE and not story.open:
                yield replace(story, doubt=story.doubt + WORKED_WRONG), read

    def _of_blank_joints(self, joints: Iterable[str]) -> list[Told]:
        """The stories that begin at a joint with a blank, as far as there are readings to spend."""
        budget = max(LEAST_READ, MOST_READ // len(self.problem.unknowns))
        given = (self.problem, self.handed_in, self.entries, self.true, self.right)
        told: list[Told] = []
        tries = max(LEAST_READ, MOST_JOINTS // len(self.problem.unknowns))
        for tried, joint in enumerate(joints):
            if tried == tries:
                self.stopped = True
                break
            for read in readings_of_blank_joint(*given, joint):
                if budget == 0:
                    self.stopped = True
                    return told
                budget -= 1
                told += self._doubted(read, joint, HIDDEN)
        return told

    def from_told(self, pairs: list[Told], told: str, by_lines: bool) -> list[Told]:
        """The stories that begin where the order tells, or also with reactions left blank.

        An order shows nothing of reactions that are blank and were worked with wrongly; lines do.
        """
        plain = self.reading
        here = [pair for pair in pairs if pair[0].first == told]
        here = here or [(self._forced(told), plain)]
        if by_lines or told == WHOLE:
            return here
        blank = [pair for pair in pairs if pair[1] is not plain and pair[0].first == WHOLE]
        return sorted((*here, *blank), key=lambda pair: pair[0].cost)

    def _forced(self, place: str) -> Story:
        """The story that begins at a place which the order tells, whatever is left open."""
        turn, follows, left = self._search(self.reading).from_place(place)
        return Story((turn,), follows, left)

    @cached_property
    def blank(self) -> int:
        """How many members are left blank."""
        return sum(member.name not in self.entries for member in self.problem.members)

    @cached_property
    def forgotten(self) -> bool:
        """Whether what is blank was worked out and not written down, rather than not reached as yet.

        Then few are blank, or something is written that bodies with all their entries do not give.
        """
        if FORGOTTEN * self.blank < len(self.problem.members):
            return True
        return not within_reach(self.handed_in, self.entries)

    def _of_complete_bodies(self) -> list[Told]:
        """The stories of bodies that have all their entries, where these tell all that is wrong.

        Only where every reaction is written: what joints show may have come from a blank one.
        """
        if any(name not in self.entries for name in self.problem.reaction):
            return []
        read = FilledIn(self.handed_in, self.entries, self.wrong)
        return [(story, read) for story in self._of(read) if not story.open]

    def _alone(self, pair: Told) -> bool:
        """Whether one slip at a joint without support explains all that is wrong."""
        story = pair[0]
        held = {support.joint for support in self.problem.supports}
        return (
            len(story.turns) == 1
            and story.first not in held | {WHOLE}
            and not story.open
            and story.cost <= WELL_EXPLAINED
        )

    def _doubtful(self, dark: Iterable[str], sparing: bool) -> list[str]:
        """The joints with a blank at which a mistake may have been made, those with the fewest first."""
        blanks = {
            joint: len(blank_members(self.problem, self.handed_in[joint]))
            for joint in dark
            if not sparing or any(name in self.wrong for name in self.handed_in[joint].part)
            if self._tells(joint)
        }
        return sorted(blanks, key=lambda joint: blanks[joint])

    def _tells(self, joint: str) -> bool:
        """Whether enough is written at a joint with a blank to look for a mistake at it."""
        members = [name for name in self.handed_in[joint].part if name in self.problem.member]
        written = sum(1 for name in self.entries if name in self.problem.member)
        if 2 * written >= len(self.problem.members):
            return True
        at_it = sum(1 for name in members if name in self.entries)
        several = sum(1 for name in self.reading.wrong if name in self.entries) > 1
        return at_it + several >= LEAST_WRITTEN

    def _doubted(self, read: FilledIn, first: str, doubt: float) -> Iterator[Told]:
        """The stories of a reading that begin at a place, with a doubt of how it was read."""
        for story in self._of(read, first):
            more = -IN_DOUBT * (first != WHOLE) if self._shows(story) else doubt
            yield replace(story, doubt=story.doubt + more), read

    def _shows(self, story: Story) -> bool:
        """Whether a wrong value that was found at the first place is written, not only blanks."""
        return any(name in self.entries for name in story.turns[0].values)

    def _of(self, reading: FilledIn, first: str | None = None) -> Iterable[Story]:
        search = self._search(reading)
        stories = search.stories(first)
        self.stopped = self.stopped or search.stopped
        return stories

    def _search(self, reading: FilledIn) -> Search:
        return Search(self.problem, reading.bodies, reading.entries, reading.wrong, self.explained)
