"""Does a heading that speaks of a part cut the truss, and is its line judged by that part?

Worked by hand: three panels of 4 across, 3 up, on a pin at A and a roller at D. The wordings are our own.
"""

from __future__ import annotations

import pytest
from families import down, plain_problem
from walks import Clock, walk_to

from tutor.judge.headings import headed
from tutor.judge.parts import part_named
from tutor.lesson import Lesson
from tutor.model import Problem, Support
from tutor.notation import read_line
from tutor.notation.elements.label import PartSaid, Side

BEAM: Problem = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 12, 0), ("E", 4, 3), ("F", 8, 3)],
    ("AB", "BC", "CD", "EF", "AE", "BE", "BF", "CF", "DF"),
    [Support("A", "pin"), Support("D", "roller")],
    [down("B", 12), down("C", 6)],
)
"""A_y = 10, D_y = 8; the section through BC, BF and EF leaves A, B, E to the left."""
CUT = "BC, BF and EF"
LINE = "3 F_BC - 10*8 + 12*4 = 0"
RIGHT_LINE = "8*4 - 3 F_BC = 0"


def at_the_joints() -> tuple[Lesson, Clock]:
    return walk_to("joints", BEAM)


@pytest.mark.parametrize(
    "heading",
    [
        f"Section through {CUT}, left-hand part, moments about F: ",
        f"Taking moments about F for the part left of a cut through {CUT}: ",
        f"Section through {CUT}, left part, ΣM_F = 0 (ccw +): ",
        f"ΣM_F = 0 for the part to the left of section 1–1 (cutting {CUT}): ",
        f"Method of sections: ΣM_F on the left portion of a cut through {CUT}: ",
        f"Cutting {CUT} and taking moments about F for the left part: ",
    ],
)
def test_a_heading_cuts_the_truss_and_its_line_is_of_that_part(heading: str) -> None:
    lesson, do = at_the_joints()
    assert do("type", text=f"{heading}{LINE}").accepted
    assert set(lesson.state.part) == {"A", "B", "E"}
    wrong, do = at_the_joints()
    reply = do("type", text=f"{heading}3 F_BC + 10*8 + 12*4 = 0")
    assert not reply.accepted
    assert "turns the other way" in reply.text
    assert set(wrong.state.part) == {"A", "B", "E"}


def test_a_side_alone_is_that_of_the_section_that_stands_open() -> None:
    lesson, do = at_the_joints()
    assert "name the members that are cut" in do("type", text=f"Left part, ΣM_F = 0: {LINE}").text
    do("section", members=["BC", "BF", "EF"], keep="A")
    assert do("type", text=f"Left part, ΣM_F = 0: {LINE}").accepted
    assert do("type", text=f"Right part, ΣM_F = 0: {RIGHT_LINE}").accepted
    assert set(lesson.state.part) == {"C", "D", "F"}


@pytest.mark.parametrize(
    ("heading", "said"),
    [
        ("Section through BC and EF, left part, ΣM_F: ", "still in one piece"),
        (f"Section through {CUT}, upper part, ΣM_F: ", "which of the two parts you keep"),
        (f"Section through {CUT}, ΣM_F: ", "which of the two parts you keep"),
    ],
)
def test_a_part_that_is_not_clear_is_asked_for(heading: str, said: str) -> None:
    _, do = at_the_joints()
    assert said in do("type", text=f"{heading}{LINE}").text


@pytest.mark.parametrize(("side", "joint"), [("left", "A"), ("right", "D"), ("lower", "D")])
def test_a_side_is_the_part_whose_joints_lie_there(side: Side, joint: str) -> None:
    cut = ("CD", "DF") if side == "lower" else ("BC", "BF", "EF")
    assert joint in (part_named(BEAM, PartSaid(cut, side)) or ())


def test_without_a_lesson_the_part_is_that_of_the_heading() -> None:
    line = read_line(f"Section through {CUT}, left part, ΣM_F: {LINE}", BEAM.names)
    about = headed(BEAM, line, None)
    assert about is not None
    assert set(about.part) == {"A", "B", "E"}
    assert headed(BEAM, read_line(f"Left part, ΣM_F: {LINE}", BEAM.names), None) is None
