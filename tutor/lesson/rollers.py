"""What does it mean that a roller was found to pull?"""

from __future__ import annotations

from tutor.lesson.state import State
from tutor.model.support import kind_of_support, push_along

PULLED = (
    "The value is right, and it means that the truss would lift off: a roller only pushes, and the one "
    "at {joint} would have to pull. The statics goes on as if it held; a support that has to pull is a "
    "link, or a roller held down."
)


def roller_that_pulls(state: State, unknown: str) -> str | None:
    """What is said of a reaction found that a roller cannot give; None where there is none."""
    reaction = state.problem.reaction.get(unknown)
    if reaction is None:
        return None
    support = next(s for s in state.problem.supports if s.joint == reaction.joint)
    if not kind_of_support(support).only_pushes:
        return None
    if state.signed(unknown) * push_along(support, reaction) >= 0.0:
        return None
    return PULLED.format(joint=reaction.joint)
