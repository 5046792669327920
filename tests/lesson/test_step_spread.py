"""What lies on members is brought to the joints: the question why, the shares, and what is said of them."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from walks import Clock

from tutor.figure import truss_figure
from tutor.figure.parts import Rail
from tutor.judge.claims import SPREAD
from tutor.lesson import Lesson, Reply
from tutor.lesson.practice import practice
from tutor.lesson.steps import spread
from tutor.model import Problem
from tutor.model.read import read_text
from tutor.model.rules import Rules
from tutor.records import Keep
from tutor.session import open_session

DECK = """
title = "The landing stage"
force = "kN"
length = "m"
members = ["AB", "BC", "AD", "BD", "DE", "BE", "CE"]
[joints]
A = [0, 0]
B = [4, 0]
C = [8, 0]
D = [2, 3]
E = [6, 3]
[supports]
A = "pin"
C = "roller"
[[spread]]
on = ["AB", "BC"]
down = 3
"""
WHY = list(spread.HALVES)


def problem_of(text: str) -> Problem:
    problem = read_text(text, "text").problem
    assert problem is not None
    return problem


def lesson_of(text: str | Problem = DECK, why: bool = True) -> Lesson:
    lesson = Lesson(text if isinstance(text, Problem) else problem_of(text))
    if why:
        lesson.take("halves", chosen=WHY)
    return lesson


def typed(text: str, problem: str | Problem = DECK) -> tuple[Reply, Lesson]:
    lesson = lesson_of(problem)
    return lesson.take("shares", text=text), lesson


def codes(lesson: Lesson) -> tuple[str, ...]:
    return lesson.state.tries[-1].codes


def test_first_it_is_asked_why_then_what_each_joint_takes_then_the_reasons() -> None:
    lesson = lesson_of(why=False)
    assert lesson.ask.kind == "halves"
    assert {o.key for o in lesson.ask.options} > set(WHY)
    assert lesson.take("halves", chosen=WHY).accepted
    assert lesson.ask.kind == "shares"
    assert lesson.take("shares", text="A 6 down, B 12 down, C 6 down").accepted
    assert lesson.ask.kind == "reasons"


@pytest.mark.parametrize("wrong", [WHY[:1], WHY[:2], [*WHY, "nothing"], ["stiff"]])
def test_what_is_not_so_or_not_all_does_not_pass_and_names_no_statement(wrong: list[str]) -> None:
    lesson = lesson_of(why=False)
    reply = lesson.take("halves", chosen=wrong)
    assert not reply.accepted
    assert lesson.ask.kind == "halves"
    assert not any(words in reply.text for each in spread.WORDS.values() for words in each)


@pytest.mark.parametrize(
    "text",
    [
        "A 6 down, B 12 down, C 6 down",
        "6 12 6",
        "6, 12, 6",
        "6; 12; 6",
        "6 kN 12 kN 6 kN",
        "A: 6 kN ↓; B: 12 kN ↓; C: 6 kN ↓",
        "a 6 b 12 c 6",
        "A = C = 6, B = 12",
        "A and C: 6 kN downwards, B: 12 kN",
        "A and C 6, B 12 down",
        "A 3*4/2, B 3*4/2 + 3*4/2, C 3 kN/m * 4 m / 2",
        "B: 3*4 = 12 kN (down), A 6000 N, C 6,0",
        "6 down at A, 12 down at B, 6 at C",
        "joint A takes 6, joint B 12 and C 6",
    ],
)
def test_shares_are_read_as_people_write_them(text: str) -> None:
    reply, lesson = typed(text)
    assert reply.accepted, reply.text
    assert lesson.ask.kind == "reasons"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("6 12", "3 joints"),
        ("B -12", "without a minus"),
        ("x 3", '"x" is no joint'),
        ("6,12,6", "one number or two"),
        ("A", "no number"),
        ("A (6", "Cannot read"),
        ("A 6 m", "length"),
        ("7" * 600, "500"),
        ("A 1/0", "Cannot read"),
    ],
)
def test_what_cannot_be_read_is_said_and_counts_as_no_try(text: str, said: str) -> None:
    reply, lesson = typed(text)
    assert said in reply.text
    assert not reply.accepted
    assert lesson.state.tries[-1].place == "halves"


LOFT = practice("spread-slope")
ALONG = replace(LOFT, spreads=tuple(replace(s, per="length") for s in LOFT.spreads))
SNOW = DECK.replace("on = [", 'on = ["AD"] #').replace("down = 3", 'down = 3\nper = "span"')


@pytest.mark.parametrize(
    ("text", "code", "problem"),
    [
        ("A 12, B 24, C 12", "spread-whole", DECK),
        ("A 12", "spread-whole", DECK),
        ("A 12, B 12, C 12", "spread-end", DECK),
        ("B 6", "spread-neighbour", DECK),
        ("A 3", "spread-length", DECK),
        ("A 1.5", "spread-length", DECK),
        ("A 6 up", "spread-way", DECK),
        ("A 6 left", "spread-way", DECK),
        ("D 6", "spread-elsewhere", DECK),
        ("A 7", "spread-share", DECK),
        ("A 0", "spread-share", DECK),
        ("A 5.41", "spread-slope", SNOW),
        ("A 3, D 5.41", "spread-slope", SNOW),
        ("A 6", "spread-slope", ALONG),
    ],
)
def test_a_typical_mistake_is_named(text: str, code: str, problem: str | Problem) -> None:
    reply, lesson = typed(text, problem)
    assert code in codes(lesson), reply.text
    truths = [size.text for load in spread.following(lesson.problem) for _, size in load.pushes]
    said = reply.text.replace(text, "")
    assert not any(truth in said.split() for truth in truths)


def test_right_shares_stand_beside_wrong_ones_and_only_the_rest_is_asked_again() -> None:
    reply, lesson = typed("A 6, B 6")
    assert reply.accepted
    assert lesson.state.brought == ("A",)
    assert "A stands" in reply.text
    assert "What do B and C take" in lesson.ask.question
    assert lesson.take("shares", text="12 6").accepted
    assert lesson.ask.kind == "reasons"


def test_a_joint_that_takes_its_own_load_as_well_is_told_so_and_not_called_wrong() -> None:
    own = problem_of(DECK + '[[loads]]\nat = "B"\ndown = 5\n')
    reply, lesson = typed("B 17", own)
    assert "own load" in reply.text
    assert all(say.tone != "wrong" for say in reply.said)
    assert lesson.state.brought == ()
    assert lesson.take("shares", text="B 12").accepted


def test_two_directions_need_a_direction_behind_each_number() -> None:
    both = problem_of(DECK + '[[spread]]\non = ["AD"]\nright = 2\nper = "span"\n')
    reply, lesson = typed("A 6", both)
    assert "direction" in reply.text
    assert typed("C 6", both)[0].accepted
    assert lesson.take("shares", text="A 6 down 3 right").accepted
    assert lesson.take("shares", text="D 3 right, B 12 down, C 6 down").accepted
    assert lesson.ask.kind == "reasons"


def test_the_hints_are_graded_and_only_the_last_holds_the_shares() -> None:
    do = Clock(lesson_of())
    said = [do("hint").text for _ in range(4)]
    assert len(set(said)) == 4
    assert not any("6 down" in text or "12" in text for text in said[:3])
    assert "A 6 down, B 12 down, C 6 down." in said[3]


def test_a_mistake_speaks_in_the_hints_that_follow() -> None:
    _, lesson = typed("B 6")
    do = Clock(lesson)
    assert "half of what lies on each member" in do("hint").text
    assert "AB and BC" in do("hint").text


def test_no_step_lies_behind_before_the_load_is_at_the_joints() -> None:
    lesson = lesson_of()
    for kind, data in (("go", {"step": "reactions"}), ("joint", {"joint": "A"})):
        reply = lesson.take(kind, **data)
        assert reply.text == spread.FIRST
    lesson.take("shares", text="6 12 6")
    assert lesson.take("shares", text="6 12 6").text == spread.NOTHING_LEFT


def test_undo_takes_back_shares_and_reasons_alike() -> None:
    _, lesson = typed("A 6")
    assert lesson.take("undo").accepted
    assert lesson.state.brought == ()
    assert lesson.take("undo").accepted
    assert lesson.ask.kind == "halves"


def test_who_passes_over_the_step_is_told_what_acts_at_the_joints() -> None:
    lesson = lesson_of(why=False)
    reply = lesson.take("skip", steps=["idealise", "free body"])
    assert "A 6 down, B 12 down, C 6 down" in reply.text
    assert lesson.ask.kind == "line"


def test_the_picture_shows_the_load_on_the_members_until_it_is_at_the_joints() -> None:
    _, lesson = typed("A 6, B 12")
    before = truss_figure(spread.pictured(lesson.state))
    assert any("spread over AB and BC" in said for said in before.sentences)
    assert not any("load" in said for said in before.sentences)
    lesson.take("shares", text="C 6")
    after = truss_figure(spread.pictured(lesson.state))
    assert sum("load" in said for said in after.sentences) == 3
    assert not any("spread" in said for said in after.sentences)


def test_a_row_of_arrows_has_a_line_over_it_and_its_size_once() -> None:
    roof = problem_of(DECK.replace('["AB", "BC"]', '["AD", "DE", "CE"]'))
    figure = truss_figure(roof)
    assert sum(isinstance(item, Rail) for item in figure.items) == 3
    texts = [
        item.texts
        for item in figure.items
        if getattr(item, "role", "") == "load" and getattr(item, "texts", ())
    ]
    assert texts == [("3 kN/m",)]


def test_what_was_done_is_kept_and_read_back(tmp_path: Path) -> None:
    problem = problem_of(DECK)
    session = open_session(problem, Keep(tmp_path))
    session.do("halves", chosen=WHY)
    session.do("shares", text="A 6, B 6")
    session.do("shares", text="B 12")
    assert session.lesson.state.brought == ("A", "B")
    session.journal.close()
    again = open_session(problem, Keep(tmp_path), session.journal.path)
    assert again.lesson.state == session.lesson.state
    again.do("undo")
    assert again.lesson.state.brought == ("A",)


@pytest.mark.parametrize("claim", SPREAD, ids=lambda claim: claim.code)
def test_what_goes_wrong_with_a_spread_load_can_go_wrong_in_the_problem_that_trains_it(
    claim,
) -> None:
    texts = ("A 12", "D 12, A 12", "D 6", "A 3", "A 7.5", "A 6 up", "B 6", "A 11")
    seen = {code for text in texts for code in codes(typed(text, practice(claim.code))[1])}
    assert claim.code in seen


def test_in_a_set_that_only_checks_a_wrong_share_is_only_called_so() -> None:
    problem = replace(problem_of(DECK), rules=Rules(mode="check"))
    reply, _ = typed("A 12", problem)
    assert reply.text == "This is not right."
