"""How is a typed line or value taken, whichever step it is typed in?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import (
    Along,
    Fx,
    Fy,
    Judge,
    LineAbout,
    M,
    Value,
    Verdict,
    in_words,
    right_line,
)
from tutor.judge.about import as_text, equation_of
from tutor.judge.kind import force_in_words
from tutor.judge.truth import TrueLine, senses_for
from tutor.lesson.event import Event
from tutor.lesson.hints import Levels
from tutor.lesson.reply import Reply, Say, Tone
from tutor.lesson.solvable import is_determined
from tutor.lesson.state import Result, StandingLine, State
from tutor.lesson.steps.free_body import sense_in_words
from tutor.lesson.trying import right, wrong
from tutor.notation import Unreadable, read_equation, read_value

TONES: dict[str, Tone] = {
    "right": "right",
    "wrong": "wrong",
    "unreadable": "unreadable",
    "undecided": "undecided",
}


def value_named(desk: Judge, text: str) -> str | None:
    """The unknown that a text such as "B_y = 4 kN" gives a value to, or None."""
    if text.count("=") != 1:
        return None
    reading = read_value(text, desk.names, None)
    return None if isinstance(reading, Unreadable) else reading.name


def headed(desk: Judge, text: str, joint: str | None) -> LineAbout | None:
    """The equation that a line's own heading names, or None where it has none."""
    reading = read_equation(text, desk.names)
    if isinstance(reading, Unreadable) or reading.label is None:
        return None
    label = reading.label
    if label.kind == "x":
        return Fx(joint)
    if label.kind == "y":
        return Fy(joint)
    if label.kind == "moment" and label.point is not None and joint is None:
        return M(label.point)
    if label.kind == "along" and label.degrees is not None:
        return Along(label.degrees, joint)
    return None


def take_text(
    state: State, event: Event, desk: Judge, about: LineAbout | None, closing: bool = False
) -> tuple[State, Reply]:
    """A line or a value, judged and, where it is right, kept.

    `about` is the equation chosen, None for a bare value. A text that is only an unknown, an
    equals sign and a number is a value; it is also the line where it says the same.
    """
    text = str(event.data.get("text", ""))
    unknown = value_named(desk, text)
    if unknown is not None:
        if about is not None and not closing:
            verdict = desk.judge(about, text, state.own, _standing(state, about))
            if verdict.right:
                state, reply = _keep_line(state, event, about, text, verdict, closing)
                return _take_value(state, event, desk, unknown, text, reply.said)
        return _take_value(state, event, desk, unknown, text, ())
    if about is None:
        return state, Reply((Say("note", "Choose first which equation this line is."),))
    verdict = desk.judge(about, text, state.own, _standing(state, about))
    if verdict.right:
        return _keep_line(state, event, about, text, verdict, closing)
    return _refuse(state, event, about, text, verdict)


def _standing(state: State, about: LineAbout) -> tuple[LineAbout, ...]:
    return tuple(line.about for line in state.lines_of(about.joint) if line.adds)


def _keep_line(
    state: State,
    event: Event,
    about: LineAbout,
    text: str,
    verdict: Verdict,
    closing: bool,
) -> tuple[State, Reply]:
    adds = all(remark.code != "dependent" for remark in verdict.remarks)
    state = right(state, event, as_text(about), text)
    line = StandingLine(about, text, adds, closing)
    state = replace(state, lines=(*state.lines, line), offered=None)
    said = [Say("right", f"Right: {in_words(about)} holds.")]
    said += [Say("remark", remark.text) for remark in verdict.remarks]
    return state, Reply(tuple(said), True, verdict)


def _refuse(
    state: State, event: Event, about: LineAbout, text: str, verdict: Verdict
) -> tuple[State, Reply]:
    if verdict.kind in ("unreadable", "undecided"):
        return state, Reply((Say(TONES[verdict.kind], verdict.text),), False, verdict)
    codes = tuple(m.code for m in verdict.mistakes)
    state = wrong(state, event, as_text(about), codes, text, verdict.mistakes)
    said = [Say("wrong", verdict.text)]
    if verdict.true_of is not None:
        state = replace(state, offered=(verdict.true_of, text))
        said.append(Say("note", f"You can keep it as {in_words(verdict.true_of)}."))
    else:
        state = replace(state, offered=None)
    return state, Reply(tuple(said), False, verdict)


def keep_offered(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student keeps a line that is true of something else, as that."""
    if state.offered is None:
        return state, Reply((Say("note", "There is no line to keep."),))
    about, text = state.offered
    verdict = desk.judge(about, text, state.own, _standing(state, about))
    return _keep_line(state, event, about, text, verdict, False)


def _take_value(
    state: State, event: Event, desk: Judge, unknown: str, text: str, said: tuple[Say, ...]
) -> tuple[State, Reply]:
    if not is_determined(state, unknown) and unknown not in state.result:
        note = f"No line stands yet that gives {unknown}: write the line first, then its value."
        return state, Reply((*said, Say("note", note)), bool(said))
    others = replace(state, results=tuple(r for r in state.results if r.unknown != unknown))
    verdict = desk.judge(Value(unknown), text, others.own)
    place = as_text(Value(unknown))
    if not verdict.right:
        if verdict.kind == "wrong":
            codes = tuple(m.code for m in verdict.mistakes)
            state = wrong(state, event, place, codes, text, verdict.mistakes)
        tone = TONES[verdict.kind]
        return state, Reply((*said, Say(tone, verdict.text)), bool(said), verdict)
    assert verdict.value is not None
    result = Result(unknown, text, verdict.value, verdict.radius)
    state = right(replace(others, results=(*others.results, result)), event, place, text)
    told = [*said, Say("right", f"Right: {result_in_words(state, unknown)}.")]
    told += [Say("remark", remark.text) for remark in verdict.remarks]
    if verdict.value < 0 and unknown in state.problem.reaction:
        told.append(Say("remark", "What does the minus say about your arrow?"))
    return state, Reply(tuple(told), True, verdict)


def result_in_words(state: State, unknown: str) -> str:
    """A result for people: "AB = 7.5 kN T", "B_y = 4 kN, up"."""
    value, unit = state.signed(unknown), state.problem.force
    size = f"{abs(value):.5g}"
    if value == 0:
        return f"{unknown} = 0"
    if unknown in state.problem.member:
        return f"{unknown} = {size} {unit} {'T' if value > 0 else 'C'}"
    sense = senses_for(state.problem, unknown)[0 if value > 0 else 1]
    return f"{unknown} = {size} {unit}, {sense_in_words(state.problem, unknown, sense)}"


def line_hints(state: State, desk: Judge, about: LineAbout, look: str, reason: str) -> Levels:
    """The hints for writing one equation; the place level names the forces that take part."""
    true = TrueLine(state.problem, about, state.own)
    acting = [s.name for s in (*true.unknowns.values(), *true.loads) if s.true != 0.0]
    things = [force_in_words(state.problem, name) for name in acting]
    where = (
        "These take part: " + ", ".join(things) + "."
        if things
        else "No force has a part in this one."
    )
    line = f"For instance: {right_line(state.problem, about, state.own)}"
    return Levels(as_text(about), look, reason, where, line)


def value_hints(state: State, desk: Judge, unknown: str) -> Levels:
    """The hints for solving for one unknown from lines that stand."""
    true = desk.values()[unknown]
    shown = replace(
        state, results=(*state.results, Result(unknown, "", state.own.sign(unknown) * true, 0.0))
    )
    return Levels(
        as_text(Value(unknown)),
        "A line that stands has only one unknown left, or two lines share two.",
        "Bring everything known to one side, then divide by the factor of the unknown; with two "
        "unknowns, take one out by adding multiples of the lines.",
        f"{unknown} can be found now from the lines you have.",
        f"{result_in_words(shown, unknown)}.",
    )


def solvable_now(state: State) -> str | None:
    """An unknown without value that the standing lines give, or None."""
    seen = {
        name
        for line in state.lines
        for name in _names(state, line.about)
        if name not in state.result
    }
    return next((n for n in state.problem.unknowns if n in seen and is_determined(state, n)), None)


def _names(state: State, about: LineAbout) -> list[str]:
    return [n for n in equation_of(state.problem, about).linear if n is not None]
