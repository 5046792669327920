"""Are several lines written in one each taken and answered, by each of their own?

The truss is our own (paper/rack.toml). By hand: A_y = 80, A_x = -120; joint A: 0.8 AE + 80 = 0, so
AE = -100 N; AB + 0.6 AE - 120 = 0, so AB = 180 N.
"""

from __future__ import annotations

import pytest
from paper.measure import problem
from walks import Clock

from tutor.judge import Fx, Fy
from tutor.lesson import Lesson
from tutor.lesson.steps.apart import statements_apart
from tutor.notation import read_line

RACK = problem("rack")


@pytest.fixture
def at_a() -> Clock:
    do = Clock(Lesson(RACK))
    do("show", until="joints")
    do("joint", joint="A")
    return do


def found(do: Clock) -> dict[str, float]:
    results = do.lesson.state.result
    return {name: results[name].value for name in ("AE", "AB") if name in results}


@pytest.mark.parametrize(
    "text",
    [
        "Fy: 0.8 AE + 80 = 0, AE = -100, Fx: AB - 60 - 120 = 0, AB = 180",
        "AE = -80/0.8 = -100, AB = 0.6*100 + 120 = 180",
        "AE = 80/0.8 = 100 C, AB = 0.6*100 + 120 = 180 T",
        "AE = 80/0.8 = 100 C AB = 0.6*100 + 120 = 180 T",
        "Fy 0.8 AE = -80 so AE = -100; Fx AB = 120 + 60 so AB = 180",
    ],
)
def test_each_of_two_lines_with_their_values_is_kept(at_a: Clock, text: str) -> None:
    assert at_a("type", text=text).accepted
    assert found(at_a) == {"AE": -100, "AB": 180}


@pytest.mark.parametrize("sign", [", ", "; ", " and ", " "])
def test_of_two_headed_sums_both_stand(at_a: Clock, sign: str) -> None:
    at_a("type", text=f"Fy: 80 + 0.8 AE = 0{sign}Fx: AB + 0.6 AE - 120 = 0")
    sums = {line.about for line in at_a.lesson.state.lines_of("A")}
    assert sums == {Fx("A"), Fy("A")}


def test_a_slip_in_the_second_line_is_said_of_that_one(at_a: Clock) -> None:
    reply = at_a("type", text="Fy: 80 + 0.8 AE = 0, Fx: AB - 0.6 AE - 120 = 0")
    assert reply.accepted
    assert len(at_a.lesson.state.lines_of("A")) == 1
    assert [say.tone for say in reply.said if say.tone in ("right", "wrong")] == ["right", "wrong"]
    assert any("Fx: AB - 0.6 AE - 120 = 0" in say.text for say in reply.said)
    at_a("undo")
    assert not at_a.lesson.state.lines_of("A")


@pytest.mark.parametrize(
    "text",
    [
        "0.8 AE = -80, AE = -100",
        "Fy: 80 + 0.8 AE = 0, 0.8 AE = -80, AE = -100",
        "AB = 0.6 AE = 60",
        "ΣFy = 80 + 0.8 AE = 0 = 0",
        "15 = 0.6 AE",
        "AE = 100 C (2)",
    ],
)
def test_one_line_with_its_working_is_not_parted(text: str) -> None:
    assert statements_apart(read_line(text, RACK.names), {"AE"}) == ()


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("AE = 5 BC = 3", ("AE = 5", "BC = 3")),
        ("AE = 5t BC = 3c", ("AE = 5t", "BC = 3c")),
        ("8 C_y = 144 C_y = 18", ()),
        ("AE = BC = 3 C, AB = 2 T", ("AE = BC = 3 C", "AB = 2 T")),
    ],
)
def test_values_with_a_blank_between_them_are_parted(text: str, parts: tuple[str, ...]) -> None:
    line = read_line(text, RACK.names)
    assert statements_apart(line) == parts


def test_an_equation_and_its_value_with_a_blank_between_them_are_one_line(at_a: Clock) -> None:
    assert at_a("type", text="0.8 AE = -80 AE = -100").accepted
    assert found(at_a) == {"AE": -100}


@pytest.mark.parametrize(
    "text",
    [
        r"$\Rightarrow AE = -100\text{ N},\; AB = 180\text{ N}$",
        r"AE = -100\,\mathrm{N}, \quad AB = 180\,\mathrm{N}",
        r"$AE = -100$ N; $AB = 180$ N",
    ],
)
def test_the_spaces_of_a_formula_between_two_values_part_nothing_of_either(
    at_a: Clock, text: str
) -> None:
    at_a("type", text="Fy: 0.8 AE + 80 = 0")
    at_a("type", text="Fx: AB + 0.6 AE - 120 = 0")
    reply = at_a("type", text=text)
    assert reply.accepted, reply.text
    assert found(at_a) == {"AE": -100, "AB": 180}


@pytest.mark.parametrize(("opens", "closes"), ["()", "[]", "{}"])
@pytest.mark.parametrize(
    "said", ["AB = 180", "AB = 180 N from C", "B_x = 60, A_x = -120", "A_x = -120; given"]
)
@pytest.mark.parametrize("behind", ["", ", AE = -100", "; Fx: AB + 0.6 AE - 120 = 0"])
def test_no_line_is_cut_within_its_brackets(
    opens: str, closes: str, said: str, behind: str
) -> None:
    line = read_line(f"0.8 AE + 80 = 0 {opens}{said}{closes}{behind}", RACK.names)
    for part in statements_apart(line):
        assert part.count(opens) == part.count(closes)


@pytest.mark.parametrize("said", ["(A_y = 80)", "(A_y = 80 from above)", "[A_x = -120]"])
def test_a_value_in_brackets_behind_an_equation_leaves_the_value_behind_it(
    at_a: Clock, said: str
) -> None:
    reply = at_a("type", text=f"0.8 AE + 80 = 0 {said}, AE = -100")
    assert [say.tone for say in reply.said if say.tone == "right"] == ["right", "right"], reply.text
    assert found(at_a) == {"AE": -100}
