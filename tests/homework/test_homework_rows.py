"""Is what is typed into a row of the paper taken as what it is: a value, several, or a line of work?"""

from __future__ import annotations

import pytest
from test_homework_by_chance import GABLE

from tutor import Fx, Fy, M, review
from tutor.homework.paper import Paper
from tutor.homework.typed import Written, write_line, write_row
from tutor.judge import Equation


def paper(*lines: str) -> Paper:
    """The paper after these lines, none of them refused."""
    written = Paper()
    for line in lines:
        after = write_line(GABLE, written, line)
        assert not after.refused, (line, after.refused)
        written = after.paper
    return written


AT_A = ("A_y = 9.5", "θ = 36.87", "Joint A")
AT_B = (*AT_A, "AB = -15.83", "Joint B")


def added(written: Written, before: Paper) -> dict[str, str]:
    """The values that are new on the paper."""
    return {n: v for n, v in written.paper.values.items() if before.values.get(n) != v}


@pytest.mark.parametrize(
    ("lines", "row", "text", "about", "values"),
    [
        (AT_A, "A_x", "9.5 + AB sin θ = 0", Fy("A"), {}),
        (AT_B, "A_x", "15.83 sin θ + BC sin θ - BF sin θ - 6 = 0", Fy("B"), {}),
        (AT_B, "A_y", "15.83 sin θ + BC sin θ - BF sin θ - 6 = 0", Fy("B"), {}),
        ((), "A_x", "8 E_y = 68", M("A"), {}),
        (AT_A, "AF", "-AB cos θ = 12.67", Fx("A"), {"AF": "12.67"}),
        (AT_A, "AB", "-A_y/sin θ = -15.83", Fy("A"), {"AB": "-15.83"}),
    ],
)
def test_a_line_of_work_typed_into_a_row_is_a_line_and_not_its_value(
    lines: tuple[str, ...], row: str, text: str, about: Equation, values: dict[str, str]
) -> None:
    before = paper(*lines)
    written = write_row(GABLE, before, row, text)
    assert not written.refused
    assert [about for about, _ in written.paper.lines] == [about]
    assert added(written, before) == values
    assert review(GABLE, written.paper.work(GABLE)).right


@pytest.mark.parametrize(
    ("row", "text", "values"),
    [
        ("A_x", "0, A_y = 9.5, E_y = 8.5", {"A_x": "0", "A_y": "9.5", "E_y": "8.5"}),
        ("A_x", "0 and A_y = 9.5", {"A_x": "0", "A_y": "9.5"}),
        ("A_x", "0, BF = 0", {"A_x": "0", "BF": "0"}),
        ("E_y", "68/8 = 8.5", {"E_y": "68/8 = 8.5"}),
        ("A_y", "18 - 8.5 = 9.5", {"A_y": "18 - 8.5 = 9.5"}),
    ],
)
def test_values_typed_into_a_row_stay_values(row: str, text: str, values: dict[str, str]) -> None:
    written = write_row(GABLE, Paper(), row, text)
    assert not written.refused
    assert not written.paper.lines
    assert written.paper.values == values


@pytest.mark.parametrize(
    "text",
    ["-9.5/sin θ = -15.83", "-9.5/sin θ", "9.5/sin(θ) = 15.83 C", "-9.5/sin(36.87) = -15.83"],
)
@pytest.mark.parametrize("row", [True, False])
def test_a_value_is_worked_out_with_the_angle_said_before(text: str, row: bool) -> None:
    before = paper(*AT_A)
    typed = (
        write_row(GABLE, before, "AB", text) if row else write_line(GABLE, before, f"AB = {text}")
    )
    assert not typed.refused
    assert added(typed, before) == {"AB": text}
    assert review(GABLE, typed.paper.work(GABLE)).right


def test_an_angle_of_which_nothing_was_said_is_told() -> None:
    (refused,) = write_line(GABLE, Paper(), "AB = -9.5/sin θ = -15.83").refused
    assert "“θ” stands for an angle whose size is not known here" in refused.message


def test_a_value_behind_an_equation_that_begins_with_its_name_is_written_with_it() -> None:
    written = write_line(GABLE, paper("A_y = 9.5"), "E_y = 18 - A_y = 8.5")
    assert [about for about, _ in written.paper.lines] == [Fy()]
    assert written.paper.values == {"A_y": "9.5", "E_y": "8.5"}


@pytest.mark.parametrize("text", ["4 E_y = 34", "4 E_y 5 = 3", "8E_y = 68", "2*E_y = 17"])
def test_a_number_times_the_rows_own_force_is_an_equation_and_no_value(text: str) -> None:
    written = write_row(GABLE, Paper(), "E_y", text)
    assert "E_y" not in written.paper.values
    assert written.refused or written.paper.lines
