"""A problem done once more has numbers it was not done with yet, and what was kept stays what it was."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from tutor.model import Problem, load_problem
from tutor.model.read_vary import with_words
from tutor.progress.guide import Listed, guide_for
from tutor.progress.kept import Summaries
from tutor.progress.where import DONE
from tutor.records import Keep
from tutor.records.anew import anew, can_be_anew
from tutor.records.belonging import key_of, truss_text
from tutor.session import open_session
from tutor.shipped import shipped_problems
from tutor.statics import solve
from tutor.variants import variant_of

STAND = load_problem(shipped_problems() / "components" / "finder-stand.toml")


def watched(problem: Problem, keep: Keep) -> None:
    session = open_session(problem, keep)
    session.do("show", until="close")
    session.do("show")
    session.close()


def test_numbers_are_new_each_time_and_the_truss_can_be_solved(tmp_path: Path) -> None:
    keep, seen = Keep(tmp_path), {truss_text(STAND)}
    watched(STAND, keep)
    for _ in range(3):
        other = anew(STAND, keep.lessons())
        assert truss_text(other) not in seen
        assert key_of(other) == key_of(STAND)
        assert solve(other).values
        seen.add(truss_text(other))
        watched(other, keep)


def test_a_lesson_on_other_numbers_goes_on_with_them_and_the_problem_stays_done(
    tmp_path: Path,
) -> None:
    keep = Keep(tmp_path)
    watched(STAND, keep)
    other = anew(STAND, keep.lessons())
    session = open_session(other, keep)
    session.do("show", until="joints")
    path = session.journal.path
    session.close()
    rows = [Listed(STAND, "a set")]
    assert guide_for(rows, Summaries(keep)).places[key_of(STAND)].startswith(("watched", DONE))
    again = open_session(STAND, keep, path)
    assert truss_text(again.lesson.problem) == truss_text(other)
    assert again.lesson.state.step == "joints"
    assert any("numbers with which it was begun" in notice for notice in again.news())
    again.close()


def test_words_that_follow_the_numbers_say_those_of_the_lesson(tmp_path: Path) -> None:
    """Which side a story names and how large a load is are not kept, and follow from the truss again."""
    assert STAND.vary is not None
    words = "{C down} lb hangs from C, to the {right|left} of A; the stand is {span} wide."
    told = with_words(replace(STAND, vary=replace(STAND.vary, story=words, mirror=True)))
    keep, seen = Keep(tmp_path), {told.story}
    watched(told, keep)
    for _ in range(6):
        other = anew(told, keep.lessons())
        assert other.story not in seen
        assert "{" not in other.story
        seen.add(other.story)
        session = open_session(other, keep)
        session.do("show", until="joints")
        path = session.journal.path
        session.close()
        again = open_session(told, keep, path)
        assert again.lesson.problem.story == other.story
        again.close()
    assert len({"to the right" in story for story in seen}) == 2


def test_where_nothing_varies_or_numbers_are_ones_own_there_are_none() -> None:
    bell = load_problem(shipped_problems() / "first-steps" / "bell-frame.toml")
    mine = variant_of(STAND, student="s1041", set="components")
    for problem in (bell, mine):
        assert not can_be_anew(problem)
        assert anew(problem, ()) is problem
