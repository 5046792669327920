"""Tracing is the forward pass of a two-state hidden Markov model, within the bounds of its table."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tutor.skills import MASTERED, PARAMETERS, Parameters, after, masteries, skills, trace
from tutor.skills.seen import Seen
from tutor.skills.table import MOST_GUESS, MOST_SLIP

ANSWERS = st.lists(st.booleans(), max_size=30)
BY = st.builds(
    Parameters,
    known=st.floats(0.01, 0.99),
    learnt=st.floats(0.0, 0.9),
    guess=st.floats(0.01, MOST_GUESS),
    slip=st.floats(0.01, MOST_SLIP),
)


def test_two_answers_worked_out_by_hand() -> None:
    """By the update of Corbett and Anderson (1995), worked with pencil: L0 0.3, T 0.15, G 0.1, S 0.1.

    Right: 0.27 / (0.27 + 0.07) = 0.7941, and 0.7941 + 0.2059 * 0.15 = 0.8250.
    Wrong: 0.03 / (0.03 + 0.63) = 0.0455, and 0.0455 + 0.9545 * 0.15 = 0.1886.
    """
    by = Parameters(0.3, 0.15, 0.1, 0.1)
    assert after(0.3, True, by) == pytest.approx(0.8250, abs=5e-5)
    assert after(0.3, False, by) == pytest.approx(0.1886, abs=5e-5)


@given(ANSWERS, BY)
def test_tracing_is_the_forward_pass_of_a_hidden_markov_model(answers, by) -> None:
    """The outside check: matrices of the model in numpy (states: not learnt, learnt)."""
    belief = np.array([1.0 - by.known, by.known])
    step = np.array([[1.0 - by.learnt, by.learnt], [0.0, 1.0]])
    for right in answers:
        seen = np.array([by.guess, 1.0 - by.slip]) if right else np.array([1.0 - by.guess, by.slip])
        belief = belief * seen
        belief = belief / belief.sum() @ step
    assert trace(answers, by) == pytest.approx(belief[1], rel=1e-9, abs=1e-12)


@given(ANSWERS, BY)
def test_a_right_answer_never_speaks_against_a_skill(answers, by) -> None:
    likely = trace(answers, by)
    assert 0.0 <= likely <= 1.0
    assert after(likely, True, by) >= likely - 1e-12
    assert after(likely, True, by) >= after(likely, False, by)


@pytest.mark.parametrize(("guess", "slip"), [(0.31, 0.1), (0.3, 0.11), (0.0, 0.1), (0.3, 0.0)])
def test_numbers_outside_their_bounds_are_refused(guess: float, slip: float) -> None:
    with pytest.raises(ValueError, match="at most"):
        Parameters(0.3, 0.1, guess, slip)


def test_every_sort_of_skill_can_be_mastered_and_one_answer_is_never_enough() -> None:
    for by in PARAMETERS.values():
        assert trace([True], by) < MASTERED < trace([True] * 8, by)


def test_each_skill_is_a_step_or_a_mistake_under_one_name() -> None:
    from tutor.judge.called import CALLED

    for code, skill in skills().items():
        assert code == skill.code
        assert code.startswith("step ") or code in CALLED


def test_masteries_go_by_time_and_name_only_what_was_seen() -> None:
    seen = [Seen("sign", 3.0, True), Seen("sign", 1.0, False), Seen("step joints", 2.0, True)]
    steps, sign = masteries(seen)
    assert (steps.skill, sign.skill) == ("step joints", "sign")
    assert sign.likely == pytest.approx(trace([False, True], PARAMETERS["avoiding"]), abs=1e-6)
    assert (sign.answers, sign.right) == (2, 1)
