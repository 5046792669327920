"""A load along members is typed on the drawing board, kept, turned over, saved and taken away."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tutor.drafting import Draft, lines_of, saved
from tutor.model import Problem, load_problem, write_problem
from tutor.model.read import read_text
from tutor.shipped import shipped_problems

TRUSS = ("A 0 0; B 4 0; C 8 0; D 4 3", "ABC; ADC; BD", "A pin; C roller")
DECK = load_problem(shipped_problems() / "bridges" / "wagon-bridge.toml")


def drawn(*lines: str) -> Draft:
    draft = Draft()
    for line in (*TRUSS, *lines):
        answer = draft.type(line)
        assert answer.taken, answer.said
    return draft


def shares(problem: Problem) -> dict[str, tuple[float, float]]:
    return {load.joint: load.vector for load in problem.loads}


@pytest.mark.parametrize(
    "line",
    [
        "spread 3 down AB BC",
        "spread 3 kN/m down on AB and BC",
        "3 kN/m down on AB and BC",
        "spread AB BC 3 down",
        "AB BC 3 kN/m down",
        "spread ABC 3 down",
        "3kN/m down over A-B B-C",
        "spread 24 down in all AB BC",
    ],
)
def test_a_load_on_members_is_read_as_people_type_it(line: str) -> None:
    assert shares(drawn(line).problem) == {"A": (0, -6), "B": (0, -12), "C": (0, -6)}


def test_snow_goes_by_the_span() -> None:
    assert shares(drawn("spread 3 down ADC by span").problem)["A"] == (0, -6)
    assert shares(drawn("spread 3 down ADC").problem)["A"] == (0, -7.5)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("spread 3 down", "no member is named"),
        ("spread AB", "each size wants the way"),
        ("spread 3 down AC", "no member from A to C"),
        ("spread 3 lb/ft down AB", "this truss is in kN and m"),
        ("spread 0 down AB", "no load here"),
        ("spread -3 down AB", "no load here"),
        ("spread 3 down 2 up AB", "along one line"),
        ("spread 3 down BD by span", "no span across"),
        ("spread 3 down XY", "XY"),
        ("drop spread AB", "no load lies on AB"),
    ],
)
def test_what_cannot_be_laid_is_said_in_one_sentence(line: str, said: str) -> None:
    draft = drawn()
    answer = draft.type(line)
    assert not answer.taken
    assert said in answer.said


def test_what_is_kept_of_a_drawing_draws_it_again() -> None:
    for line in (
        "spread 3 down AB BC",
        "spread 12 left in all AD by span",
        "spread 2 down 1 right AD DC",
    ):
        problem = drawn(line, "B 5 down").problem
        again = Draft()
        for each in lines_of(problem):
            assert again.type(each).taken, each
        assert again.problem.spreads == problem.spreads
        assert shares(again.problem) == shares(problem)


def test_a_load_on_members_goes_with_its_members_and_by_its_name() -> None:
    draft = drawn("spread 3 down AB BC", "drop AB")
    assert [spread.on for spread in draft.problem.spreads] == [("BC",)]
    assert draft.type("drop spread BC").taken
    assert not draft.problem.spreads
    assert not draft.problem.loads


def test_a_joint_that_is_renamed_takes_the_load_on_its_members_along() -> None:
    draft = drawn("spread 3 down AB BC", "rename A U1")
    assert [spread.on for spread in draft.problem.spreads] == [("U1-B", "BC")]


def test_a_flipped_truss_has_its_wind_from_the_other_side() -> None:
    draft = drawn("spread 2 right AD", "flip")
    assert shares(draft.problem)["A"] == (-5, 0)


def test_a_mirrored_half_has_the_load_too() -> None:
    draft = Draft()
    for line in ("A 0 0; B 4 0; D 4 3", "AB; AD; BD", "spread 3 down AB", "mirror"):
        assert draft.type(line).taken
    assert sum(y for _, y in shares(draft.problem).values()) == -24


def test_a_file_with_a_load_on_members_is_saved_with_it_and_with_its_comments() -> None:
    text = "# ours\n" + write_problem(replace(DECK, vary=None), "")
    problem = read_text(text, "text").problem
    assert problem is not None
    draft = Draft(start=problem)
    assert draft.type("B 50 down").taken
    kept = saved(draft.problem, text)
    again = read_text(kept, "text").problem
    assert again is not None
    assert "# ours" in kept
    assert again.spreads == problem.spreads
    assert draft.type("spread 9 down ABC").taken
    changed = read_text(saved(draft.problem, kept), "text").problem
    assert changed is not None
    assert [spread.pushes[0][1].value for spread in changed.spreads] == [9.0]
    assert draft.type("drop spread ABC").taken
    gone = read_text(saved(draft.problem, kept), "text").problem
    assert gone is not None
    assert not gone.spreads
