"""How is a typed line or value taken, whichever step it is typed in?"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Equation, Fx, Judge, Value, Verdict
from tutor.judge.about import equation_of
from tutor.judge.components import component_stated
from tutor.judge.known_values import KnownValue, KnownValues
from tutor.judge.same import SAME
from tutor.judge.worked import equation_before_value, value_given
from tutor.lesson.event import Event
from tutor.lesson.reply import Reply, Say
from tutor.lesson.shown import shows_nothing, shows_values
from tutor.lesson.solvable import lines_giving, solvable_now
from tutor.lesson.state import StandingLine, State
from tutor.lesson.steps.apart import answer_each
from tutor.lesson.steps.found_last import just_found, only_one_left, the_one_it_is
from tutor.lesson.steps.headings import (
    Typed,
    as_spoken,
    is_bare_value,
    is_sum,
    is_worked_number,
    value_behind,
    value_named,
)
from tutor.lesson.steps.letters import take_letters
from tutor.lesson.steps.line_kept import TONES, keep_line, refuse, to_add_to
from tutor.lesson.steps.own_slip import from_refused_line, from_refused_values
from tutor.lesson.steps.slip_in_working import does_not_follow
from tutor.lesson.steps.value_kept import keep_value
from tutor.lesson.trying import wrong
from tutor.notation import Unreadable, ValueReading, value_of
from tutor.notation.pages.convention import letter_of_all

CHOOSE_FIRST = (
    "Which equation is this line? Choose it first, or begin the line with its heading, like ΣFx:"
)
WHOSE_VALUE = "Which force is this the value of? Write its name and = before it, as for {name}."


def take_text(
    state: State, event: Event, desk: Judge, about: Equation | None, closing: bool = False
) -> tuple[State, Reply]:
    """A line or a value, judged and, where it is right, kept.

    `about` is the equation chosen, None for none. A text that is only an unknown, an equals sign
    and a number is a value; where no line gives that value yet, it may be the whole line itself.
    A number alone is the value of the one unknown that the last line has left open.
    """
    event = _without_heading(event, desk)
    text = event.text("text")
    line = desk.read(text)
    if isinstance(line, Unreadable) and (line.code == "letters" or letter_of_all(text)):
        return take_letters(state, event, desk)
    line = as_spoken(desk, line)
    name = component_stated(line)
    if name is not None and (name in state.result or lines_giving(state, name)):
        return _take_component(state, event, desk, about or Fx(state.joint), name)
    unknown = value_named(line, state.result)
    if unknown is None:
        if is_bare_value(line) or (is_worked_number(line) and just_found(state)):
            return _take_bare_value(state, event, desk, line)
        if about is None:
            return state, Reply((_no_equation(desk.read(text)),))
        return _take_line(state, event, desk, about, text, closing)
    is_open = unknown not in state.result and not lines_giving(state, unknown)
    if about is not None and (is_open or closing):
        verdict = desk.judge(about, text, state.own, to_add_to(state, about, closing))
        if verdict.right and all(remark.code != "unrecorded" for remark in verdict.remarks):
            state, reply = keep_line(state, event, about, text, verdict, closing)
            return (state, reply) if closing else _take_value(state, event, desk, unknown, reply)
        if is_open and _is_meant_as_line(state, desk, about, unknown, text, verdict):
            kept = None if closing else _kept_though(state, event, desk, about, verdict)
            if kept is None and (follows := from_refused_line(state, desk, unknown, text)):
                return state, Reply((Say("note", follows),))
            return kept or refuse(state, event, about, text, verdict)
    if (of_sum := sum_meant(state, event, desk)) is not None:
        return of_sum
    return _take_value(state, event, desk, unknown, Reply(()))


def _take_component(
    state: State, event: Event, desk: Judge, about: Equation, name: str
) -> tuple[State, Reply]:
    """A component of a force that has a value, or that the lines give one; nothing is kept of it."""
    own, text = state.own, event.text("text")
    if name not in own.known:
        value = own.sign(name) * desk.values()[name]
        known = {**own.known, name: KnownValue(value, SAME * abs(value))}
        own = KnownValues(own.senses, known)
    verdict = desk.judge(about, text, own)
    if verdict.right:
        return state, Reply((Say("right", verdict.text, opening=verdict.opening),), True, verdict)
    return refuse(state, event, about, text, verdict)


def _without_heading(event: Event, desk: Judge) -> Event:
    """The event as if "ΣFx: A_x = 0" had been typed as "A_x = 0", which is a line and a value."""
    line = desk.read(event.text("text"))
    if isinstance(line, Unreadable) or line.label is None:
        return event
    rest = line.behind_heading
    value = value_named(desk.read(rest)) is not None
    return replace(event, data={**event.data, "text": rest.strip()}) if value else event


def _no_equation(line: Typed) -> Say:
    """What is said of a line that belongs to no equation: first, where it cannot be read."""
    reading = equation_before_value(line)
    if isinstance(reading, Unreadable):
        return Say("unreadable", reading.message)
    return Say("note", CHOOSE_FIRST)


def _take_bare_value(state: State, event: Event, desk: Judge, line: Typed) -> tuple[State, Reply]:
    """A number alone: the value of the unknown just found, of the only one that is left, or of the only
    one that the lines give and that it fits."""
    unknown = just_found(state) or only_one_left(state)
    reading = value_of(line)
    if isinstance(reading, ValueReading) and unknown is not None:
        is_member = unknown in state.problem.member
        unknown = None if (reading.sense if is_member else reading.letter) else unknown
    unknown = unknown or the_one_it_is(state, desk, event.text("text"))
    if unknown is None:
        open_ones = (name for name in state.problem.unknowns if name not in state.result)
        name = solvable_now(state) or next(open_ones, state.problem.unknowns[0])
        return state, Reply((Say("note", WHOSE_VALUE.format(name=name)),))
    state, reply = _take_value(state, event, desk, unknown, Reply(()))
    if reply.accepted:
        return state, reply
    return state, replace(
        reply, said=(Say("note", f"This is taken as the value of {unknown}."), *reply.said)
    )


def sum_meant(state: State, event: Event, desk: Judge) -> tuple[State, Reply] | None:
    """What is said of `5 - 0.6 AB + 2 = -A_x` where another sum was chosen than gave A_x: of that sum.

    None where it is the value that it looks like, right or wrong in a way that can be named, or where
    it is no such sum either.
    """
    text, about = event.text("text"), state.about
    line = desk.read(text)
    unknown = value_named(line, state.result)
    if about is None or state.proposed or unknown is None or unknown not in state.result:
        return None
    if not _adds_up(line):
        return None
    value = desk.judge(Value(unknown), text, state.own)
    if value.kind != "wrong" or value.mistakes[0].code not in ("arithmetic", "extra"):
        return None
    verdict = desk.judge(about, text, state.own)
    named = verdict.kind == "wrong" and verdict.mistakes[0].code != "not-equilibrium"
    return refuse(state, event, about, text, verdict) if named else None


def _adds_up(line: Typed) -> bool:
    """Whether some side of a line is a sum of numbers, on whichever side of the = it stands."""
    if isinstance(line, Unreadable):
        return False
    return any(len(side.terms) > 1 for side in line.result.sides if side.numeric)


def _is_meant_as_line(
    state: State, desk: Judge, about: Equation, unknown: str, text: str, verdict: Verdict
) -> bool:
    """Whether a wrong line such as "A_x = 12" is better met by its mistake than taken for a value.

    A true value that no line gives yet is not called wrong; a sum is a line, whatever is wrong in it. A
    value with one force too few and one too many is no line.
    """
    if verdict.kind != "wrong":
        return bool(verdict.stands)
    if unknown not in equation_of(state.problem, about).linear:
        return False
    codes = {mistake.code for mistake in verdict.mistakes}
    if ("not-equilibrium" in codes or codes >= {"missing", "extra"}) and not is_sum(
        desk.read(text)
    ):
        return False
    return not desk.judge(Value(unknown), text, state.own).right


def _take_line(
    state: State, event: Event, desk: Judge, about: Equation, text: str, closing: bool
) -> tuple[State, Reply]:
    verdict = desk.judge(about, text, state.own, to_add_to(state, about, closing))
    true_of = about if verdict.right else verdict.true_of
    if true_of is not None and not shows_values(state, desk.read(text), true_of):
        return state, Reply((Say("note", shows_nothing(state.problem, about)),))
    if verdict.right and any(remark.code == "component" for remark in verdict.remarks):
        return state, Reply((Say("right", verdict.text, opening=verdict.opening),), True, verdict)
    if verdict.right and not closing and any(r.code == "result" for r in verdict.remarks):
        return _take_values(state, event, desk, verdict)
    if verdict.right and not closing and _says_again(verdict):
        again, reply = _with_value(state, event, desk, Reply((), True, verdict))
        if reply.said:
            return again, reply
    if verdict.right and verdict.restates and not closing:
        said = (Say("remark", remark.text) for remark in verdict.remarks)
        return state, Reply(tuple(said), True, verdict)
    if verdict.right:
        state, reply = keep_line(state, event, about, text, verdict, closing)
        return (state, reply) if closing else _with_value(state, event, desk, reply)
    if verdict.kind == "wrong" and (said_of := from_refused_values(state, desk, about, text)):
        return state, Reply((Say("note", said_of),))
    kept = None if closing else _kept_though(state, event, desk, about, verdict)
    return kept or refuse(state, event, about, text, verdict)


def _take_values(state: State, event: Event, desk: Judge, verdict: Verdict) -> tuple[State, Reply]:
    """The values in a line of nothing but values and components; it is no equation, and none is kept."""
    line = desk.read(event.text("text"))
    texts = {
        name: line.text[step.span.start : step.span.end]
        for step in (() if isinstance(line, Unreadable) else line.steps)
        if (name := value_given(step)) is not None and name not in state.result
    }
    if not texts:
        said = (Say("remark", remark.text) for remark in verdict.remarks)
        return state, Reply(tuple(said), True, verdict)
    unknowns = iter(texts)

    def taken(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
        return _take_value(state, event, desk, next(unknowns), Reply(()))

    return answer_each(taken, tuple(texts.values()), state, event, desk)


def _says_again(verdict: Verdict) -> bool:
    """Whether a right line adds nothing to those that stand, save the value it may end in."""
    return verdict.restates or any(remark.code == "dependent" for remark in verdict.remarks)


def _kept_though(
    state: State, event: Event, desk: Judge, about: Equation, verdict: Verdict
) -> tuple[State, Reply] | None:
    """The right equation kept of a line whose value behind it is not; None where there is none."""
    if not verdict.stands:
        return None
    alone = desk.judge(about, verdict.stands, state.own, to_add_to(state, about))
    if not alone.right or alone.restates:
        return None
    mistakes = verdict.mistakes
    state, reply = keep_line(state, event, about, verdict.stands, alone)
    if mistakes:
        place = Value(mistakes[0].force) if mistakes[0].force else about
        codes = tuple(mistake.code for mistake in mistakes)
        state = wrong(state, event, place, codes, event.text("text"), mistakes)
    return state, Reply((*reply.said, Say(TONES[verdict.kind], verdict.text)), True, verdict)


def _with_value(state: State, event: Event, desk: Judge, before: Reply) -> tuple[State, Reply]:
    """The value taken as well that a right line ends in, or what is missing for it."""
    text = event.text("text")
    line = as_spoken(desk, desk.read(text))
    unknown = value_behind(line, state.result)
    if unknown is None or unknown in state.result:
        return state, before
    return _take_value(state, event, desk, unknown, before)


def _take_value(
    state: State, event: Event, desk: Judge, unknown: str, before: Reply
) -> tuple[State, Reply]:
    """A value on its own; `before` is what was said where the text is a line as well."""
    text = event.text("text")
    lines = lines_giving(state, unknown)
    if not lines and unknown not in state.result:
        note = f"No line stands yet that gives {unknown}: write the line first, then its value."
        note = from_refused_line(state, desk, unknown, text) or note
        return state, replace(before, said=(*before.said, Say("note", note)))
    others = replace(state, results=tuple(r for r in state.results if r.unknown != unknown))
    verdict = desk.judge(Value(unknown), text, others.own, lines=[line.text for line in lines])
    verdict = _naming_lines(others, desk, verdict, text, lines)
    place = Value(unknown)
    if verdict.right and verdict.value is None:
        said = (*before.said, Say("right", verdict.text, opening=verdict.opening))
        return state, Reply(said, True, verdict)
    if verdict.right:
        return keep_value(others, event, unknown, verdict, before)
    if verdict.kind == "wrong":
        codes = tuple(m.code for m in verdict.mistakes)
        state = wrong(state, event, place, codes, text, verdict.mistakes, others=verdict.others)
    said = (*before.said, Say(TONES[verdict.kind], verdict.text))
    return state, Reply(said, before.accepted, verdict)


def _naming_lines(
    state: State, desk: Judge, verdict: Verdict, text: str, lines: tuple[StandingLine, ...]
) -> Verdict:
    """The verdict on a value, with the lines named that it does not follow from."""
    said = does_not_follow(state, desk, verdict, text, lines)
    if said is None:
        return verdict
    words, slip = said
    return replace(verdict, text=words, mistakes=(replace(slip, text=words),))
