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
    it was done, and whether something that comes before it is not done."""

    key: str
    title: str
    set: str
    level: int
    done: bool = False
    waits: bool = False


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

    None where everything is done. Without a weakness that an open problem trains, it is the next in
    order.
    """
    place = next((i for i, each in enumerate(candidates) if each.key == here), -1)
    last = candidates[place] if place >= 0 else None
    ahead = [*candidates[place + 1 :], *candidates[: max(0, place)]]
    open_ones = [each for each in ahead if not each.done]
    if not open_ones:
        return None
    level = last.level if last else min((c.level for c in open_ones), default=0)
    for lacking in weak:
        found = _training(open_ones, needs, lacking, level, last.set if last else "")
        if found is not None:
            asked = f"It asks for that {times(needs(found.key)[lacking.skill])}."
            return Next(found.key, f"{lacking.told}. {asked}", lacking.skill)
    return _in_order(open_ones, level, well, last)


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
