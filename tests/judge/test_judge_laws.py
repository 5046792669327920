"""What must hold of the judge for every truss, every sense and every honest spelling."""

from __future__ import annotations

from dataclasses import replace
from random import Random

from corpus import still_true, true_line
from hypothesis import given
from hypothesis import strategies as st
from lines import Style, abouts, figures, random_senses, written
from strategies import make_truss

from tutor.judge import Value, judge
from tutor.judge.known_values import KnownValues
from tutor.judge.other_equation import forces_on
from tutor.judge.true_equation import TrueEquation
from tutor.statics import solve


def any_line(seed: int, **style: object):
    """A problem, an equation of it, and its true line as the student of that seed writes it."""
    rng = Random(seed)
    problem, about, senses, known, line = true_line(rng)
    scale = rng.choice((1.0, 1.0, 1.0, -1.0, 2.0, 0.5, 3.0))
    text = written(rng, problem, line, Style(scale=scale, figures=rng.choice((4, 5)), units=False))
    return rng, problem, about, senses, known, line, text


@given(st.integers(0, 10**9))
def test_a_true_line_is_right_however_it_is_written(seed):
    _, problem, about, senses, known, _, text = any_line(seed)
    verdict = judge(problem, about, text, senses=senses, known=known)
    assert verdict.right, (about, text, senses, known, verdict)


@given(st.integers(0, 10**9), st.sampled_from(("drop", "turn", "grow")))
def test_a_line_with_one_term_changed_is_not_right(seed, how):
    rng, problem, about, senses, known, line, _ = any_line(seed)
    acting = [i for i, p in enumerate(line) if abs(p.value) > 0]
    if len(acting) < 2:
        return
    i = rng.choice(acting)
    factor = {"drop": 0.0, "turn": -1.0, "grow": rng.choice((0.8, 1.25, 2.0))}[how]
    changed = [
        replace(p, coefficient=p.coefficient * factor) if j == i else p for j, p in enumerate(line)
    ]
    if still_true(problem, changed, senses, known):
        return
    text = written(rng, problem, changed, Style(figures=5))
    verdict = judge(problem, about, text, senses=senses, known=known)
    assert not verdict.right, (about, text, senses, known, verdict)


@given(st.integers(0, 10**9))
def test_a_true_value_is_right_in_the_students_own_sense(seed):
    rng = Random(seed)
    problem = make_truss(rng.randrange(10**6), rng.randint(3, 9))
    senses = random_senses(rng, problem)
    name, value = rng.choice(list(solve(problem).values.items()))
    sign = -1.0 if senses.get(name) in ("left", "down", "C", "against") else 1.0
    texts = [figures(sign * value, 4)]
    if name in problem.member and value:
        texts.append(f"{figures(abs(value), 4)} {problem.force} {'T' if value > 0 else 'C'}")
    for text in texts:
        assert judge(problem, Value(name), text, senses=senses).right, (name, text, value)


@given(st.integers(0, 10**9), st.floats(0.06, 5.0))
def test_a_value_more_than_five_percent_off_is_not_right(seed, off):
    rng = Random(seed)
    problem = make_truss(rng.randrange(10**6), rng.randint(3, 9))
    name, value = rng.choice(list(solve(problem).values.items()))
    if value == 0:
        return
    text = figures(value * (1 + rng.choice((1, -1)) * off), 5)
    if float(text) == 0:
        return
    assert not judge(problem, Value(name), text).right


@given(st.text(max_size=60))
def test_no_text_makes_the_judge_raise(text):
    problem = make_truss(7, 5)
    for about in (*abouts(problem)[:4], Value(problem.members[0].name)):
        assert judge(problem, about, text).kind in ("right", "wrong", "unreadable", "undecided")


@given(st.integers(0, 10**9))
def test_every_equation_of_a_body_holds_the_same_forces(seed):
    rng = Random(seed)
    problem = make_truss(rng.randrange(10**6), rng.randint(3, 9))
    about = rng.choice(abouts(problem))
    held = TrueEquation(problem, about, KnownValues({}, {})).unknowns.keys()
    assert held == forces_on(problem, about.joint)
