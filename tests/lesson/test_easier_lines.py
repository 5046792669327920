"""A right line that could have been easier is told so: once in a while, and only one thing at a time."""

from __future__ import annotations

import pytest
from student import Student
from walks import Clock, walk_to

from tutor.lesson import Lesson
from tutor.lesson.steps.easier import MOST_TAUGHT
from tutor.model import load_problem
from tutor.shipped import shipped_problems

FOLDER = shipped_problems() / "first-steps"
FILES = sorted(path for path in FOLDER.glob("*.toml") if path.name != "set.toml")


def remarks(reply) -> list[str]:
    return [say.text for say in reply.said if say.tone == "remark"]


def test_another_moment_point_is_pointed_at_where_it_leaves_fewer_unknowns() -> None:
    _, do = walk_to("reactions")
    reply = do("type", text="ΣM_C: -2.4 A_y + 1*B_x = 0")
    (told,) = remarks(reply)
    assert told.startswith("This line holds two unknowns. About another point it would hold one")


def test_the_point_that_was_chosen_is_spoken_of_before_the_line_not_after_it() -> None:
    _, do = walk_to("reactions")
    chosen = do("choose", about="M C")
    assert [say.teaches for say in chosen.said] == [False, True]
    assert remarks(do("type", text="-2.4 A_y + 1*B_x = 0")) == []


def test_the_shortest_line_is_left_as_it_is() -> None:
    _, do = walk_to("reactions")
    assert remarks(do("type", text="ΣM_A: B_x - 150*2.4 = 0")) == []


def test_the_other_axis_is_pointed_at_where_it_leaves_an_unknown_out() -> None:
    _, do = walk_to("joints")
    do("joint", joint="C")
    (told,) = remarks(do("type", text="ΣFx: F_AC + 12/13 F_BC = 0"))
    assert "One of the two axes leaves one of them out" in told
    assert remarks(do("type", text="ΣFy: 5/13 F_BC + 150 = 0")) == []


def test_a_zero_force_member_in_the_line_is_pointed_at_without_its_name() -> None:
    lesson, do = walk_to("joints", load_problem(FOLDER / "boat-shed-roof.toml"))
    state = lesson.state
    do("joint", joint="H")
    unknown = state.unknown_at("H")
    told = remarks(do("type", text="ΣFy: F_DH = 0"))
    assert told
    assert "carries no force" in told[0]
    assert not any(name in told[0] for name in unknown)


def test_who_writes_that_it_was_seen_is_not_told_that_it_can_be_seen() -> None:
    _, do = walk_to("joints", load_problem(FOLDER / "boat-shed-roof.toml"))
    do("joint", joint="H")
    assert remarks(do("type", text="ΣFy = 0 => F_DH = 0 (by inspection)")) == []


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_no_reply_of_a_whole_walk_holds_two_remarks_nor_a_kind_too_often(path) -> None:
    lesson = Lesson(load_problem(path))
    replies = []
    clock = Clock(lesson)

    def do(kind, **data):
        replies.append(clock(kind, **data))
        return replies[-1]

    Student(lesson, do).walk()
    taught = lesson.state.taught
    assert all(taught.count(kind) <= MOST_TAUGHT for kind in taught)
    for reply in replies:
        teaching = [say for say in reply.said if say.teaches]
        assert len(teaching) <= 1
        assert not teaching or remarks(reply) == [teaching[0].text]
        assert not any(c.isdigit() for say in teaching for c in say.text.split(" joint ")[0])
