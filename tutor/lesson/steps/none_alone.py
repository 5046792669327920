"""What is said where no joint can be solved by itself?"""

from __future__ import annotations

from tutor.lesson.hints import Levels
from tutor.lesson.place import Question
from tutor.lesson.reply import Say
from tutor.lesson.state import State
from tutor.lesson.steps import section
from tutor.model import Problem
from tutor.statics import given_by
from tutor.text import listed

NONE_ALONE = (
    "At each of them three forces or more are unknown: write the sums of several joints until together "
    "they give a force; or make a section, a cut that parts the truss in two, and keep one part: it is a "
    "free body, on which each cut member acts with its force. Type a cut like {example}, which cuts off "
    "joint {joint} alone."
)
ARRIVED = Say.opened("note", "Next: ", "the joints, one after the other.")
NONE_GIVES = Say.opened("note", "Next: ", "the joints. None of them gives a force by itself yet.")


def none_alone(problem: Problem) -> str:
    """The two ways there are then, and how a cut of this truss is typed."""
    example, joint = section.example(problem)
    return NONE_ALONE.format(example=example, joint=joint)


def arrival(state: State) -> Say:
    """What is said on coming to the joints."""
    gives = any(given_by(state.problem, j.name, state.result) for j in state.problem.joints)
    return ARRIVED if gives or state.members_done else NONE_GIVES


def section_hints(state: State) -> Levels:
    """The hints where every joint has three unknown forces or more."""
    line = "Write the sums of neighbouring joints, until they hold no more unknowns than there are sums."
    if (best := section.best_section(state)) is not None:
        found, keep = best
        line = f"Make a section through {listed(found.cut)}, and keep the part with {keep}."
    return Levels(
        Question("no joint"),
        "No joint can be solved by itself here; a larger part of the truss is a free body as well.",
        "A part that is cut off gives three equations, one more than a joint; and the equations of several "
        "joints count together.",
        "See which pieces are stiff by themselves, triangle by triangle, and which members hold them "
        "together: those are the ones to cut.",
        line,
    )
