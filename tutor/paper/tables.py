"""Which tables stand on paper: for the student to fill in, and with every force?"""

from __future__ import annotations

from collections.abc import Iterator

from tutor.model import Problem, Reaction
from tutor.paper.blocks import Block, Paragraph, PrintedTable
from tutor.paper.lines import rounded
from tutor.statics import Answer, solve
from tutor.text import FEW, listed

NEITHER = "–"
"""What a force of nothing has for its sense."""


def reactions_asked(problem: Problem) -> Iterator[Block]:
    """The reactions where they are given; else room for them, for two at each support whatever it is, so
    that how many there are stays the student's to find."""
    if "reactions" in problem.given:
        told = listed([f"{n} = {rounded(solve(problem).value(n))}" for n in problem.reaction], FEW)
        yield Paragraph(f"The reactions are known: {told} {problem.force}.")
        return
    head = ("reaction", f"[{problem.force}]", "acts")
    rows = tuple((support.joint, *[""] * 6) for support in problem.supports)
    yield PrintedTable(("support", *head, *head), rows)


def members_asked(problem: Problem) -> PrintedTable:
    """Two members a row, to save height."""
    names = [*problem.member, ""] if len(problem.member) % 2 else [*problem.member]
    half = len(names) // 2
    head = ("member", f"force [{problem.force}]", "T or C")
    rows = zip(names[:half], names[half:], strict=True)
    return PrintedTable(head * 2, tuple((one, "", "", other, "", "") for one, other in rows))


def reactions_table(answer: Answer) -> PrintedTable:
    problem = answer.problem
    rows = tuple(
        (name, rounded(answer.value(name)), way(reaction, answer.value(name)) or NEITHER)
        for name, reaction in problem.reaction.items()
    )
    return PrintedTable(("reaction", f"value [{problem.force}]", "acts"), rows)


def way(reaction: Reaction, value: float) -> str:
    """Which way a reaction really acts on the truss."""
    if value == 0.0:
        return ""
    x, y = (part if value > 0 else -part for part in (reaction.direction.x, reaction.direction.y))
    if reaction.pull:
        return "pull of the link" if value > 0 else "push of the link"
    level = "to the right" if x > 1e-9 else "to the left" if x < -1e-9 else ""
    upright = "up" if y > 1e-9 else "down" if y < -1e-9 else ""
    return " and ".join(filter(None, (level, upright)))


def members_table(answer: Answer) -> PrintedTable:
    rows = []
    for member in answer.problem.member:
        force = answer.value(member)
        letter = "T" if force > 0 else "C" if force < 0 else NEITHER
        rows.append((member, rounded(abs(force)), letter))
    return PrintedTable(("member", f"force [{answer.problem.force}]", "T or C"), tuple(rows))
