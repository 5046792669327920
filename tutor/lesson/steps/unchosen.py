"""Which equation is meant by a line typed while none is chosen?

A line that is right for a single equation on offer can be no other, and of several it is taken as the
likeliest; a wrong one says so only where it is one of them but for a single slip.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from tutor.judge import Along, Equation, Fx, Fy, Judge, M
from tutor.judge.about import equation_of
from tutor.judge.chain import all_numbers
from tutor.judge.components import component_stated
from tutor.judge.headings import equation_in_words, headed
from tutor.judge.independent import adds_something, same_body
from tutor.judge.lines_meant import unclear
from tutor.judge.nearest import clearly_nearest, nearest, plainly, right_for
from tutor.judge.ratios import ratio_stated
from tutor.judge.restated import with_figures
from tutor.judge.same import NEAR
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import typed_equation
from tutor.judge.worked import equation_before_value
from tutor.lesson.reply import Say
from tutor.lesson.shown import shows_values
from tutor.lesson.state import State
from tutor.lesson.steps.headings import value_named
from tutor.lesson.steps.solved_for import nearest_of, solved_for
from tutor.notation import Line, Unreadable
from tutor.text import listed

SEVERAL = "Taken as {equation}; it is just as right as {others}."
OF_A_PART = "This line speaks of a part of the truss; here the whole truss is asked for."
MOST_NAMED = 3
MOST_SOLVED = 2
"""So many unknown forces a joint gives by itself."""
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
    if isinstance(line, Unreadable) and (in_part := desk.read_in_part(text)) is not None:
        about, said = _meant(state, in_part, text, desk, offers)
        if about is not None and desk.judge(about, text, state.own).kind in ("right", "wrong"):
            return about, said
    of_forces = _without_working(line)
    about, said = _meant(state, of_forces, text, desk, offers)
    if about is None or _is_named(state, of_forces):
        return about, said
    other = _true_of(state, about, text, desk)
    return (about, said) if other is None else _told_as(state, other)


def _is_named(state: State, line: Line | Unreadable) -> bool:
    """Whether the student named the equation of a line, by its heading or by choosing it."""
    chosen = state.about is not None and not state.proposed
    return chosen or headed(state.problem, line, state.joint) is not None


def _true_of(state: State, about: Equation, text: str, desk: Judge) -> Equation | None:
    """Another sum at the same joint, or one of moments, that a line is as it stands; None where it is none.

    Along a slope, and of moments beside a joint, none is offered, and no heading need name them.
    """
    verdict = desk.judge(about, text, state.own)
    true = verdict.true_of if verdict.kind == "wrong" else None
    if true is None or isinstance(true, M):
        return true
    meant = true.joint == about.joint and (isinstance(true, Along) or _adds(state, true))
    return true if meant else None


def _without_working(line: Line | Unreadable) -> Line | Unreadable:
    """A line without the numbers that it works out beside its equations: (0.8 = 4/5)."""
    if isinstance(line, Unreadable):
        return line
    of_forces = tuple(s for s in line.steps if not all_numbers(s))
    return replace(line, steps=of_forces) if of_forces else line


def _meant(
    state: State, line: Line | Unreadable, text: str, desk: Judge, offers: Iterable[Equation]
) -> tuple[Equation | None, tuple[Say, ...]]:
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
            if value_named(line) is not None:
                return state.about, ()
            meant = _with_figures(state, line, desk, offers)
            return _told_as(state, meant or nearest_of(state, line, desk, offers))
        right = _plainly(state, line, right) or right
        new = tuple(each for each in right if _adds(state, each))
        if state.about in right or not new:
            return state.about, ()
        right = new
    if right:
        return _likeliest(state, right, _plainly(state, line, right))
    return _told_as(state, _clearly_meant(state, line, desk, offers) or _of_two(state, line, desk))


def _with_figures(
    state: State, line: Line | Unreadable, desk: Judge, offers: Iterable[Equation]
) -> Equation | None:
    """The equation of the proposed one's body that a line is with numbers for forces without a value, or
    without idle ones; None where it is the proposed one."""
    reading = equation_before_value(line)
    if state.about is None or isinstance(reading, Unreadable):
        return None
    said, values = typed_equation(reading), desk.values()
    among = [about for about in offers if same_body(about, state.about) and _adds(state, about)]
    proposed, *others = (
        TrueEquation(state.problem, each, state.own) for each in (state.about, *among)
    )
    if with_figures(said, proposed, values):
        return None
    return next((each.about for each in others if with_figures(said, each, values)), None)


def _about_its_point(
    line: Line | Unreadable, state: State, offers: Iterable[Equation]
) -> tuple[Equation, ...]:
    """Those of `offers` that a line may be which names a joint and no sum: moments about that joint."""
    named = None if isinstance(line, Unreadable) or line.label is None else line.label.point
    if state.joint is not None or not isinstance(named, str):
        return tuple(offers)
    return tuple(each for each in offers if not isinstance(each, M) or each.at == named)


def _asked_of_heading(state: State, line: Line | Unreadable) -> str | None:
    """What is asked of a heading that leaves open whose sum it is, or along what; None for any other.

    Along what is clear where a direction is chosen.
    """
    if isinstance(line, Unreadable) or line.label is None:
        return None
    if line.label.part and not state.part:
        return OF_A_PART
    if isinstance(state.about, Along) and not state.proposed and line.label.kind == "along":
        return None
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


def _of_two(state: State, line: Line | Unreadable, desk: Judge) -> Equation | None:
    """The nearer sum of the open joint, of a line that balances two of its members but for a sign.

    Both sums may be equally near, and both may stand. None where the line is true of the forces.
    """
    reading = equation_before_value(line)
    if state.joint is None or isinstance(reading, Unreadable):
        return None
    said, problem, values = typed_equation(reading), state.problem, desk.values()
    meeting = {member.name for member in problem.meeting[state.joint]}
    if len(said.names) != 2 or said.constants or not said.names <= meeting:
        return None
    parts = [c.value * state.own.sign(name) * values[name] for name, c in said.unknowns.items()]
    one, other = parts
    if one == 0.0 or abs(one - other) > NEAR * abs(one):
        return None
    near = nearest(said, problem, state.own, values, Fx(state.joint), [Fy(state.joint)])
    return clearly_nearest(said, problem, state.own, values, [near], few=True)


def _likeliest(
    state: State, right: Sequence[Equation], plain: Sequence[Equation]
) -> tuple[Equation | None, tuple[Say, ...]]:
    """Of the equations that a line is right for the likeliest, with what it would do as besides.

    One that says something new comes first, of a joint that can be solved, and one that the line is as
    it is written (`plain`); then the one for which the fewest values found before had to be put in, and
    moments about a support.
    """
    first, *others = sorted(right, key=lambda about: _unlikely(state, about, about in plain))
    if not others:
        return _told_as(state, first)
    said = SEVERAL.format(
        equation=equation_in_words(state.problem, first),
        others=listed([equation_in_words(state.problem, each) for each in others], most=MOST_NAMED),
    )
    return first, (Say("note", said),)


def _unlikely(state: State, about: Equation, plain: bool) -> tuple[bool, bool, bool, int, bool]:
    """By how much an equation is unlikely to be meant by a line that it is right for."""
    put_in = state.result.keys() & equation_of(state.problem, about).linear
    stuck = about.joint is not None and len(state.unknown_at(about.joint)) > MOST_SOLVED
    held = {support.joint for support in state.problem.supports}
    loose = isinstance(about, M) and about.at not in held
    return not _adds(state, about), stuck, not plain, len(put_in), loose


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
    right = right_for(said, state.problem, state.own, offers)
    return tuple(about for about in right if shows_values(state, line, about))
