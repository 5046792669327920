"""What stands between the statements of a line, and between a heading and its formula, is read as what it is."""

from __future__ import annotations

from itertools import product
from pathlib import Path

import pytest

from tutor import M, judge, load_problem
from tutor.notation import Line, read_line

QUAY = load_problem(Path(__file__).parent / "hands" / "quay.toml")
NAMES = QUAY.names


def read(text: str) -> Line:
    line = read_line(text, NAMES)
    assert isinstance(line, Line), line.text
    return line


def says(text: str) -> list[list[dict[str | None, float]]]:
    """What each statement of a line says: the terms of each of its sides."""
    return [
        [{term.name: term.value for term in side.terms} for side in step.sides]
        for step in read(text).steps
    ]


UNITS = ["kNm", "kN m", "kN·m", "Nm", ""]
GAPS = ["  ", "   ", "        ", "\t"]


@pytest.mark.parametrize(("unit", "gap"), product(UNITS, GAPS))
def test_a_name_behind_a_wide_gap_begins_a_statement(unit: str, gap: str) -> None:
    said = says(f"8 C_y = 96 + 72 = 168 {unit}; C_y = 168/8 = 21")
    assert says(f"8 C_y = 96 + 72 = 168 {unit}{gap}C_y = 168/8 = 21") == said
    assert len(said) == 2


@pytest.mark.parametrize("unit", ["kNm", "kN m", "kN"])
def test_so_does_the_name_of_the_same_force_behind_a_unit_and_a_blank(unit: str) -> None:
    left = "C_y" if unit == "kN" else "8 C_y"
    assert len(says(f"{left} = 168 {unit} C_y = 21")) == 2


def test_so_does_a_number_and_a_name_behind_a_wide_gap() -> None:
    assert says("8C_y - 168 = 0   8C_y = 168   C_y = 21") == says(
        "8C_y - 168 = 0; 8C_y = 168; C_y = 21"
    )


@pytest.mark.parametrize("line", ["ΣM_A = 8  C_y - 168 = 0", "168 = 8  C_y", "0 = 8  C_y - 168"])
def test_a_number_and_a_name_that_stand_apart_are_still_a_product(line: str) -> None:
    assert judge(QUAY, M("A"), line).right
    assert not judge(QUAY, M("A"), line.replace("168", "144")).right


@pytest.mark.parametrize(
    ("line", "codes"),
    [
        ("8C_y = 168 kNm   C_y = 12 kN", {"arithmetic", "digits-exchanged"}),
        ("8C_y = 144 kNm   C_y = 18 kN", {"missing"}),
        ("8C_y = 168 kNm   C_y = 21 kN", set()),
    ],
)
def test_a_value_behind_a_gap_is_judged_and_so_is_what_stands_before_it(
    line: str, codes: set[str]
) -> None:
    verdict = judge(QUAY, M("A"), line)
    assert verdict.right is not bool(codes)
    assert {mistake.code for mistake in verdict.mistakes} <= codes


SUMS = ["Moments about A", "ΣM_A", "Vertical forces at B", "ΣFx"]
CLAUSES = [
    ", the gust being square to the rafter",
    ". The gust is square to the rafter so its arm is just the length AB = 4 m",
    ", with the gust normal to AB",
    ", the horizontal crane force passes through it",
    "; the gust acts along AB",
]


@pytest.mark.parametrize(("heading", "clause"), product(SUMS[:2], CLAUSES))
def test_a_clause_that_speaks_of_a_force_changes_no_sum_of_moments(
    heading: str, clause: str
) -> None:
    alone, with_clause = (read(f"{heading}{said}: 8C_y = 168").label for said in ("", clause))
    assert alone is not None
    assert with_clause is not None
    assert (with_clause.kind, with_clause.point) == (alone.kind, alone.point) == ("moment", "A")


@pytest.mark.parametrize(("heading", "clause"), product(SUMS[2:], CLAUSES[:3:2]))
def test_nor_a_sum_of_forces(heading: str, clause: str) -> None:
    alone, with_clause = (read(f"{heading}{said}: A_x + 8 = 0").label for said in ("", clause))
    assert alone is not None
    assert with_clause is not None
    assert (with_clause.kind, with_clause.point) == (alone.kind, alone.point)


@pytest.mark.parametrize(
    ("heading", "kind", "point"),
    [
        ("Joint B, vertical forces", "y", "B"),
        ("Vertical forces, joint B", "y", "B"),
        ("Left part, moments about B", "moment", "B"),
        ("ΣFx at B, then ΣFy", "y", "B"),
        ("Joint B, forces along AB", "along", "B"),
    ],
)
def test_clauses_that_name_one_sum_together_are_one_heading(
    heading: str, kind: str, point: str
) -> None:
    label = read(f"{heading}: F_BD + 12 = 0").label
    assert label is not None
    assert (label.kind, label.point) == (kind, point)


@pytest.mark.parametrize("sign", ["⇔", "⟺", "<=>", "<==>", "\\iff"])
def test_a_sign_of_equivalence_parts_statements_as_one_of_consequence(sign: str) -> None:
    assert says(f"8C_y - 168 = 0 {sign} C_y = 21") == says("8C_y - 168 = 0 ⇒ C_y = 21")


@pytest.mark.parametrize("heading", ["Fx (D)", "ΣFx (D)", "Fx(D)", "x (D)", "F_x [D]"])
@pytest.mark.parametrize("gap", [" ", "  ", " = ", ": "])
def test_an_axis_with_a_joint_in_brackets_is_a_heading(heading: str, gap: str) -> None:
    label = read(f"{heading}{gap}-0.8*F_AD +0.8*F_CD = 0").label
    assert label is not None
    assert (label.kind, label.point) == ("x", "D")


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("A_y + C_y = 20 + 3,464 = 23,464 kN", "A_y + C_y = 20 + 3.464 = 23.464 kN"),
        ("8 C_y = 1200*120 + 24,000 = 168,000", "8 C_y = 1200*120 + 24000 = 168000"),
        (
            "8 C_y = 144 + 4*3,464 = 157,856 kNm, C_y = 157,856/8 = 19,732 kN",
            "8 C_y = 144 + 4*3.464 = 157.856 kNm, C_y = 157.856/8 = 19.732 kN",
        ),
    ],
)
def test_a_comma_is_meant_as_it_lets_a_sum_add_up(typed: str, meant: str) -> None:
    assert says(typed) == says(meant)
    assert read(typed).text == typed


@pytest.mark.parametrize(
    "text",
    [
        "A_y + C_y = 20 + 3,464 = 24,464 kN",
        "A_y + C_y = 3,464",
        "8 C_y = 144,000 + 24,000 = 168,000",
        "A_y + C_y = 12 + 24 = 36, A_y = 3,464",
    ],
)
def test_a_comma_is_asked_about_where_both_readings_add_up_or_neither(text: str) -> None:
    line = read_line(text, NAMES)
    assert not isinstance(line, Line)
    assert line.code == "comma"


def test_long_talk_cut_out_of_a_line_leaves_no_gap_that_takes_long() -> None:
    text = ("AB = 5 kN " + "part-think-" * 50)[:480] + ": AB = 5"
    assert read_line(text, NAMES) is not None
