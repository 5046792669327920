"""What stands on paper of a truss of which it is asked whether it is held at all?

The sheet asks alike whatever the answer is, so that it gives none away.
"""

from __future__ import annotations

from collections.abc import Iterator

from tutor.model import Problem
from tutor.paper.blocks import Block, Paragraph, SubHeading
from tutor.statics import determinacy, loose_joints, soundness, stability
from tutor.text import listed

QUESTION = (
    "Is this truss stable and statically determinate, is it statically indeterminate, or can it move "
    "although no member changes its length (unstable)? Count, and give the reason; if it can move, "
    "say which joints do."
)
IF_HELD = "If statics alone finds its forces: "


def question(problem: Problem) -> Iterator[Block]:
    """What is asked before any force, where the problem wants it said."""
    if problem.truss is not None:
        yield Paragraph(QUESTION)


def what_it_is(problem: Problem) -> Iterator[Block]:
    """The answer with its reason, where the problem wants it said."""
    if problem.truss is not None:
        yield SubHeading("Is it held?")
        yield Paragraph(f"{_counted(problem)} {_follows(problem)}")


def _counted(problem: Problem) -> str:
    count = determinacy(problem)
    unknowns = count.members + count.reactions
    return f"m + r = {count.members} + {count.reactions} = {unknowns} and 2j = {count.equations}."


def _follows(problem: Problem) -> str:
    count, found = determinacy(problem), soundness(problem)
    if found == "determinate":
        return "The counts fit, and every joint is held: it is stable and statically determinate."
    if found == "indeterminate":
        more = count.members + count.reactions - count.equations
        unknowns = "1 unknown" if more == 1 else f"{more} unknowns"
        return (
            f"Every joint is held, by {unknowns} more than there are equations: it is statically "
            "indeterminate."
        )
    moving, held = loose_joints(problem), stability(problem)
    fits = (
        "Although the counts fit, it is unstable." if count.count == "fits" else "It is unstable."
    )
    rest = "" if set(moving) == set(held.moving) else f" All that can: {listed(moving)}."
    return f"{fits} {held.how}{rest}"
