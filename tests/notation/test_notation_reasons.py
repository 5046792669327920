"""Is what a sentence says of its signs and its reasons told apart from what it claims?"""

from __future__ import annotations

import pytest
from families import down, plain_problem

from tutor.model import Problem, Support
from tutor.notation import Line, read_line

SHED: Problem = plain_problem(
    [("K", 0, 0), ("L", 3, 0), ("M", 6, 0), ("N", 3, 2)],
    ("KL", "LM", "KN", "MN", "LN"),
    [Support("K", "pin"), Support("M", "roller")],
    [down("N", 8)],
)


def read(text: str) -> Line:
    line = read_line(text, SHED.names)
    assert isinstance(line, Line), line
    return line


@pytest.mark.parametrize(
    "words",
    [
        "(tension positive)",
        "(sign convention: tension positive)",
        "[tension taken as positive]",
        "(tension is positive, compression negative)",
        ", tension +ve",
        "(T +, C -)",
        "(positive = tension)",
        "(Zug positiv)",
    ],
)
def test_the_sense_of_the_signs_is_no_sense_of_the_value(words: str) -> None:
    result = read(f"F_KN = -7.2 kN {words}").result.sides[-1]
    assert (result.letter, result.terms[0].value) == (None, -7.2)


@pytest.mark.parametrize(
    ("words", "letter"),
    [
        ("tension", "T"),
        ("tension (positive)", "T"),
        ("(compression)", "C"),
        ("(compression positive)", "C"),
        ("C (tension positive)", "C"),
    ],
)
def test_a_sense_that_is_said_of_the_value_stays(words: str, letter: str) -> None:
    assert read(f"F_KN = 7.2 kN {words}").result.sides[-1].letter == letter


def test_a_line_may_begin_with_its_signs() -> None:
    line = read("Taking tension as positive: 4 + F_KN sin 33.69 = 0")
    assert {term.name for side in line.result.sides for term in side.terms} == {None, "KN"}


@pytest.mark.parametrize(
    ("text", "joint"),
    [
        ("At the unloaded joint L, KL and LM are in line, so F_LN = 0", "L"),
        ("Zero-force member: no load acts at joint L, so F_LN = 0 by inspection.", "L"),
        ("KL and LM are collinear, hence F_LN = 0", None),
        ("F_LN = 0, since L is unloaded and KL, LM are collinear", None),
    ],
)
def test_of_a_reason_only_its_joint_counts(text: str, joint: str | None) -> None:
    line = read(text)
    assert [side.name for side in line.result.sides] == ["LN", None]
    assert (line.label.point if line.label else None) == joint


def test_what_a_direction_leaves_out_is_no_part_of_the_sum() -> None:
    line = read("Joint K, perpendicular to KN (which eliminates F_KN): 4 cos 33.69 - 0.555 KL = 0")
    assert {term.name for side in line.result.sides for term in side.terms} == {None, "KL"}


def test_a_value_that_is_put_in_is_a_statement_of_its_own() -> None:
    line = read("0.555 F_KN + K_y = 0, with K_y = 4 kN, ⇒ F_KN = -7.2")
    assert [len(step.sides) for step in line.steps] == [2, 2, 2]
    assert line.steps[1].sides[0].name == "K_y"


def test_where_a_section_lies_is_not_which_side_is_kept() -> None:
    line = read("Section just to the right of L, cutting KL and KN, left-hand part: ΣFy: 4 = 0")
    assert line.label is not None
    assert line.label.part is not None
    assert (line.label.part.cut, line.label.part.side) == (("KL", "KN"), "left")


def test_the_components_of_a_force_may_be_told_in_a_sentence() -> None:
    line = read("The components of KN are V = 3 and H = 1.5 × 3 = 4.5, so F_KN = 5.41 (tension)")
    assert [len(step.sides) for step in line.steps] == [2, 3, 2]
    assert line.result.sides[-1].letter == "T"


def test_a_reaction_may_be_resolved_in_front_of_a_sum() -> None:
    line = read("Resolving M into M_y = 4, moments about K give 6 M_y = 24")
    assert [step.label.kind if step.label else None for step in line.steps][-1] == "moment"
