"""Step 5: do the equations that were not needed hold?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tutor.judge import Fx, Fy, Judge, M, Verdict
from tutor.judge.about import Equation, body_in_words, equation_of, in_words
from tutor.judge.headings import headed
from tutor.lesson.event import Event
from tutor.lesson.hints import Levels
from tutor.lesson.place import Question
from tutor.lesson.reply import Ask, Reply, Say, option_of
from tutor.lesson.shown import accounts_for, not_here, share_values, shows_nothing
from tutor.lesson.state import State
from tutor.lesson.step import LessonStep
from tutor.lesson.steps import section
from tutor.lesson.steps.apart import take_apart
from tutor.lesson.steps.closing_sums import checks, of_the_part
from tutor.lesson.steps.free_body import undrawn
from tutor.lesson.steps.headings import equation_called, is_bare_value, is_sum, value_named
from tutor.lesson.steps.hinting import line_hints, value_hints, value_in_trouble
from tutor.lesson.steps.line_kept import keep_line
from tutor.lesson.steps.writing import sum_meant, take_text
from tutor.notation import Line, Reading, Unreadable, one_equation
from tutor.text import listed

QUESTION = (
    "Some equations were not needed. They must hold as well: write one "
    "of them, with your values, and see what is left over."
)
OF_A_PART = (
    "{part}: all that acts on it is known. Write one of its sums, with your values, and see what is "
    "left over."
)
NUMBERS_ONLY = (
    "This is {equation}. Now put your value in the place of {names}: only a line of numbers shows "
    "whether your values close."
)
NO_ZERO = "Put = 0 after it: {equation} says that its terms come to nothing."
WHICH = "Which equation is this line? Those that were not needed are {equations}: choose one."
USED = (
    "{equation} was needed before, or leaves nothing to check. Take one that was not needed: "
    "{equations}."
)


def ask(state: State) -> Ask:
    """Choose an equation that was not needed, and write it."""
    sums = of_the_part(state)
    options = tuple(
        option_of(a, section.sum_in_short(state, a) if sums else in_words(a), state.about)
        for a in sums or checks(state)
    )
    question = OF_A_PART.format(part=section.part_in_words(state)) if sums else QUESTION
    return Ask("close", "close", "Close", question, options, None, state.about)


def typed(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student typed a closing line: data `text`, and `about` where not chosen before."""
    if (each := take_apart(typed, state, event, desk)) is not None:
        return each
    if "about" in event.data:
        state, reply = choose(state, event, desk)
        if not reply.accepted:
            return state, reply
    text = event.text("text")
    line = desk.read(text)
    reading = one_equation(line)
    if state.about is not None and is_bare_value(line) and is_sum(line):
        return state, Reply((Say("note", NO_ZERO.format(equation=in_words(state.about))),))
    if isinstance(line, Unreadable) or isinstance(reading, Unreadable) or is_bare_value(line):
        return take_text(state, event, desk, None)
    if value_named(line) is not None:
        return sum_meant(state, event, desk) or take_text(state, event, desk, None)
    about, how = _meant(state, line, reading)
    if about is None:
        return state, Reply(how)
    state = replace(state, about=about)
    if reading.names:
        return _with_letters(state, event, desk, about, reading)
    if accounts_for(state, reading, about):
        verdict = Verdict("right", "")
        found, reply = keep_line(state, event, about, text, verdict, closing=True)
        return _closed(state, found, event, replace(reply, said=(*how, *reply.said)))
    if true_of := _true_elsewhere(state, reading, about):
        return _tell_elsewhere(state, text, about, true_of)
    adds_up = abs(sum(term.value for term in reading.terms)) <= _slack(state, reading)
    if adds_up or desk.judge(about, text, state.own).right:
        why = not_here(state, reading, about) or shows_nothing(state.problem, about)
        return state, Reply((Say("note", why),))
    return take_text(state, event, desk, about, closing=True)


def _with_letters(
    state: State, event: Event, desk: Judge, about: Equation, reading: Reading
) -> tuple[State, Reply]:
    """A line with unknowns in it is no check, right as it may be; a wrong one is told as wrong."""
    if not desk.judge(about, event.text("text"), state.own).right:
        return take_text(state, event, desk, about, closing=True)
    said = NUMBERS_ONLY.format(equation=in_words(about), names=listed(reading.names))
    return state, Reply((Say("note", said),))


def _slack(state: State, reading: Reading) -> float:
    size = sum(abs(term.value) for term in reading.terms)
    return state.problem.tolerance.silent * size + sum(term.radius for term in reading.terms)


def _meant(state: State, line: Line, reading: Reading) -> tuple[Equation | None, tuple[Say, ...]]:
    """The offered equation a line of numbers is, and what is said of how it was found.

    Its heading goes first, then the one chosen, then the first one that it accounts for.
    """
    offers = checks(state)
    joint = state.about.joint if state.about is not None else None
    about = _headed(state, line, joint) or state.about
    if about in offers:
        return about, ()
    if about is not None and (about.joint is not None or isinstance(about, M)):
        return None, (_not_offered(about, offers),)
    if about is not None:
        offers = tuple(each for each in offers if type(each) is type(about))
        if len(offers) == 1:
            return offers[0], ()
        if not offers:
            return None, (_not_offered(about, checks(state)),)
    fitting = next((each for each in offers if accounts_for(state, reading, each)), None)
    if fitting is not None:
        return fitting, (Say("note", f"Taken as {in_words(fitting)}."),)
    return None, (Say("note", WHICH.format(equations=_named(offers))),)


def _headed(state: State, line: Line, joint: str | None) -> Equation | None:
    """The equation that a heading names; one without a body is of the part kept."""
    about = headed(state.problem, line, joint)
    return about if about is None or not state.part else section.of_part(state, about) or about


def _true_elsewhere(state: State, reading: Reading, about: Equation) -> Equation | None:
    """Another equation of the truss that a line of numbers accounts for, an offered one first."""
    joints = [joint.name for joint in state.problem.joints]
    sums: list[Equation] = [axis(joint) for joint in joints for axis in (Fx, Fy)]
    every = (*checks(state), *sums, Fx(), Fy(), *(M(joint) for joint in joints))
    worth = (each for each in every if each != about and len(share_values(state, each)) > 1)
    return next((each for each in worth if accounts_for(state, reading, each)), None)


def _tell_elsewhere(
    state: State, text: str, about: Equation, true_of: Equation
) -> tuple[State, Reply]:
    """What is said of a line that holds as another equation; it is kept only as an offered one."""
    said = Say("note", f"This is true: it is {in_words(true_of)}, not {in_words(about)}.")
    offers = checks(state)
    if true_of in offers:
        keep_it = Say("note", f"You can keep it as {in_words(true_of)}.")
        return replace(state, offered=(true_of, text)), Reply((said, keep_it))
    return state, Reply((said, _not_offered(true_of, offers)))


def _not_offered(about: Equation, offers: Sequence[Equation]) -> Say:
    return Say("note", USED.format(equation=in_words(about), equations=_named(offers)))


def _named(offers: Sequence[Equation]) -> str:
    return listed([in_words(each) for each in offers], most=5)


def keep(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student keeps a line that is true of another equation that was not needed."""
    if state.offered is None or state.offered[0] not in checks(state):
        return state, Reply((Say("note", "There is no line to keep."),))
    about, text = state.offered
    line = desk.read(text)
    body = text if isinstance(line, Unreadable) else line.behind_heading
    event = Event("type", {"text": body}, event.time)
    return typed(replace(state, about=about, offered=None), event, desk)


def _closed(before: State, after: State, event: Event, reply: Reply) -> tuple[State, Reply]:
    """On to the table where a line was added, with what is left over in it."""
    if len(after.lines) == len(before.lines):
        return after, reply
    said = (*reply.said, Say("note", what_is_left(after, after.lines[-1].about)))
    done = replace(after, about=None, part=(), step="table", ended=event.time)
    return done, replace(reply, said=said)


def choose(state: State, event: Event, desk: Judge) -> tuple[State, Reply]:
    """The student chose an unused equation: data `about`."""
    about = equation_called(state.problem, event.text("about"))
    offers = checks(state)
    if about is not None and state.part and about not in offers:
        about = section.of_part(state, about) or about
    if about is None:
        return state, Reply((Say("note", WHICH.format(equations=_named(offers))),))
    if about not in offers:
        return state, Reply((_not_offered(about, offers),))
    state = replace(state, about=about, proposed=False)
    return state, Reply((Say("note", f"Write {in_words(about)}."),), True)


def what_is_left(state: State, about: Equation) -> str:
    """What is left of an equation with the student's values, and whether rounding explains it."""
    parts = share_values(state, about)
    left, added = sum(parts), sum(map(abs, parts))
    slack = state.problem.tolerance.silent * added
    for term in equation_of(state.problem, about).terms:
        if term.force.size is None:
            slack += abs(term.coefficient) * state.result[term.force.name].radius
    problem = state.problem
    unit = f"{problem.force}·{problem.length}" if isinstance(about, M) else problem.force
    if abs(left) <= 1e-9 * max(added, 1.0):
        return "With your values nothing is left over: the truss closes."
    shown = f"With your values {abs(left):.2g} {unit} is left over, of {added:.4g} {unit} added up"
    if abs(left) <= slack:
        return f"{shown}: that is what rounding leaves, and the truss closes."
    return (
        f"{shown}: that is more than the rounding of your values explains. The line is right; look "
        "for a value that was rounded hard."
    )


def hints(state: State, desk: Judge) -> Levels:
    """For what was just wrong; for the equation chosen; else for the choice."""
    if unknown := value_in_trouble(state):
        return value_hints(state, desk, unknown)
    if state.about is not None:
        levels = line_hints(state, desk, state.about)
        return replace(
            levels,
            look=f"Put the value of every force on {body_in_words(state.about)} into the sum.",
            reason="Each value keeps its sign: along its arrow plus, against it minus. A member "
            "pulls away from the joint in tension and pushes into it in compression.",
        )
    return Levels(
        Question("close"),
        "The reactions came from the whole truss, so some joints were not used in full.",
        "Every joint gives two equations; the ones you did not write must hold by themselves. So must "
        "the sums of any part that you cut off.",
        "Look at the joint you came to last.",
        f"Take {in_words(checks(state)[0])}.",
    )


def unfound(state: State) -> str | None:
    """Why nothing can be checked yet, or None."""
    if state.free_body_done and not (state.reactions_done and state.members_done):
        missing = [name for name in state.problem.unknowns if name not in state.result]
        return f"Some forces are still unknown: {', '.join(missing)}."
    return undrawn(state)


STEP = LessonStep(
    name="close",
    order=5,
    where="at the closing check",
    arrived=Say("note", "All forces are found. Next: does the truss close?"),
    not_here="This belongs to another step; now an equation that was not needed is asked for.",
    ask=ask,
    hints=hints,
    handles={"type": typed, "choose": choose, "keep": keep},
    done=lambda state: state.closed,
    barred=unfound,
    stays=True,
    skill="step close",
)
