"""What becomes of a lesson when the next thing is shown, or all up to some point?

What is shown is taken as if the student had done it, and is marked as shown: it is no try of theirs.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from tutor.judge import Judge
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import State
from tutor.lesson.steps import STEPS
from tutor.lesson.watching.line_moves import next_turn
from tutor.lesson.watching.what_next import next_move
from tutor.text import listed, raised

Fold = Callable[[State, Event, Judge], tuple[State, Reply]]

NOT_SHOWN = "In this set nothing is shown: every line is your own."
NOTHING_LEFT = "Nothing is left to show: the walk is done."
THIS_FAR = "The lesson has come this far already; show without more words shows what is next."
ALL_KNOWN = (
    "Every force is known: nothing is left to show here. Type steps to go on to the closing check."
)
NO_SUCH_PLACE = "What can be shown at once ends at: {places}."
GUESS = "{question} {answers}Guess, do it yourself, or watch on."
LONGEST = 40
"""Answers that are longer together are not said with the question; guess lists them."""
MOST_MOVES = 5000


def _half(state: State) -> bool:
    """Whether as near to half of the members is found as whole joints allow."""
    members, turn = state.problem.member, next_turn(state)
    found = sum(name in state.result for name in members)
    if 2 * found >= len(members) or turn is None:
        return 2 * found >= len(members)
    after = found + sum(name in members for name in turn.finds)
    return len(members) - 2 * found <= abs(2 * after - len(members))


UNTIL: Mapping[str, Callable[[State], bool]] = {
    "reactions": lambda state: STEPS.index(state.step) >= STEPS.index("reactions"),
    "joints": lambda state: STEPS.index(state.step) >= STEPS.index("joints"),
    "half": lambda state: (
        state.joint is None and not state.part and state.reactions_done and _half(state)
    ),
    "close": lambda state: STEPS.index(state.step) >= STEPS.index("close"),
}
"""Up to where all may be shown at once: whether the lesson has come that far."""


def allowed(state: State) -> bool:
    """Whether the set lets things be shown, and guesses be answered."""
    return state.problem.rules.hints == "all" and state.problem.rules.mode != "check"


def show(state: State, event: Event, desk: Judge, fold: Fold) -> tuple[State, Reply]:
    """The next thing is shown, or all `until` some point."""
    if not allowed(state):
        return state, Reply((Say("note", NOT_SHOWN),))
    until = event.data.get("until")
    if until is None:
        return _inviting(desk, *_one(state, event, desk, fold))
    there = UNTIL.get(until) if isinstance(until, str) else None
    if there is None:
        return state, Reply((Say("note", NO_SUCH_PLACE.format(places=", ".join(UNTIL))),))
    said: list[Say] = []
    for _ in range(MOST_MOVES):
        if there(state) or next_move(state, desk) is None:
            break
        state, reply = _one(state, replace(event, data={}), desk, fold)
        said += reply.said
    if said:
        return state, Reply(tuple(said), True)
    return state, Reply((Say("note", THIS_FAR if next_move(state, desk) else NOTHING_LEFT),))


def _inviting(desk: Judge, state: State, reply: Reply) -> tuple[State, Reply]:
    """The reply with the guess that may be made before the next thing is shown."""
    move = next_move(state, desk) if reply.accepted else None
    if move is None or move.guess is None:
        return state, reply
    answers = _choice([option.words for option in move.guess.options])
    invited = Say.opened(
        "note", "Next: ", GUESS.format(question=move.guess.question, answers=answers)
    )
    return state, replace(reply, said=(*reply.said, invited))


def _choice(answers: Sequence[str]) -> str:
    """ "Tension, compression or no force? "; apart by semicolons where an answer has an "and"."""
    plain = all(" and " not in answer and "," not in answer for answer in answers)
    named = listed(answers, len(answers), last="or") if plain else "; ".join(answers)
    return f"{raised(named)}? " if len(named) <= LONGEST else ""


def _one(state: State, event: Event, desk: Judge, fold: Fold) -> tuple[State, Reply]:
    move = next_move(state, desk)
    if move is None:
        return state, Reply((Say("note", ALL_KNOWN if state.step == "joints" else NOTHING_LEFT),))
    after, reply = fold(state, Event(move.kind, move.data, event.time), desk)
    tries = [replace(made, verdict="shown") for made in after.tries[len(state.tries) :]]
    shown = (*state.shown, move.written)
    after = replace(after, tries=(*state.tries, *tries), shown=shown, in_row=state.in_row)
    said = [Say("shown", move.written), Say("note", move.reason.text)]
    if after.step != state.step:
        said.append(reply.said[-1])
    return after, Reply(tuple(said), reply.accepted, reply.verdict)
