"""Do all numbers fit a truss that differs from this one in a single coordinate or load?

Then the drawing may have been entered otherwise than it is printed, and nothing of the work is wrong.
What differs is told, never a value of the truss. A support that differs looks like a slip at its joint
or in the sums of the whole truss, and is told as that. With one number free much can be fitted, so that all
entries must be right in the other truss, and enough of them.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from tutor.homework.rounding import correctness
from tutor.homework.sheet import WHOLE, Sheet, sheets
from tutor.homework.work import Entry
from tutor.model import Joint, Load, Problem
from tutor.notation import Exact
from tutor.statics import Unsolvable, solve

LEAST_WRONG, LEAST_SHARE = 3, 0.6
"""So many wrong entries, and so much of all unknowns written, at least."""
GRIDS = (Fraction(1), Fraction(1, 2), Fraction(1, 4), Fraction(1, 10))
"""Coordinates and loads as they are printed are multiples of one of these."""
NEAR, FAR = 0.02, 0.1
MOST_TRIED = 40


@dataclass(frozen=True)
class Misdrawn:
    """What differs, as the end of a sentence, and the joint at which it does."""

    joint: str
    fits: str

    @property
    def said(self) -> str:
        return f"Your numbers fit a truss with {self.fits}: compare your drawing with the printed problem."


def misdrawn(
    problem: Problem,
    bodies: Mapping[str, Sheet],
    entries: Mapping[str, Entry],
    wrong: Collection[str],
) -> Misdrawn | None:
    """The one change that makes every entry right; None where there is none, or too little is written."""
    if len(wrong) < LEAST_WRONG or len(entries) < LEAST_SHARE * len(problem.unknowns):
        return None
    for tried, (other, found) in enumerate(_others(problem, bodies, entries)):
        if tried == MOST_TRIED:
            break
        if _all_right(other, entries):
            return found
    return None


def _all_right(problem: Problem, entries: Mapping[str, Entry]) -> bool:
    bodies = sheets(problem, entries)
    if not all(map(_nearly_closes, bodies.values())):
        return False
    try:
        true = solve(problem).values
    except Unsolvable:
        return False
    far = FAR * max(map(abs, true.values()))
    if any(abs(e.value - true[name]) > e.radius + far for name, e in entries.items()):
        return False
    drawn_so = correctness(problem, bodies, entries, true)
    return not drawn_so.wrong and not drawn_so.open


def _nearly_closes(sheet: Sheet) -> bool:
    """Whether a body closes but for what rounding may have come to on the way; so it may with blanks."""
    if sheet.missing:
        return True
    return all(abs(sheet.left(n)) <= sheet.slack(n) + NEAR * sheet.added(n) for n in sheet.axes)


def _others(
    problem: Problem, bodies: Mapping[str, Sheet], entries: Mapping[str, Entry]
) -> Iterator[tuple[Problem, Misdrawn]]:
    """The trusses that differ at one place and may fit, with what differs."""
    problem = problem.brought
    failing = {name for name, sheet in bodies.items() if sheet.fails} - {WHOLE}
    yield from _other_loads(problem, bodies, failing)
    for joint in problem.joints:
        if failing <= {joint.name, *_neighbours(problem, joint.name)}:
            yield from _moved(problem, bodies, entries, joint)


def _other_loads(
    problem: Problem, bodies: Mapping[str, Sheet], failing: Collection[str]
) -> Iterator[tuple[Problem, Misdrawn]]:
    """The load at a joint as it must be for that joint to close."""
    if len(failing) != 1:
        return
    (name,) = failing
    rx, ry = bodies[name].lefts
    here = [load for load in problem.loads if load.joint == name]
    right = sum(load.vector[0] for load in here) - rx
    up = sum(load.vector[1] for load in here) - ry
    size = max(math.hypot(right, up), *(math.hypot(*load.vector) for load in here), 0.0)
    for x in _printed(right, size) if abs(right) > NEAR * size else (Fraction(0),):
        for y in _printed(up, size) if abs(up) > NEAR * size else (Fraction(0),):
            load = _load(name, x, y)
            others = tuple(each for each in problem.loads if each.joint != name)
            other = replace(problem, loads=(*others, load) if load.pushes else others)
            yield other, Misdrawn(name, f"{_in_words(load, problem.force)} at {name}")


def _load(joint: str, right: Fraction, up: Fraction) -> Load:
    ways = (("right", "left", right), ("up", "down", up))
    pushes = tuple(
        (way if size > 0 else other, Exact.of(abs(size))) for way, other, size in ways if size
    )
    return Load(joint, pushes)  # type: ignore[arg-type]


def _in_words(load: Load, unit: str) -> str:
    if not load.pushes:
        return "no load"
    return "a load of " + " and ".join(f"{s.value:g} {unit} {way}" for way, s in load.pushes)


def _neighbours(problem: Problem, joint: str) -> Iterator[str]:
    for member in problem.members:
        if joint in (member.start, member.end):
            yield member.end if member.start == joint else member.start


def _moved(
    problem: Problem, bodies: Mapping[str, Sheet], entries: Mapping[str, Entry], joint: Joint
) -> Iterator[tuple[Problem, Misdrawn]]:
    """The joint moved along x or along y, to where the force of a member must then come from."""
    seen: set[tuple[Fraction, Fraction]] = set()
    x, y = joint.at
    for to_x, to_y in _seen_from_beside(problem, bodies, entries, joint):
        for new, along in ((to_x, True), (to_y, False)):
            if new is None:
                continue
            for printed in _printed(new, max(abs(new), abs(x), abs(y))):
                at = (printed, Fraction(y)) if along else (Fraction(x), printed)
                taken = any(j.at == (float(at[0]), float(at[1])) for j in problem.joints)
                if at in seen or taken:
                    continue
                seen.add(at)
                there = replace(joint, **{"x" if along else "y": Exact.of(printed)})  # type: ignore[arg-type]
                joints = tuple(there if each == joint else each for each in problem.joints)
                said = f"{joint.name} at {float(at[0]):g}, {float(at[1]):g}"
                yield replace(problem, joints=joints), Misdrawn(joint.name, said)


def _seen_from_beside(
    problem: Problem, bodies: Mapping[str, Sheet], entries: Mapping[str, Entry], joint: Joint
) -> Iterator[tuple[float | None, float | None]]:
    """Where the joint lies, on its own level and on its own plumb line, as each neighbour's sums say."""
    x, y = joint.at
    for name in _neighbours(problem, joint.name):
        sheet = bodies[name]
        member = _between(problem, joint.name, name)
        entry = entries.get(member)
        if sheet.missing or entry is None or entry.value == 0.0:
            continue
        ux, uy = (
            a - r / entry.value for a, r in zip(sheet.part[member].vector, sheet.lefts, strict=True)
        )
        from_x, from_y = problem.joint[name].at
        level = from_x + (y - from_y) * ux / uy if abs(uy) > NEAR else None
        plumb = from_y + (x - from_x) * uy / ux if abs(ux) > NEAR else None
        yield level, plumb


def _between(problem: Problem, one: str, other: str) -> str:
    """The member between two joints that one joins."""
    return next(m.name for m in problem.members if {m.start, m.end} == {one, other})


def _printed(number: float, size: float) -> Iterator[Fraction]:
    """The numbers that may be printed and lie close by, the plainest first."""
    if not math.isfinite(number):
        return
    seen: set[Fraction] = set()
    for grid in GRIDS:
        printed = round(Fraction(number) / grid) * grid
        if printed not in seen and abs(float(printed) - number) <= NEAR * size:
            seen.add(printed)
            yield printed
