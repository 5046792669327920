"""What the plain mode adds to a lesson: smaller problems, remarks to be switched off, arms in words."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from tutor.model import ProblemSet, load_problem
from tutor.plain.main import run
from tutor.plain.voice import Voice
from tutor.plain.walk import Walk
from tutor.records import Keep, read_settings
from tutor.session import Session, open_session
from tutor.shipped import shipped_problems

ARM = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
TO_REACTIONS = ["2 5 6", "m 3 r 3 2j 6", "1 2", "1", "1", "1", "1", "1"]


@pytest.fixture
def session(tmp_path: Path, monkeypatch) -> Session:
    """A lesson at the reactions, by a clock that gives every hint its time."""
    ticks = iter(range(1_000_000_000, 2_000_000_000, 7))
    monkeypatch.setattr("tutor.session.time.time", lambda: float(next(ticks)))
    opened = open_session(ARM, Keep(tmp_path))
    typed(opened, *TO_REACTIONS)
    assert opened.lesson.state.step == "reactions"
    return opened


def typed(session: Session, *lines: str) -> str:
    """What is said when these lines are typed."""
    sink = io.StringIO()
    Walk(Voice(io.StringIO("\n".join([*lines, ""])), sink), session, lambda step: None).listen()
    return sink.getvalue()


def test_a_third_hint_on_an_arm_says_where_it_runs_and_not_how_long_it_is(session) -> None:
    said = typed(session, "moment A", "B_x - 150*1 = 0", "hint", "hint")
    told = [line for line in said.splitlines() if "line of action" in line][-1]
    assert told == (
        "The line of action of load C is vertical; its arm about A is measured horizontally from A "
        "to that line."
    )
    assert typed(session, "arm").splitlines().count(told) == 1


def test_a_third_hint_at_a_joint_says_how_its_force_is_drawn(session) -> None:
    lines = ["ΣFx: F_AC + 5/13 F_BC = 0", "hint", "hint"]
    said = typed(session, "joint C", *lines).splitlines()
    place = next(i for i, line in enumerate(said) if "other component" in line)
    assert said[place].startswith("Hint: The factor beside the force in BC is that of its other")
    assert said[place + 1].startswith("Member CB, down and left")
    assert said[place + 1].endswith("F_BC unknown, drawn pulling on the joint.")


def test_before_the_third_hint_the_arm_alone_asks_for_a_force(session) -> None:
    said = typed(session, "moment A", "B_x - 150*1 = 0", "hint", "arm")
    assert "an arm is that of one of" in said


def test_remarks_on_an_easier_way_are_left_out_while_they_are_switched_off(session) -> None:
    other = "ΣM_C: -2.4 A_y + 1*B_x = 0"
    assert "Remarks are off." in typed(session, "remarks off")
    assert "Remark:" not in typed(session, other)
    assert "Remarks are on." in typed(session, "undo", "remarks on")
    assert "Remark: This line holds two unknowns." in typed(session, other)


def test_the_choice_on_remarks_is_kept(tmp_path: Path) -> None:
    sets = (ProblemSet("One", (ARM,)),)
    run(sets, keep=tmp_path, source=io.StringIO("remarks off\nleave\n"), sink=io.StringIO())
    settings, notice = read_settings(tmp_path)
    assert (settings.remarks, notice) == (False, "")


def test_practice_is_there_once_it_is_offered_and_the_lesson_waits(tmp_path, monkeypatch) -> None:
    ticks = iter(range(1_000_000_000, 2_000_000_000, 7))
    monkeypatch.setattr("tutor.session.time.time", lambda: float(next(ticks)))
    sets = (ProblemSet("One", (ARM,)),)
    lines = [*TO_REACTIONS, "practice", "moment A", *["hint"] * 6, "practice", "truss", "problems"]
    sink = io.StringIO()
    run(sets, keep=tmp_path, source=io.StringIO("\n".join([*lines, "again", ""])), sink=sink)
    said = sink.getvalue()
    before, _, after = said.partition("Problem: Practice: the fairway sign")
    assert "A smaller problem is offered after the last hint three times in a row." in before
    assert "ready under practice" in before
    assert "Back at: Lamp arm over the ferry steps." in after
    assert "Find A_x, A_y and B_x." in after.partition("Back at")[2]
