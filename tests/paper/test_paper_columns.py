"""Do the numbers of a table stand with their points below one another?"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tutor.paper.blocks import PrintedSheet, PrintedTable
from tutor.paper.columns import DIGIT, POINT, aligned, is_numbers
from tutor.paper.html import to_html
from tutor.paper.markdown import to_markdown
from tutor.paper.typst import to_pdf, to_typst

NUMBERS = st.builds(
    lambda minus, whole, part: f"{minus}{whole}{part}",
    st.sampled_from(["", "−"]),
    st.integers(0, 99999),
    st.sampled_from(["", ".5", ".25", ".125"]),
)
BEHIND = st.sampled_from(["", " T", " C", " to the left"])


def place_of_point(cell: str) -> int:
    """How many characters, all as wide as a digit, stand before the point or where it would be."""
    whole = cell.split(" ")[0]
    return min((whole.index(mark) for mark in (".", POINT) if mark in whole), default=len(whole))


@given(st.lists(st.tuples(NUMBERS, BEHIND), min_size=1, max_size=6))
def test_every_point_of_a_column_stands_below_the_last(cells: list[tuple[str, str]]) -> None:
    column = [number + behind for number, behind in cells]
    found = [row[0] for row in aligned([(cell,) for cell in column])]
    assert len({place_of_point(cell) for cell in found}) == 1
    assert len({len(cell.split(" ")[0]) for cell in found}) == 1
    assert [cell.replace(DIGIT, "").replace(POINT, "") for cell in found] == column


@pytest.mark.parametrize("column", [("AB", "12"), ("up", "3"), ("1 in 2", "U1-L2")])
def test_a_column_of_words_stays_as_it_is(column: tuple[str, ...]) -> None:
    rows = tuple((cell,) for cell in column)
    assert aligned(rows) == rows
    assert not is_numbers(column)


def test_empty_cells_stay_empty_and_make_no_column_one_of_numbers() -> None:
    assert aligned((("", "12"), ("", "3.5"))) == (("", f"12{POINT}{DIGIT}"), ("", f"{DIGIT}3.5"))
    assert not is_numbers(("", ""))
    assert is_numbers(("12", ""))


PAGE = PrintedSheet("Key", "", (PrintedTable(("member", "force"), (("AB", "112.5"), ("BC", "7"))),))


def test_numbers_stand_at_the_right_in_every_form() -> None:
    html = to_html([PAGE], "x")
    assert f'<td class="number">{DIGIT * 2}7{POINT}{DIGIT}</td>' in html
    assert "<td>AB</td>" in html
    assert "|---|---:|" in to_markdown([PAGE], "x")[0]
    source = to_typst([PAGE])[0]
    assert "align: (left + horizon, right + horizon)" in source
    assert f"{DIGIT * 2}7{POINT}{DIGIT}" in source
    assert to_pdf([PAGE]).startswith(b"%PDF")
