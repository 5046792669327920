"""How is a drawing told to somebody who does not see it?"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from tutor.figure.parts import Point, Turn
from tutor.figure.wording import (
    degrees,
    direction_slope,
    given,
    heading,
    incline,
    member_slope,
    number,
    ways,
)
from tutor.model import Joint, Member, Problem, Support
from tutor.model.support import kind_of_support
from tutor.statics.along import spread_words
from tutor.statics.body import Force, given_forces
from tutor.statics.words import unit_in_words
from tutor.text import listed, so_many

TURN_WORDS: Mapping[Turn, str] = {"ccw": "counter-clockwise", "cw": "clockwise"}


@dataclass(frozen=True)
class Depicted:
    """What was put on the drawing: reaction arrows by name, values, supports, positive turning."""

    arrows: Mapping[str, Point] = field(default_factory=dict)
    forces: Mapping[str, float] = field(default_factory=dict)
    supports: tuple[Support, ...] = ()
    turning: Turn | None = None


def truss_sentences(problem: Problem, facts: Depicted) -> tuple[str, ...]:
    """The whole truss, one sentence a fact, in the order of the file."""
    freed = (
        "Free body of the whole truss: supports are replaced by arrows. " if facts.arrows else ""
    )
    opening = (
        f"{freed}The truss has {so_many(len(problem.joints), 'joint')} and "
        f"{so_many(len(problem.members), 'member')}; "
        f"lengths in {unit_in_words(problem.length)}, forces in {unit_in_words(problem.force)}."
    )
    values = [
        _result(problem, m, facts.forces[m.name]) for m in problem.members if m.name in facts.forces
    ]
    return (
        opening,
        *(_joint(problem, joint) for joint in problem.joints),
        *(f"On members: {spread_words(problem, spread)}." for spread in problem.spreads),
        *(support_sentence(problem, support) for support in facts.supports),
        *_arrows(problem, facts),
        *values,
        *_turning(facts),
    )


def drawn_sentences(problem: Problem, facts: Depicted) -> tuple[str, ...]:
    """What was put on the drawing alone: the arrows, and which moments count as positive."""
    return (*_arrows(problem, facts), *_turning(facts))


def _arrows(problem: Problem, facts: Depicted) -> Iterator[str]:
    for name, toward in facts.arrows.items():
        yield _arrow(problem, name, toward, facts.forces.get(name))


def _turning(facts: Depicted) -> Iterator[str]:
    if facts.turning:
        yield f"Moments are counted positive {TURN_WORDS[facts.turning]}."


def place(problem: Problem, joint: Joint) -> str:
    """Where a joint is, seen from the first one: "2 m right of A and 1.5 m above it"."""
    first = problem.joints[0]
    if joint.name == first.name:
        return f"at x = {given(joint.x.value)} {problem.length}, y = {given(joint.y.value)} {problem.length}"
    dx, dy = joint.x.value - first.x.value, joint.y.value - first.y.value
    across = f"{given(abs(dx))} {problem.length} {'right' if dx > 0 else 'left'} of {first.name}"
    upright = f"{given(abs(dy))} {problem.length} {'above' if dy > 0 else 'below'} "
    if dy == 0:
        return across
    return f"{upright}{first.name}" if dx == 0 else f"{across} and {upright}it"


def member_way(problem: Problem, member: Member, joint: str) -> str:
    """A member seen from a joint: "CA down and left, 3 down for 4 across"."""
    far = member.other(joint)
    here, there = problem.joint[joint].at, problem.joint[far].at
    toward = (there[0] - here[0], there[1] - here[1])
    return f"{seen_from(member, joint)} {heading(_unit(toward), member_slope(problem, member))}"


def seen_from(member: Member, joint: str) -> str:
    """The member's name with `joint` first: "CA"."""
    dash = "-" if "-" in member.name else ""
    return f"{joint}{dash}{member.other(joint)}"


def load_words(problem: Problem, load: Force) -> str:
    """ "load 12 kN down", "load 5 kN down and left at 210°"."""
    toward = (load.x, load.y)
    tilt = f" at {degrees(toward)} from +x" if incline(toward, None) else ""
    return f"load {given(load.size or 0.0)} {problem.force} {ways(toward)}{tilt}"


def given_sentences(problem: Problem) -> tuple[str, ...]:
    """What a picture may be too small to show: where the joints are, and what holds which."""
    places = "; ".join(
        f"{joint.name} ({given(joint.x.value)}, {given(joint.y.value)})" for joint in problem.joints
    )
    held = "; ".join(f"{each.joint}: {holding(problem, each)}" for each in problem.supports)
    return (f"Joints (x, y) in {unit_in_words(problem.length)}: {places}.", f"Supports: {held}.")


def support_sentence(problem: Problem, support: Support) -> str:
    """What holds a joint, without saying what that support can hold."""
    kind, held = kind_of_support(support), holding(problem, support)
    if kind.sign == "pin":
        return f"Joint {support.joint} is held by a {held} support."
    if kind.sign == "link":
        return f"Joint {support.joint} is held by a short {held} from the joint."
    return f"Joint {support.joint} is on a {held}."


def holding(problem: Problem, support: Support) -> str:
    """A kind of support with its place: "pin", "roller on a level floor", "link to a fixed point, …"."""
    kind = kind_of_support(support)
    if kind.sign == "pin":
        return kind.name
    direction = next(r for r in problem.reactions if r.joint == support.joint).direction
    toward = (direction.x, direction.y)
    if kind.sign == "link":
        return f"{kind.name} to a fixed point, {heading(toward, direction_slope(direction))}"
    if abs(direction.x) < 1e-12:
        return f"{kind.name} on a level floor"
    if abs(direction.y) < 1e-12:
        return f"{kind.name} against a vertical wall"
    return f"{kind.name} {_floor(toward)}"


def _floor(toward: Point) -> str:
    """The sloping surface that pushes along `toward`: "on a floor that rises to the right at 30°"."""
    x, y = toward
    rises = "left" if x * y > 0 else "right"
    steep = math.degrees(math.atan2(abs(x), abs(y)))
    where = "on a floor" if y > 0 else "under a ceiling"
    return f"{where} that rises to the {rises} at {number(round(steep, 1))}° from the horizontal"


def arrow_way(problem: Problem, name: str, toward: Point) -> str:
    """Which way a reaction's arrow points."""
    return heading(toward, direction_slope(problem.reaction[name].direction))


def _joint(problem: Problem, joint: Joint) -> str:
    members = [member_way(problem, m, joint.name) for m in problem.meeting[joint.name]]
    loads = [load_words(problem, load) for load in given_forces(problem, joint.name)]
    start = f"Joint {joint.name} {place(problem, joint)}"
    if members:
        start += f": {'member' if len(members) == 1 else 'members'} {'; '.join(members)}"
    return f"{start}; {listed(loads, len(loads))}." if loads else f"{start}."


def _arrow(problem: Problem, name: str, toward: Point, value: float | None) -> str:
    reaction = problem.reaction[name]
    if value is not None and abs(value) < 1e-9:
        return f"At {reaction.joint}: {name} is 0."
    start = f"At {reaction.joint}: {name} drawn {arrow_way(problem, name, toward)}"
    return f"{start}." if value is None else f"{start}, {number(value)} {problem.force}."


def _result(problem: Problem, member: Member, value: float) -> str:
    if abs(value) < 1e-9:
        return f"Member {member.name}: no force."
    kind = "tension" if value > 0 else "compression"
    return f"Member {member.name}: {number(abs(value))} {problem.force} {kind}."


def _unit(toward: Point) -> Point:
    length = (toward[0] ** 2 + toward[1] ** 2) ** 0.5
    return (toward[0] / length, toward[1] / length) if length else (0.0, 0.0)
