"""What is answered to a guess, and why? It is called right or not yet; what it asks for stays the student's.

A good guess at a joint or an equation chooses it. A guess that is not good is told what is so of it,
never which one is.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from tutor.judge import Equation, Judge
from tutor.judge.independent import adds_something
from tutor.lesson.event import Event
from tutor.lesson.move import Guess, GuessKind, Move
from tutor.lesson.reply import Reply, Say
from tutor.lesson.solvable import in_words_together, lines_giving, open_in
from tutor.lesson.state import State
from tutor.lesson.watching.because import not_this_joint, of_equation, of_joint
from tutor.lesson.watching.line_moves import seen_zero
from tutor.lesson.watching.show import NOT_SHOWN, allowed
from tutor.lesson.watching.what_next import next_move
from tutor.text import listed

Fold = Callable[[State, Event, Judge], tuple[State, Reply]]

NOTHING_TO_GUESS = "There is nothing to guess here; type watch, and the next line is written."
WHICH = "{question} Type guess and one of these: {answers}."
RIGHT = "Yes, {of}{chosen}. {why}"
NOT_YET = "Not {chosen} yet. {why}"
NOT_RIGHT = "Not yet: {of}“{chosen}” is not right. {why}"
CHOSEN: Mapping[GuessKind, tuple[str, str]] = {
    "equation": ("choose", "about"),
    "joint": ("joint", "joint"),
}
"""The event, and its key, by which a good guess chooses."""
NOW: Mapping[GuessKind, str] = {
    "support": "Mark what acts there, or type watch.",
    "soundness": "Say so below, or type watch.",
    "value": "Write its value, or type watch.",
    "zero": "Say so with zero, or type watch.",
}
"""What is left to do after a good guess that chooses nothing."""


def guess(state: State, event: Event, desk: Judge, fold: Fold) -> tuple[State, Reply]:
    """The student guesses what comes next: data `guess`, the key of an answer."""
    if not allowed(state):
        return state, Reply((Say("note", NOT_SHOWN),))
    move = next_move(state, desk)
    if move is None or move.guess is None:
        return state, Reply((Say("note", NOTHING_TO_GUESS),))
    asked, key = move.guess, event.text("guess")
    chosen = asked.words(key)
    if not chosen:
        answers = ", ".join(option.words for option in asked.options)
        return state, Reply((Say("note", WHICH.format(question=asked.question, answers=answers)),))
    of = f"{asked.subject}: " if asked.of == "value" else ""
    if key not in asked.right:
        why = _why_not(state, asked, key)
        told = NOT_YET if asked.of in CHOSEN else NOT_RIGHT
        return state, Reply((Say("note", told.format(of=of, chosen=chosen, why=why)),))
    said = Say("note", RIGHT.format(of=of, chosen=chosen, why=_why(state, move, asked, key)))
    if asked.of not in CHOSEN:
        return state, Reply((said, Say("note", NOW[asked.of])))
    kind, name = CHOSEN[asked.of]
    after, reply = fold(state, Event(kind, {name: key}, event.time), desk)
    return after, Reply((said, *reply.said), reply.accepted)


def _why(state: State, move: Move, asked: Guess, key: str) -> str:
    """Why a guess is good."""
    if asked.of == "joint":
        return of_joint(state, key).text
    if asked.of == "equation":
        return of_equation(state, _equation(asked, key)).text
    if asked.of == "zero":
        return next(seen.said for seen in seen_zero(state) if seen.member == key)
    return move.reason.text


def _why_not(state: State, asked: Guess, key: str) -> str:
    """What is so of a guess that is not good, without saying which one is."""
    match asked.of:
        case "joint":
            return not_this_joint(state, key)
        case "equation":
            return _not_this_equation(state, _equation(asked, key))
        case "value":
            lines = in_words_together(lines_giving(state, asked.subject))
            return f"Solve {lines} for {asked.subject}, and read the sign of what comes out."
        case "zero":
            return f"Nothing at either end of {key} shows that it carries no force."
        case "support":
            return f"Ask in which directions joint {asked.subject} is held there, and whether it can turn."
        case _:
            return "Compare m + r with 2j, and look for what could move."


def _not_this_equation(state: State, about: Equation) -> str:
    left = open_in(state, about)
    if not left:
        return "Everything in it is known by now."
    if not adds_something(state.problem, about, state.standing):
        return "It would only say again what your lines say already."
    are = "is" if len(left) == 1 else "are"
    return f"{listed(left)} {are} unknown in it; another has fewer unknowns."


def _equation(asked: Guess, key: str) -> Equation:
    about = next(option.about for option in asked.options if option.key == key)
    assert about is not None
    return about
