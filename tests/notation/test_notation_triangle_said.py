"""Which figures only name the sides of a slope triangle?"""

from __future__ import annotations

import pytest

from tutor.notation.elements.source import Source
from tutor.notation.sentences.triangle_said import without_triangles


@pytest.mark.parametrize(
    ("text", "rest"),
    [
        ("3-4-5.. 15 + 3/5AD = 0", "15 + 3/5AD = 0"),
        ("8-15-17, E: 400 - 8/17CE = 0", "E: 400 - 8/17CE = 0"),
        ("A vert (5-12-13): A_y + 5/13 AC = 0", "A vert : A_y + 5/13 AC = 0"),
        ("s=3/5 c=4/5 (4-3-5).. 15 + AD*s = 0", "s=3/5 c=4/5 .. 15 + AD*s = 0"),
        ("F_AB = 12 [6:8:10]", "F_AB = 12 "),
    ],
)
def test_sides_of_a_right_triangle_are_taken_out(text: str, rest: str) -> None:
    assert without_triangles(Source.of(text)).text == rest


@pytest.mark.parametrize(
    "text",
    [
        "3-4-6.. 15 + 3/5AD = 0",
        "3-4-5 + AB = 0",
        "2(3-4-5) + AB = 0",
        "AB*(3-4-5) = 0",
        "AB + (3-4-5) - 6 = 0",
        "12-5-13 = AB",
        "(0-4-4) A: AB = 0",
    ],
)
def test_numbers_that_are_taken_away_from_each_other_stay(text: str) -> None:
    assert without_triangles(Source.of(text)).text == text
