"""Which thing does a lecturer do next, from where the lesson stands?

The reactions come first, each from an equation with one unknown where there is one; then what can be
seen to carry no force; then the joints, one with two unknown forces at a time; then one equation that
was not needed.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from tutor.judge import Judge
from tutor.lesson.move import Move
from tutor.lesson.reply import Ask, AskKind
from tutor.lesson.state import State
from tutor.lesson.steps import STEP
from tutor.lesson.watching.first_moves import (
    count,
    halves,
    reasons,
    say_loose,
    say_soundness,
    sense,
    shares,
    support,
    turning,
)
from tutor.lesson.watching.line_moves import closing, from_the_joint, from_the_whole, to_a_joint


def next_move(state: State, desk: Judge) -> Move | None:
    """What is done next at the board; None where the walk is done."""
    step = STEP[state.step]
    ask = step.ask(state)
    find = step.move or MOVES.get(ask.kind)
    return None if find is None else find(state, ask, desk)


MOVES: Mapping[AskKind, Callable[[State, Ask, Judge], Move | None]] = {
    "halves": halves,
    "shares": shares,
    "reasons": reasons,
    "count": count,
    "soundness": say_soundness,
    "loose": say_loose,
    "support": support,
    "sense": sense,
    "turning": turning,
    "line": from_the_whole,
    "joint": to_a_joint,
    "joint-line": from_the_joint,
    "close": closing,
}
"""What is done for each kind of question, where the step itself does not say it."""
