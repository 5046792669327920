"""What is kept and said of a typed line, once it is judged?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Equation, Judge, Verdict
from tutor.judge.headings import equation_in_words
from tutor.judge.independent import same_body
from tutor.judge.verdict import OPENING
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say, Tone
from tutor.lesson.state import StandingLine, State
from tutor.lesson.trying import right, wrong

TONES: dict[str, Tone] = {
    "right": "right",
    "wrong": "wrong",
    "unreadable": "unreadable",
    "undecided": "undecided",
}


def to_add_to(state: State, about: Equation, closing: bool = False) -> tuple[Equation, ...]:
    """The standing equations of the same body, to which a line has to add; a closing line need not."""
    if closing:
        return ()
    return tuple(each for each in state.standing if same_body(each, about))


def keep_line(
    state: State,
    event: Event,
    about: Equation,
    text: str,
    verdict: Verdict,
    closing: bool = False,
) -> tuple[State, Reply]:
    """A right line stands from now on."""
    adds = not closing and all(remark.code != "dependent" for remark in verdict.remarks)
    state = right(state, event, about, text)
    line = StandingLine(about, text, adds, closing, verdict.without)
    state = replace(state, lines=(*state.lines, line), offered=None)
    said = [Say.opened("right", OPENING, f"{equation_in_words(state.problem, about)} holds.")]
    said += [Say("remark", remark.text) for remark in verdict.remarks]
    return state, Reply(tuple(said), True, verdict)


def refuse(
    state: State, event: Event, about: Equation, text: str, verdict: Verdict
) -> tuple[State, Reply]:
    if verdict.kind in ("unreadable", "undecided"):
        return state, Reply((Say(TONES[verdict.kind], verdict.text),), False, verdict)
    codes = tuple(m.code for m in verdict.mistakes)
    state = wrong(state, event, about, codes, text, verdict.mistakes, others=verdict.others)
    said = [Say("wrong", verdict.text)]
    offered = None
    if verdict.true_of is not None:
        offered = (verdict.true_of, text)
        words = equation_in_words(state.problem, verdict.true_of)
        said.append(Say("note", f"You can keep it as {words}."))
    return replace(state, offered=offered), Reply(tuple(said), False, verdict)


def keep_offered(
    state: State, event: Event, desk: Judge, closing: bool = False
) -> tuple[State, Reply]:
    """The student keeps a line that is true of something else, as that."""
    if state.offered is None:
        return state, Reply((Say("note", "There is no line to keep."),))
    about, text = state.offered
    verdict = desk.judge(about, text, state.own, to_add_to(state, about, closing))
    state = replace(state, offered=None)
    if not verdict.right:
        return state, Reply((Say("note", "Under your arrows now that line does not hold."),))
    return keep_line(state, event, about, text, verdict, closing)
