"""Which equation does a student choose by its words: a sum, a direction, a moment point?"""

from __future__ import annotations

import re
from collections.abc import Callable

from tutor.deeds.deed import Deed, Do, Tell
from tutor.deeds.names import direction_of
from tutor.judge import Along, Fx, Fy, M
from tutor.judge.about import Equation, as_text
from tutor.lesson import Lesson
from tutor.model.naming import joint_meant, member_meant

NUMBER = r"[-+]?\d{1,9}(?:\.\d{1,9})?"
POINT = re.compile(rf"\(?\s*({NUMBER})\s*[,;\s]\s*({NUMBER})\s*\)?")
ANGLE = re.compile(rf"({NUMBER})\s*(?:°|deg|degrees)?")

Run = Callable[[Lesson, str], Deed | None]


def equation(make: Callable[[str | None], Equation]) -> Run:
    """The choice of a sum along an axis."""

    def run(lesson: Lesson, rest: str) -> Deed | None:
        joint, other = at_joint(lesson, rest)
        if other:
            return None
        if joint is None and lesson.ask.kind == "close":
            return _offered(lesson, make(None))
        return Do("choose", {"about": as_text(make(joint))})

    return run


def _offered(lesson: Lesson, about: Equation) -> Deed:
    """The choice of a sum by its axis alone, among the equations that are offered."""
    ask, axis = lesson.ask, as_text(about)
    found = [option for option in ask.options if option.key.partition(" @ ")[0] == axis]
    if len(found) == 1:
        return Do("choose", {"about": found[0].key})
    if not found:
        return Tell((f"No Σ{axis} is offered here; type again to hear what is.",))
    named = " or ".join(option.words for option in found)
    place = found[0].key.partition(" @ ")[2]
    return Tell((f"Which one: {named}? Type its number, or {axis[1:]} at {place}.",))


def at_joint(lesson: Lesson, rest: str) -> tuple[str | None, str]:
    """The joint that "... at C" names, else the one being worked on; and what stands before."""
    before, at, named = f" {rest}".rpartition(" at ")
    joint = joint_meant(lesson.problem, named.removeprefix("joint ")) if at else None
    if joint is not None:
        return joint, before.strip()
    return lesson.state.joint, rest


def moment(lesson: Lesson, rest: str) -> Deed | None:
    """The choice of a sum of moments about a joint or a point."""
    rest = re.sub(r"^(?:about|at|joint|point)\s+", "", rest, flags=re.IGNORECASE)
    joint = joint_meant(lesson.problem, rest)
    if joint is not None:
        return Do("choose", {"about": as_text(M(joint))})
    if point := POINT.fullmatch(rest):
        return Do("choose", {"about": as_text(M((float(point[1]), float(point[2]))))})
    joints = ", ".join(joint.name for joint in lesson.problem.joints)
    return Tell((f"Cannot read: a moment is about a joint ({joints}) or a point, like 4, 0.",))


def along(lesson: Lesson, rest: str, turned: float = 0.0) -> Deed | None:
    """The choice of a sum along a member, or in degrees."""
    joint, way = at_joint(lesson, rest)
    member = member_meant(lesson.problem, way)
    angle = ANGLE.fullmatch(way)
    if member is None and angle is None:
        return Tell(("Cannot read: name a member or degrees from +x, like along AC or along 30.",))
    about: Equation = Along(float(angle[1]) if angle else 0.0, joint)
    if member is not None:
        degrees = (
            round((direction_of(lesson.problem, lesson.problem.member[member]) + turned) % 180.0, 4)
            % 180.0
        )
        about = Fx(joint) if degrees == 0.0 else Along(degrees, joint)
        about = Fy(joint) if degrees == 90.0 else about
    return Do("choose", {"about": as_text(about)})


def across(lesson: Lesson, rest: str) -> Deed | None:
    """The choice of a sum perpendicular to a member."""
    if member_meant(lesson.problem, at_joint(lesson, rest)[1]) is None:
        return Tell(("Cannot read: name a member, like across AC.",))
    return along(lesson, rest, 90.0)
