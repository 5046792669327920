"""Is a component of a force right: F_ACy = (3/5)(625) = 375 N ↑, or in ratio to the other one?

It follows from the slope alone, and says nothing of equilibrium: it is never a sum of forces.
"""

from __future__ import annotations

import math

from tutor.judge.about import Value
from tutor.judge.desk import Desk
from tutor.judge.kind import Case
from tutor.judge.known_values import way_of
from tutor.judge.mistakes import KINDS
from tutor.judge.same import NEAR, SAME, opposed
from tutor.judge.verdict import OPENING, Mistake, Remark, Verdict
from tutor.judge.worked import side_value
from tutor.notation import Line, Step, Unreadable
from tutor.notation.elements.tree import Name

AXES = {"x": "horizontal", "y": "vertical"}
RIGHT = "this is the {axis} component of {name}."
OTHER = "This comes to the other component of {name}: the factor is that of the other side."
WHOLE = "This is {name} itself: its {axis} component is only a part of it."
OFF = "This is not what the {axis} component of {name} comes to."
WAY = "The size is right; the way it acts is not."
DOES = "The size is right, but not what the force does to the member."
SIGN = "The size is right; the sign is not that of {name}."
ASK_WAY = "A {axis} component acts {ways}, not {said}."


def component_stated(line: Line | Unreadable) -> str | None:
    """The force whose component alone a line gives a number, or None."""
    if isinstance(line, Unreadable) or len(line.steps) > 1:
        return None
    named = component_in(line.result)
    return None if named is None else named.name


def component_in(step: Step) -> Name | None:
    """The component that a statement sets equal to numbers alone, or None."""
    named = [side.node for side in step.sides if not side.numeric]
    if len(named) != 1 or len(step.sides) < 2:
        return None
    node = named[0]
    return node if isinstance(node, Name) and node.share is not None else None


def component_verdict(desk: Desk, joint: str | None, step: Step) -> Verdict | None:
    """The verdict on a component of a force with a value; None for any other statement.

    `joint` is where the force is looked at, which its arrow depends on; None leaves that open.
    """
    named = component_in(step)
    if named is None or named.share is None or named.name not in desk.own.known:
        return None
    name, axis, share = named.name, named.share.axis, named.share.value
    known = desk.own.known[name]
    numbers = [side for side in step.sides if side.numeric]
    typed, radius = side_value(numbers[0]), sum(term.radius for term in numbers[0].terms)
    words = {"name": name, "axis": AXES[axis]}

    def comes_to(size: float) -> bool:
        slack = SAME * size + known.radius * share + min(radius, NEAR * size) + 1e-9
        return abs(abs(typed) - size) <= slack

    size = abs(known.value)
    if not comes_to(size * share):
        if comes_to(size * math.sqrt(max(0.0, 1.0 - share**2))):
            return _wrong(desk, name, "component", OTHER.format(**words))
        code, text = ("whole-force", WHOLE) if comes_to(size) else ("arithmetic", OFF)
        return _wrong(desk, name, code, text.format(**words))
    said = numbers[-1].sense
    if said is not None and said != "against":
        return _way(desk, joint, named, said, words)
    if numbers[-1].letter is not None and not _does(desk, name, numbers[-1].letter):
        return _wrong(desk, name, "tension-compression", DOES)
    if typed < 0.0 < known.value * named.share.factor:
        return _wrong(desk, name, "sign", SIGN.format(**words))
    return _right(words)


def _does(desk: Desk, name: str, letter: str) -> bool:
    """Whether a force pulls or pushes on its joints as a letter says, T or C."""
    value = desk.own.sign(name) * desk.own.known[name].value
    return value == 0.0 or name not in desk.problem.member or (value > 0.0) == (letter == "T")


def _way(
    desk: Desk, joint: str | None, named: Name, said: str, words: dict[str, str]
) -> Verdict | None:
    """The verdict on the arrow behind a component of the right size."""
    assert named.share is not None
    x, y = way_of(said)
    along, across = (x, y) if named.share.axis == "x" else (y, x)
    if across:
        ways = "to the left or to the right" if named.share.axis == "x" else "up or down"
        text = ASK_WAY.format(axis=words["axis"], ways=ways, said=said)
        return Verdict("undecided", text)
    direction = _direction(desk, joint, named.name)
    if direction is not None and opposed(along, direction["xy".index(named.share.axis)]):
        return _wrong(desk, named.name, "sense", WAY)
    return _right(words)


def _direction(desk: Desk, joint: str | None, name: str) -> tuple[float, float] | None:
    """The force on the joint as the student found it, or None where it is not known on what it acts."""
    value = desk.own.sign(name) * desk.own.known[name].value
    problem = desk.problem
    if name in problem.reaction:
        direction = problem.reaction[name].direction
        return value * direction.x, value * direction.y
    member = problem.member[name]
    if joint not in (member.start, member.end):
        return None
    here, there = problem.joint[joint].at, problem.joint[member.other(joint)].at
    return value * (there[0] - here[0]), value * (there[1] - here[1])


def _right(words: dict[str, str]) -> Verdict:
    said = OPENING + RIGHT.format(**words)
    return Verdict("right", said, remarks=(Remark("component", said),), opening=OPENING)


def _wrong(desk: Desk, name: str, code: str, text: str) -> Verdict:
    kind, case = KINDS[code], Case(desk.problem, Value(name), name)
    mistake = Mistake(code, name, text, kind.reason(case), "")
    return Verdict("wrong", text, (mistake,))
