"""What does the whole truss look like: with its supports, as a free body, with its results?"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import replace

from tutor.figure.along import spread_items
from tutor.figure.dimensions import chains
from tutor.figure.page import LINK
from tutor.figure.parts import Arrow, Figure, Glyph, Item, Point, Role, Stroke, Tag, Turn, Turning
from tutor.figure.senses import drawn
from tutor.figure.sentences import Depicted, drawn_sentences, truss_sentences
from tutor.figure.space import (
    angle,
    clearance,
    member_angles,
    place_arrow,
    vector,
    widest_gap,
)
from tutor.figure.wording import (
    degrees,
    direction_slope,
    given,
    incline,
    member_value,
    number,
)
from tutor.model import Joint, Member, Problem, Reaction, Support
from tutor.model.support import kind_of_support
from tutor.statics.body import Force, given_forces

Taken = dict[str, list[float]]
ZERO = 1e-9
PIN_SIDES: tuple[Point, ...] = ((0.0, 1.0), (1.0, 0.0), (-1.0, 0.0), (0.0, -1.0))


def truss_figure(
    problem: Problem,
    *,
    reactions: Mapping[str, str] | None = None,
    forces: Mapping[str, float] | None = None,
    senses: Mapping[str, str] | None = None,
    highlight: Collection[str] = (),
    supports_shown: bool = True,
    dimensions: bool = True,
    turning: Turn | None = None,
    room: Taken | None = None,
) -> Figure:
    """The truss with its supports, loads and dimensions.

    `reactions`: reaction name to the sense of its arrow (see `senses.sense_sign`); a support with
    one of them here is taken away and replaced by the arrows. `forces`: unknown to value; a member
    is tension positive, a reaction positive along its arrow as drawn. `senses` gives the sense of
    arrows that `reactions` leaves open, and "C" for members assumed in compression. `highlight`:
    names of joints, members, reactions and loads to point out. Names that are not there are left out.
    A load spread along members lies on them as given; on a free body it acts at the joints.
    `room`: the directions in radians that nothing may stand in at a joint; else its members' own.
    """
    problem = problem.brought if reactions or forces else problem
    forces = forces or {}
    senses = {**(senses or {}), **{n: s for n, s in (reactions or {}).items() if s}}
    arrows = {
        name: drawn(problem.reaction[name], senses.get(name))
        for name in reactions or ()
        if name in problem.reaction
    }
    freed = {problem.reaction[name].joint for name in arrows}
    supports = [s for s in problem.supports if supports_shown and s.joint not in freed]
    taken = room or member_angles(problem)
    items: list[Item] = [
        item
        for member in problem.members
        for item in _member(problem, member, forces, senses, member.name in highlight)
    ]
    for support in supports:
        items += _support(problem, support, taken[support.joint])
    items += _loads(problem, taken, highlight)
    items += _reactions(problem, arrows, forces, taken, highlight)
    items += _joints(problem, taken, highlight)
    items += chains(problem) if dimensions else ()
    items += [] if turning is None else [Turning(turning)]
    return _told(problem, items, Depicted(arrows, dict(forces), tuple(supports), turning))


def _told(problem: Problem, items: Sequence[Item], facts: Depicted) -> Figure:
    """A drawing of these items, with what there is to say of it."""
    said, own = truss_sentences(problem, facts), drawn_sentences(problem, facts)
    return Figure(problem.title, tuple(items), said, problem.force, own)


def result_figure(problem: Problem, forces: Mapping[str, float]) -> Figure:
    """The truss with its results: every member's size with T or C, reactions in their real sense.

    `forces`: unknown to value, tension positive, a reaction positive along its stated direction
    (`Reaction.direction`). Unknowns that are not there are drawn without a value.
    """
    values = dict(forces)
    reactions: dict[str, str] = {}
    for reaction in problem.reactions:
        if reaction.name in values:
            reactions[reaction.name] = "against" if values[reaction.name] < 0 else "along"
            values[reaction.name] = abs(values[reaction.name])
    return truss_figure(problem, reactions=reactions, forces=values)


def member_role(value: float | None) -> Role:
    """The role of a member with this force, tension positive; None: not known."""
    if value is None:
        return "member"
    if abs(value) < ZERO:
        return "member-zero"
    return "member-tension" if value > 0 else "member-compression"


def reaction_texts(
    problem: Problem, reaction: Reaction, toward: Point, value: float | None
) -> tuple[str, ...]:
    """The words beside a reaction's arrow, the fullest first."""
    name = reaction.name
    tilt = _tilt(toward, direction_slope(reaction.direction))
    if value is None:
        return (f"{name}{tilt}", name) if tilt else (name,)
    return (
        f"{name} = {number(value)} {problem.force}{tilt}",
        f"{name} = {number(value)}",
        f"{name}={number(value)}",
        name,
    )


def load_texts(problem: Problem, load: Force) -> tuple[str, ...]:
    """The words beside a load's arrow, the fullest first."""
    size = given(load.size or 0.0)
    tilt = _tilt((load.x, load.y), None)
    full = f"{size} {problem.force}"
    return (f"{full}{tilt}", full, size) if tilt else (full, size)


def _tilt(toward: Point, tidy: tuple[int, int] | None) -> str:
    if not incline(toward, None):
        return ""
    return f" ({incline(toward, tidy)})" if tidy else f" {_at(toward)}"


def _steepness(toward: Point, tidy: tuple[int, int] | None) -> str:
    """The same standing alone."""
    if not incline(toward, None):
        return ""
    return incline(toward, tidy) if tidy else _at(toward)


def _at(toward: Point) -> str:
    return f"at {degrees(toward)}"


def _member(
    problem: Problem,
    member: Member,
    forces: Mapping[str, float],
    senses: Mapping[str, str],
    lit: bool,
) -> list[Item]:
    start, end = problem.joint[member.start].at, problem.joint[member.end].at
    value = forces.get(member.name)
    role = member_role(value)
    items: list[Item] = [Stroke(start, end, role, member.name, lit)]
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    if value is not None:
        words = member_value(value)
        texts = (words, words.replace(" ", ""))
        items.append(Tag(middle, texts, role, along=(start, end), lit=lit))
    elif senses.get(member.name) == "C":
        items.append(Tag(middle, ("C ?",), "unknown", along=(start, end), lit=lit))
    return items


def _support(problem: Problem, support: Support, taken: list[float]) -> list[Item]:
    at = problem.joint[support.joint].at
    sign = kind_of_support(support).sign
    if sign == "pin":
        toward = _pin_side(problem, problem.joint[support.joint], taken)
        taken.append(angle((-toward[0], -toward[1])))
        return [Glyph(at, "pin", "support", toward, name=support.joint)]
    direction = problem_reaction(problem, support).direction
    if sign == "link":
        taken.append(angle((direction.x, direction.y)))
        words = _steepness((direction.x, direction.y), direction_slope(direction))
        return [
            Glyph(at, "link", "support", (direction.x, direction.y), name=support.joint),
            *_tilt_label(at, words, (direction.x, direction.y), LINK),
        ]
    across = math.atan2(direction.y, direction.x)
    push = math.radians(support.angle.value) if support.angle is not None else across
    if clearance(push + math.pi, taken) < math.radians(8) < clearance(push, taken):
        push += math.pi
    toward = vector(push)
    taken.append(push + math.pi)
    words = _steepness(toward, None)
    return [
        Glyph(at, "roller", "support", toward, name=support.joint),
        *_tilt_label(at, words, (-toward[0], -toward[1])),
    ]


def _tilt_label(at: Point, words: str, outward: Point, beyond: float = 1.0) -> list[Item]:
    """The steepness of an inclined support, beyond its symbol."""
    if not words:
        return []
    return [Tag(at, (words,), "support", outward, beyond=beyond)]


def problem_reaction(problem: Problem, support: Support) -> Reaction:
    """The one reaction of a support that holds in one direction."""
    return next(r for r in problem.reactions if r.joint == support.joint)


def _pin_side(problem: Problem, joint: Joint, taken: list[float]) -> Point:
    """How the ground beside a pin pushes: from below, from a wall at an end of a truss that hangs,
    or from the freest side where members are in the way."""
    free = {side: clearance(angle((-side[0], -side[1])), taken) for side in PIN_SIDES}
    low, left, right = (
        min(j.y.value for j in problem.joints),
        min(j.x.value for j in problem.joints),
        max(j.x.value for j in problem.joints),
    )
    wanted = PIN_SIDES[0]
    if joint.y.value > low and joint.x.value in (left, right):
        wanted = (1.0, 0.0) if joint.x.value == left else (-1.0, 0.0)
    return wanted if free[wanted] >= math.radians(40) else max(PIN_SIDES, key=lambda s: free[s])


def _loads(problem: Problem, taken: Taken, highlight: Collection[str]) -> Iterator[Item]:
    """The loads at joints, then those on members."""
    for joint in problem.joints:
        for load in given_forces(problem, joint.name):
            yield _load(problem, load, taken[joint.name], load.name in highlight)
    yield from spread_items(problem)


def _load(problem: Problem, load: Force, taken: list[float], lit: bool) -> Arrow:
    toward = (load.x, load.y)
    pushes, beside = place_arrow(toward, taken)
    arrow = Arrow(
        load.at, toward, "load", load_texts(problem, load), load.name, pushes, beside, lit=lit
    )
    taken.append(angle(arrow.outward))
    return arrow


def _reactions(
    problem: Problem,
    arrows: Mapping[str, Point],
    forces: Mapping[str, float],
    taken: Taken,
    highlight: Collection[str],
) -> list[Item]:
    """The arrows; then, for reactions without force, only the words."""
    acting = [name for name in arrows if abs(forces.get(name, 1.0)) >= ZERO]
    items: list[Item] = []
    for name in acting:
        reaction = problem.reaction[name]
        arrow = _reaction(problem, reaction, arrows[name], forces.get(name), taken[reaction.joint])
        items.append(replace(arrow, lit=name in highlight))
    items += [_zero(problem.reaction[n], problem, taken) for n in arrows if n not in acting]
    return items


def _reaction(
    problem: Problem, reaction: Reaction, toward: Point, value: float | None, taken: list[float]
) -> Arrow:
    pushes, beside = place_arrow(toward, taken)
    at = problem.joint[reaction.joint].at
    texts = reaction_texts(problem, reaction, toward, value)
    arrow = Arrow(at, toward, "reaction", texts, reaction.name, pushes, beside)
    taken.append(angle(arrow.outward))
    return arrow


def _zero(reaction: Reaction, problem: Problem, taken: Taken) -> Tag:
    """The words for a reaction without force: there is no arrow to draw."""
    away = vector(widest_gap(taken[reaction.joint], math.pi))
    at = problem.joint[reaction.joint].at
    return Tag(at, (f"{reaction.name} = 0", f"{reaction.name}=0"), "reaction", away, beyond=0.4)


def _joints(problem: Problem, taken: Taken, highlight: Collection[str]) -> list[Item]:
    middle_x = math.fsum(joint.x.value for joint in problem.joints) / len(problem.joints)
    middle_y = math.fsum(joint.y.value for joint in problem.joints) / len(problem.joints)
    items: list[Item] = []
    for joint in problem.joints:
        lit = joint.name in highlight
        x, y = joint.at
        away = vector(widest_gap(taken[joint.name], math.atan2(y - middle_y, x - middle_x)))
        items.append(Glyph(joint.at, "joint", "joint", name=joint.name, lit=lit))
        texts = (f"[{joint.name}]", joint.name) if lit else (joint.name,)
        items.append(Tag(joint.at, texts, "joint", away, lit=lit))
    return items
