"""Where does a heading that names a joint lead, and whose sum is the next one?"""

from __future__ import annotations

import pytest
from families import down, exact, plain_problem
from walks import Clock, walk_to

from tutor.deeds import deed_of
from tutor.deeds.deed import Do, Tell
from tutor.judge import in_words
from tutor.lesson import Lesson
from tutor.model import Load, Problem, Support

PANEL: Problem = plain_problem(
    [("A", 0, 0), ("B", 6, 0), ("C", 6, 8), ("D", 0, 8)],
    ("AB", "BC", "CD", "DA", "AC"),
    [Support("A", "pin"), Support("B", "roller")],
    [Load("D", (("right", exact(240)),)), down("C", 500)],
)
"""Worked by hand: CD = -240, DA = 0, AC = 400, BC = -820, AB = 0."""


def at_the_joints() -> tuple[Lesson, Clock]:
    return walk_to("joints", PANEL)


@pytest.mark.parametrize("heading", ["Joint D: ΣFx = ", "At joint D: →+ ΣFx = ", "D: ΣFx = "])
def test_a_heading_that_names_a_joint_goes_there_and_stays(heading: str) -> None:
    lesson, do = at_the_joints()
    assert do("type", text=f"{heading}240 + CD = 0").accepted
    assert lesson.state.joint == "D"
    assert do("type", text="↑+ ΣFy = 0: DA = 0").accepted
    assert [in_words(line.about) for line in lesson.state.lines[-2:]] == [
        "ΣFx at joint D",
        "ΣFy at joint D",
    ]


def test_a_heading_leads_to_its_joint_whatever_comes_of_its_line() -> None:
    lesson, do = at_the_joints()
    assert not do("type", text="Joint D: ΣFx = 240 - CD = 0").accepted
    assert lesson.state.joint == "D"
    assert not do("type", text="Joint C: ΣFx = 3 + ? = 0").accepted
    assert lesson.state.joint == "C"


def test_another_joint_or_the_whole_truss_takes_over_from_the_joint_named_before() -> None:
    lesson, do = at_the_joints()
    do("type", text="Joint D: ΣFx = 240 + CD = 0 => CD = -240")
    assert do("type", text="Joint C: ΣFx = 240 - 0.6 AC = 0").accepted
    assert lesson.state.joint == "C"
    assert do("type", text="ΣFy = -500 - BC - 0.8 AC = 0").accepted
    assert in_words(lesson.state.lines[-1].about) == "ΣFy at joint C"
    do("type", text="ΣM_A = 6 B_y - 240*8 - 500*6 = 0")
    assert lesson.state.joint is None


def test_a_sum_without_a_joint_is_that_of_the_joint_it_is_true_of_where_none_was_named() -> None:
    lesson, do = at_the_joints()
    reply = do("type", text="ΣFx = 240 + CD = 0")
    assert reply.accepted
    assert reply.said[0].text == "Taken as ΣFx at joint D."
    assert lesson.state.joint == "D"


def test_a_sum_without_a_joint_that_is_true_of_none_stays_wrong() -> None:
    lesson, do = at_the_joints()
    reply = do("type", text="ΣFx = 240 - CD = 0")
    assert not reply.accepted
    assert "Taken as" not in reply.text
    assert all(line.about.joint is None for line in lesson.state.lines)


@pytest.mark.parametrize(
    "heading",
    [
        *(
            "## Joint D",
            "1. Joint D",
            r"\textbf{Joint D}",
            r"\subsection*{Joint D}",
            "At joint $D$:",
        ),
        *("# Joint D", "joint D", "**Joint D**", "<h3>Joint D</h3>", "[14:02] Ana: joint D"),
        *("Joint D.  Equilibrium of the joint gives", "FBD of joint D"),
    ],
)
def test_a_joint_alone_on_a_line_is_gone_to_however_a_page_writes_it(heading: str) -> None:
    lesson, _ = at_the_joints()
    deed = deed_of(lesson, heading)
    assert isinstance(deed, Do)
    assert (deed.kind, deed.data) == ("joint", {"joint": "D"})


@pytest.mark.parametrize(
    "text",
    [
        *(
            "ME 105 – Homework 3          Page 4",
            "CE 20 Statics",
            "Page 2 of 5",
            "Name: P. Adeyemi",
        ),
        *(
            "Mechanics, 3rd ed.   © 2019",
            r"\begin{align}",
            r"\end{align}",
            "$$",
            "---",
            "|:--|--:|",
        ),
        *("Member\tForce (kN)\tT/C", "| Bar | Force | Nature |", "| **Total** | | |"),
        *("print(F_CD)", "import numpy as np", "# the other side now", "Due: 12 March 2024"),
    ],
)
def test_what_only_heads_or_marks_a_page_is_passed_over_and_said_so(text: str) -> None:
    lesson, do = at_the_joints()
    for _ in range(2):
        deed = deed_of(lesson, text)
        assert isinstance(deed, Tell)
        assert deed.lines[0].startswith("Passed over: ")
        do("joint", joint="D")


@pytest.mark.parametrize(
    "text",
    [
        *(
            "240 + CD = 0",
            "CD = -240",
            "CD 240 C",
            "CD\t240\tC",
            "| CD | 240 | C |",
            "0.6 AC",
            "DA 0",
        ),
        *("ΣFx", "vertical", "-240", "240 N C", "Member CD | 240 | C"),
    ],
)
def test_what_may_be_statics_is_never_passed_over(text: str) -> None:
    lesson, do = at_the_joints()
    do("joint", joint="D")
    deed = deed_of(lesson, text)
    assert isinstance(deed, Do), deed


def test_rows_of_a_table_are_each_answered_as_a_value() -> None:
    lesson, do = at_the_joints()
    do("joint", joint="D")
    do("type", text="ΣFx: 240 + CD = 0")
    for row in ("CD\t240,0\tkN\tC", "| CD | 240 | C |", "CD; 240,0; kN; C"):
        deed = deed_of(lesson, row)
        assert isinstance(deed, Do)
        reply = do(deed.kind, **deed.data)
        assert reply.accepted, reply.text
        assert lesson.state.result["CD"].value == pytest.approx(-240)


def test_a_heading_in_bold_alone_chooses_the_sum_for_the_next_line() -> None:
    lesson, do = at_the_joints()
    do("joint", joint="D")
    deed = deed_of(lesson, "**ΣF_y = 0:**")
    assert isinstance(deed, Do)
    do(deed.kind, **deed.data)
    assert do("type", text="DA = 0").accepted
    assert in_words(lesson.state.lines[-1].about) == "ΣFy at joint D"
