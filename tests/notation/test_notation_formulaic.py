"""Reading a plain formula straight through and by the table of the grammar never differ."""

from __future__ import annotations

import string
from pathlib import Path
from random import Random

from broken import broken
from corpus import right_line, wrong_line
from hypothesis import given
from hypothesis import strategies as st
from truss_names import CLASHING, LETTERED, NUMBERED

from tutor.notation import Names
from tutor.notation.elements.characters import plain
from tutor.notation.elements.tree import Node
from tutor.notation.formulas.angles import check_angles
from tutor.notation.formulas.formulaic import formulaic
from tutor.notation.formulas.parser import parse_sides
from tutor.notation.sides.scanner import Scanner

HANDS = Path(__file__).with_name("hands")
SCRAPS = ["F_AB", "F_{AC}", "A_x", "AB", "U1-L2", "F_{U1-U2}", "R_C", "MN", "m", "kN", "2", "0.60",
          "36.87°", "cos", "sin(", "sqrt(", "tan 30°", "(", ")", "[", "+", "-", "*", "/", "=", "= 0",
          "°", "^2", " ", "  ", "x", ",", "e3", "100", "-12", "L1-L2", "2.5", "'", "_", "pi", "acos 3/4"]  # fmt: skip


def by_table(text: str, names: Names) -> tuple[Node, ...]:
    """The sides as the scanner and the grammar give them; raises Broken."""
    scanner = Scanner(text, names)
    symbols = scanner.scan()
    scanner.check_closed()
    nodes = parse_sides(symbols, text)
    assert not scanner.has_units
    assert not scanner.has_backward
    assert not scanner.has_pi
    for node in nodes:
        check_angles(node)
    return nodes


def assert_same(text: str, names: Names) -> bool:
    """Whether the text was read straight through, after making sure that it is the same then."""
    typed = plain(text)
    quick = formulaic(typed, names)
    assert quick is None or quick == by_table(typed, names), text
    return quick is not None


def test_lines_in_any_spelling_are_the_same_by_both_ways_and_most_are_plain() -> None:
    read = []
    for seed in range(40):
        rng = Random(seed)
        right, wrong = right_line(seed), wrong_line(seed, 2)
        given = [(right.problem, right.text)] + ([(wrong.problem, wrong.text)] if wrong else [])
        for problem, text in given:
            read.append(assert_same(text, problem.names))
            assert_same(broken(rng.randrange(10**6), text), problem.names)
    assert sum(read) > 0.3 * len(read)


def test_lines_as_people_write_them_are_the_same_by_both_ways() -> None:
    read = [
        assert_same(row.split(" | ", 2)[-1], names)
        for row in (HANDS / "lines.txt").read_text("utf-8").splitlines()
        for names in (LETTERED, NUMBERED, CLASHING)
        if row and not row.startswith("#")
    ]
    assert any(read)


@given(
    st.lists(st.sampled_from(SCRAPS), max_size=14).map("".join)
    | st.lists(st.sampled_from(SCRAPS), max_size=14).map(" ".join)
    | st.text(string.ascii_letters[:8] + "xX0125.,-+*/=()°' _{}^", max_size=16),
    st.sampled_from([LETTERED, NUMBERED, CLASHING]),
)
def test_scraps_in_any_order_are_the_same_by_both_ways(text: str, names: Names) -> None:
    assert_same(text, names)
