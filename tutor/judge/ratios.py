"""Is a ratio of the components of one force its slope, F_ABy = 3/4 F_ABx, and does a line follow from another?

Neither says anything of equilibrium: a slope comes from the coordinates, a rearrangement from its equation.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from tutor.judge.about import Value
from tutor.judge.desk import Desk
from tutor.judge.kind import Case
from tutor.judge.mistakes import KINDS
from tutor.judge.same import NEAR
from tutor.judge.typed import TypedEquation, typed_equation
from tutor.judge.verdict import OPENING, Mistake, Remark, Verdict
from tutor.notation import Line, Reading, Step, Unreadable
from tutor.notation.elements.tree import Name, Node, children

RATIO = OPENING + "the components of {name} lie in this ratio. It is a slope, and no equation yet."
UPSIDE_DOWN = (
    "The ratio is upside down, or that of other sides: see which sides of the slope triangle of "
    "{name} its two numbers are."
)
MULTIPLIED = "A number was multiplied by what it has to be divided by, or the other way round."
DIVIDE = "What is done to one side of an equation has to be done to the other: both are divided by the same."
TURNED = "One number has the other sign here."
CHANGES = "Go from the equation to this line number by number: what changes sides changes its sign."
NOT_FOLLOWING = "The equation is right and stands; what is said to follow from it does not."


def ratio_stated(line: Line | Unreadable) -> str | None:
    """The force of which a line says only how a component of it goes with another, or with the whole."""
    if isinstance(line, Unreadable):
        return None
    names = {_ratio_in(step) for step in line.steps}
    return names.pop() if len(names) == 1 else None


def _ratio_in(step: Step) -> str | None:
    """The force of which a statement says only how its components go with it, or with each other."""
    if len(step.sides) != 2:
        return None
    sides = step.sides
    names = {term.name for side in sides for term in side.terms}
    if len(names) != 1 or any(side.numeric or len(side.terms) != 1 for side in sides):
        return None
    return names.pop() if any(any(_components_in(side.node)) for side in sides) else None


def ratio_of_components(desk: Desk, line: TypedEquation) -> Verdict | None:
    """The verdict on AE_x = 4/3 AE_y, which is true of the slope or not; None for anything else."""
    reading = line.reading
    if len(reading.terms) != 2 and not line.cancelled:
        return None
    names = {node.name for side in (reading.left, reading.right) for node in _components_in(side)}
    alone = len(names) == 1 and len(reading.terms) == 2
    alone = alone and {term.name for term in reading.terms} == names
    one, other = sorted(abs(term.value) for term in reading.terms) if alone else (0.0, 1.0)
    cancelled = bool(names) and line.says_nothing and line.cancelled == names
    if cancelled or other - one <= NEAR * other:
        said = RATIO.format(name=" and ".join(sorted(names)))
        remark = Remark("component", said)
        return Verdict("right", said, remarks=(remark,), reading=reading, opening=OPENING)
    if not alone:
        return None
    name = names.pop()
    kind, case = KINDS["component"], Case(desk.problem, Value(name), name)
    text = UPSIDE_DOWN.format(name=name)
    mistake = Mistake(kind.code, name, text, kind.reason(case), "")
    return Verdict("wrong", text, (mistake,), reading=reading)


def not_following(
    desk: Desk, main: Verdict | None, step: Step, line: TypedEquation, before: str, alone: Verdict
) -> Verdict | None:
    """The verdict on a statement that does not follow from the equation before it; None for any other.

    It is said to follow, or has the same left with fewer numbers, and holds no force that the equation does
    not hold. Where `alone` it shows that one number was turned, left out or counted twice, that is named.
    """
    if main is None or not isinstance(main.reading, Reading) or not before:
        return None
    first = typed_equation(main.reading)
    collects = _collects(first, line)
    if not (step.follows or collects):
        return None
    if step.label is not None or not line.names or not set(line.names) <= set(main.reading.names):
        return None
    kind, case = KINDS["arithmetic"], Case(desk.problem, Value(""))
    mistake = Mistake(kind.code, None, NOT_FOLLOWING, kind.reason(case), "", step.span)
    if _multiplied_instead(first, line):
        text = f"{NOT_FOLLOWING} {MULTIPLIED}"
        mistake = replace(mistake, code="component", text=text, reason=DIVIDE)
        return Verdict("wrong", text, (mistake,), reading=line.reading, stands=before)
    slip = alone.mistakes[0] if len(alone.mistakes) == 1 else mistake
    moved = slip is not mistake and KINDS[slip.code].touches == "neither"
    if moved and slip.code == "turning" and collects:
        mistake = replace(mistake, text=f"{NOT_FOLLOWING} {TURNED}", place=CHANGES)
    elif moved and slip.force is not None and slip.force not in line.names:
        mistake = replace(slip, text=f"{NOT_FOLLOWING} {slip.text}")
    return Verdict("wrong", mistake.text, (mistake,), reading=line.reading, stands=before)


def _collects(first: TypedEquation, line: TypedEquation) -> bool:
    """Whether a line is one before it with all forces as they stand there, and its numbers put together."""
    if line.names != first.names or not 0 < len(line.constants) < len(first.constants):
        return False
    now = {name: each.value for name, each in line.unknowns.items()}
    return any(
        all(
            math.isclose(now[n], way * each.value, rel_tol=NEAR)
            for n, each in first.unknowns.items()
        )
        for way in (1.0, -1.0)
    )


def _multiplied_instead(first: TypedEquation, line: TypedEquation) -> bool:
    """Whether a line is one before it with its unknowns divided by a factor, and its numbers multiplied by it."""
    if line.names != first.names or not line.constants:
        return False
    shares = [c.value / first.unknowns[name].value for name, c in line.unknowns.items()]
    total = math.fsum(term.value for term in line.constants)
    before = math.fsum(term.value for term in first.constants)
    alike = all(math.isclose(share, shares[0], rel_tol=NEAR) for share in shares)
    if not alike or math.isclose(abs(shares[0]), 1.0, rel_tol=NEAR):
        return False
    return total != 0.0 and math.isclose(total * shares[0], before, rel_tol=NEAR)


def _components_in(node: Node) -> Iterator[Name]:
    """The unknowns in a tree that were typed as a component."""
    if isinstance(node, Name):
        if node.share is not None:
            yield node
        return
    for child in children(node):
        yield from _components_in(child)
