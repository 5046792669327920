"""Does a line say the same after it went through a mail, a program or a page?"""

from __future__ import annotations

import json
import quopri
from collections.abc import Callable
from urllib.parse import quote

import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_notation_hands import paper_truss

from tutor.notation import Line, Unreadable, read_line

LINES = [
    "ΣF_y = 0: A_y + 5/13 F_AF = 0",
    "A_y − 12 − 9 + E_y = 0",
    "F_AF·cos 22.6° + F_AB = 0",
    "F_AF = −31.2 kN",
    "0 = A_y + 5/13 F_AF",
]


def said(text: str) -> list[tuple[str | None, float]]:
    """The terms of all statements of a line, each with its size."""
    line = read_line(text, paper_truss("pratt")[0])
    assert isinstance(line, Line), (text, line.message)
    sides = (side for step in line.steps for side in step.sides)
    return [(term.name, term.value) for side in sides for term in side.terms]


def _of_mail(text: str) -> str:
    return (
        quopri.encodestring(text.replace("=", "\ue000").encode())
        .decode()
        .replace("=EE=80=80", "=3D")
        .strip()
    )


def _misread(text: str) -> str:
    """The text in one code, read in another."""
    return text.encode("utf-8").decode("cp1252", errors="replace")


@pytest.mark.parametrize("text", LINES)
@pytest.mark.parametrize(
    "encode", [_of_mail, quote, json.dumps, _misread, lambda text: text.replace("−", "&minus;")]
)
def test_a_line_whose_signs_are_written_by_codes_says_the_same(
    text: str, encode: Callable[[str], str]
) -> None:
    assert said(encode(text)) == said(text)


@pytest.mark.parametrize("text", ["9 =3DE/5", "0 =20 A_y", "A_y =20", "A_y =12 kN"])
def test_a_number_behind_an_equals_sign_is_no_code(text: str) -> None:
    from tutor.notation.pages.encoded import signs_for_codes

    assert signs_for_codes(text).text == text


@given(st.text(max_size=60))
def test_whatever_is_decoded_keeps_its_columns(text: str) -> None:
    from tutor.notation.pages.encoded import signs_for_codes

    source = signs_for_codes(text)
    assert len(source.starts) == len(source.ends) == len(source.text)
    assert all(
        0 <= start <= end <= len(text)
        for start, end in zip(source.starts, source.ends, strict=True)
    )


@pytest.mark.parametrize("text", LINES)
@pytest.mark.parametrize("picture", ["🎉", "😅😅", "⚠️", "🙏🏽", "🤷‍♂️", "⭐"])
def test_a_picture_before_or_behind_a_line_says_nothing(text: str, picture: str) -> None:
    assert said(f"{picture} {text}") == said(f"{text} {picture}") == said(text)


@pytest.mark.parametrize("picture", ["🍕", "❌", "🔟", "👇"])
def test_a_picture_within_a_formula_is_complained_of(picture: str) -> None:
    found = read_line(f"A_y {picture} 12 = 0", paper_truss("pratt")[0])
    assert isinstance(found, Unreadable)
    assert picture in found.message


@pytest.mark.parametrize(
    "text", ["A_y + 5/13 F_AF = 0", "A_y − 12 − 9 + E_y = 0", "0 = A_y − 12 − 9 + E_y"]
)
@pytest.mark.parametrize("end", ["\n", "\r\n", " \n  ", "\n> "])
def test_a_sum_that_is_broken_before_a_sign_says_the_same(text: str, end: str) -> None:
    signs = [at for at, char in enumerate(text) if char in "+−=" and at > text.find("A_y") + 5]
    for at in signs:
        assert said(text[:at] + end + text[at:]) == said(text), at


@pytest.mark.parametrize("text", ["A_y + 5/13 F_AF = 0", "0 = A_y + E_y − 21"])
def test_a_plus_or_an_equals_sign_on_both_sides_of_a_break_stands_once(text: str) -> None:
    for at in (at for at, char in enumerate(text) if char in "+="):
        assert said(f"{text[: at + 1]}\n{text[at:]}") == said(text)


def test_of_a_minus_on_both_sides_of_a_break_it_is_asked() -> None:
    found = read_line("A_y + E_y −\n− 21 = 0", paper_truss("pratt")[0])
    assert isinstance(found, Unreadable)
    assert found.code == "ambiguous"
    assert "−" in found.found


MARKS = [
    "• {}\n• {}",
    "* {}\n* {}",
    "1. {}\n2. {}",
    "1) {}\n2) {}",
    "(4) {}\n(5) {}",
    "a) {}\nb) {}",
    "– {}\n– {}",
    "{} ✓\n{} ✓",
]


@pytest.mark.parametrize(
    "marks",
    [*MARKS, "1️⃣ {}\n2️⃣ {}", "🔹 {}\n🔹 {}", "10:41 Sam: {}\n10:42 Sam: {}", "- [x] {}\n- [ ] {}"],
)
def test_the_marks_of_a_list_say_nothing(marks: str) -> None:
    first, second = "A_y + 5/13 F_AF = 0", "F_AF = −31.2"
    assert said(marks.format(first, second)) == said(f"{first}\n{second}")


@pytest.mark.parametrize("letter", ["v", "w", "q", "u", "h", "t", "V"])
@pytest.mark.parametrize(
    "clause",
    [
        "tan {} = 5/12",
        "sin {} = 5/13",
        "{} = 22.62°",
        "{} = atan(5/12)",
        "tan {} = 5/12, cos {} = 12/13",
    ],
)
def test_a_letter_whose_function_a_line_gives_is_an_angle(letter: str, clause: str) -> None:
    text = f"A_y + F_AF sin {letter} = 0, {clause.replace('{}', letter)} ⇒ F_AF = −31.2"
    (_, one), (name, size), *_ = said(text)
    assert (one, name) == (1, "AF")
    assert abs(size - 5 / 13) < 1e-4
