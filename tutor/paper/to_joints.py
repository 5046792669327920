"""How is what lies on members brought to the joints, on a sheet and in a worked solution?"""

from __future__ import annotations

from collections.abc import Iterator

from tutor.figure import truss_figure
from tutor.model import Problem, Spread
from tutor.model.parts import PushDirection
from tutor.model.spread import measure_along, on_member
from tutor.paper.blocks import Block, Lines, Paragraph, Picture, SubHeading, Together
from tutor.paper.lines import rounded
from tutor.statics.along import spread_words
from tutor.text import listed

WHY = (
    "What lies on a member is even along it: its resultant acts in the middle, and half of it at each end "
    "has the same force and the same moment about any point. The members are two-force members then; what "
    "bends the loaded ones between their joints is left out here."
)
FIRST = "Bring what lies on the members to the joints first."


def lying(problem: Problem) -> Iterator[Block]:
    """What lies on the members, in words, for a sheet to work on."""
    if problem.spreads:
        said = listed([spread_words(problem, spread) for spread in problem.spreads])
        yield Paragraph(f"On the members: {said}. {FIRST}")


def brought(problem: Problem, share: float) -> Iterator[Block]:
    """The step of a worked solution: what lies on each member, and what each joint takes."""
    if not problem.spreads:
        return
    rows = [row for spread in problem.spreads for row in _rows(problem, spread)]
    at = (
        f"{load.joint}: "
        + " and ".join(f"{rounded(size.value)} {problem.force} {way}" for way, size in load.pushes)
        for load in problem.loads
        if load.spread
    )
    yield Together(
        (
            SubHeading("The load at the joints"),
            Paragraph(WHY),
            Lines(tuple(rows)),
            Paragraph(f"{'; '.join(at)}."),
        )
    )
    yield Picture(truss_figure(problem.brought), "The truss with all loads at its joints", share)


def _rows(problem: Problem, spread: Spread) -> Iterator[tuple[str, str, str]]:
    for name in spread.on:
        if name not in problem.member:
            continue
        ends = problem.member[name]
        for (way, size), (_, whole) in zip(
            spread.pushes, on_member(spread, problem.joint, problem.member, name), strict=True
        ):
            half = f"{rounded(whole.value / 2)} {problem.force} at {ends.start} and at {ends.end}"
            product = _product(problem, spread, name, way, size.value)
            yield name, f"{product}{rounded(whole.value)} {problem.force} {way}", half


def _product(problem: Problem, spread: Spread, name: str, way: PushDirection, size: float) -> str:
    """ "7.5 × 4 = ", or nothing where it is its share of a whole."""
    if spread.total:
        return ""
    length = measure_along(problem.joint, problem.member[name], spread.per, way).value
    return f"{rounded(size)} × {rounded(length)} = "
