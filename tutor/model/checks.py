"""Does the truss of a file hang together as a drawing: no joint twice, loose, or crossed over?

Whether it stands is for statics. Places are compared in floats: nearer than 1e-9 of the truss's
size is the same place.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from tutor.model.crossing import Point, cross, lies_on
from tutor.model.defect import Findings
from tutor.model.parts import Joint, Member, Support

NEAR = 1e-9
MOST_CROSSINGS = 20
Placed = tuple[int, Member]


def check_drawing(notes: Findings, joints: Sequence[Joint], members: Sequence[Placed]) -> None:
    """Note joints at one place, members without length, and (as warnings) members that cross."""
    at = {joint.name: joint.at for joint in joints}
    near = NEAR * _extent(list(at.values()))
    first: list[Joint] = []
    for joint in joints:
        twin = next((other for other in first if math.dist(other.at, joint.at) <= near), None)
        if twin is not None:
            message = f"joints {twin.name} and {joint.name} are at one place"
            cure = "move one of them, or make them one joint"
            notes.error(("joints", joint.name), message, cure, of=(twin.name, joint.name))
        else:
            first.append(joint)
    drawn = []
    for place, member in members:
        if member.start not in at or member.end not in at:
            continue
        if math.dist(at[member.start], at[member.end]) <= near:
            message = f"member {member.name} has no length"
            cure = f"move {member.start} or {member.end}"
            notes.error(("members", place), message, cure, of=(member.name,))
        else:
            drawn.append((place, member))
    _note_crossings(notes, at, drawn, near)


def check_loose(notes: Findings, names: Sequence[str], members: Sequence[Placed]) -> None:
    """Note every joint at which no member ends."""
    held = {end for _, member in members for end in (member.start, member.end)}
    for name in names:
        if name not in held:
            cure = "add one in members, or delete the joint"
            message = f"joint {name} has no member"
            notes.error(("joints", name), message, cure, "unjoined", (name,))


def check_links(notes: Findings, joints: Sequence[Joint], supports: Sequence[Support]) -> None:
    """Note every link whose fixed point is its own joint."""
    at = {joint.name: joint.at for joint in joints}
    near = NEAR * _extent(list(at.values()))
    for support in supports:
        if support.anchor is None or support.joint not in at:
            continue
        fixed = support.anchor[0].value, support.anchor[1].value
        if math.dist(fixed, at[support.joint]) <= near:
            message = f"the link at {support.joint} has no length"
            cure = f"give it a fixed point away from joint {support.joint}"
            notes.error(("supports", support.joint), message, cure, of=(support.joint,))


def _extent(points: Sequence[Point]) -> float:
    """The larger side of the box around all points."""
    if not points:
        return 0.0
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return max(max(xs) - min(xs), max(ys) - min(ys))


def _note_crossings(
    notes: Findings, at: dict[str, Point], members: Sequence[Placed], near: float
) -> None:
    for count, (place, message, cure, of) in enumerate(_crossings(at, members, near)):
        if count == MOST_CROSSINGS:
            notes.warning(("members",), "more members cross", "look at the other warnings first")
            return
        notes.warning(("members", place), message, cure, of)


def _crossings(
    at: dict[str, Point], members: Sequence[Placed], near: float
) -> Iterator[tuple[int, str, str, tuple[str, str]]]:
    """The place in the file, message, cure and names of each crossing, joints on a member first."""
    for place, member in members:
        start, end = at[member.start], at[member.end]
        for name, point in at.items():
            if name not in (member.start, member.end) and lies_on(point, start, end, near):
                message = f"joint {name} lies on member {member.name} without being joined to it"
                cure = f"split it into two members that meet at {name}, or move {name}"
                yield place, message, cure, (name, member.name)
    for (_, one), (place, other) in _overlapping(at, members):
        ends = (one.start, one.end, other.start, other.end)
        a, b, c, d = (at[end] for end in ends)
        if len(set(ends)) == 4 and cross(a, b, c, d, near):
            message = f"member {other.name} crosses member {one.name} without a joint"
            cure = "put a joint there, or leave it if one passes behind the other"
            yield place, message, cure, (other.name, one.name)


def _overlapping(
    at: dict[str, Point], members: Sequence[Placed]
) -> Iterator[tuple[Placed, Placed]]:
    """Pairs of members whose boxes overlap, the earlier in the file first."""
    boxes = []
    for place, member in members:
        (x1, y1), (x2, y2) = at[member.start], at[member.end]
        boxes.append((min(x1, x2), max(x1, x2), min(y1, y2), max(y1, y2), (place, member)))
    boxes.sort(key=lambda box: (box[0], box[4][0]))
    active: list[tuple[float, float, float, float, Placed]] = []
    for box in boxes:
        active = [other for other in active if other[1] >= box[0]]
        for other in active:
            if other[2] <= box[3] and box[2] <= other[3]:
                early, late = sorted((other[4], box[4]), key=lambda placed: placed[0])
                yield early, late
        active.append(box)
