"""Which number of the problem does a key of `[vary]` name? As in `read_parts`."""

from __future__ import annotations

import re
from collections.abc import Mapping

from tutor.model.defect import Findings, KeyPath, choose_from
from tutor.model.naming import member_meant
from tutor.model.parts import Load
from tutor.model.problem import Problem
from tutor.model.read_parts import joint_cure
from tutor.model.vary import Of, parts_of_spread
from tutor.text import listed, shown

SPREAD_PARTS = ("up", "down", "left", "right", "total")
LOAD_PARTS = ("up", "down", "left", "right", "size", "angle")
PLACE_PARTS = ("x", "y")
PARTS: Mapping[Of, tuple[str, tuple[str, ...]]] = {
    "loads": ("a load", LOAD_PARTS),
    "spread": ("a spread load", SPREAD_PARTS),
    "joints": ("a joint", PLACE_PARTS),
}


def joints_named(
    notes: Findings, path: KeyPath, name: str, problem: Problem, whole: bool
) -> tuple[str, ...]:
    """The joints that a key names: "C", or several that change alike, "B D" or "B, D"."""
    names = tuple(dict.fromkeys(re.split(r"[\s,]+", name.strip())))
    for each in names:
        if each not in problem.joint and whole:
            message = f"vary names joint {shown(each)[1:-1]}, which is not there"
            notes.error(path, message, joint_cure(each, problem.joint))
    return tuple(each for each in names if each in problem.joint)


def members_named(
    notes: Findings, path: KeyPath, name: str, problem: Problem, whole: bool
) -> tuple[str, ...]:
    """The members that a key names: "AB", or several whose load changes alike, "AB BC" or "AB, BC"."""
    found = []
    for each in dict.fromkeys(re.split(r"[\s,]+", name.strip())):
        member = member_meant(problem, each)
        if member is not None:
            found.append(member)
        elif whole:
            cure = choose_from(each, problem.member, "the members are")
            notes.error(path, f"vary names member {shown(each)[1:-1]}, which is not there", cure)
    return tuple(dict.fromkeys(found))


def part_fits(
    notes: Findings,
    path: KeyPath,
    of: Of,
    joints: tuple[str, ...],
    part: str,
    problem: Problem,
    whole: bool,
) -> bool:
    what, known = PARTS[of]
    if part not in known:
        message = f"{shown(part)} is nothing of {what} that can vary"
        notes.error(path, message, choose_from(part, known, "what can is"))
        return False
    if of == "joints" or not whole:
        return True
    if of == "spread":
        return _lies_on(notes, path, joints, part, problem)
    for joint in joints:
        here = [
            load for load in problem.given_loads if load.joint == joint and part in load_keys(load)
        ]
        if len(here) != 1:
            has = listed(
                {p for load in problem.given_loads if load.joint == joint for p in load_keys(load)}
            )
            if here:
                wrong, cure = (
                    f"more than one load at {joint} has {part}",
                    "join them in one [[loads]]",
                )
            else:
                wrong = f"no load at {joint} has {part}"
                cure = f"it has {has}" if has else f"write a [[loads]] at {joint} with {part}"
            notes.error(path, wrong, cure)
            return False
    return bool(joints)


def _lies_on(
    notes: Findings, path: KeyPath, members: tuple[str, ...], part: str, problem: Problem
) -> bool:
    """Whether one load with this part lies on each of the members."""
    for name in members:
        here = [s for s in problem.spreads if name in s.on and part in dict(parts_of_spread(s))]
        if len(here) != 1:
            wrong = "more than one load on" if here else "no load on"
            cure = "name a member with one such load, or write it as its own [[spread]]"
            notes.error(path, f"{wrong} {name} has {part}", cure)
            return False
    return bool(members)


def load_keys(load: Load) -> tuple[str, ...]:
    """The keys that give a load its size and direction."""
    return ("size", "angle") if load.size is not None else tuple(way for way, _ in load.pushes)
