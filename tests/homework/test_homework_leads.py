"""Is a paper read as it is written: values behind their joint, thousands, equal reactions, rows twice?"""

from __future__ import annotations

import pytest

from tutor.drafting import Draft
from tutor.homework import Paper, read_paper, read_table, write_line
from tutor.judge import Fx, Fy
from tutor.model import Problem


def roof(units: str = "lb ft") -> Problem:
    draft = Draft()
    for line in (
        units,
        "A 0 0 B 10 0 C 20 0 D 5 7.5 E 15 7.5",
        "AB BC AD DB BE EC DE",
        "A pin C roller",
        "B 2000 down",
    ):
        assert draft.type(line).taken
    return draft.problem


def noted(line: str, problem: Problem | None = None) -> dict[str, str]:
    written = write_line(problem or roof(), Paper(), line)
    assert not written.refused, written.refused
    return dict(written.paper.values)


@pytest.mark.parametrize(
    "line",
    [
        "Joint A: FAB = 667 lb (T), FAD = 1202 C",
        "joint A: FAB = 667 lb (T); F_AD = 1202 C",
        "Node A: AB 667 T, AD 1202 C",
        "At A: AB = 667 T and AD = 1202 C",
        "at joint A: AB = 667 T AD = 1202 C",
        "Members: AB = 667 T, AD = 1202 C",
        "Results: AB = 667 T, AD = 1202 C",
    ],
)
def test_values_behind_the_place_they_were_found_at_are_values(line: str) -> None:
    values = noted(line)
    assert set(values) == {"AB", "AD"}
    assert values["AB"].startswith("667")
    assert values["AD"] == "1202 C"


def test_a_place_before_values_is_the_place_of_the_lines_that_follow() -> None:
    work = "Joint A: AB = 667 T\nΣFx: A_x + AB + 0.55 AD = 0\nReactions: A_y = 1000\n"
    written = read_paper(roof(), work + "joint B\nΣFy: 0.83 DB + 0.83 BE - 2000 = 0\n")
    assert not written.refused
    assert [about for about, _ in written.paper.lines] == [Fx("A"), Fy("B")]
    assert written.numbers == (2, 5)


def test_reactions_are_of_the_whole_truss_and_members_of_the_place_one_is_at() -> None:
    work = "Joint A: AB = 667 T\nMembers: AD = 1202 C\nΣFx: A_x + AB + 0.55 AD = 0\n"
    written = read_paper(roof(), work + "Reactions: A_y = 1000\nΣFx: A_x = 0\n")
    assert not written.refused
    assert [about for about, _ in written.paper.lines] == [Fx("A"), Fx()]


def test_an_equation_behind_a_place_is_still_a_line() -> None:
    written = write_line(roof(), Paper(), "Joint A: ΣFy: A_y + 0.832 AD = 0")
    assert [about for about, _ in written.paper.lines] == [Fy("A")]


def test_a_place_that_is_not_there_is_told_and_nothing_is_noted() -> None:
    written = write_line(roof(), Paper(), "Joint Q: AB = 3 T")
    assert "There is no joint Q; the joints are A, B" in written.refused[0].message
    assert written.paper == Paper()


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("Joint A: QQ = 3 T, AB = 4 T", "QQ"),
        ("Members: B = 3 T, AB = 4 T", "B"),
        ("Results: A = 1000, AB = 4 T", "A"),
    ],
)
def test_of_several_values_those_that_can_be_read_are_noted(line: str, name: str) -> None:
    written = write_line(roof(), Paper(), line)
    assert dict(written.paper.values) == {"AB": "4 T"}
    assert f"no member or reaction {name}" in written.refused[0].message


@pytest.mark.parametrize(
    ("line", "value"),
    [
        ("AB = 2 500 lb T", "2500 lb T"),
        ("AB 12 500", "12500"),
        ("AB = 2,500 lb (T)", "2500 lb (T)"),
        ("AB = 1,202,500 T", "1202500 T"),
        ("AB = 12'500 T", "12500 T"),
        ("AB, 2,500, T", "2500 T"),
        ("AB\t2,500\tT", "2500 T"),
        ("AB = 2.500 T", "2.500 T"),
        ("AB = 0.667 T", "0.667 T"),
        ("AB = 2,5 T", "2,5 T"),
    ],
)
def test_thousands_are_joined_where_they_can_be_nothing_else(line: str, value: str) -> None:
    assert noted(line) == {"AB": value}


def test_a_comma_that_may_be_either_is_asked_about_where_units_do_not_tell() -> None:
    written = write_line(roof("kN m"), Paper(), "AB = 2,500 T")
    assert "2500 or 2.500" in written.refused[0].message
    assert noted("AB = 2 500 T", roof("kN m")) == {"AB": "2500 T"}
    told = read_paper(roof("kN m"), "A_y = 1000.5\nAB = 2,500 T\n")
    assert dict(told.paper.values) == {"A_y": "1000.5", "AB": "2500 T"}
    assert read_table(roof(), "AB\t2,500\nAD\t1 202 C").work["forces"] == {
        "AB": "2500",
        "AD": "1202 C",
    }


@pytest.mark.parametrize("line", ["A_y = C_y = 1000", "A_y=C_y=1000 lb"])
def test_two_forces_said_to_be_equal_both_have_the_value(line: str) -> None:
    values = noted(line)
    assert set(values) == {"A_y", "C_y"}
    assert values["A_y"] == values["C_y"]
    assert values["A_y"].startswith("1000")


def test_a_value_that_a_later_row_changes_is_told_with_its_line() -> None:
    written = read_paper(roof(), "AB = 667 T\nAD = 1202 C\nAB = 766 T\nAD = 1202 C\n")
    assert [each.text for each in written.twice] == [
        "line 3: AB = 766 T, in the place of 667 T above"
    ]
    assert dict(written.paper.values) == {"AB": "766 T", "AD": "1202 C"}


def test_a_sum_that_is_written_like_a_value_is_never_taken_for_one() -> None:
    for line in ("ΣFy = A_y + 0.832 AD = 0", "ΣFx = AB = 0"):
        assert not write_line(roof(), Paper(), line).paper.values


def test_a_line_that_is_two_sums_of_its_joint_alike_but_for_a_slip_is_asked_for_its_heading() -> (
    None
):
    draft = Draft()
    for line in ("A 0 0 B 4 0 C 2 2", "AB BC CA", "A pin B roller", "C 6 down", "C 6 right"):
        assert draft.type(line).taken
    written = read_paper(draft.problem, "joint C\n-.7071 F_CA + .7071 F_CB - 6 = 0\n")
    assert not written.paper.lines
    (refused,) = written.refused
    assert "Say which equation this is" in refused.message
