"""Does a wrong value rest on a likeness that is none: a symmetry, all of the loads for half, another force's value?"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from tutor.judge.about import Value
from tutor.judge.desk import Desk
from tutor.judge.kind import Case
from tutor.judge.mirror import Mirror, mirrored
from tutor.judge.mistakes import KINDS
from tutor.judge.same import are_near, are_same
from tutor.judge.verdict import Mistake, Verdict
from tutor.model.naming import unknown_meant
from tutor.notation import Line
from tutor.text import listed

SYMMETRY = re.compile(r"\b(?:(?:sym+|sim+)[eé]tr|symm?\b)", re.IGNORECASE)
NOT_ALIKE = "Symmetry does not show this: {why}."
NO_IMAGES = "{names} are no mirror images of each other."
WHOLE = "That is the whole of the loads: by symmetry each of the two supports takes half of it."
TAKEN_OVER = "{subject} was taken from the other side: find it from an equation of its own."
UNEXPLAINED = ("arithmetic", "carried")
SAME_AS = re.compile(
    r"\b(?:same|equal|alike|just|symmetric\w*) (?:as|to|with|like) (?P<name>[\w-]+)"
)
NOT_THE_SAME = "{names} are not the same."
OF_ANOTHER = "{subject} was taken over from another force: find it from an equation of its own."
PLACES = {"symmetry": TAKEN_OVER, "carried": OF_ANOTHER}


def by_symmetry(desk: Desk, about: Value, line: Line, verdict: Verdict) -> Verdict:
    """A verdict on a wrong value, told by the symmetry that its line speaks of, where that says more."""
    if verdict.kind != "wrong" or verdict.stands:
        return verdict
    taken = _taken_over(desk, about, line, verdict)
    said = SYMMETRY.search(line.text) is not None
    if not taken and (not said or verdict.mistakes[0].code not in UNEXPLAINED):
        return verdict
    mirror = mirrored(desk.problem, desk.values())
    if not said and mirror.shape.get(taken[0]) != taken[1]:
        not_alike = NOT_THE_SAME.format(names=listed(list(taken)))
        return _told(desk, about, verdict, "carried", not_alike)
    text = _not_shown(desk, mirror, taken or _said_alike(about, line))
    code = "symmetry"
    if text is None and _is_whole(desk, about, mirror, verdict):
        text, code = WHOLE, "arithmetic"
    return verdict if text is None else _told(desk, about, verdict, code, text)


def _told(desk: Desk, about: Value, verdict: Verdict, code: str, text: str) -> Verdict:
    """A verdict on a wrong value with a mistake of its own words."""
    kind, case = KINDS[code], Case(desk.problem, about, about.unknown)
    place = PLACES[code].format(subject=case.subject) if code in PLACES else kind.place(case).text
    told = Mistake(code, about.unknown, text, kind.reason(case), place)
    return replace(verdict, text=text, mistakes=(told,))


def _taken_over(desk: Desk, about: Value, line: Line, verdict: Verdict) -> tuple[str, ...]:
    """The force asked for and the one that the words say it is the same as, where it has that one's value."""
    values, found = desk.values(), SAME_AS.search(line.text)
    name = found and unknown_meant(desk.problem, found["name"])
    if name is None or name == about.unknown or verdict.value is None:
        return ()
    alike = are_same(abs(values[name]), abs(values[about.unknown]))
    its = are_near(abs(verdict.value), abs(values[name]))
    return (about.unknown, name) if its and not alike else ()


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
    return alike and value is not None and are_same(abs(value), 2 * abs(true))
