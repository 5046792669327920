"""Every broken input in the table of complaints earns its complaint, at its column."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from truss_names import CLASHING, LETTERED, NUMBERED

from tutor.notation import (
    Exact,
    Label,
    Line,
    Names,
    Reading,
    Slant,
    Unreadable,
    ValueReading,
    one_equation,
    read_heading,
    read_line,
    read_number,
    value_of,
)
from tutor.notation.elements.complaints import COMPLAINTS

ELSEWHERE = [
    ("RC = 0", CLASHING, "ambiguous", 1, "F_RC or R_C"),
    ("rc = -12/3 = -4", CLASHING, "ambiguous", 1, "the reaction R_C"),
    ("F_CM = 12 MN", CLASHING, "ambiguous", 11, "F_MN for the force"),
    ("F_CM = 12 mN", CLASHING, "ambiguous", 11, "F_MN for the force"),
    ("F_CM = 3 cm", CLASHING, "dimension", 8, "a length beside a force"),
    ("3 F_CM - 2MN = 0", CLASHING, "ambiguous", 11, "give the number in kN"),
    ("U1 - L2 = 3", NUMBERED, "difference", 1, "U1-L2 without spaces"),
    ("U1-L1 = 3", NUMBERED, "unknown-name", 1, "the members at U1 are F_{U1-L2} and F_{U1-U2}"),
    ("F_U2L1 = 3", NUMBERED, "unknown-name", 1, "no member joins U2 and L1"),
    ("U1 = 3", NUMBERED, "unknown-name", 1, "such as F_{U1-L2}"),
    ("U1_x = 3", NUMBERED, "unknown-name", 1, "the reactions are L1_x, L1_y and R_L2"),
]


def broken_inputs() -> Iterator[tuple[str, str, str, int]]:
    for key, complaint in COMPLAINTS.items():
        for kind in ("examples", "values", "numbers", "headings"):
            for text, column in getattr(complaint, kind):
                yield key, kind, text, column


def read(kind: str, text: str) -> Reading | ValueReading | Exact | Label | Unreadable:
    if kind == "headings":
        return read_heading(text, LETTERED)
    if kind == "examples":
        return one_equation(read_line(text, LETTERED))
    return value_of(read_line(text, LETTERED)) if kind == "values" else read_number(text)


def assert_fit_to_print(found: Unreadable) -> None:
    assert found.message.isprintable()
    assert found.cure.isprintable()
    assert found.found.isprintable()
    assert re.fullmatch(r"[^a-z].*[^.]\.", found.message), found.message
    assert "; " + found.cure + "." in found.message
    assert len(found.message) < 330
    assert not re.search(r"[{}]{2}|\b(PLUS|NUMBER|OPEN|CLOSE|FRACTION|\$END)\b", found.message)


@pytest.mark.parametrize(("key", "kind", "text", "column"), broken_inputs())
def test_a_broken_input_earns_its_complaint(key: str, kind: str, text: str, column: int) -> None:
    found = read(kind, text)
    assert isinstance(found, Unreadable), found
    assert (found.code, found.column) == (key.partition("/")[0], column), found.message
    assert found.text == text
    for fragment in re.split(r"\{\w+\}", COMPLAINTS[key].says):
        assert fragment.lower() in found.message.lower()
    assert_fit_to_print(found)


@pytest.mark.parametrize(("text", "names", "code", "column", "said"), ELSEWHERE)
def test_a_clash_in_another_truss_earns_its_complaint(text, names, code, column, said) -> None:
    found = one_equation(read_line(text, names))
    assert isinstance(found, Unreadable)
    assert (found.code, found.column) == (code, column), found.message
    assert said in found.message
    assert_fit_to_print(found)


def test_every_complaint_has_an_example() -> None:
    without = [
        key
        for key, it in COMPLAINTS.items()
        if not it.examples + it.values + it.numbers + it.headings
    ]
    # these need directions of members, or trusses in which two unknowns, or a member and a unit, are spelled alike
    assert without == ["unknown-name/component", "ambiguous", "ambiguous/unit"]


def test_a_placed_complaint_says_its_column_and_no_other_does() -> None:
    for key, kind, text, column in broken_inputs():
        found = read(kind, text)
        assert isinstance(found, Unreadable)
        assert (f"At column {column}, " in found.message) == COMPLAINTS[key].placed


def test_the_carets_stand_below_what_is_meant() -> None:
    found = one_equation(read_line("3/5 F_AB + F_AD - 12 = 0", LETTERED))
    assert isinstance(found, Unreadable)
    line, marks = found.caret().split("\n")
    assert line[marks.index("^") : marks.rindex("^") + 1] == "F_AD"


def test_the_carets_stand_below_a_place_far_into_a_long_text() -> None:
    found = one_equation(read_line("F_AB " + "+ 1 " * 60 + "+ F_AD = 0" + " " * 90, LETTERED))
    assert isinstance(found, Unreadable)
    line, marks = found.caret().split("\n")
    assert line[marks.index("^") : marks.rindex("^") + 1] == "F_AD"
    assert len(line) < 80


def test_the_carets_allow_for_wide_characters() -> None:
    found = one_equation(read_line("Ｆ_ＡＢ + F_AD = 0", LETTERED))
    assert isinstance(found, Unreadable)
    line, marks = found.caret().split("\n")
    assert line[: found.column - 1] == "Ｆ_ＡＢ + "
    assert marks.index("^") == len("Ｆ_ＡＢ + ") + 3  # three characters are two columns wide


def test_a_control_character_never_reaches_what_is_printed() -> None:
    found = one_equation(read_line("F_AB \x1b]0;title\x07 = 12", LETTERED))
    assert isinstance(found, Unreadable)
    assert found.caret().replace("\n", "").isprintable()
    assert "escape (U+001B)" in found.message


def test_a_component_that_a_level_member_has_not_is_told_so() -> None:
    names = Names.of([("AB", "A", "B")], ["A_x"], "AB", "kN", "m", [Slant("AB", 1.0, 0.0)])
    found = read_line("AB_y = 3", names)
    assert isinstance(found, Unreadable)
    assert "would be the vertical component of the force in AB, which has none" in found.message
    assert isinstance(read_line("AB_x = 3", names), Line)
