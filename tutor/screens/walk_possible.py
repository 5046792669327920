"""Which deeds make sense now on the walk, beside answering?"""

from __future__ import annotations

from tutor.deeds import board
from tutor.lesson import State
from tutor.lesson.reply import LINES, TICKED
from tutor.lesson.skipping import SKIPPABLE
from tutor.lesson.watching.show import UNTIL
from tutor.screens.onward import Onward
from tutor.session import Session


def possible(session: Session, ahead: Onward | None = None) -> frozenset[str]:
    """The ids of the deeds that make sense now; at the end also what is `ahead`."""
    state, kind = session.lesson.state, session.lesson.ask.kind
    found = {"figure", "large", "step", "help", "leave"}
    if kind != "table":
        found.add("hint")
    elif ahead is not None and ahead.entry is not None:
        found.add("next")
    found |= _of_the_board(session)
    if session.lesson.events:
        found.add("undo")
    if kind in TICKED:
        found.add("answer")
    if _is_at_hand(state):
        found.add("keep")
    if kind in LINES:
        found.add("equation")
    if state.step == "joints":
        found |= {"zero", "assume"}
        if state.joint is not None or state.part:
            found.add("joint")
    if state.practice is not None:
        found.add("practice")
    if state.results:
        found.add("table")
    if state.step in session.skippable and state.step in SKIPPABLE:
        found.add("skip")
    return frozenset(found)


def _is_at_hand(state: State) -> bool:
    """Whether the line that can be kept as something else is the last one tried, and still asked for."""
    if state.offered is None or state.about is None or not state.tries:
        return False
    last = state.tries[-1]
    return (last.text, last.at) == (state.offered[1], state.about)


def _of_the_board(session: Session) -> set[str]:
    """Those that have something written at the board."""
    if not board.can_show(session.lesson):
        return set()
    found = {"show"} if board.to_guess(session.lesson) is None else {"show", "guess"}
    if _is_to_begin(session.lesson.state, session.stage):
        found.add("begin")
    return found


def _is_to_begin(state: State, stage: str) -> bool:
    """Whether what was offered can still be written, before the student's own first line."""
    return stage in UNTIL and not UNTIL[stage](state) and not any(t.text for t in state.tries)
