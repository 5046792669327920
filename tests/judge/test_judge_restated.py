"""Is a line right that says again what stands, whichever equation is asked for?

The rack is our own (paper/rack.toml). By hand: A_y = 80, A_x = -120; AE = -100, AB = 180 N.
"""

from __future__ import annotations

from random import Random

from hypothesis import example, given
from hypothesis import strategies as st
from strategies import make_truss

from tutor.judge import Equation, Fx, Fy, judge
from tutor.judge.about import equation_of
from tutor.model import Problem
from tutor.statics import solve

SMALL = 1e-9


def in_figures(problem: Problem, about: Equation, numbers: set[str]) -> str:
    """The line of a sum with a number for each of these, and without what is zero."""
    values, terms = solve(problem).values, []
    for name, factor in equation_of(problem, about).linear.items():
        if name is None:
            terms += [f"{factor:+.6f}"] if factor else []
        elif abs(factor * values[name]) > SMALL:
            terms.append(f"{factor:+.6f}*" + (f"({values[name]:.6f})" if name in numbers else name))
    return " ".join(terms) + " = 0" if terms else ""


@given(st.integers(0, 10**9), st.booleans())
@example(93010, False).via("numbers that may be those of either sum")
@example(111, False).via("one force left, beside a value of its own")
@example(1465, False)
@example(735, True)
def test_a_right_line_of_a_sum_that_stands_is_right_also_where_the_other_sum_is_asked(
    seed: int, upright: bool
) -> None:
    """With figures for forces that have a value or none yet, and without those that do nothing."""
    rng = Random(seed)
    problem = make_truss(rng.randrange(10**6), rng.randint(3, 8))
    values, joint = solve(problem).values, rng.choice(problem.joints).name
    stands, asked = (Fx(joint), Fy(joint))[:: 1 if upright else -1]
    acting = sorted(filter(None, equation_of(problem, stands).linear))
    numbers = set(rng.sample(acting, rng.randint(0, len(acting))))
    known = {name: values[name] for name in acting if rng.random() < 0.4}
    text = in_figures(problem, stands, numbers)
    if not text or not judge(problem, stands, text, known=known).right:
        return
    again = judge(problem, asked, text, known=known, standing=(stands,))
    assert again.right, (text, known, again)


@given(st.integers(0, 10**9))
def test_a_line_with_a_number_changed_is_not_what_stands(seed: int) -> None:
    rng = Random(seed)
    problem = make_truss(rng.randrange(10**6), rng.randint(3, 8))
    joint = rng.choice(problem.joints).name
    text = in_figures(problem, Fx(joint), set(filter(None, equation_of(problem, Fx(joint)).linear)))
    if "*" not in text:
        return
    wrong = text.replace("*", "*1.5*", 1)
    for standing in ((), (Fx(joint),)):
        verdict = judge(problem, Fy(joint), wrong, standing=standing)
        assert not (verdict.right and verdict.restates), (wrong, verdict)
