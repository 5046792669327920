"""Does a wrong value rest on a symmetry that the truss does not have, or on all of the loads for half of them?"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from tutor.judge.about import Value
from tutor.judge.desk import Desk
from tutor.judge.kind import Case
from tutor.judge.mirror import Mirror, mirrored
from tutor.judge.mistakes import KINDS
from tutor.judge.same import are_same
from tutor.judge.verdict import Mistake, Verdict
from tutor.notation import Line
from tutor.text import listed

SYMMETRY = re.compile(r"\b(?:(?:sym+|sim+)[eé]tr|symm?\b)", re.IGNORECASE)
NOT_ALIKE = "Symmetry does not show this: {why}."
NO_IMAGES = "{names} are no mirror images of each other."
WHOLE = "That is the whole of the loads: by symmetry each of the two supports takes half of it."
TAKEN_OVER = "{subject} was taken from the other side: find it from an equation of its own."
UNEXPLAINED = ("arithmetic", "carried")


def by_symmetry(desk: Desk, about: Value, line: Line, verdict: Verdict) -> Verdict:
    """A verdict on a wrong value, told by the symmetry that its line speaks of, where that says more."""
    if verdict.kind != "wrong" or SYMMETRY.search(line.text) is None:
        return verdict
    if verdict.mistakes[0].code not in UNEXPLAINED or verdict.stands:
        return verdict
    mirror = mirrored(desk.problem, desk.values())
    text = _not_shown(desk, mirror, _said_alike(about, line))
    code = "symmetry"
    if text is None and _is_whole(desk, about, mirror, verdict):
        text, code = WHOLE, "arithmetic"
    if text is None:
        return verdict
    kind, case = KINDS[code], Case(desk.problem, about, about.unknown)
    place = TAKEN_OVER.format(subject=case.subject) if code == "symmetry" else kind.place(case).text
    told = Mistake(code, about.unknown, text, kind.reason(case), place)
    return replace(verdict, text=text, mistakes=(told,))


def _said_alike(about: Value, line: Line) -> tuple[str, ...]:
    """The forces that a statement of the line sets equal to the one asked for, and that one."""
    for step in line.steps:
        names = tuple(dict.fromkeys(side.name for side in step.sides if not side.numeric))
        if about.unknown in names and len(names) > 1 and None not in names:
            return tuple(name for name in names if name is not None)
    return ()


def _not_shown(desk: Desk, mirror: Mirror, names: Sequence[str]) -> str | None:
    """Why symmetry does not show that forces are alike which are not; None where it may."""
    values = [desk.values()[name] for name in names]
    if not values or all(are_same(values[0], value) for value in values):
        return None
    if not mirror.images:
        return NOT_ALIKE.format(why=mirror.why)
    first, *others = names
    if any(mirror.images.get(first) != other for other in others):
        return NO_IMAGES.format(names=listed(list(names)))
    return None


def _is_whole(desk: Desk, about: Value, mirror: Mirror, verdict: Verdict) -> bool:
    """Whether a reaction is given as twice what it is, in a truss that has its mirror image."""
    value, true = verdict.value, desk.values()[about.unknown]
    alike = about.unknown in desk.problem.reaction and about.unknown in mirror.images
    return alike and bool(value) and value is not None and are_same(abs(value), 2 * abs(true))
