"""How is a result said back: as what the force does, or along the student's own arrow?"""

from __future__ import annotations

from tutor.judge.known_values import senses_for
from tutor.lesson.state import State
from tutor.lesson.steps.free_body import sense_in_words


def result_in_words(state: State, unknown: str) -> str:
    """A result as what it does: "AB = 7.5 kN T", "B_y = 4 kN, up"."""
    value, unit = state.signed(unknown), state.problem.force
    size = f"{abs(value):.5g}"
    if value == 0:
        return f"{unknown} = 0"
    if unknown in state.problem.member:
        return f"{unknown} = {size} {unit} {'T' if value > 0 else 'C'}"
    sense = senses_for(state.problem, unknown)[0 if value > 0 else 1]
    return f"{unknown} = {size} {unit}, {sense_in_words(state.problem, unknown, sense)}"


def along_its_arrow(state: State, unknown: str) -> str:
    """A result as a number along the student's own arrow: "A_y = -4 kN along your arrow"."""
    value = state.result[unknown].value
    return f"{unknown} = {value:.5g} {state.problem.force} along your arrow"
