"""Is a dash before a clause of words a comma, and before anything that may be a term a minus?"""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

import pytest

from tutor import load_problem
from tutor.notation import Line, Names, Unreadable, read_line
from tutor.notation.elements.source import Source
from tutor.notation.sentences.dashed_off import dashed_off

HANDS = Path(__file__).parent / "hands"
CLAUSES = (
    "no sideways load at B",
    "nothing else acts there",
    "because the wind blows at D",
    "BD just hangs the load up",
    "only the roller holds it",
)
TERMS = ("F_AB", "the horizontal part of F_AD", "half of F_AD", "F_AD cos 30", "two times F_AB")
TAKING_BACK = ("no that is wrong", "this is not right", "but not really", "it is not so")


@lru_cache(maxsize=1)
def names() -> Names:
    return load_problem(HANDS / "quay.toml").names


def read(text: str) -> Line | Unreadable:
    return read_line(text, names())


def sides(text: str) -> list[list[tuple[str | None, float]]]:
    """The terms of each side of each statement, or none where the line is not read."""
    line = read(text)
    assert isinstance(line, Line), line.message
    return [
        [(term.name, term.value) for term in side.terms]
        for step in line.steps
        for side in step.sides
    ]


@pytest.mark.parametrize("dash", ["–", "-", "—"])
@pytest.mark.parametrize("clause", CLAUSES)
def test_a_clause_behind_a_dash_leaves_the_equation_as_it_is(clause: str, dash: str) -> None:
    assert sides(f"F_BC - F_AB = 0 {dash} {clause}") == sides("F_BC - F_AB = 0")


@pytest.mark.parametrize("clause", CLAUSES)
def test_what_follows_from_behind_the_clause_is_a_statement_of_its_own(clause: str) -> None:
    made = sides(f"F_BD - 12 = 0 – {clause}, so F_BD = 12")
    assert made == sides("F_BD - 12 = 0, so F_BD = 12")


@pytest.mark.parametrize("term", TERMS)
def test_a_dash_before_what_may_be_a_term_stays_a_minus(term: str) -> None:
    for text in (f"8 = F_BC - {term}", f"F_BC - {term} = 0", f"F_BC - 8 = 0 - {term}"):
        assert dashed_off(Source.of(text), names()).text == text


@pytest.mark.parametrize("words", TAKING_BACK)
def test_a_clause_that_takes_the_equation_back_is_never_passed_over(words: str) -> None:
    assert isinstance(read(f"F_BC - F_AB = 0 – {words}"), Unreadable)


def firsts(text: str) -> list[float]:
    """The number that each of the readings of a line begins with."""
    line = read_line(text, names())
    assert not isinstance(line, Unreadable), line.message
    return [each.steps[0].sides[0].terms[0].value for each in (line, *line.alternatives)]


def test_a_long_dash_behind_an_arrow_is_a_minus_or_sets_the_formula_apart() -> None:
    assert firsts("Joint B, ↑ — 12 + F_AB = 0") == [-12, 12]
    assert firsts("Joint B, ↑ - 12 + F_AB = 0") == [-12]
    assert firsts("12 — F_AB = 0") == [12]
