"""Does a student find out that a truss is none: that it can move, or has a member too many?"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from families import down, plain_problem
from hypothesis import given
from strategies import trusses
from student import Student

from tutor.check import check
from tutor.lesson import Lesson, Reply
from tutor.lesson.outcome import Outcome
from tutor.model import Problem, Support, load_problem, write_problem
from tutor.statics import loose_joints, residuals, soundness, stability

BOX = [("A", 0, 0), ("B", 3, 0), ("C", 3, 2), ("D", 0, 2)]
LOADS = [down("C", 4), down("D", 3)]
HELD = [Support("A", "pin"), Support("B", "roller")]
ROUND = ["AB", "BC", "CD", "AD"]
LOOSE = plain_problem(BOX, ROUND, HELD, LOADS)
SOUND = plain_problem(BOX, [*ROUND, "AC"], HELD, LOADS)
OVER = plain_problem(BOX, [*ROUND, "AC", "BD"], HELD, LOADS)
TWO_PANELS = plain_problem(
    [("A", 0, 0), ("B", 2, 0), ("C", 4, 0), ("D", 0, 1), ("E", 2, 1), ("F", 4, 1)],
    ["AB", "BC", "DE", "EF", "AD", "BE", "CF", "AE", "BD"],
    [Support("A", "pin"), Support("C", "roller")],
    [down("F", 4)],
)
"""The counts fit: the left panel has one member too many, the right one too few."""
CASES = [
    (LOOSE, "unstable"),
    (SOUND, "determinate"),
    (OVER, "indeterminate"),
    (TWO_PANELS, "unstable"),
]


def asking(problem: Problem, truss: Any) -> Lesson:
    """A lesson on the problem, its members counted."""
    lesson = Lesson(replace(problem, truss=truss))
    lesson.take("show", now=1.0)
    lesson.take("show", now=2.0)
    return lesson


def say(lesson: Lesson, kind: str, **data: Any) -> Reply:
    return lesson.take(kind, now=float(len(lesson.events) + 10), **data)


@pytest.mark.parametrize(("problem", "truss"), CASES)
def test_what_a_truss_is_follows_from_its_counts_and_its_motions(
    problem: Problem, truss: str
) -> None:
    assert soundness(problem) == truss


@pytest.mark.parametrize(("problem", "truss"), CASES)
def test_only_the_true_answer_is_taken_and_no_other_gives_it_away(
    problem: Problem, truss: str
) -> None:
    lesson = asking(problem, truss)
    assert lesson.ask.kind == "soundness"
    words = {option.key: option.words for option in lesson.ask.options}
    for wrong in words.keys() - {truss}:
        reply = say(lesson, "soundness", **{"is": wrong})
        assert not reply.accepted
        assert reply.said[0].tone == "wrong"
        assert truss not in reply.text
        assert words[truss] not in reply.text
    assert say(lesson, "soundness", **{"is": truss}).accepted


def test_the_joints_that_move_are_all_to_be_named() -> None:
    lesson = asking(LOOSE, "unstable")
    say(lesson, "soundness", **{"is": "unstable"})
    assert lesson.ask.kind == "loose"
    for joints in (["C"], ["C", "D", "A"], ["B"], []):
        assert not say(lesson, "loose", joints=joints).accepted
        assert not lesson.done
    assert say(lesson, "loose", joints=["D", "C"]).accepted
    assert lesson.done
    assert lesson.table.rows == ()


def test_one_member_too_many_ends_with_what_it_would_take() -> None:
    lesson = asking(OVER, "indeterminate")
    reply = say(lesson, "soundness", **{"is": "indeterminate"})
    assert "1 unknown more than equations" in reply.text
    assert "how members stretch" in reply.text
    assert lesson.done


def test_a_truss_that_is_one_goes_on_to_its_free_body() -> None:
    lesson = asking(SOUND, "determinate")
    say(lesson, "soundness", **{"is": "determinate"})
    assert lesson.state.step == "free body"
    Student(lesson, lambda kind, **data: say(lesson, kind, **data)).walk()
    assert lesson.done


def test_nothing_can_be_passed_over_before_it_is_said() -> None:
    lesson = asking(LOOSE, "unstable")
    for step in ("free body", "joints", "table"):
        assert not say(lesson, "go", step=step).accepted
    assert not say(lesson, "joint", joint="C").accepted
    assert not say(lesson, "zero", member="AB", rule="two").accepted
    assert lesson.state.step == "idealise"


@pytest.mark.parametrize(("problem", "truss"), CASES)
def test_it_can_be_shown_hinted_at_kept_and_taken_back(problem: Problem, truss: str) -> None:
    lesson = asking(problem, truss)
    hints = [lesson.take("hint", now=100.0 * n).text for n in range(1, 5)]
    assert len(set(hints)) == 4
    before = lesson.state
    reply = say(lesson, "show")
    assert reply.accepted
    event = lesson.events[-1]
    again = Lesson(lesson.problem, lesson.events[:-1])
    kept = Outcome.from_record(lesson.outcome(before, event, reply).as_record(event))
    again.restore(event, kept)
    assert again.state == lesson.state
    say(lesson, "undo")
    assert not lesson.state.sound_done


@pytest.mark.parametrize(("problem", "truss"), CASES)
def test_a_student_who_slips_at_every_place_ends(problem: Problem, truss: str) -> None:
    lesson = Lesson(replace(problem, truss=truss))  # type: ignore[arg-type]
    Student(lesson, lambda kind, **data: say(lesson, kind, **data)).walk()
    assert lesson.done


@pytest.mark.parametrize(("problem", "truss"), CASES)
def test_a_file_that_says_what_its_truss_is_is_held_to_it(
    problem: Problem, truss: str, tmp_path: Path
) -> None:
    for said in ("determinate", "unstable", "indeterminate"):
        path = tmp_path / f"{said}.toml"
        path.write_text(write_problem(replace(problem, truss=said)), "utf-8")  # type: ignore[arg-type]
        assert load_problem(path).truss == said
        found = check(path)
        assert found.sound == (said == truss)
        if said != truss:
            assert any(f"the truss is {truss}" in d.message for d in found.defects)


@given(trusses())
def test_a_sound_truss_has_no_loose_joint_and_without_a_member_it_has(problem: Problem) -> None:
    assert soundness(problem) == "determinate"
    assert loose_joints(problem) == ()
    short = replace(problem, members=problem.members[1:])
    assert soundness(short) == "unstable"
    assert set(stability(short).moving) <= set(loose_joints(short))


def test_a_joint_is_loose_where_no_forces_can_hold_it_against_a_push() -> None:
    """The static side of the same fact: the joint equations can balance a push on a held joint."""
    held = {joint.name for joint in LOOSE.joints} - set(loose_joints(LOOSE))
    assert held == {"A", "B"}
    nothing = residuals(LOOSE, dict.fromkeys(LOOSE.unknowns, 0.0))
    assert set(nothing) == {"A", "B", "C", "D"}
