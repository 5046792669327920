"""Do all kinds of students finish every shipped problem, and are the hints they follow true?"""

from __future__ import annotations

import pytest
from habits import HABITS
from strategies import make_truss
from table import FILES, counted, told
from walker import Counts, Walker

from tutor.lesson.hints import LEVELS

GENERATED = [make_truss(seed, 3 + seed % 6, wall=seed % 5 == 4) for seed in range(12)]
"""Trusses of any shape, unit and supports; every fifth hangs on four reactions at a wall."""

ALL: dict[str, dict[str, Counts]] = {}


@pytest.fixture(scope="module")
def walks() -> dict[str, dict[str, Counts]]:
    """Every student through every shipped problem; a walk that does not end raises."""
    if not ALL:
        ALL.update({h.name: {p.stem: counted(h, p) for p in FILES} for h in HABITS})
        print(f"\n{told(ALL)}")
    return ALL


def test_every_student_finishes_every_shipped_problem(walks) -> None:
    assert {len(by_problem) for by_problem in walks.values()} == {len(FILES)}


@pytest.mark.parametrize("name", [h.name for h in HABITS if h.sees_at == 3])
def test_a_line_mended_as_the_third_hint_says_is_right(walks, name: str) -> None:
    followed = [each for counts in walks[name].values() for each in counts.followed]
    assert len(followed) > 10
    assert [hint for hint, accepted in followed if not accepted] == []


def test_every_third_hint_names_what_can_be_mended(walks) -> None:
    assert [hint for by in walks.values() for c in by.values() for hint in c.missed] == []


def test_those_who_slip_more_need_more_hints(walks) -> None:
    hints = {n: sum(sum(c.hints.values()) for c in by.values()) for n, by in walks.items()}
    assert hints["careful"] < hints["hasty"] < hints["guesser"]


def test_only_who_asks_to_the_bottom_is_told_a_line(walks) -> None:
    for name, by_problem in walks.items():
        told_lines = sum(c.hints[len(LEVELS)] for c in by_problem.values())
        assert (told_lines > 0) == (name == "guesser")


@pytest.mark.parametrize("habit", HABITS, ids=lambda habit: habit.name)
def test_every_student_finishes_generated_trusses_and_the_hints_followed_are_true(habit) -> None:
    """Whoever keeps four figures, that is: with two, the line that is mended is off by rounding."""
    total = Counts()
    for seed, problem in enumerate(GENERATED):
        walker = Walker(problem, habit, seed)
        walker.walk()
        assert walker.lesson.done
        total.add(walker.counts)
    if habit.figures > 2:
        assert [hint for hint, accepted in total.followed if not accepted] == []
        assert total.missed == []


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(12, 72))
def test_every_student_finishes_many_generated_trusses(seed: int) -> None:
    problem = make_truss(seed, 3 + seed % 6, wall=seed % 5 == 4)
    for habit in HABITS:
        walker = Walker(problem, habit, seed)
        walker.walk()
        assert walker.lesson.done
