"""Does a lesson keep to what its set allows: hints, tries, and how much is said of a wrong line?"""

from __future__ import annotations

from dataclasses import replace

import pytest
from walks import ARM, Clock, walk_to

from tutor.lesson import Lesson
from tutor.lesson.allowed import NO_HINTS, NO_LINES, NOT_RIGHT
from tutor.model import Problem, Rules


def under(**rules: object) -> Problem:
    return replace(ARM, rules=Rules(**rules))  # type: ignore[arg-type]


def at_reactions(**rules: object) -> tuple[Lesson, Clock]:
    lesson, do = walk_to("reactions", under(**rules))
    do("choose", about="M A")
    return lesson, do


def levels(lesson: Lesson) -> tuple[int, ...]:
    return lesson.state.hints_used


WRONG = "B_x*2 = 0"


class TestHints:
    def test_of_a_problem_alone_go_up_to_the_line(self) -> None:
        lesson, do = at_reactions()
        for _ in range(4):
            do("hint")
        assert levels(lesson) == (1, 2, 3, 4)

    def test_without_lines_stop_before_the_line(self) -> None:
        lesson, do = at_reactions(hints="no lines")
        for _ in range(3):
            do("hint")
        reply = do("hint")
        assert (reply.text, reply.accepted) == (NO_LINES, False)
        assert levels(lesson) == (1, 2, 3)

    def test_are_none_where_the_set_gives_none(self) -> None:
        lesson, do = at_reactions(hints="none")
        do("type", text=WRONG)
        reply = do("hint")
        assert (reply.text, reply.accepted) == (NO_HINTS, False)
        assert levels(lesson) == ()


class TestTries:
    def test_are_told_when_they_are_used_up_and_the_line_may_then_be_asked_for(self) -> None:
        lesson, do = at_reactions(hints="none", attempts=2)
        assert "last" not in do("type", text=WRONG).text
        assert do("hint").text == NO_HINTS
        assert "the last of 2 tries" in do("type", text=WRONG).text
        told = [do("hint").text for _ in range(3)]
        assert "For instance" in told[-1] or "For instance" in do("hint").text
        assert 4 in levels(lesson)

    def test_give_nothing_away_by_themselves(self) -> None:
        _, do = at_reactions(attempts=1)
        reply = do("type", text=WRONG)
        assert "For instance" not in reply.text
        assert "the last of 1 try here" in reply.text

    def test_go_on_being_judged_when_they_are_used_up(self) -> None:
        lesson, do = at_reactions(attempts=1)
        do("type", text=WRONG)
        before = len(lesson.state.lines)
        assert do("type", text="B_x + 150 = 0").text
        assert do("type", text=right_line(lesson)).accepted
        assert len(lesson.state.lines) == before + 1


def right_line(lesson: Lesson) -> str:
    from tutor.judge import M, right_line

    return right_line(lesson.problem, M("A"), lesson.state.own)


class TestACheck:
    @pytest.mark.parametrize("text", [WRONG, "A_y - 150 = 0", "B_x + 150*2 = 0"])
    def test_calls_a_wrong_line_only_that(self, text: str) -> None:
        lesson, do = at_reactions(mode="check")
        reply = do("type", text=text)
        if reply.accepted:
            return
        assert [say.text for say in reply.said] == [NOT_RIGHT]
        assert reply.verdict is not None
        assert reply.verdict.mistakes == ()
        assert reply.verdict.true_of is None
        assert lesson.state.offered is None
        assert not do("keep").accepted

    def test_keeps_what_was_wrong_for_the_report(self) -> None:
        lesson, do = at_reactions(mode="check")
        do("type", text=WRONG)
        assert lesson.state.tries[-1].verdict == "wrong"
        assert lesson.state.tries[-1].codes

    def test_begins_its_hints_with_the_first(self) -> None:
        lesson, do = at_reactions(mode="check")
        do("type", text=WRONG)
        do("hint")
        assert levels(lesson) == (1,)

    def test_still_says_what_cannot_be_read(self) -> None:
        _, do = at_reactions(mode="check")
        reply = do("type", text="B_x ** = 0")
        assert reply.said[0].tone == "unreadable"
        assert reply.text != NOT_RIGHT

    def test_still_says_what_is_right(self) -> None:
        lesson, do = at_reactions(mode="check")
        reply = do("type", text=right_line(lesson))
        assert reply.accepted
        assert reply.said[0].tone == "right"

    def test_calls_a_wrong_claim_only_that(self) -> None:
        lesson = Lesson(under(mode="check"))
        do = Clock(lesson)
        for kind, data in (("reasons", {"chosen": []}), ("count", {"m": 9, "r": 9, "2j": 9})):
            reply = do(kind, **data)
            assert not [s for s in reply.said if s.tone == "wrong" and s.text != NOT_RIGHT]


def test_the_rules_of_a_set_change_nothing_of_a_lesson_that_needs_none_of_them() -> None:
    plain, do = at_reactions()
    ruled, again = at_reactions(hints="none", attempts=9, mode="check")
    for each in (do, again):
        each("type", text=right_line(plain))
    assert plain.state.lines == ruled.state.lines
    assert plain.state.results == ruled.state.results
