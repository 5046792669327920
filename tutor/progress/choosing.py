"""Which problem next, and why? The one that trains what is weakest, at the right level, not done yet."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from tutor.progress.weakness import Weakness, times

FEW = 2
"""A problem with fewer places that need a skill is proposed for it only where there is no other."""
MOST_LEVELS = 2
"""No problem is proposed that is more than so many levels harder than the last one worked on."""


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
    level = last.level if last else min((c.level for c in open_ones), default=0)
    for lacking in weak:
        found = _training(open_ones, needs, lacking, level, last.set if last else "")
        if found is not None:
            why = f"{lacking.told}. {_trained(needs(found.key)[lacking.skill], lacking)}"
            return Next(found.key, why, lacking.skill)
    return _in_order(open_ones, level, well, last)


def _trained(count: int, lacking: Weakness) -> str:
    """In how many places of a problem a skill is wanted."""
    if lacking.is_step:
        return f"It asks for that {times(count)}."
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
    open_ones: Sequence[Candidate], needs: Needs, lacking: Weakness, level: int, same: str
) -> Candidate | None:
    """The open problem that trains a skill best: near in level, its way free, much of it in its lines."""
    fitting = [
        each
        for each in open_ones
        if each.level <= level + MOST_LEVELS and needs(each.key).get(lacking.skill, 0)
    ]

    def rank(each: Candidate) -> tuple[bool, bool, int, float, bool]:
        found = needs(each.key)
        few = found[lacking.skill] < FEW
        share = found[lacking.skill] / max(1, sum(found.values()))
        return each.waits, few, abs(each.level - level), -round(share, 3), each.set != same

    return min(fitting, key=rank, default=None)


def _in_order(
    open_ones: Sequence[Candidate], level: int, well: bool, last: Candidate | None
) -> Next:
    """The next in order whose way is free; where the last went poorly, one that is no harder first."""
    free = [each for each in open_ones if not each.waits] or list(open_ones)
    if not well:
        free = [each for each in free if each.level <= level] or free
    found = free[0]
    if last is None:
        return Next(found.key, "It is the first that is not done.")
    if found.set == last.set:
        return Next(found.key, "It is the next of its set.")
    return Next(found.key, f"With it begins or goes on: {found.set}.")
