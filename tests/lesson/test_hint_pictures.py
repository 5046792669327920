"""Does a picture that marks what the third hint names tell a number that was not told before?

Every force in every equation of every shipped problem is pointed at, as after a third hint on it;
every third of the equations always, the rest where the slow tests run.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from every_problem import FORCES, SHARED
from lines import abouts
from walks import walk_to

from tutor.figure import Figure
from tutor.judge import Fy, M, Mistake
from tutor.judge.about import Equation, equation_of
from tutor.lesson import Ask, State
from tutor.lesson.pointing import PLACE
from tutor.lesson.state import HintsGiven
from tutor.lesson.steps import STEP
from tutor.model import Problem, load_problem
from tutor.plain.telling import pointed_lines
from tutor.screens.pictures import pictures
from tutor.statics.body import load_forces


def numbers_in(problem: Problem, texts: list[str]) -> set[str]:
    """Every number in the texts, those in the names of joints left out."""
    joints = "|".join(map(re.escape, sorted(problem.joint, key=len, reverse=True)))
    return {n for text in texts for n in re.findall(r"\d+(?:\.\d+)?", re.sub(joints, "", text))}


def texts_of(figure: Figure) -> list[str]:
    """All that a picture says in words or numbers."""
    texts = [figure.title, *figure.sentences]
    for item in figure.items:
        for name in ("texts", "words", "run", "rise", "gaps", "runs"):
            value = getattr(item, name, ())
            texts += [value] if isinstance(value, str) else map(str, value)
    return texts


@cache
def begun(path: Path) -> State:
    """The state in which the first equation is asked for."""
    problem = load_problem(path)
    step = "joints" if "reactions" in problem.given else "reactions"
    return walk_to(step, problem)[0].state


def asked(state: State, about: Equation) -> tuple[State, Ask]:
    """The state in which this equation is being written."""
    step = "reactions" if about.joint is None else "joints"
    state = replace(state, step=step, joint=about.joint, about=about)
    return state, STEP[step].ask(state)


def pointed_at(state: State, about: Equation) -> Iterator[tuple[str, State, State]]:
    """Each force of an equation, the state before the third hint on it, and the one after it."""
    for term in equation_of(state.problem, about).terms:
        code = "arm" if isinstance(about, M) else "component"
        mistake = Mistake(code, term.force.name, "", "", "")
        before, after = (
            replace(state, hints={about: HintsGiven(level, mistakes=(mistake,))})
            for level in (PLACE - 1, PLACE)
        )
        yield term.force.name, before, after


def each_third() -> pytest.MarkDecorator:
    """Every third of the equations of a problem, beginning at one of the first three."""
    return pytest.mark.parametrize(
        "first", [0, *(pytest.param(n, marks=pytest.mark.slow) for n in (1, 2))]
    )


@each_third()
@pytest.mark.parametrize("path", SHARED)
def test_a_marked_picture_holds_no_number_that_was_not_there(path: Path, first: int) -> None:
    problem = begun(path).problem
    for about in abouts(problem)[first::3]:
        state, ask = asked(begun(path), about)
        plain = pictures(state, ask)
        known = numbers_in(problem, [t for _, figure in plain for t in texts_of(figure)])
        for force, before, after in pointed_at(state, about):
            assert pictures(before, ask) == plain, "nothing is marked before the third hint"
            assert pointed_lines(before) == ()
            shown = [t for _, figure in pictures(after, ask) for t in texts_of(figure)]
            assert numbers_in(problem, shown) <= known, (about, force)
            assert numbers_in(problem, list(pointed_lines(after))) <= known, (about, force)


@each_third()
@pytest.mark.parametrize("path", SHARED)
def test_a_force_is_marked_where_a_hint_has_named_it(path: Path, first: int) -> None:
    for about in abouts(begun(path).problem)[(first + 1) % 3 :: 3]:
        state, ask = asked(begun(path), about)
        unmarked = [
            force
            for force, before, after in pointed_at(state, about)
            if pictures(before, ask) == pictures(after, ask)
        ]
        assert unmarked == [], about


def test_none_is_marked_where_a_hint_leaves_open_which_is_meant() -> None:
    about = M("A")
    state, ask = asked(begun(FORCES[0]), about)
    force = equation_of(state.problem, about).terms[0].force.name
    mistake = Mistake("turning", force, "", "", "", alike=("load C",))
    after = replace(state, hints={about: HintsGiven(PLACE, mistakes=(mistake,))})
    assert pictures(after, ask) == pictures(state, ask)


def test_no_arm_is_shown_where_the_term_only_turns_the_other_way() -> None:
    about = M("A")
    state, ask = asked(begun(FORCES[0]), about)
    force = next(t.force.name for t in equation_of(state.problem, about).terms if t.coefficient)
    for code, armed in (("turning", False), ("magnitude", False), ("arm", True), ("no-arm", True)):
        given = HintsGiven(PLACE, mistakes=(Mistake(code, force, "", "", ""),))
        after = replace(state, hints={about: given})
        assert any("arm" in title for title, _ in pictures(after, ask)) is armed, code
        assert any("its arm" in line for line in pointed_lines(after)) is armed, code
        assert pictures(after, ask) != pictures(state, ask), "the force itself is marked"


@pytest.mark.parametrize("code", ["lost-load", "missing", "sign", "magnitude"])
def test_no_load_is_marked_where_others_at_its_joint_share_its_name(code: str) -> None:
    problem = begun(FORCES[0]).problem
    load = problem.loads[0]
    twice = replace(problem, loads=(load, *problem.loads))
    state = replace(begun(FORCES[0]), problem=twice)
    for about in (M("A"), Fy(), Fy(load.joint)):
        before, ask = asked(state, about)
        names = {t.force.name for t in equation_of(twice, about).terms if t.force.kind == "load"}
        for name in names & {f.name for f in load_forces(twice, load.joint)}:
            given = HintsGiven(PLACE, mistakes=(Mistake(code, name, "", "", ""),))
            after = replace(before, hints={about: given})
            assert pictures(after, ask) == pictures(before, ask)
            assert pointed_lines(after) == ()
