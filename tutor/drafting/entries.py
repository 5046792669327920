"""What can be entered into a truss that is being drawn up, and what does each entry make of it?

An entry that does not fit (a member to a joint that is not there) changes nothing, so that any
entries in any order give a drawing.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass, replace
from functools import reduce
from typing import Literal

from tutor.model import Joint, Load, Member, Problem, Spread, Support
from tutor.model.read_parts import member_name
from tutor.notation import Exact

Kind = Literal["joint", "member", "support", "load", "spread"]
EMPTY = Problem("My truss", "kN", "m", (), (), (), ())


@dataclass(frozen=True)
class Put:
    """A joint at (x, y): a new one, or one that is moved there."""

    name: str
    x: Exact
    y: Exact


@dataclass(frozen=True)
class Join:
    """A member between two joints."""

    start: str
    end: str


@dataclass(frozen=True)
class Hold:
    """A support, in the place of the one that the joint had."""

    support: Support


@dataclass(frozen=True)
class Push:
    """A load. A push along an axis takes the place of the one along it; a slanted load is added."""

    load: Load


@dataclass(frozen=True)
class Lay:
    """A load along members, in the place of what lay on them."""

    spread: Spread


@dataclass(frozen=True)
class Units:
    """Other units of force and length; the numbers stay."""

    force: str
    length: str


@dataclass(frozen=True)
class Title:
    """What the truss is called."""

    text: str


@dataclass(frozen=True)
class Rename:
    """Another name for a joint, in its members, support and loads too."""

    old: str
    new: str


@dataclass(frozen=True)
class Drop:
    """Something taken away; a joint goes with its members, support and loads."""

    kind: Kind
    name: str


@dataclass(frozen=True)
class Whole:
    """A whole truss in the place of all there was: a common shape, a file, or an empty sheet."""

    problem: Problem


Entry = Put | Join | Hold | Push | Lay | Units | Title | Rename | Drop | Whole


def fold(entries: Iterable[Entry], start: Problem = EMPTY) -> Problem:
    """The truss that the entries draw; the same entries give the same truss."""
    return reduce(applied, entries, start)


def applied(problem: Problem, entry: Entry) -> Problem:
    """The truss after one more entry."""
    match entry:
        case Put(name, x, y):
            return replace(problem, joints=_put(problem, Joint(name, x, y)))
        case Join(start, end):
            return _joined(problem, start, end)
        case Hold(support):
            return _held(problem, support)
        case Push(load):
            return _pushed(problem, load)
        case Lay(spread):
            return _laid(problem, spread)
        case Units(force, length):
            return replace(problem, force=force, length=length)
        case Title(text):
            return replace(problem, title=text)
        case Rename(old, new):
            return _renamed(problem, old, new)
        case Drop(kind, name):
            return _without(problem, kind, name)
        case Whole(whole):
            return whole


def _put(problem: Problem, joint: Joint) -> tuple[Joint, ...]:
    if joint.name in problem.joint:
        return tuple(joint if old.name == joint.name else old for old in problem.joints)
    return (*problem.joints, joint)


def _joined(problem: Problem, start: str, end: str) -> Problem:
    there = start in problem.joint and end in problem.joint
    if not there or start == end or problem.between(start, end) is not None:
        return problem
    member = Member(member_name(start, end), start, end)
    return replace(problem, members=(*problem.members, member))


def _held(problem: Problem, support: Support) -> Problem:
    if support.joint not in problem.joint:
        return problem
    if any(old.joint == support.joint for old in problem.supports):
        changed = (support if old.joint == support.joint else old for old in problem.supports)
        return replace(problem, supports=tuple(changed))
    return replace(problem, supports=(*problem.supports, support))


def _pushed(problem: Problem, load: Load) -> Problem:
    if load.joint not in problem.joint:
        return problem
    loads = list(problem.given_loads)
    for place, old in enumerate(loads):
        if old.joint == load.joint and load.pushes and old.pushes:
            loads[place] = _together(old, load)
            return replace(problem, loads=tuple(loads))
        if old.joint == load.joint and load.angle is not None and old.angle == load.angle:
            loads[place] = load
            return replace(problem, loads=tuple(loads))
    return replace(problem, loads=(*loads, load))


def _laid(problem: Problem, spread: Spread) -> Problem:
    on = tuple(name for name in spread.on if name in problem.member)
    if not on:
        return problem
    others = _off(problem.spreads, set(on))
    return replace(problem, spreads=(*others, replace(spread, on=on)))


def _off(spreads: Iterable[Spread], members: Collection[str]) -> tuple[Spread, ...]:
    """The loads without these members; those that lie on none then are gone."""
    left = (replace(s, on=tuple(n for n in s.on if n not in members)) for s in spreads)
    return tuple(spread for spread in left if spread.on)


def _together(old: Load, new: Load) -> Load:
    """The pushes of both; along one axis the new one alone."""
    axes = {_axis(way) for way, _ in new.pushes}
    kept = tuple((way, size) for way, size in old.pushes if _axis(way) not in axes)
    return Load(old.joint, (*kept, *new.pushes))


def _axis(way: str) -> str:
    return "y" if way in ("up", "down") else "x"


def _renamed(problem: Problem, old: str, new: str) -> Problem:
    if old not in problem.joint or new in problem.joint:
        return problem

    def named(name: str) -> str:
        return new if name == old else name

    ends = [(named(m.start), named(m.end)) for m in problem.members]
    members = tuple(Member(member_name(*pair), *pair) for pair in ends)
    called = {was.name: now.name for was, now in zip(problem.members, members, strict=True)}
    return replace(
        problem,
        joints=tuple(replace(j, name=named(j.name)) for j in problem.joints),
        members=members,
        spreads=tuple(
            replace(s, on=tuple(called[n] for n in s.on if n in called)) for s in problem.spreads
        ),
        supports=tuple(replace(s, joint=named(s.joint)) for s in problem.supports),
        loads=tuple(replace(load, joint=named(load.joint)) for load in problem.loads),
    )


def _without(problem: Problem, kind: Kind, name: str) -> Problem:
    def away(joint: str) -> bool:
        return kind == "joint" and joint == name

    members = tuple(
        m
        for m in problem.members
        if not (away(m.start) or away(m.end) or (kind == "member" and m.name == name))
    )
    gone = problem.member.keys() - {m.name for m in members}
    return replace(
        problem,
        joints=tuple(j for j in problem.joints if not away(j.name)),
        members=members,
        spreads=_off(problem.spreads, gone | ({name} if kind == "spread" else set())),
        supports=tuple(
            s
            for s in problem.supports
            if not (away(s.joint) or (kind == "support" and s.joint == name))
        ),
        loads=tuple(
            load
            for load in problem.given_loads
            if not (away(load.joint) or (kind == "load" and load.joint == name))
        ),
    )
