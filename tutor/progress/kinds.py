"""Of which kind is a problem? Worked examples fade kind by kind.

A problem of the sets that come along is of the kind of its set, which is a topic. Any other, in a folder
where all sorts of trusses may lie together, is of a kind by what its walk needs.
"""

from __future__ import annotations

from functools import cache, lru_cache

from tutor.judge.about import Same
from tutor.model import Problem
from tutor.records.belonging import folder_of, key_of
from tutor.shipped import shipped_problems
from tutor.statics import Unsolvable, joint_order, zero_force

FEW_MEMBERS = 5
"""A truss with so few members is a first one; our own judgement."""


def kind_of(key: str, walk: str) -> str:
    """The kind of a problem with this key, whose walk is of the kind `walk`; empty without a file."""
    folder = folder_of(key)
    if folder is None:
        return ""
    return folder if folder in _topics() else walk


def kind_of_problem(problem: Problem) -> str:
    """The kind of a problem that is there."""
    return kind_of(key_of(problem), walk_of(problem))


def is_topic(kind: str) -> bool:
    """Whether a kind is one of the sets that come along."""
    return kind in _topics()


@cache
def _topics() -> frozenset[str]:
    return frozenset(each.parent.name for each in shipped_problems().glob("*/set.toml"))


def walk_of(problem: Problem) -> str:
    """What the walk through a problem needs that others do not, in a word or two."""
    return _walk(Same(problem))


@lru_cache(maxsize=512)
def _walk(same: Same) -> str:
    problem = same.problem
    if problem.truss is not None:
        return "whether it is held"
    if problem.spreads:
        return "loads on members"
    try:
        if joint_order(problem).stuck:
            return "sections"
    except Unsolvable:
        return "whether it is held"
    ways = (reaction.direction for reaction in problem.reactions)
    if any(abs(way.x) > 1e-9 and abs(way.y) > 1e-9 for way in ways):
        return "inclined supports"
    if zero_force(problem):
        return "zero-force members"
    return "first trusses" if len(problem.members) <= FEW_MEMBERS else "joint after joint"
