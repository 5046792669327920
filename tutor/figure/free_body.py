"""What does one joint look like, cut free? Its member forces, reactions and loads as arrows."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace

from tutor.figure.parts import Arrow, Figure, Glyph, Item, Point, Role, Slope, Stroke, Tag
from tutor.figure.senses import drawn
from tutor.figure.sentences import load_words, seen_from
from tutor.figure.space import angle, place_arrow, vector, widest_gap
from tutor.figure.truss import ZERO, load_texts, member_role
from tutor.figure.wording import (
    direction_slope,
    heading,
    incline,
    member_slope,
    number,
    ways,
)
from tutor.model import Member, Problem
from tutor.statics.body import Force, joint_body
from tutor.text import raised

REACH = 1.0
"""Every arrow of this drawing is one unit long: it shows directions, not distances."""


def joint_figure(
    problem: Problem,
    joint: str,
    *,
    known: Mapping[str, float] | None = None,
    senses: Mapping[str, str] | None = None,
    highlight: Collection[str] = (),
) -> Figure:
    """The free body of `joint`.

    `known`: unknown to value; a member is tension positive, a reaction positive along its sense.
    Every arrow stays as assumed, also where its value is known: a member pulls on the joint, or
    pushes where `senses` has "C" for it; a reaction acts along the word that `senses` has for it,
    else along its positive direction. The value beside a symbol is signed under that arrow, and
    what really acts is said in words. `highlight`: names of forces on it to point out. KeyError
    for a joint that is not there.
    """
    known, senses = known or {}, senses or {}
    body = joint_body(problem, joint)
    taken = [angle((f.x, f.y)) for f in body.forces if f.kind == "member"]
    items: list[Item] = []
    sentences = [f"Free body of joint {joint}."]
    for force in body.forces:
        before = len(items)
        if force.kind == "member":
            member = problem.member[force.name]
            items += member_arrow(force, member, problem, known.get(force.name), senses)
            sentences.append(member_words(problem, member, force, known.get(force.name), senses))
        elif force.kind == "reaction":
            made, words = _reaction(problem, force, known.get(force.name), senses, taken)
            items += made
            sentences.append(words)
        else:
            arrow = _placed(force.at, (force.x, force.y), "load", load_texts(problem, force), taken)
            items.append(arrow)
            words = load_words(problem, force)
            sentences.append(raised(words) + ".")
        if force.name in highlight:
            items[before:] = map(lit_up, items[before:])
    at = problem.joint[joint].at
    items.append(Glyph(at, "joint", "joint", name=joint))
    items.append(Tag(at, (joint,), "joint", vector(widest_gap(taken))))
    return Figure(f"Joint {joint}", tuple(items), tuple(sentences), problem.force)


def lit_up(item: Item) -> Item:
    """An item of a force that is pointed out."""
    return replace(item, lit=True) if isinstance(item, Arrow | Stroke | Tag) else item


def unknown_name(member: Member) -> str:
    """How a member's unknown is written: "F_AB", or "U1-L2" for longer joint names."""
    return member.name if "-" in member.name else f"F_{member.name}"


def member_arrow(
    force: Force,
    member: Member,
    problem: Problem,
    value: float | None,
    senses: Mapping[str, str],
    reach: float = REACH,
) -> list[Item]:
    """The arrow of a cut member at its joint, `reach` long, with its slope; a stroke where it is zero.

    It pulls, or pushes where `senses` has "C" for it; `value` is tension positive.
    """
    name, pull = unknown_name(member), (force.x, force.y)
    end = (force.at[0] + reach * force.x, force.at[1] + reach * force.y)
    tilted = _slope(force, member_slope(problem, member), reach)
    if value is not None and abs(value) < ZERO:
        words = Tag(end, (f"{name} = 0", "0"), "member-zero", away=(force.x, force.y))
        return [Stroke(force.at, end, "member-zero", member.name), words]
    pushes = senses.get(member.name) == "C"
    texts: tuple[str, ...]
    if value is None:
        texts = (f"{name} = ? (C)" if pushes else f"{name} = ?", f"{name} ?", name, member.name)
    else:
        size, letter = number(-value if pushes else value), "T" if value > 0 else "C"
        texts = (
            f"{name} = {size} {problem.force} ({letter})",
            f"{name} = {size} ({letter})",
            f"{name} = {size}",
            f"{name}={size}",
        )
    toward = (-force.x, -force.y) if pushes else pull
    role: Role = "unknown" if value is None else member_role(value)
    arrow = Arrow(
        force.at, toward, role, texts, member.name, pushes, length=reach, dashed=value is None
    )
    return [arrow, *tilted]


def _slope(force: Force, tidy: tuple[int, int] | None, reach: float = REACH) -> list[Item]:
    """The slope triangle, or the angle from the horizontal where the slope is not tidy."""
    outward = (force.x, force.y)
    if tidy is not None:
        return [Slope(force.at, outward, reach, str(tidy[0]), str(tidy[1]))]
    words = incline(outward, None)
    if not words:
        return []
    middle = (force.at[0] + 0.6 * reach * force.x, force.at[1] + 0.6 * reach * force.y)
    return [Tag(middle, (words,), "slope", away=(0.0, -1.0 if force.y < 0 else 1.0))]


def _reaction(
    problem: Problem,
    force: Force,
    value: float | None,
    senses: Mapping[str, str],
    taken: list[float],
) -> tuple[list[Item], str]:
    reaction = problem.reaction[force.name]
    toward = drawn(reaction, senses.get(force.name))
    tidy = direction_slope(reaction.direction)
    if value is None:
        texts: tuple[str, ...] = (f"{force.name} = ?", force.name)
        arrow = _placed(force.at, toward, "unknown", texts, taken, force.name)
        words = f"Reaction {force.name}: unknown, drawn {heading(toward, tidy)}."
        return [arrow, *_arrow_slope(arrow, force, tidy)], words
    if abs(value) < ZERO:
        label = Tag(
            force.at,
            (f"{force.name} = 0", f"{force.name}=0"),
            "reaction",
            vector(widest_gap(taken)),
        )
        return [label], f"Reaction {force.name}: known, 0."
    size = f"{number(value)} {problem.force}"
    really = "" if value > 0 else f"acts {ways((-toward[0], -toward[1]))}"
    texts = (
        f"{force.name} = {size}{f' ({really})' if really else ''}",
        f"{force.name} = {number(value)}",
        f"{force.name}={number(value)}",
    )
    arrow = _placed(force.at, toward, "reaction", texts, taken, force.name)
    words = f"Reaction {force.name}: drawn {heading(toward, tidy)}, known, {size}"
    words += f"; it {really}." if really else "."
    return [arrow, *_arrow_slope(arrow, force, tidy)], words


def _arrow_slope(arrow: Arrow, force: Force, tidy: tuple[int, int] | None) -> list[Item]:
    x, y = arrow.outward
    along = Force(force.name, force.kind, force.joint, force.at, x, y)
    return _slope(along, tidy)


def _placed(
    at: Point,
    toward: Point,
    role: Role,
    texts: tuple[str, ...],
    taken: list[float],
    name: str = "",
) -> Arrow:
    pushes, beside = place_arrow(toward, taken)
    dashed = role == "unknown"
    arrow = Arrow(at, toward, role, texts, name, pushes, beside, length=REACH, dashed=dashed)
    taken.append(angle(arrow.outward))
    return arrow


def member_words(
    problem: Problem,
    member: Member,
    force: Force,
    value: float | None,
    senses: Mapping[str, str],
    body: str = "joint",
) -> str:
    """A cut member in words: where it goes, how it is drawn, and what is known of it."""
    way = heading((force.x, force.y), member_slope(problem, member))
    start = f"Member {seen_from(member, force.joint)}, {way}"
    name = unknown_name(member)
    pushes = senses.get(member.name) == "C"
    how = f"drawn {'pushing' if pushes else 'pulling'} on the {body}"
    if value is None:
        return f"{start}: {name} unknown, {how}."
    if abs(value) < ZERO:
        return f"{start}: known, no force."
    size = f"{number(-value if pushes else value)} {problem.force}"
    acts = "tension" if value > 0 else "compression"
    if pushes == (value > 0):
        acts += f", {'pulls' if value > 0 else 'pushes'} on the {body}"
    return f"{start}: {name} {how}, known, {size}; {acts}."
