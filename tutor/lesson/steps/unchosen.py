"""Which equation is meant by a line typed while none is chosen?

A line that is right for a single equation on offer can be no other; a wrong one says so only where it is
one of them but for a single slip.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from tutor.judge import Equation, Fx, Judge, M
from tutor.judge.components import component_stated
from tutor.judge.headings import equation_in_words, headed
from tutor.judge.independent import adds_something
from tutor.judge.lines_meant import unclear
from tutor.judge.nearest import clearly_nearest, fitting, plainly
from tutor.judge.ratios import ratio_stated
from tutor.judge.typed import typed_equation
from tutor.judge.worked import equation_before_value
from tutor.lesson.reply import Say
from tutor.lesson.shown import shows_values
from tutor.lesson.state import State
from tutor.lesson.steps.headings import value_named
from tutor.lesson.steps.solved_for import nearest_of, solved_for
from tutor.notation import Line, Unreadable
from tutor.text import listed

SEVERAL = (
    "Which equation is this line? It would do as {equations}: choose one of them first, or begin "
    "the line with its heading."
)
OF_A_PART = "This line speaks of a part of the truss; here the whole truss is asked for."
MOST_NAMED = 3
MOST_TRIED = 24
"""Among more equations than this a wrong line is not looked for."""


def equation_meant(
    state: State, text: str, desk: Judge, offers: Iterable[Equation]
) -> tuple[Equation | None, tuple[Say, ...]]:
    """The equation a line belongs to, and what is said of how it was found.

    Its own heading goes first, then the one chosen; one that was only proposed yields to the one that
    the line is right for, or, where it is right for none, to the one it is nearest to. Else it is the
    only one of `offers` that the line is right for. Where several are, they are named and none is
    taken; where none is, it is the one that the line is but for a single slip.
    """
    line = desk.read(text)
    if (asked := _asked_of_heading(state, line)) is not None:
        return None, (Say("note", asked),)
    if component_stated(line) in state.result or ratio_stated(line) is not None:
        return state.about or Fx(state.joint), ()
    about = headed(state.problem, line, state.joint) or (None if state.proposed else state.about)
    if (about := about or _combined(state, line, desk)) is not None:
        return about, ()
    offers = _about_its_point(line, state, offers)
    if (solved := solved_for(state, line, text, desk, offers)) is not None:
        return _told_as(state, solved)
    right = _fitting(state, line, desk, offers)
    if state.proposed and state.about is not None:
        if not right:
            is_value = value_named(line) is not None
            near = state.about if is_value else nearest_of(state, line, desk, offers)
            return _told_as(state, near)
        right = _plainly(state, line, right) or right
        new = tuple(each for each in right if each != state.about and _adds(state, each))
        if len(new) != 1 or state.about in right:
            return state.about, ()
        right = new
    if len(right) > 1:
        plain = _plainly(state, line, right)
        right = plain if len(plain) == 1 else right
    if len(right) == 1:
        return right[0], (_taken_as(state, right[0]),)
    if right:
        return None, _several(state, right)
    return _told_as(state, _clearly_meant(state, line, desk, offers))


def _about_its_point(
    line: Line | Unreadable, state: State, offers: Iterable[Equation]
) -> tuple[Equation, ...]:
    """Those of `offers` that a line may be which names a joint and no sum: moments about that joint."""
    named = None if isinstance(line, Unreadable) or line.label is None else line.label.point
    if state.joint is not None or not isinstance(named, str):
        return tuple(offers)
    return tuple(each for each in offers if not isinstance(each, M) or each.at == named)


def _asked_of_heading(state: State, line: Line | Unreadable) -> str | None:
    """What is asked of a heading that leaves open whose sum it is, or along what; None for any other."""
    if isinstance(line, Unreadable) or line.label is None:
        return None
    if line.label.part and not state.part:
        return OF_A_PART
    return unclear(state.problem, line.label, state.joint)


def _combined(state: State, line: Line | Unreadable, desk: Judge) -> Equation | None:
    """The first standing equation of the body at hand, where a line says that it follows from such."""
    if isinstance(line, Unreadable) or not line.referred or value_named(line, state.result):
        return None
    for about in state.standing:
        if about.joint == state.joint and desk.follows(about, line, state.own, state.standing):
            return about
    return None


def _plainly(
    state: State, line: Line | Unreadable, right: Sequence[Equation]
) -> tuple[Equation, ...]:
    """Of the equations that a line is right for, those that it is as it is written."""
    reading = equation_before_value(line)
    if len(right) < 2 or isinstance(reading, Unreadable):
        return tuple(right)
    return tuple(plainly(typed_equation(reading), state.problem, state.own, right))


def _clearly_meant(
    state: State, line: Line | Unreadable, desk: Judge, offers: Sequence[Equation]
) -> Equation | None:
    """The equation that a wrong line is but for one slip, where it is no other nearly so; else None."""
    reading = equation_before_value(line)
    if isinstance(reading, Unreadable) or value_named(line) is not None or len(offers) > MOST_TRIED:
        return None
    said = typed_equation(reading)
    if not said.names:
        return None
    adding = [about for about in offers if _adds(state, about)]
    return clearly_nearest(said, state.problem, state.own, desk.values(), adding)


def _several(state: State, fitting: Iterable[Equation]) -> tuple[Say, ...]:
    """That a line would do as several equations, which are named."""
    names = [equation_in_words(state.problem, each) for each in fitting]
    return (Say("note", SEVERAL.format(equations=listed(names, most=MOST_NAMED))),)


def _told_as(state: State, about: Equation | None) -> tuple[Equation | None, tuple[Say, ...]]:
    """An equation with what is said of it: nothing of the one that stood there already."""
    return about, () if about is None or about == state.about else (_taken_as(state, about),)


def _taken_as(state: State, about: Equation) -> Say:
    return Say("note", f"Taken as {equation_in_words(state.problem, about)}.")


def _adds(state: State, about: Equation) -> bool:
    return adds_something(state.problem, about, state.standing)


def _fitting(
    state: State, line: Line | Unreadable, desk: Judge, offers: Iterable[Equation]
) -> tuple[Equation, ...]:
    """The equations of `offers` that a line is right for; none for a value or an empty sum."""
    reading = equation_before_value(line)
    if isinstance(reading, Unreadable) or value_named(line) is not None:
        return ()
    if reading.label is not None and reading.label.kind is not None:
        return ()
    said = typed_equation(reading)
    if not said.names and not said.constants:
        return ()
    right = fitting(said, state.problem, state.own, offers)
    return tuple(about for about in right if shows_values(state, line, about))
