"""Which tables does a sheet hold for the student to fill in?"""

from __future__ import annotations

from collections.abc import Iterator

from tutor.model import Problem
from tutor.paper.blocks import Block, Grid, Words
from tutor.paper.lines import rounded
from tutor.statics import solve
from tutor.text import FEW, listed


def reactions_asked(problem: Problem) -> Iterator[Block]:
    """The reactions where they are given; else room for them, for two at each support whatever it is, so
    that how many there are stays the student's to find."""
    if "reactions" in problem.given:
        told = listed([f"{n} = {rounded(solve(problem).value(n))}" for n in problem.reaction], FEW)
        yield Words(f"The reactions are known: {told} {problem.force}.")
        return
    head = ("reaction", f"[{problem.force}]", "acts")
    rows = tuple((support.joint, *[""] * 6) for support in problem.supports)
    yield Grid(("support", *head, *head), rows)


def members_asked(problem: Problem) -> Grid:
    """Two members a row, to save height."""
    names = [*problem.member, ""] if len(problem.member) % 2 else [*problem.member]
    half = len(names) // 2
    head = ("member", f"force [{problem.force}]", "T or C")
    rows = zip(names[:half], names[half:], strict=True)
    return Grid(head * 2, tuple((one, "", "", other, "", "") for one, other in rows))
