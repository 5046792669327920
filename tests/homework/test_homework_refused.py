"""What of a homework cannot be taken is refused in one sentence that says why; what can is noted."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from families import plain_problem

from tutor.homework import Paper, read_table, review, write_line
from tutor.homework.marks import LONGEST
from tutor.homework.table import MOST_CHARACTERS, MOST_ROWS
from tutor.homework.typed import write_row
from tutor.homework.words import headline
from tutor.judge import Fy, Value
from tutor.model import Load, Support
from tutor.notation import Exact

MAST = plain_problem(
    (("A", 0, 0), ("B", 8, 0), ("C", 4, 3)),
    ("AB", "BC", "AC"),
    (Support("A", "pin"), Support("B", "roller")),
    (Load("C", (("down", Exact.of(12)), ("right", Exact.of(6)))),),
)


KITE = plain_problem(
    (("A", 0, 0), ("B", 4, 3), ("C", 8, 0), ("D", 4, -1)),
    ("AB", "BC", "BD", "AD", "CD"),
    (Support("A", "pin"), Support("C", "roller")),
    (Load("B", (("down", Exact.of(12)),)),),
)


@pytest.mark.parametrize(
    ("text", "noted", "place"),
    [
        ("joint B:", "joint B: its lines follow", "B"),
        ("at joint C", "joint C: its lines follow", "C"),
        ("whole truss:", "the whole truss: its lines follow", None),
    ],
)
def test_a_line_that_only_names_a_place_says_whose_lines_follow(
    text: str, noted: str, place: str | None
) -> None:
    written = write_line(MAST, Paper(), text)
    assert written.noted == (noted,)
    assert written.paper.place == place


@pytest.mark.parametrize(
    ("text", "noted"),
    [
        ("draw A_x left", "A_x drawn left"),
        ("draw B_y down", "B_y drawn down"),
        ("push AB", "AB drawn pushing"),
        ("order A, C, B", "the joints in the order A, C, B"),
        ("order whole, C, A", "the joints in the order whole, C, A"),
    ],
)
def test_what_is_drawn_and_in_which_order_is_noted_in_words(text: str, noted: str) -> None:
    assert write_line(MAST, Paper(), text).noted == (noted,)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("joint Z:", "There is no joint Z; the joints are A, B, C."),
        ("From joint Z: AB = 5", "There is no joint Z; the joints are A, B, C."),
        ("order A, Z", "There is no joint Z; the joints are A, B, C."),
        ("draw B_y left", "B_y is drawn up or down."),
        ("AB 12 BC", "This row: “BC” is an unknown, and a result is a number"),
        ("AB = 1" + "1" * LONGEST, f"A line has {LONGEST} characters at most."),
        ("ΣF along: AB + 5 = 0", "A sum along a direction needs it, like ΣF along 30: before the"),
        ("ΣM: 8 B_y - 12*4 = 0", "A sum of moments needs its point, like ΣM_A: before the line."),
        ("ΣFy left part: A_y + AB = 0", "A sum of a part needs the members that are cut and the"),
    ],
)
def test_a_line_that_cannot_be_taken_leaves_the_paper_as_it_was(text: str, says: str) -> None:
    written = write_line(MAST, Paper(), text)
    assert written.paper == Paper()
    assert not written.noted
    (refused,) = written.refused
    assert refused.message.startswith(says)
    assert refused.text in text or len(text) > LONGEST
    assert len(text) > 12 or refused.text == text


@pytest.mark.parametrize(
    "text",
    ["AB=7.5\nBC=-5", "AB: 7.5\nBC: -5", "AB 7.5\nBC -5", "AB\t7.5\nBC\t-5", "AB;7.5\nBC;-5"],
)
def test_the_cells_of_a_table_may_be_parted_in_many_ways(text: str) -> None:
    pasted = read_table(MAST, text)
    assert pasted.work["forces"] == {"AB": "7.5", "BC": "-5"}
    assert not pasted.refused


@pytest.mark.parametrize(
    ("text", "forces"),
    [
        ("AC 3,25\nAB,2,500", {"AB": "2.500", "AC": "3.25"}),
        ("AC 3.25\nAB,2,500", {"AB": "2500", "AC": "3.25"}),
        ("AB,2,500,T", {"AB": "2500 T"}),
        ("AB,-2,5\nBC,+3,25", {"AB": "-2.5", "BC": "+3.25"}),
        ('AB,"2,5"\nBC,"3,25"', {"AB": "2.5", "BC": "3.25"}),
    ],
)
def test_a_comma_in_a_number_of_a_table_with_commas_is_what_the_other_numbers_show(
    text: str, forces: dict[str, str]
) -> None:
    pasted = read_table(MAST, text)
    assert pasted.work["forces"] == forces
    assert not pasted.refused


@pytest.mark.parametrize("value", ["12.34.56", "1,2,3", "1.2.3.4"])
def test_a_number_with_more_than_one_decimal_sign_is_none(value: str) -> None:
    pasted = read_table(MAST, f"AB\t{value}")
    assert not pasted.work["forces"]
    assert [refused.name for refused in pasted.refused] == ["AB"]


@pytest.mark.parametrize(
    ("force", "thousands"), [("lb", True), ("kip", True), ("N", False), ("kN", False)]
)
def test_where_a_table_shows_no_decimal_sign_a_comma_parts_thousands_of_pounds(
    force: str, thousands: bool
) -> None:
    problem = replace(MAST, force=force)
    pasted = read_table(problem, "AB\t2,500")
    assert (pasted.work["forces"] == {"AB": "2500"}) == thousands


def test_a_table_of_as_many_characters_as_are_read_is_read() -> None:
    row = "AB\t5"
    filled = row + "\n" * (100_000 - len(row))
    assert read_table(MAST, filled).work["forces"] == {"AB": "5"}
    assert not read_table(MAST, filled + "\n").work["forces"]


@pytest.mark.parametrize(
    ("row", "refused"),
    [("Bar\tForce", []), ("Bar 12\tForce", ["row 1"]), ("QQ\t5", ["row 1"]), ("AB\tlots", ["AB"])],
)
def test_the_first_row_of_a_table_is_its_head_where_it_has_neither_name_nor_number(
    row: str, refused: list[str]
) -> None:
    pasted = read_table(MAST, f"{row}\nAC\t5")
    assert pasted.work["forces"] == {"AC": "5"}
    assert [each.name for each in pasted.refused] == refused


def test_of_an_order_or_of_lines_without_end_five_thousand_are_read() -> None:
    assert len(review(MAST, {"order": ["C"] * 4_999 + [3, 4]}).refused) == 1
    assert len(review(MAST, {"lines": [3] * 5_001}).refused) == 5_000


def test_of_a_table_that_is_too_long_it_is_said_how_much_is_read() -> None:
    pasted = read_table(MAST, "x" * (MOST_CHARACTERS + 1))
    assert [r.message for r in pasted.refused] == [
        f"This is longer than {MOST_CHARACTERS} characters; paste the table alone."
    ]
    assert not pasted.work["forces"]
    rows = "\n".join(["AB\t5"] + ["AC\t"] * MOST_ROWS)
    assert f"Only the first {MOST_ROWS} rows were read." in [
        r.message for r in read_table(MAST, rows).refused
    ]


@pytest.mark.parametrize(
    ("value", "says"),
    [
        ("CB = 5", "This is a value of BC."),
        ("-5 T", "A minus and a T contradict each other"),
        ("5 kN up", "AB is written with T or C."),
        (math.nan, "This is no number that a force can have."),
        (1e13, "This is no number that a force can have."),
        (10**400, "This is no number that a force can have."),
    ],
)
def test_a_value_that_cannot_be_one_of_the_force_is_refused_and_unchecked(
    value: Any, says: str
) -> None:
    said = review(MAST, {"forces": {"AB": value}})
    (refused,) = said.refused
    assert refused.name == "AB"
    assert refused.message.startswith(says)
    assert [(finding.name, finding.state) for finding in said.findings] == [("AB", "unchecked")]


@pytest.mark.parametrize(
    ("work", "says"),
    [
        ({"senses": {"A_x": "up"}}, "A sense of A_x is right or left."),
        ({"order": ["A", "Q"]}, '"Q" is no joint here; the joints are A, B, C.'),
        ({"letters": {"a": "abc"}}, "A letter stands for a number."),
        ({"order": [10**5000]}, '"a value of type int" is no joint here; the joints are A, B, C.'),
    ],
)
def test_a_part_of_the_work_that_is_none_is_refused(work: dict[str, Any], says: str) -> None:
    assert [refused.message for refused in review(MAST, work).refused] == [says]


RIGHT = {
    "reactions": {"A_x": "-6", "A_y": "3.75", "B_y": "8.25"},
    "forces": {"AB": "11", "BC": "-13.75", "AC": "-6.25"},
}


def outcome(lines: Any = (), **forces: str) -> str:
    work = {**RIGHT, "forces": {**RIGHT["forces"], **forces}, "lines": list(lines)}
    return headline(review(MAST, work))


def test_how_much_could_not_be_read_is_said_beside_the_outcome() -> None:
    assert outcome() == "Everything that was checked is right."
    assert outcome(AB="abc") == (
        "1 entry could not be read and was not checked: AB. All that could be read is right."
    )
    assert outcome(AB="abc", BC="zz") == (
        "2 entries could not be read and were not checked: AB and BC. "
        "All that could be read is right."
    )
    assert outcome(AB="20", QQ="5").endswith("1 entry could not be read and was not checked: QQ.")


def test_a_wrong_line_beside_right_values_is_told_with_its_place_if_it_has_one() -> None:
    assert outcome([(Fy("A"), "A_y + 0.8 AC = 0")]) == "It first goes wrong at joint A."
    said = outcome([(Value("AB"), "AB = 99")])
    assert said == "The values are right; a line is not what its heading says."


def test_where_blanks_stand_beside_a_wrong_value_the_place_is_not_certain() -> None:
    said = outcome(AB="20", BC="zz")
    assert said.startswith("Something is wrong. The numbers do not tell for certain where:")
    assert outcome(AB="20") == (
        "It first goes wrong at joint A or joint B; the numbers alone do not tell which of them."
    )
    assert headline(review(MAST, {})) == "There was nothing to check yet."


@pytest.mark.parametrize(
    ("value", "said"),
    [("11", "closes."), ("11.3", "does not close: a little is"), ("20", "does not close: about a")],
)
def test_a_body_that_does_not_close_says_how_much_of_it_is_left(value: str, said: str) -> None:
    work = {**RIGHT, "forces": {**RIGHT["forces"], "AB": value}}
    closures = [closure.said for closure in review(MAST, work).closures]
    assert closures[0] == "The whole truss closes."
    assert closures[1].startswith(f"Joint A {said}")


def test_a_body_with_a_blank_cannot_be_checked() -> None:
    work = {**RIGHT, "forces": {"BC": "-13.75", "AC": "-6.25"}}
    closures = [closure.said for closure in review(MAST, work).closures]
    assert closures[1] == "Joint A: not enough values to check it."
    assert closures[3] == "Joint C closes."


def test_a_row_that_is_too_long_is_refused_as_a_line_is() -> None:
    assert not write_row(MAST, Paper(), "AB", " " * LONGEST + "7.5").refused
    (refused,) = write_row(MAST, Paper(), "AB", "1" * (LONGEST + 1)).refused
    assert refused.message == f"A line has {LONGEST} characters at most."


@pytest.mark.parametrize(
    ("work", "name", "text"),
    [
        (3, "work", "3"),
        ({"reactions": 7}, "reactions", "7"),
        ({"notes": "done"}, "notes", ""),
        ({"letters": {"θ": "wide"}}, "θ", "wide"),
        ({"forces": {"QQ": "3"}}, "QQ", "3"),
        ({"forces": {"AB": "x" * 60}}, "AB", "x" * 60),
        ({"forces": {"AB": "x" * 61}}, "AB", "x" * 61),
        ({"order": [10**5000]}, "order", "a value of type int"),
        ({"order": ["A", ["C"]]}, "order", "['C']"),
        ({"forces": {10**5000: 3}}, "a value of type int", "3"),
        ({"senses": {10**5000: "T"}}, "a value of type int", "T"),
        ({"letters": {"a": 10**5000}}, "a", "a value of type int"),
        ({"lines": [(Value(10**5000), "AB = 3")]}, "line 1", "a value of type tuple"),
        ({"forces": {"AB": 11, "BA": 12}}, "AB", "12"),
        ({"forces": {"AB": [11]}}, "AB", "[11]"),
        ({"forces": {"AB": [10**5000]}}, "AB", "a value of type list"),
        ({"forces": {"AB": math.inf}}, "AB", "inf"),
        ({"forces": {"AB": "lots"}}, "AB", "lots"),
        ({"forces": {"AB": "AC = 7"}}, "AB", "AC = 7"),
        ({"reactions": {"B_y": "5 T"}}, "B_y", "5 T"),
        ({"forces": {"AB": "-5 T"}}, "AB", "-5 T"),
        ({"senses": {"QQ": "T"}}, "QQ", "T"),
        ({"senses": {"AB": "up"}}, "AB", "up"),
        ({"lines": "AB = 3"}, "lines", "AB = 3"),
        ({"lines": ["AB"]}, "line 1", "AB"),
        ({"lines": [(Fy("Z"), "AB = 3")]}, "line 1", repr((Fy("Z"), "AB = 3"))),
        ({"order": 3}, "order", "3"),
        ({"order": ["Z"]}, "order", "Z"),
    ],
)
def test_what_is_refused_goes_by_its_name_with_what_was_written(
    work: object, name: str, text: str
) -> None:
    (refused,) = review(MAST, work).refused
    assert refused.message
    assert (refused.name, refused.text) == (name, text if len(text) <= 60 else text[:59] + "…")
    assert len(refused.text) == min(60, len(text))


@pytest.mark.parametrize(
    ("joint", "order"), [("A", ["C", "A"]), ("B", ["C", "B"]), ("C", []), (None, [])]
)
def test_a_paper_with_its_members_below_joints_that_give_them_tells_the_order_of_work(
    joint: str | None, order: list[str]
) -> None:
    paper = Paper().with_value("AC", "5", "C").with_value("BC", "5", "C")
    assert paper.with_value("AB", "5", joint).work(MAST).get("order", []) == order


def test_more_members_below_a_joint_than_it_gives_tell_no_order() -> None:
    found = Paper()
    for name in ("AB", "BD", "BC"):
        found = found.with_value(name, "5", "B")
    assert "order" not in found.work(KITE)


def test_a_paper_shows_the_order_of_joints_where_one_was_given() -> None:
    assert "order: C, A" in write_line(MAST, Paper(), "order C A").paper.shown(MAST)
    assert not any(line.startswith("order") for line in Paper().shown(MAST))
