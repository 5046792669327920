"""How is a result said back: as what the force does, or along the student's own arrow?"""

from __future__ import annotations

from tutor.judge.known_values import senses_for
from tutor.lesson.state import State
from tutor.lesson.steps.free_body import sense_in_words


def result_in_words(state: State, unknown: str, spoken: bool = False) -> str:
    """A result as what it does: "AB = 7.5 kN T", or `spoken` "AB = 7.5 kN, tension"; "B_y = 4 kN, up"."""
    value, unit = state.signed(unknown), state.problem.force
    size = f"{abs(value):.5g}"
    if value == 0:
        return f"{unknown} = 0"
    if unknown in state.problem.member:
        way = (", tension", ", compression") if spoken else (" T", " C")
        return f"{unknown} = {size} {unit}{way[value < 0]}"
    return f"{unknown} = {size} {unit}, {_sense(state, unknown)}"


def result_as_typed(state: State, unknown: str) -> str:
    """A result as it may be typed: "AB = 7.5 kN T", "B_y = 4 kN up", "R_C = -3 kN"."""
    result, unit = state.result[unknown], state.problem.force
    if unknown in state.problem.member or result.value == 0:
        return result_in_words(state, unknown)
    if not state.problem.reaction[unknown].axis:
        return f"{unknown} = {result.value:.5g} {unit}"
    return f"{unknown} = {abs(result.value):.5g} {unit} {_sense(state, unknown)}"


def _sense(state: State, unknown: str) -> str:
    """Which way a reaction acts, in words."""
    sense = senses_for(state.problem, unknown)[0 if state.signed(unknown) > 0 else 1]
    return sense_in_words(state.problem, unknown, sense)


def along_its_arrow(state: State, unknown: str) -> str:
    """A result as a number along the student's own arrow: "A_y = -4 kN along your arrow"."""
    value = state.result[unknown].value
    return f"{unknown} = {value:.5g} {state.problem.force} along your arrow"
