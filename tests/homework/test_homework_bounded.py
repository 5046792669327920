"""Does a review that could not look at every explanation say so?"""

from __future__ import annotations

from typing import Any

import pytest
from strategies import pratt

from tutor import load_problem, review, solve
from tutor.homework import throughout
from tutor.homework.places import Search, Story
from tutor.homework.words import STOPPED
from tutor.shipped import shipped_problems

MOST = 600
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


@pytest.mark.parametrize("lone", [5, 6, 8])
def test_however_much_is_wrong_on_a_long_bridge_some_hundred_turns_are_tried(
    lone: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As many slips as no search goes through, each at a member of its own."""
    tried: list[int] = []
    stories, grown = Search.stories, Search._grown

    def counted(self: Search, *stem: Any) -> list[Any]:
        found = list(grown(self, *stem))
        tried[-1] += len(found)
        return found

    def searched(self: Search, first: str | None = None) -> list[Story]:
        tried.append(0)
        return stories(self, first)

    monkeypatch.setattr(Search, "_grown", counted)
    monkeypatch.setattr(Search, "stories", searched)
    bridge = pratt(20, 3, 4, 12)
    values = dict(solve(bridge).values)
    for panel in range(2, 2 * lone + 1, 2):
        values[f"U{panel}-U{panel + 1}"] *= 1.4
    reactions = {name: values[name] for name in bridge.reaction}
    forces = {name: values[name] for name in bridge.member}
    assert not review(bridge, {"reactions": reactions, "forces": forces}).right
    assert 100 < max(tried) <= MOST
