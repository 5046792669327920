"""Where in the chain of work did it go wrong first?

Every body that does not close is tried as the place of a mistake: the values that are wrong there
must be few enough to have been found at it, everything else that is wrong must follow from them,
and a mistake of the catalogue should explain what is left over. The joints at which a walk closed do
not close either, which is why several places may be possible; the cheapest account comes first.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from tutor.homework.account import Account
from tutor.homework.accounts import UNEXPLAINED, Explained
from tutor.homework.chain import Found, follow
from tutor.homework.sheet import WHOLE, Bodies
from tutor.homework.work import Entry
from tutor.model import Problem

ANOTHER = 2.0
EQUALLY = 1.0
BY_CHANCE = 0.5
NONE_LEFT = 1.0
NO_WALK, DOUBTED = 1.0, 2.0
MOST_PLACES = 3
MOST_TRIED = 60
MOST_WORK = 600
"""So many turns are tried at most in one search; beyond that only the most likely ones are."""
MOST_WALKED = 60
"""On a truss of more bodies nobody's walk is gone through step by step."""


@dataclass(frozen=True)
class Turn:
    """One place where a mistake was made: the wrong values found there, and what explains it."""

    place: str
    values: tuple[str, ...]
    accounts: tuple[Account, ...]
    doubt: float = 0.0

    @property
    def cost(self) -> float:
        return self.doubt + (self.accounts[0].cost if self.accounts else UNEXPLAINED)


@dataclass(frozen=True)
class Story:
    """One way in which the wrong values came about: turns in order, and what follows from them.

    `open` are wrong values that neither a turn nor what follows accounts for.
    """

    turns: tuple[Turn, ...]
    follows: Found
    open: frozenset[str]
    doubt: float = 0.0

    @property
    def cost(self) -> float:
        return (
            self.doubt
            + sum(turn.cost for turn in self.turns)
            + ANOTHER * (len(self.turns) - 1)
            + UNEXPLAINED * len(self.open)
        )

    @property
    def first(self) -> str:
        return self.turns[0].place


class Search:
    """All stories of one homework, from the fewest mistakes to the most.

    `explained` keeps what explains each body from one search to the next.
    """

    def __init__(
        self,
        problem: Problem,
        bodies: Bodies,
        entries: Mapping[str, Entry],
        wrong: Iterable[str],
        explained: Explained,
    ) -> None:
        self.explained = explained
        self.stopped = False
        self.problem = problem
        self.bodies = bodies
        self.entries = entries
        self.wrong = frozenset(wrong)
        self.of_whole = len(problem.reactions) == bodies[WHOLE].size and self.wrong <= set(
            problem.reaction
        )
        self.failing = [
            name
            for name, sheet in bodies.items()
            if sheet.fails and any(unknown in self.wrong for unknown in sheet.part)
        ]

    def stories(self, first: str | None = None) -> list[Story]:
        """The stories with the fewest turns that leave nothing open, cheapest first.

        Only those that begin at `first`, where that is given.
        """
        known = set(self.problem.unknowns) - self.wrong
        self.by_itself = tuple(follow(self.bodies, self.wrong, set(known)))
        budget = MOST_WORK
        stems: list[tuple[tuple[Turn, ...], set[str], Found]] = [((), known, {})]
        found: list[Story] = []
        for count in range(MOST_PLACES):
            at = self.failing if count or first is None else [first] * (first in self.failing)
            width = max(1, min(MOST_TRIED, budget // max(1, len(at))))
            if len(stems) > width:
                self.stopped = True
            grown = [g for stem in stems[:width] for g in self._grown(*stem, at)]
            budget -= len(grown)
            found += [
                Story(turns, follows, frozenset(), self._unused(turns))
                for turns, seen, follows in grown
                if self.wrong <= seen
            ]
            if any(story.cost < UNEXPLAINED for story in found) or not grown:
                break
            stems = sorted(
                (g for g in grown if not self.wrong <= g[1]),
                key=lambda g: sum(turn.cost for turn in g[0]),
            )
        if not found:
            found = [
                Story(turns, follows, self.wrong - seen) for turns, seen, follows in stems if turns
            ]
        return self._doubted(sorted(found, key=lambda story: story.cost))

    def _doubted(self, stories: list[Story]) -> list[Story]:
        """The stories again, those at the head of them with a doubt where no walk could go so."""
        told = [
            replace(story, doubt=story.doubt + NO_WALK)
            if story.cost <= stories[0].cost + DOUBTED
            and len(self.bodies) <= MOST_WALKED
            and not self.workable(story.turns)
            else story
            for story in stories
        ]
        return sorted(told, key=lambda story: story.cost)

    def _grown(
        self,
        turns: tuple[Turn, ...],
        known: set[str],
        follows: Found,
        at: Iterable[str],
    ) -> Iterator[tuple[tuple[Turn, ...], set[str], Found]]:
        """A story with one more turn, for each of the bodies `at` that could be it."""
        taken = {turn.place for turn in turns}
        for name in at:
            if name in taken:
                continue
            sheet = self.bodies[name]
            values = [n for n in sheet.part if n in self.wrong and n not in known]
            if not 1 <= len(values) <= sheet.size:
                continue
            turn = Turn(name, tuple(values), self.accounts(name, values), self._doubt(name))
            seen = known | set(values)
            start = self._touched((*values, *self.by_itself)) | taken
            more = follow(self.bodies, self.wrong, seen, (name,), (), start)
            yield (*turns, turn), seen, {**follows, **more}

    def _touched(self, names: Iterable[str]) -> set[str]:
        """The bodies on which these unknowns act."""
        return {body for name in names for body in self.bodies.at[name]}

    def from_place(self, place: str) -> tuple[Turn, Found, frozenset[str]]:
        """A turn at this place, what follows from it, and the wrong values that stay open."""
        sheet = self.bodies[place]
        known = set(self.problem.unknowns) - self.wrong
        values = [n for n in sheet.part if n in self.wrong]
        turn = Turn(place, tuple(values), self.accounts(place, values))
        seen = known | set(values)
        more = follow(self.bodies, self.wrong, seen, (place,))
        return turn, more, self.wrong - seen

    def _doubt(self, place: str) -> float:
        """Whether wrong reactions would have left all joints but one closed by chance.

        A walk from wrong reactions closes at two joints or more, unless their resultant passes
        through the last one; a walk that ends at the supports leaves the one joint with the slip.
        Where nothing but reactions is wrong, and the whole truss gives them all, it is the other
        way round: one looks for reactions there.
        """
        if self.of_whole:
            return 0.0 if place == WHOLE else BY_CHANCE
        joints = [name for name in self.failing if name != WHOLE]
        return BY_CHANCE if place == WHOLE and len(joints) == 1 else 0.0

    def _unused(self, turns: tuple[Turn, ...]) -> float:
        """Whether joints stay open although no equation of the whole truss was used.

        Wrong reactions that came from the joints took every equation of the joints there is.
        """
        places = {turn.place for turn in turns}
        if WHOLE not in self.failing or WHOLE in places:
            return 0.0
        return NONE_LEFT if set(self.failing) - places - {WHOLE} else 0.0

    def workable(self, turns: Iterable[Turn]) -> bool:
        """Whether a walk could have found every value, these turns in their order among its steps."""
        places = [turn.place for turn in turns]
        everything = [name for name in self.problem.unknowns if name in self.entries]
        known: set[str] = set()
        follow(self.bodies, everything, known, places)
        for k, place in enumerate(places):
            sheet = self.bodies[place]
            fresh = [name for name in sheet.part if name not in known]
            if len(fresh) > sheet.size:
                return False
            known.update(fresh)
            follow(self.bodies, everything, known, places[k:])
        return len(known) == len(everything)

    def accounts(self, place: str, values: Sequence[str]) -> tuple[Account, ...]:
        """What explains this place, where these wrong values were found at it."""
        return self.explained.accounts(self.bodies[place], values, self.entries)


def first_places(stories: list[Story]) -> tuple[str, ...]:
    """The first places of the stories that cost about as little as the cheapest."""
    if not stories:
        return ()
    near = [story.first for story in stories if story.cost <= stories[0].cost + EQUALLY]
    return tuple(dict.fromkeys(near))


def first_in_order(bodies: Bodies, order: Iterable[str], wrong: Iterable[str]) -> str | None:
    """The first body of the student's own order whose wrong values do not follow from those before.

    Without "whole" in it, an order begins with the whole truss where a joint needs the reactions.
    """
    steps = list(order)
    if WHOLE not in steps and _needs_reactions(bodies, steps):
        steps.insert(0, WHOLE)
    amiss = set(wrong)
    known: set[str] = set()
    for name in steps:
        sheet = bodies[name]
        open_names = [n for n in sheet.part if n not in known]
        known.update(open_names)
        if sheet.missing or not amiss.intersection(open_names):
            continue
        for unknown in open_names:
            if not any(sheet.holds(n) for n in sheet.equations(unknown, open_names)):
                return name
    return None


def _needs_reactions(bodies: Bodies, steps: Iterable[str]) -> bool:
    """Whether a joint of the order has more than two unknowns when its turn comes."""
    known: set[str] = set()
    for name in steps:
        fresh = [n for n in bodies[name].part if n not in known]
        if len(fresh) > bodies[name].size:
            return True
        known.update(fresh)
    return False
