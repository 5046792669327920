"""Is a page pasted from a document read as what stands on it, and nothing that only marks it?

The truss and its page are our own. That pages come with bullets, numbers of lines, markup and LaTeX
is common practice, no source.
"""

from __future__ import annotations

import pytest
from families import SEED_HOUSE

from tutor.handed_in import reviewed
from tutor.homework import read_paper, review
from tutor.homework.broken_lines import goes_on, mended
from tutor.homework.findings import Finding, Review
from tutor.homework.words import summary
from tutor.judge import Equation, Fx, Fy, M, judge, judge_of


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("BF = -5 kN (C)   (2)", {"BF": "-5 kN (C)"}),
        ("BF = -5 (C)\t[5]", {"BF": "-5 (C)"}),
        (r"F_{BF} &= -5~\text{kN (C)} \tag{5}", {"BF": "-5 kN (C)"}),
        ("BF = -5 kN ...(5)", {"BF": "-5 kN"}),
        ("BF = -5 kN  Eq. 5", {"BF": "-5 kN"}),
        ("(5) BF = 5 kN (C)", {"BF": "5 kN (C)"}),
        ("1. AB = 15.83 kN (C)", {"AB": "15.83 kN (C)"}),
        ("* BC = 10.83 C", {"BC": "10.83 C"}),
        ("• CD = 10.83 C", {"CD": "10.83 C"}),
        (r"\item $F_{AB} = 15.83$ kN (C)", {"AB": "15.83 kN (C)"}),
        ("<li>F<sub>BF</sub> = 5 kN (C)</li>", {"BF": "5 kN (C)"}),
        ("“BF = 5 kN (C)”", {"BF": "5 kN (C)"}),
        ("- **A<sub>y</sub>** = 9.5 kN ↑\n- BF = 5 C", {"A_y": "9.5 kN ↑", "BF": "5 C"}),
        ("$A_x = 0$ kN, $E_y = 8.5$ kN", {"A_x": "0 kN", "E_y": "8.5 kN"}),
        (r"$$F_{CD} = -10.83\text{ kN}$$", {"CD": "-10.83 kN"}),
        ("∴ AB = 15.83 C", {"AB": "15.83 C"}),
        ("so AB = 15.83 C", {"AB": "15.83 C"}),
        ("AB\t=-9.5/.6\t-15.83\tC", {"AB": "-15.83 C"}),
        ("AB\t=-9.5/.6", {"AB": "-9.5/.6"}),
        ("| member | force | |\n|---|---|---|\n| BF | 5 | C |", {"BF": "5 C"}),
        ("<tr><td>BF</td> <td>5</td><td>C</td></tr>", {"BF": "5 C"}),
        ("<table>\n<tr><td>AB</td><td>15.83</td><td>C</td></tr>\n</table>", {"AB": "15.83 C"}),
        ("\\begin{aligned}\nBF = -5\n\\end{aligned}", {"BF": "-5"}),
        ("ΣFy = 0: Ay + 8.5 – 18 = 0, Ay = 9.5 kN ↑  (3)", {"A_y": "9.5 kN ↑"}),
        ("ΣFx = 0: Ax = 0 kN (2)", {"A_x": "0 kN"}),
    ],
)
def test_a_value_is_what_stands_there_without_its_marks(text: str, values: dict[str, str]) -> None:
    written = read_paper(SEED_HOUSE, text)
    assert not written.refused
    assert dict(written.paper.values) == values
    states = review(SEED_HOUSE, written.paper.work(SEED_HOUSE)).findings
    assert {finding.state for finding in states} <= {"right", "unchecked"}


@pytest.mark.parametrize(
    ("row", "value"),
    [
        ("| B | ΣFy | -BF - 5 = 0 | BF = -5 kN |", "-5 kN"),
        ("| B | ΣFy | -BF - 5 = 0 | BF = 5 kN | C |", "5 kN C"),
        ("B\tΣFy\t-BF - 5 = 0\tBF = 5 kN\tC", "5 kN C"),
    ],
)
def test_a_row_with_an_equation_and_its_result_gives_both(row: str, value: str) -> None:
    paper = read_paper(SEED_HOUSE, row).paper
    assert paper.values == {"BF": value}
    assert [about for about, _ in paper.lines] == [Fy("B")]


@pytest.mark.parametrize("text", ["BF = -2.5 kN (C)   (2)", "BF = -10/4 [2]"])
def test_the_number_of_a_line_never_makes_a_value_right(text: str) -> None:
    paper = read_paper(SEED_HOUSE, text).paper
    (finding,) = review(SEED_HOUSE, paper.work(SEED_HOUSE)).findings
    assert finding.state == "wrong"


def test_a_single_dash_before_a_name_is_asked_about() -> None:
    written = read_paper(SEED_HOUSE, "- A_y = 9.5 kN")
    assert not written.paper.values
    assert not written.paper.lines
    assert "Is the dash a minus?" in written.refused[0].message
    (unknown,) = read_paper(SEED_HOUSE, "- QQ = 9.5 kN").refused
    assert "the dash" not in unknown.message


@pytest.mark.parametrize(
    "title",
    [
        *("### Joint C", "\\section*{Joint C}", "\\subsection*{Joint $C$}", "\\paragraph{Joint C}"),
        *("“Joint C”", "FBD of joint C", "Free-body diagram of joint C", "> Joint C"),
        *("2) Joint C", "2. Joint C", "<h3>Joint C</h3>", "**Joint C**", "Step 2: Joint C"),
    ],
)
def test_a_title_sets_the_joint_of_the_lines_below(title: str) -> None:
    written = read_paper(SEED_HOUSE, f"{title}\n-8 - CF + 10.83*0.6 + 10.83*0.6 = 0")
    assert not written.refused
    assert [about for about, _ in written.paper.lines] == [Fy("C")]


def test_a_remark_is_still_none() -> None:
    written = read_paper(SEED_HOUSE, "# my homework\nAB = 15.83 C # from joint A")
    assert not written.refused
    assert written.paper.place is None
    assert dict(written.paper.values) == {"AB": "15.83 C"}


@pytest.mark.parametrize(
    ("about", "text"),
    [(Fy("E"), "8.5 + 3/5 F_DE = 0, F_DE = -14.2"), (Fy("A"), "9.5 + 3/5 F_AB = 0")],
)
def test_a_sum_with_a_value_put_in_is_not_taken_for_a_multiple_of_the_other(
    about: Equation, text: str
) -> None:
    """Where the reaction is left blank, the sum across is a multiple of it, with the values found."""
    known = {"FE": "11.33", "AF": "12.67", "A_x": "0"}
    assert judge(SEED_HOUSE, about, text, known=known).right


def test_a_sum_of_moments_is_never_taken_for_a_sum_of_forces_times_an_arm() -> None:
    """8 E_y = 6(2) + 8(2) + 4(6) gives 6.5, and 0.6 DE = -6.5: true of joint E times 8, by its own slip."""
    page = "ΣM_A = 0: 8 E_y - 6(2) - 8(2) - 4(6) = 0, E_y = 6.5\njoint E\n6.5 + 3/5 DE = 0, DE = -10.83"
    paper = read_paper(SEED_HOUSE, page).paper
    result = review(SEED_HOUSE, paper.work(SEED_HOUSE))
    assert result.places == ("whole",)
    assert result.accounts[0].mistake.code.startswith("arm")
    assert {f.name: f.state for f in result.findings if f.name in ("E_y", "DE")} == {
        "E_y": "wrong",
        "DE": "follows",
    }


HEAD = (
    *("Homework 3", "HW #3", "Page 1 of 2", "Name: Maya Lind", "Date: 12 March 2026", "2026-03-12"),
    *("12/3/2026", "Problem 4.7", "Problem 4-7: Seed house, method of joints", "ME 211 Statics"),
    *("Homework 3, due 12 March 2026", "Solution:", "Given", "Member forces", "Student ID: 10417"),
    *("1 of 2", "Statics", "Assignment 2 (Statics)", "Submitted by: M. Lind", "Results"),
)


@pytest.mark.parametrize("head", HEAD)
def test_the_head_of_a_page_is_told_as_no_work_and_is_no_error(head: str) -> None:
    written = read_paper(SEED_HOUSE, f"{head}\nBF = 5 C")
    assert not written.refused
    assert not written.paper.lines
    assert dict(written.paper.values) == {"BF": "5 C"}
    assert written.aside == (f"line 1 ({head.partition(' #')[0][:40]})",)


@pytest.mark.parametrize(
    "line",
    [
        *("Problem 3: AB 15.83 C", "Name: AB = 15.83 C", "Page 1: BF = 5 C", "Results: BF 5 C"),
        *("Homework 3 BF", "Given: E_y 8.5", "Date: BF 12", "Solution: CF is zero", "3/2"),
        *("Problem 3: 9.5 + 0.6 F_AB = 0", "Results 5 C", "QQ 3", "Page 1 of 2: BF = 5 C"),
    ],
)
def test_a_line_that_may_hold_work_is_never_passed_over(line: str) -> None:
    written = read_paper(SEED_HOUSE, f"Ax = 0\n{line}")
    assert not written.aside
    assert written.refused or len(written.paper.values) > 1 or written.paper.lines


def test_a_page_with_nothing_but_its_head_besides_right_work_is_right() -> None:
    page = "\n".join(
        (*HEAD[:5], "Joint B", "BF = 5 C", "Reactions", "8 E_y - 6(2) - 8(4) - 4(6) = 0")
    )
    result, told, beside = reviewed(SEED_HOUSE, page, "page.txt")
    assert result.right
    assert not result.refused
    assert [said for said in told if "not read as work" in said] == [*told]
    assert "line 5 (Date: 12 March 2026)" in beside.aside[0]
    assert beside.lines == [M("A")]


BROKEN = [
    ("ΣFy = 0: 9.5 + F\nAB (3/5) = 0", "ΣFy = 0: 9.5 + F AB (3/5) = 0"),
    ("ΣFy = 0: 9.5 + 0.6\n× F_AB = 0", "ΣFy = 0: 9.5 + 0.6 × F_AB = 0"),
    ("ΣFy = 0: 9.5 +\n0.6 F_AB = 0", "ΣFy = 0: 9.5 + 0.6 F_AB = 0"),
    ("ΣFy = 0: 9.5\n+ 0.6 F_AB = 0", "ΣFy = 0: 9.5 + 0.6 F_AB = 0"),
    ("**ΣF_y = 0:**\n9.5 + 0.6 F_AB = 0", "ΣF_y = 0: 9.5 + 0.6 F_AB = 0"),
    ("ΣFy = 0: 9.5\n- 0 + 0.6 F_AB = 0", "ΣFy = 0: 9.5 - 0 + 0.6 F_AB = 0"),
    ("ΣFy = 0: 9.5 + 0.6\nF_AB = 0", "ΣFy = 0: 9.5 + 0.6 F_AB = 0"),
    ("ΣFy: 2*4.75\n- F_AB*0.6 = 0", "ΣFy: 2*4.75 - F_AB*0.6 = 0"),
    ("ΣFy = 0: 9.5 + 3/5\nF_AB = 0", "ΣFy = 0: 9.5 + 3/5 F_AB = 0"),
    ("\\sum F_y &= 0 \\\\\n9.5 + 0.6 F_{AB} &= 0", "ΣF_y  = 0: 9.5 + 0.6 F_{AB} &= 0"),
]


@pytest.mark.parametrize(("text", "line"), BROKEN)
def test_a_line_that_a_page_broke_is_one_line(text: str, line: str) -> None:
    written = read_paper(SEED_HOUSE, f"Joint A\n{text}\nAB = -15.83")
    assert not written.refused
    ((about, kept),) = written.paper.lines
    assert about == Fy("A")
    assert kept.removeprefix("**ΣF_y = 0:** ") == line


@pytest.mark.parametrize("text", [text for text, _ in BROKEN])
def test_what_stands_above_and_below_a_broken_line_keeps_its_number(text: str) -> None:
    above, below = ["A_x = 0", "A_y = 9.5"], ["BF = 5 C", "CF = 5 T"]
    page = [*above, *text.split("\n"), *below]
    whole = mended(judge_of(SEED_HOUSE), page)
    assert (len(whole), whole[:2], whole[-2:]) == (len(page), above, below)


@pytest.mark.parametrize(
    "text",
    [
        "AB = 15.83 C\n- BF = 5 C",
        "-\nAB = 15.83",
        "ΣFy = 0: 9.5 + 0.6 AB = 0\n= 0",
        "**Joint A**\n9.5 + 0.6 AB = 0",
        "ΣFx = 0:\nΣFy = 0: 9.5 + 0.6 AB = 0",
        "ΣFy = 0: 9.5 + 0.6 AB\nBF = 0",
        "ΣFy = 0: 9.5 + 0.6 AB = 0\n- 9.5 = 0.6 AB",
        "ΣFy = 0: 9.5 + 0.6(-15.83)\n- BF = 0",
    ],
)
def test_lines_that_can_be_read_alone_stay_alone(text: str) -> None:
    assert mended(judge_of(SEED_HOUSE), text.split("\n")) == text.split("\n")


def test_a_sentence_with_a_hyphen_at_the_end_of_its_line_heads_the_joint() -> None:
    text = "Joint A.  Equilibrium of the joint re-\nquires\nΣFy = 0: 9.5 + 0.6 AB = 0"
    written = read_paper(SEED_HOUSE, text)
    assert not written.refused
    assert [about for about, _ in written.paper.lines] == [Fy("A")]
    assert written.numbers == (3,)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("F AB = – 15.83 kN", "- 15.83 kN"),
        ("F AB = 15.83 kN (C)", "15.83 kN (C)"),
        ("F AB = – 15.83 kN = 15.83 kN (C)", "- 15.83 kN = 15.83 kN (C)"),
    ],
)
@pytest.mark.parametrize("above", ["Joint A\n", ""])
def test_a_force_with_its_joints_set_apart_gets_its_value(
    above: str, text: str, value: str
) -> None:
    written = read_paper(SEED_HOUSE, above + text)
    assert not written.refused
    assert dict(written.paper.values) == {"AB": value}
    assert not written.paper.lines


@pytest.mark.parametrize(
    "text",
    [
        *(
            "ME 105 – Homework 3          Page 4",
            "Mechanics, 3rd ed.   © 2019",
            "© 2019 the authors",
        ),
        *("Name: P. Adeyemi", "CE 20 Statics", "Bar\tForce (kN)\tNature", "| **Sum** | | |"),
        *("print(F_AB, F_BC)", "import numpy as np"),
    ],
)
def test_the_head_and_the_foot_of_a_page_are_no_work_and_no_fault(text: str) -> None:
    written = read_paper(SEED_HOUSE, f"AB = 15.83 C\n{text}\nBC = 10.83 C")
    assert not written.refused
    assert len(written.aside) == 1
    assert dict(written.paper.values) == {"AB": "15.83 C", "BC": "10.83 C"}


@pytest.mark.parametrize(
    ("text", "place"),
    [("F_AB = 15/si(30)", 11), ("AB = 12 kg", 9), ("  F_AB  =  15 %", 15)],
)
def test_columns_are_counted_from_the_start_of_the_line(text: str, place: int) -> None:
    (refused,) = read_paper(SEED_HOUSE, text).refused
    assert f"At column {place}, " in refused.message


def test_of_values_in_one_line_each_that_cannot_be_taken_is_told_for_itself() -> None:
    kilograms, nobody = read_paper(SEED_HOUSE, "AB = 12 kg, QQ = 5").refused
    assert "At column 9, " in kilograms.message
    assert nobody.message.startswith("This truss has no member or reaction QQ")


def test_what_cannot_be_decided_is_called_by_its_line_as_typed() -> None:
    findings = (Finding("AB", "right"), Finding(0, "unchecked"), Finding(1, "unchecked"))
    result = Review(findings, None)
    assert "line 1, line 2 cannot be decided" in summary(result)
    assert "line 3, line 5 cannot be decided" in summary(result, (3, 5))


@pytest.mark.parametrize(
    ("one", "other", "whole"),
    [
        ("ΣFy = 0: 9.5 + F", "AB (3/5) = 0", "ΣFy = 0: 9.5 + F AB (3/5) = 0"),
        ("ΣFy = 0: 9.5", "+ 0.6 F_AB = 0", "ΣFy = 0: 9.5 + 0.6 F_AB = 0"),
        ("9.5 + 0.6 ×", "F_AB = 0", None),
        ("9.5 = -", "0.6 F_AB", "9.5 = - 0.6 F_AB"),
        ("9.5 +", "9.5 + 0.6 F_AB = 0", None),
        ("9.5 + 0.6 F_AB = 0", "AB = 15.83 C", None),
        ("", "AB = 15.83 C", None),
    ],
)
def test_of_lines_typed_one_by_one_only_what_must_go_on_does(
    one: str, other: str, whole: str | None
) -> None:
    assert goes_on(judge_of(SEED_HOUSE), one, other) == whole


def test_every_value_behind_an_equation_is_taken_and_not_the_last_alone() -> None:
    written = read_paper(
        SEED_HOUSE, "ΣFy at A: 9.5 + 0.6 AB = 0 → AB = -15.83 kN, BF = 5 (C); BC = 0"
    )
    assert not written.refused
    assert dict(written.paper.values) == {"AB": "-15.83 kN", "BF": "5 (C)", "BC": "0"}


@pytest.mark.parametrize(
    "head",
    [
        "Member   Force (kN)   T/C",
        "Member Force (kN) T/C",
        "Force Value Sense",
        "Bar Force",
        "| Member | kN | T/C |",
    ],
)
def test_a_table_with_its_columns_parted_by_spaces_is_read_and_its_head_is_no_work(
    head: str,
) -> None:
    written = read_paper(SEED_HOUSE, f"{head}\nAB       15.83        C\nBF 5 C")
    assert not written.refused
    assert dict(written.paper.values) == {"AB": "15.83 C", "BF": "5 C"}
    assert len(written.aside) == 1


@pytest.mark.parametrize(("heading", "first", "second"), [("ΣFx", Fx, Fy), ("ΣFy", Fy, Fx)])
def test_of_two_equations_in_one_line_the_heading_is_that_of_the_first(
    heading: str, first: type[Equation], second: type[Equation]
) -> None:
    sums = {Fx: "A_x + AF + 0.8 AB = 0", Fy: "A_y + 0.6 AB = 0"}
    text = f"joint A\n{heading}: {sums[first]}; {sums[second]}"
    lines = read_paper(SEED_HOUSE, text).paper.lines
    assert [about for about, _ in lines] == [first("A"), second("A")]
