"""Can a student cut the truss, name the part kept, and find from its sums what no joint gives alone?"""

from __future__ import annotations

import itertools
from pathlib import Path
from typing import Any

import pytest
from student import Student

from tutor.deeds import deed_of
from tutor.deeds.deed import Do, Tell
from tutor.judge import M, right_line
from tutor.judge.about import from_text
from tutor.lesson import Event, Lesson, Reply
from tutor.lesson.outcome import Outcome
from tutor.lesson.steps.section import best_section, cut_members, example
from tutor.model import load_problem
from tutor.shipped import shipped_problems
from tutor.statics import solve

COMPOUND = load_problem(Path(__file__).parents[1] / "paper" / "compound.toml")
"""A triangle A, B, C round another, D, E, F, held together by AD, BE and CF."""


@pytest.fixture
def lesson() -> Lesson:
    """At the joints, the reactions found."""
    lesson = Lesson(COMPOUND)
    lesson.take("show", until="joints", now=1.0)
    return lesson


def cut(lesson: Lesson, members: Any, keep: Any = "A") -> Reply:
    return lesson.take("section", members=members, keep=keep, now=2.0)


def test_no_joint_can_be_solved_and_the_hint_says_what_can(lesson: Lesson) -> None:
    assert lesson.ask.kind == "joint"
    for said in (
        "write the sums of several joints",
        "a section, a cut that parts the truss in two",
        "keep one part: it is a free body",
    ):
        assert said in lesson.ask.question
    said = [lesson.take("hint", now=10.0 * n).text for n in range(1, 5)]
    assert "section through AD, BE and CF, and keep the part with" in said[-1]
    assert not any(name in text for text in said[:-1] for name in COMPOUND.member)


@pytest.mark.parametrize("name", ["hall-roof", "weigh-house", "clock-stand"])
def test_the_section_that_shows_how_one_is_typed_is_of_this_truss_and_no_better_than_a_joint(
    name: str,
) -> None:
    lesson = Lesson(load_problem(shipped_problems() / "compound" / f"{name}.toml"))
    lesson.take("show", until="joints", now=1.0)
    text, joint = example(lesson.problem)
    assert f"a cut like {text}, which cuts off joint {joint} alone" in lesson.ask.question
    bare, typed = deed_of(lesson, "section"), deed_of(lesson, text)
    assert isinstance(bare, Tell)
    assert text in bare.lines[0]
    assert isinstance(typed, Do)
    assert lesson.take(typed.kind, **typed.data, now=2.0).accepted
    assert lesson.state.part == (joint,)


def test_the_part_kept_is_told_with_what_is_unknown_on_it(lesson: Lesson) -> None:
    reply = cut(lesson, ["AD", "EB", "F_CF"])
    assert reply.accepted
    assert reply.text == "The part with A, B and C: AD, BE and CF are unknown on it."
    assert cut_members(lesson.state) == ("AD", "BE", "CF")
    assert lesson.ask.title == "Section"
    assert {"Fx of A B C", "M D of A B C"} <= {option.key for option in lesson.ask.options}


def test_a_moment_about_where_two_cut_lines_meet_finds_the_third(lesson: Lesson) -> None:
    cut(lesson, ["AD", "BE", "CF"])
    points = [from_text(o.key) for o in lesson.ask.options if o.key.startswith("M 6.0 4.5")]
    assert points == [M((6.0, 4.5), part=("A", "B", "C"))]
    assert "ΣM about (6, 4.5) from A" in [option.words for option in lesson.ask.options]
    reply = lesson.take(
        "type",
        about="M 6.0 4.5 of A B C",
        text="F_BE/sqrt(2)*6 - F_BE/sqrt(2)*4.5 - 10*4.5 - 12.5*6 + 17.5*6 = 0",
        now=3.0,
    )
    assert reply.accepted, reply
    assert lesson.take("type", text="BE = 14.14 T", now=4.0).accepted


@pytest.mark.parametrize("text", ["Fx: 4/5 AD - 10 - BE/sqrt(2) = 0", "4/5 AD - 10 - BE/√2 = 0"])
def test_a_line_is_found_by_its_heading_or_by_itself(lesson: Lesson, text: str) -> None:
    cut(lesson, ["AD", "BE", "CF"])
    reply = lesson.take("type", text=text, now=3.0)
    assert reply.accepted, reply
    assert lesson.state.lines[-1].about.part == ("A", "B", "C")


def test_a_wrong_line_of_a_part_is_told_its_mistake(lesson: Lesson) -> None:
    cut(lesson, ["AD", "BE", "CF"])
    reply = lesson.take("type", about="Fx", text="4/5 AD - 10 + BE/sqrt(2) = 0", now=3.0)
    assert not reply.accepted
    assert reply.verdict is not None
    assert [m.code for m in reply.verdict.mistakes] == ["sign"]
    reply = lesson.take("type", about="Fx", text="3/5 AD - 10 - BE/sqrt(2) = 0", now=4.0)
    assert reply.verdict is not None
    assert reply.verdict.mistakes[0].code == "component"


@pytest.mark.parametrize(
    ("members", "said"),
    [
        (["AD", "BE"], "still in one piece"),
        (["AB", "AC", "AD", "BE", "CF"], "in 3 pieces"),
        (["AD", "BE", "CF", "AB"], "AB would be cut with both ends in the same part"),
        (["AD", "XY"], "Name members of this truss"),
        ([], "Name the members that are cut"),
        (7, "Name members of this truss"),
        ([3, None], "Name members of this truss"),
    ],
)
def test_what_is_no_section_is_answered_in_a_sentence(
    lesson: Lesson, members: Any, said: str
) -> None:
    before = lesson.state
    reply = cut(lesson, members)
    assert not reply.accepted
    assert said in reply.text
    assert lesson.state.part == before.part == ()


def test_a_section_says_how_one_goes_back_to_the_joints(lesson: Lesson) -> None:
    cut(lesson, ["AD", "BE", "CF"])
    assert "To go back to the joints, type leave section." in lesson.ask.question
    deed = deed_of(lesson, "leave section")
    assert isinstance(deed, Do)
    assert lesson.take(deed.kind, **deed.data, now=3.0).accepted
    assert lesson.ask.kind == "joint"


def test_a_joint_that_is_none_is_asked_for_again(lesson: Lesson) -> None:
    assert "Name a joint of the part that you keep" in cut(lesson, ["AD", "BE", "CF"], "Z").text


def test_going_to_a_joint_leaves_the_part_and_undo_comes_back_to_it(lesson: Lesson) -> None:
    cut(lesson, ["AD", "BE", "CF"])
    lesson.take("joint", joint="A", now=3.0)
    assert lesson.state.part == ()
    assert lesson.state.joint == "A"
    cut(lesson, ["AD", "BE", "CF"], "D")
    assert lesson.state.part == ("D", "E", "F")
    assert lesson.take("section", members=[], now=4.0).accepted
    assert lesson.state.part == ()
    lesson.take("undo", now=5.0)
    assert lesson.state.part == ("D", "E", "F")


def test_the_part_is_left_once_all_on_it_is_found_and_the_joints_give_the_rest(
    lesson: Lesson,
) -> None:
    truth = solve(COMPOUND)
    cut(lesson, ["AD", "BE", "CF"])
    clock = itertools.count(10)
    for about in ("M 6.0 4.5 of A B C", "Fx of A B C", "Fy of A B C"):
        lesson.take("choose", about=about, now=float(next(clock)))
        text = right_line(COMPOUND, from_text(about), lesson.state.own)
        assert lesson.take("type", text=text, now=float(next(clock))).accepted
    for name in ("BE", "AD", "CF"):
        assert lesson.take(
            "type", text=f"{name} = {truth.force(name):.6g}", now=float(next(clock))
        ).accepted
    assert lesson.state.part == ()
    Student(lesson, lambda kind, **data: lesson.take(kind, now=99.0, **data)).walk()
    assert lesson.done


def test_the_sums_of_several_joints_written_together_do_without_a_section() -> None:
    gable = load_problem(shipped_problems() / "compound" / "weigh-house.toml")
    lesson, clock = Lesson(gable), itertools.count()
    student = Student(
        lesson, lambda kind, **d: lesson.take(kind, now=float(next(clock)), **d), False
    )
    student.walk()
    assert lesson.done
    assert not any(event.kind == "section" for event in lesson.events)


def test_hints_at_a_part_lead_to_its_best_sum_and_give_no_value_before_the_last(
    lesson: Lesson,
) -> None:
    cut(lesson, ["AD", "BE", "CF"])
    levels = lesson.levels
    assert not isinstance(levels, str)
    for text in (levels.look, levels.reason, levels.where):
        assert not any(digit in text for digit in "0123456789")
    assert "of the part with A, B, C" in levels.line


def test_a_section_is_kept_as_any_other_event(lesson: Lesson) -> None:
    before = lesson.state
    reply = cut(lesson, ["AD", "BE", "CF"])
    event: Event = lesson.events[-1]
    outcome = lesson.outcome(before, event, reply)
    again = Lesson(COMPOUND, lesson.events[:-1])
    again.restore(event, Outcome.from_record(outcome.as_record(event)))
    assert again.state == lesson.state
    assert Lesson(COMPOUND, lesson.events).state == lesson.state


def test_the_section_proposed_holds_a_force_that_a_sum_gives_alone(lesson: Lesson) -> None:
    found = best_section(lesson.state)
    assert found is not None
    assert set(found[0].cut) == {"AD", "BE", "CF"}


def test_the_board_cuts_where_no_joint_can_be_solved() -> None:
    lesson = Lesson(COMPOUND)
    for now in range(200):
        if lesson.done:
            break
        reply = lesson.take("show", now=float(now))
        assert reply.accepted
        assert reply.verdict is None or reply.verdict.right
    assert lesson.done
    assert any(text.startswith("Cut AD, BE and CF") for text in lesson.state.shown)


@pytest.fixture
def found() -> Lesson:
    """At the closing check, every force found."""
    lesson = Lesson(load_problem(shipped_problems() / "compound" / "hall-roof.toml"))
    lesson.take("show", until="close", now=1.0)
    return lesson


HALF = {"members": ["BE", "DE", "AH"], "keep": "A"}


def test_a_section_is_a_check_at_the_end_as_well(found: Lesson) -> None:
    """On the left half act A_x, A_y, 16 kN and what BE, DE and AH carry, -8.5, -22.5 and 34 kN."""
    written = {line.about for line in found.state.lines}
    assert found.take("section", **HALF, now=2.0).accepted
    assert "The part with A, B and D: all that acts on it is known." in found.ask.question
    sums = [from_text(option.key) for option in found.ask.options]
    assert sums
    assert all(about.part and about not in written for about in sums)
    assert found.ask.options[0].words.startswith("ΣM about")
    about = M("B", part=("A", "B", "D"))
    assert about in sums
    line = right_line(found.problem, about, found.state.own)
    numbers = line.replace("F_DE", "(-22.5)").replace("F_AH", "34").replace("A_x", "(-16)")
    reply = found.take("type", text=f"M B: {numbers}", now=3.0)
    assert reply.verdict is not None, (line, reply.text)
    assert reply.verdict.right
    assert "the truss closes" in reply.text
    assert found.done
    assert not found.state.part
    assert found.state.lines[-1].about == about


@pytest.mark.parametrize("text", ["M B: 34*7 = 0", "M B: 1 - 1 = 0", "Fy: 18 - 22.5 = 0"])
def test_a_sum_of_a_part_that_does_not_hold_or_shows_nothing_does_not_close(
    found: Lesson, text: str
) -> None:
    found.take("section", **HALF, now=2.0)
    found.take("type", text=text, now=3.0)
    assert not found.done


def test_with_a_part_kept_the_sum_of_a_joint_still_closes_and_the_cut_can_be_left(
    found: Lesson,
) -> None:
    found.take("section", **HALF, now=2.0)
    assert found.take("section", members=[], now=3.0).accepted
    assert "Some equations were not needed" in found.ask.question
    found.take("section", **HALF, now=4.0)
    reply = found.take("type", text="Fx @ H: 0.8*42.5 - 34 = 0", about="Fx @ H", now=5.0)
    assert found.done, reply.text


@pytest.mark.parametrize("heading", ["ΣM_E: ", "ΣM_E = 0 = ", "Moments about E: "])
def test_moments_whose_heading_names_no_body_are_of_the_part_that_they_are_right_for(
    heading: str,
) -> None:
    lesson = Lesson(load_problem(shipped_problems() / "compound" / "hall-roof.toml"))
    lesson.take("show", until="joints", now=1.0)
    tail = "" if heading.endswith("= ") else " = 0"
    reply = lesson.take("type", text=f"{heading}7*AH - 16*7 - 18*7{tail}", now=2.0)
    assert reply.accepted
    assert set(lesson.state.part) == {"A", "B", "D"}
    assert lesson.take("type", text="AH = 34", now=3.0).accepted
    assert lesson.table.mistakes == ()


def test_a_sum_of_forces_whose_heading_names_no_body_is_of_the_part_too() -> None:
    lesson = Lesson(load_problem(shipped_problems() / "compound" / "hall-roof.toml"))
    lesson.take("show", until="joints", now=1.0)
    reply = lesson.take("type", text="ΣFy: 18 + 4/5 DE = 0", now=2.0)
    assert reply.accepted
    assert set(lesson.state.part) == {"A", "B", "D"}


def test_at_a_part_a_line_of_the_whole_truss_is_told_where_it_belongs() -> None:
    lesson = Lesson(load_problem(shipped_problems() / "compound" / "hall-roof.toml"))
    lesson.take("show", until="joints", now=1.0)
    lesson.take("section", members=["BE", "DE", "AH"], keep="A", now=2.0)
    reply = lesson.take("type", text="ΣM_E of the whole truss: 34*7 - 18*7 - 16*7 = 0", now=3.0)
    assert not reply.accepted
    assert reply.text.startswith("This heading is of the whole truss; now the part with A, B and D")
    assert lesson.table.mistakes == ()
