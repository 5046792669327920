"""Does a review that could not look at every explanation say so?"""

from __future__ import annotations

import pytest

from tutor import load_problem, review, solve
from tutor.homework import throughout
from tutor.homework.words import STOPPED
from tutor.shipped import shipped_problems

BOOM = load_problem(shipped_problems() / "first-steps" / "boarding-boom.toml")


def test_a_review_that_stopped_looking_says_so_and_one_that_did_not_does_not(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    values = dict(solve(BOOM).values)
    wrong = next(name for name in BOOM.member if values[name])
    forces = {name: values[name] for name in BOOM.member} | {wrong: 1.4 * values[wrong]}
    work = {"reactions": {name: values[name] for name in BOOM.reaction}, "forces": forces}
    whole = review(BOOM, work)
    monkeypatch.setattr(throughout, "MOST_BELIEVED", 1)
    bounded = review(BOOM, work)
    assert not whole.right
    assert not bounded.right
    assert not whole.stopped
    assert bounded.stopped
    assert STOPPED not in f"{whole.said} {whole.note}"
    assert STOPPED in f"{bounded.said} {bounded.note}"
