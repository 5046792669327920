"""Is an angle that a line of its own gives there for the lines that follow?"""

from __future__ import annotations

from test_headed_joints import at_the_joints

from tutor.lesson import Lesson
from tutor.lesson.outcome import changed, changes


def test_an_angle_given_by_a_line_of_its_own_is_known_in_later_lines() -> None:
    _, do = at_the_joints()
    assert do("type", text="tan θ = 8/6 ⇒ θ = 53.13°").accepted
    assert do("type", text="Joint C: ΣFx = 240 - AC cos θ = 0 => AC = 400").accepted
    assert do("type", text="ΣFy = -500 - BC - AC sin θ = 0").accepted


def test_an_angle_that_a_right_line_gives_is_known_in_later_lines() -> None:
    _, do = at_the_joints()
    assert do("type", text="Joint C: ΣFx = 240 - AC cos θ = 0, tan θ = 8/6").accepted
    assert do("type", text="ΣFy = -500 - BC - AC sin θ = 0").accepted


def test_an_angle_that_was_taken_back_is_known_no_more() -> None:
    lesson, do = at_the_joints()
    do("type", text="θ = 53.13°")
    assert lesson.state.letters.keys() == {"θ"}
    do("undo")
    assert not lesson.state.letters
    assert not do("type", text="Joint C: ΣFx = 240 - AC cos θ = 0").accepted


def test_two_sizes_of_one_angle_are_not_kept() -> None:
    lesson, do = at_the_joints()
    reply = do("type", text="tan θ = 8/6 ⇒ θ = 36.87°")
    assert not reply.accepted
    assert "another size" in reply.text
    assert not lesson.state.letters


def test_a_kept_angle_outlasts_the_session() -> None:
    lesson, do = at_the_joints()
    before = lesson.state
    do("type", text="θ = 53.13°")
    kept = changes(before, lesson.state)
    assert changed(before, lesson.events[-1], kept).letters == lesson.state.letters
    assert Lesson(lesson.problem, lesson.events).state.letters == lesson.state.letters
