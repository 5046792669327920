"""Is a sentence of elimination judged statement by statement, by the lines that stand and by itself?"""

from __future__ import annotations

from collections.abc import Callable

import pytest
from families import plain_problem

from tutor.lesson import Lesson, Reply
from tutor.model import Load, Problem, Support
from tutor.notation import Exact, Unreadable, read_line

PEAK = plain_problem(
    (("P", 0, 0), ("Q", 6, 0), ("R", 3, 4)),
    ("PQ", "PR", "QR"),
    (Support("P", "pin"), Support("Q", "roller")),
    (Load("R", (("down", Exact.of(40)), ("right", Exact.of(9)))),),
)
"""PR = -17.5, QR = -32.5, both by hand: 0.8 (PR + QR) = -40, 0.6 (QR - PR) = -9."""


def at_r(problem: Problem) -> Lesson:
    """A lesson at R where both sums stand, that of y last."""
    lesson = Lesson(problem)
    lesson.take("show", until="joints")
    lesson.take("joint", joint="R")
    for text in ("ΣFx: 9 - 0.6 PR + 0.6 QR = 0", "ΣFy: -40 - 0.8 PR - 0.8 QR = 0"):
        assert lesson.take("type", text=text).accepted
    return lesson


@pytest.fixture
def typed() -> Callable[[str], Reply]:
    lesson = at_r(PEAK)
    return lambda text: lesson.take("type", text=text)


@pytest.mark.parametrize(
    "text",
    [
        "From (1) PR - QR = 15",
        "PR - QR = 15",
        "from (1), PR − QR = 15 and from (2), PR + QR = −50",
        "Dividing (2) by 0.8: PR + QR = -50",
        "(1) + (2): -31 - 1.4 PR - 0.2 QR = 0",
        "PR - QR = 15, PR + QR = -50, adding 2 PR = -35",
        "From eqs (1) and (2), 2 QR = -65",
    ],
)
def test_what_follows_from_the_lines_that_stand_is_right_whichever_is_proposed(
    typed: Callable[[str], Reply], text: str
) -> None:
    reply = typed(text)
    assert reply.accepted
    assert "wrong" not in [say.tone for say in reply.said]


def test_the_value_that_an_elimination_ends_in_is_taken(typed: Callable[[str], Reply]) -> None:
    text = "From (1) PR - QR = 15 and from (2) PR + QR = -50; adding, 2 PR = -35 ∴ PR = -17.5"
    assert "PR = -17.5" in typed(text).text


def test_both_values_of_an_elimination_are_taken(typed: Callable[[str], Reply]) -> None:
    text = "Dividing (2) by 0.8, PR + QR = -50; from (1), PR - QR = 15; hence PR = -17.5 and QR = -32.5, both struts"
    reply = typed(text)
    assert reply.accepted
    assert "PR = -17.5" in reply.text
    assert "QR = 32.5" in reply.text


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Subtracting (1) from (2): 2 QR = -50 + 15", "“2 QR = -50 + 15” does not follow from (1)"),
        ("From (1) PR - QR = -15", "“PR - QR = -15” does not follow from (1)."),
        ("From (1) PR - QR = 15 and from (2) PR + QR = 50", "“PR + QR = 50” does not follow"),
        ("Adding (1) and (2) gives 2 PR = 35, so PR = 17.5", "“2 PR = 35” does not follow"),
    ],
)
def test_the_statement_that_does_not_follow_is_named(
    typed: Callable[[str], Reply], text: str, said: str
) -> None:
    reply = typed(text)
    assert not reply.accepted
    assert [say.tone for say in reply.said] == ["wrong"]
    assert said in reply.text


@pytest.mark.parametrize("text", ["From (1): 1 = 0", "From (1), 0 = 0", "(1)+(2): PR - PR = 0"])
def test_what_says_nothing_follows_from_nothing(typed: Callable[[str], Reply], text: str) -> None:
    assert not typed(text).accepted


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("From (3) PR - QR = 15", ("(3)",)),
        ("Multiplying (2) by 3 and adding to (1): PR = 2", ("(2)", "(1)")),
        ("from eq. 2, PR = 3", ("(2)",)),
        ("3 PR (2) = 12", ()),
        ("Moments about P: 6 Q_y = 4 (9)", ()),
        ("Using the section through (a): PR = 3", ()),
    ],
)
def test_a_number_is_that_of_a_line_only_where_words_say_so(
    text: str, numbers: tuple[str, ...]
) -> None:
    line = read_line(text, PEAK.names)
    assert isinstance(line, Unreadable) or line.referred == numbers


@pytest.mark.parametrize(
    "text",
    [
        "From (1) and (2), 2 PR = -35 = -30",
        "From (1) and (2), 2 PR = -35 ⇒ PR = 17.5 T",
        "From (1) and (2), 2 PR = -35 so PR is in tension",
        "From (1) and (2), PR = -35/2 = -17.9",
    ],
)
def test_no_wrong_end_comes_along_with_what_follows(
    typed: Callable[[str], Reply], text: str
) -> None:
    assert "wrong" in [say.tone for say in typed(text).said]
