"""Which problem next, and why? The one that trains what is weakest, at the right level, not done yet.

What went wrong is trained where the course stands: in the same set before another, and near in level. One
that is easier by more than a level is proposed only for what went wrong again and again, and is said to be
easier. What cannot be trained so leaves the course to its order.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from tutor.progress.weakness import Weakness, times

FEW = 2
"""A problem with fewer places that need a skill is proposed for it only where there is no other."""
MOST_LEVELS = 2
"""No problem is proposed that is more than so many levels harder than the last one worked on."""
NEAR = 1
"""Levels apart that make little difference."""
AGAIN = 2
"""From so many times on, a mistake is worth going back to easier problems for; our own judgement."""


@dataclass(frozen=True)
class Candidate:
    """A problem that may be next: its key and title, its set, its level (0 where it has none), whether
    it was done, and whether something that comes before it is not done.

    `watched`: it is done with, but was only watched. `last` is when it was last worked on (seconds
    since 1970; 0 where that is long ago), `varies` whether there are other numbers for it.
    """

    key: str
    title: str
    set: str
    level: int
    done: bool = False
    waits: bool = False
    watched: bool = False
    last: float = 0.0
    varies: bool = False


@dataclass(frozen=True)
class Next:
    """The problem to take next: its key, why in a sentence, and which skill it trains, if any."""

    key: str
    why: str
    skill: str = ""


@dataclass(frozen=True)
class _After:
    """What a problem comes after: the level and the set of the last one, and whether it went well."""

    level: int
    set: str
    well: bool


Needs = Callable[[str], Mapping[str, int]]
"""By the key of a problem, in how many of its places each skill is needed."""


def next_one(
    candidates: Sequence[Candidate],
    needs: Needs,
    weak: Sequence[Weakness],
    here: str = "",
    well: bool = True,
) -> Next | None:
    """The problem to take next after `here`, the last one worked on (its key), which went `well` or not.

    Without a weakness that an open problem trains, it is the next in order. Where everything is done,
    it is one to do again; None where there is no other.
    """
    place = next((i for i, each in enumerate(candidates) if each.key == here), -1)
    last = candidates[place] if place >= 0 else None
    ahead = [*candidates[place + 1 :], *candidates[: max(0, place)]]
    open_ones = [each for each in ahead if not each.done]
    if not open_ones:
        return _once_more(ahead, needs, weak)
    level = last.level if last else min(c.level for c in open_ones)
    after = _After(level, last.set if last else "", well)
    for lacking in weak:
        found = _training(open_ones, needs, lacking, after)
        if found is not None:
            why = f"{lacking.told}. {_trained(needs(found.key)[lacking.skill], lacking)}"
            if found.level < level - NEAR:
                why = f"{why} {EASIER}"
            return Next(found.key, why, lacking.skill)
    return _in_order(candidates, open_ones, well, last)


EASIER = "It is easier than the last one, so that there is room to heed just this."


def _trained(count: int, lacking: Weakness) -> str:
    """In how many places of a problem a skill is wanted."""
    if lacking.is_step:
        return "It asks for that too." if count == 1 else f"It asks for that {times(count)}."
    return f"It can happen there in {'one place' if count == 1 else f'{count} places'}."


ALL_DONE = "Everything here is done."
WATCHED_ONLY = "This one you have only watched."
LONGEST_AGO = "Of those that train it, this one was done longest ago."
LONG_AGO = "This one was done longest ago."
OTHER_NUMBERS = "It can be started afresh with other numbers."


def _once_more(done: Sequence[Candidate], needs: Needs, weak: Sequence[Weakness]) -> Next | None:
    """Where everything is done: what was only watched, else what trains the weakest skill and was done
    longest ago."""
    if not done:
        return None
    if watched := [each for each in done if each.watched]:
        return Next(watched[0].key, f"{ALL_DONE} {WATCHED_ONLY}")
    for lacking in weak:
        training = [each for each in done if needs(each.key).get(lacking.skill, 0)]
        if training:
            found = min(training, key=lambda each: each.last)
            return _again(found, f"{lacking.told}. {LONGEST_AGO}", lacking.skill)
    return _again(min(done, key=lambda each: each.last), LONG_AGO)


def _again(found: Candidate, why: str, skill: str = "") -> Next:
    numbers = f" {OTHER_NUMBERS}" if found.varies else ""
    return Next(found.key, f"{ALL_DONE} {why}{numbers}", skill)


def _training(
    open_ones: Sequence[Candidate], needs: Needs, lacking: Weakness, after: _After
) -> Candidate | None:
    """The open problem that trains a skill best: its way free, near in level and no harder after one that
    went poorly, of the same set, with much of it in its lines."""
    level = after.level
    least = level - NEAR if lacking.wrong < AGAIN else 0
    fitting = [
        each
        for each in open_ones
        if least <= each.level <= level + MOST_LEVELS and needs(each.key).get(lacking.skill, 0)
    ]

    def rank(each: Candidate) -> tuple[bool, bool, bool, bool, bool, int, float]:
        found = needs(each.key)
        few, apart = found[lacking.skill] < FEW, abs(each.level - level)
        share = round(found[lacking.skill] / max(1, sum(found.values())), 3)
        too_hard = each.level > level and not after.well
        return each.waits, too_hard, apart > NEAR, few, each.set != after.set, apart, -share

    return min(fitting, key=rank, default=None)


FIRST = "It is the first that is not done."
NO_HARDER = "Less than half of the last one went right at once: this one is no harder."
NEXT_OF_SET = "It is the next of its set."
LEFT_OUT = "It comes earlier and is not done yet."


def _in_order(
    candidates: Sequence[Candidate],
    open_ones: Sequence[Candidate],
    well: bool,
    last: Candidate | None,
) -> Next:
    """The next in order whose way is free; where the last went poorly, one that is no harder first."""
    free = [each for each in open_ones if not each.waits] or list(open_ones)
    if last is None:
        return Next(free[0].key, FIRST)
    no_harder = free[0] if well else next((e for e in free if e.level <= last.level), free[0])
    if no_harder is not free[0]:
        return Next(no_harder.key, NO_HARDER)
    found = free[0]
    if candidates.index(found) < candidates.index(last):
        return Next(found.key, LEFT_OUT)
    if found.set == last.set:
        return Next(found.key, NEXT_OF_SET)
    begun = any(each.done for each in candidates if each.set == found.set)
    return Next(found.key, f"With it {'goes on' if begun else 'begins'}: {found.set}.")
