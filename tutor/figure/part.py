"""What does the part on one side of a section look like, cut free from the rest of the truss?"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace
from math import dist

from tutor.figure.dimensions import chains
from tutor.figure.free_body import lit_up, member_arrow, member_words
from tutor.figure.parts import Figure, Glyph, Item, Point, Stroke, Tag, Turn
from tutor.figure.sentences import place
from tutor.figure.space import member_angles
from tutor.figure.truss import truss_figure
from tutor.figure.wording import given
from tutor.model import Problem
from tutor.statics.body import Force, FreeBody, part
from tutor.text import listed

SHOWN = 0.6
"""How much of a cut member its arrow takes up; the rest of the way is its line of action."""


def part_figure(
    problem: Problem,
    joints: Iterable[str],
    *,
    known: Mapping[str, float] | None = None,
    senses: Mapping[str, str] | None = None,
    about: str | Point | None = None,
    highlight: Collection[str] = (),
    turning: Turn | None = None,
) -> Figure:
    """The free body of the part with these `joints`: each member that is cut acts on it as an arrow.

    `known` and `senses` are those of `joint_figure`: every arrow stays as assumed, also where its
    value is known. Dimensions reach to the far joints of the cut members and to the joint that
    moments are taken `about`, which is marked; it may be a point as well. `highlight`: names of
    forces to point out. KeyError for a joint that is not there.
    """
    known, senses = known or {}, senses or {}
    inner, around = _kept_and_around(problem, joints, about)
    base = truss_figure(
        inner,
        reactions={r.name: senses.get(r.name, "") for r in inner.reactions},
        forces={r.name: known[r.name] for r in inner.reactions if r.name in known},
        highlight=highlight,
        dimensions=False,
        turning=turning,
        room=member_angles(problem),
    )
    arrows, told = _cuts(problem, part(problem, inner.joint), known, senses, highlight)
    opening = f"Free body of the part with {listed(inner.joint, 30)}."
    beyond = [joint for joint in around.joints if joint.name not in inner.joint]
    told += [f"Beyond the cut: {joint.name} {place(around, joint)}." for joint in beyond]
    names = [Tag(joint.at, (joint.name,), "line-of-action") for joint in beyond]
    items = (*arrows, *base.items, *names, *_moment_point(problem, about), *chains(around))
    title = f"The part with {listed(inner.joint, 12)}"
    return Figure(title, items, (opening, *base.sentences[1:], *told), problem.force)


def _kept_and_around(
    problem: Problem, joints: Iterable[str], about: str | Point | None
) -> tuple[Problem, Problem]:
    """The part as if it were a truss of its own, and the same with the joints that it is seen by:
    the far ends of what is cut, and the joint that moments are taken about."""
    kept = {problem.joint[name].name for name in joints}
    inside = [joint for joint in problem.joints if joint.name in kept]
    inner = replace(
        problem,
        joints=tuple(inside),
        members=tuple(m for m in problem.members if m.start in kept and m.end in kept),
        supports=tuple(s for s in problem.supports if s.joint in kept),
        loads=tuple(load for load in problem.loads if load.joint in kept),
    )
    far = {force.far for force in part(problem, kept).forces} | {about}
    outside = [j for j in problem.joints if j.name in far and j.name not in kept]
    return inner, replace(inner, joints=(*inside, *outside))


def _cuts(
    problem: Problem,
    body: FreeBody,
    known: Mapping[str, float],
    senses: Mapping[str, str],
    highlight: Collection[str],
) -> tuple[list[Item], list[str]]:
    """The arrows of all cut members, and their sentences."""
    items: list[Item] = []
    told: list[str] = []
    for force in body.forces:
        if force.kind == "member":
            value = known.get(force.name)
            items += _cut(problem, force, value, senses, force.name in highlight)
            member = problem.member[force.name]
            told.append(member_words(problem, member, force, value, senses, "part"))
    return items, told


def _cut(
    problem: Problem, force: Force, value: float | None, senses: Mapping[str, str], lit: bool
) -> list[Item]:
    """The arrow of a cut member with its slope, before it the line it acts along."""
    far = problem.joint[force.far or ""].at
    reach = SHOWN * dist(force.at, far)
    arrow = member_arrow(force, problem.member[force.name], problem, value, senses, reach)
    end = (force.at[0] + reach * force.x, force.at[1] + reach * force.y)
    line = Stroke(end, far, "line-of-action")
    return [line, *(lit_up(item) if lit else item for item in arrow)]


def _moment_point(problem: Problem, about: str | Point | None) -> list[Item]:
    """The point that moments are taken about; with its place, where it is no joint."""
    if about is None:
        return []
    if isinstance(about, str):
        return [Glyph(problem.joint[about].at, "moment-point", "moment-point")]
    words = f"({given(about[0])}, {given(about[1])})"
    mark = Glyph(about, "moment-point", "moment-point")
    return [mark, Tag(about, (words,), "moment-point")]
