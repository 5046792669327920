"""The quick walk through the table of the grammar and lark's own never differ."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from hypothesis import given
from hypothesis import strategies as st
from lark import Lark, Tree, UnexpectedToken
from truss_names import LETTERED

import tutor.notation
from tutor.notation.formulas.make_table import table_of
from tutor.notation.formulas.table import Misplaced, ParseTable
from tutor.notation.naming.symbols import Symbol
from tutor.notation.sides.scanner import Scanner

ROOM = Path(tutor.notation.__file__).parent / "formulas"
GRAMMAR = Lark(
    (ROOM / "line.lark").read_text("utf-8"),
    parser="lalr",
    lexer="basic",
    start=["line", "expression"],
    maybe_placeholders=False,
)
LINES = [
    "3/5 F_AB + F_AC - 12 = 0",
    "-(F_AB - 2)*3/4 + cos 30° F_AC = 3/5 m",
    "F_AB cos(atan(3/4)) - [F_AC/2]^2 kN = -1",
    "2^-1 A_x*(9 m) = sin -30 + sqrt(3 rad)/2",
    "12 = +F_AB*-{3 + 4}/(1 kN)",
]
KINDS = [[symbol.type for symbol in Scanner(line, LETTERED).scan()] for line in LINES]
TERMINALS = sorted({kind for kinds in KINDS for kind in kinds})
kinds_of_symbols = st.one_of(
    st.sampled_from(KINDS),
    st.lists(st.sampled_from(TERMINALS), max_size=12),
    st.tuples(st.sampled_from(KINDS), st.integers(0, 20), st.sampled_from(TERMINALS)).map(
        lambda changed: [*changed[0][: changed[1]], changed[2], *changed[0][changed[1] + 1 :]]
    ),
    st.tuples(st.sampled_from(KINDS), st.integers(0, 20)).map(lambda cut: cut[0][: cut[1]]),
)


def by_lark(symbols: list[Symbol], start: str) -> Any:
    feed, result = GRAMMAR.parse_interactive(start=start).feed_token, None
    for index, symbol in enumerate(symbols):
        try:
            result = feed(symbol)  # type: ignore[arg-type]
        except UnexpectedToken:
            return index
    return result


TABLES = {
    start: ParseTable.of(rows, start, lambda name: lambda parts: Tree(name, parts))
    for start, rows in json.loads((ROOM / "line_table.json").read_text("utf-8")).items()
}


def by_table(symbols: list[Symbol], start: str) -> Any:
    try:
        return TABLES[start].joined(symbols)
    except Misplaced as misplaced:
        return misplaced.index


@given(kinds_of_symbols, st.sampled_from(["line", "expression"]))
def test_both_make_the_same_tree_or_stop_at_the_same_symbol(kinds: list[str], start: str) -> None:
    symbols = [Symbol(kind, None, i, i + 1) for i, kind in enumerate([*kinds, "$END"])]
    for symbol in symbols:
        symbol.value = symbol
    assert by_table(symbols, start) == by_lark(symbols, start)


def test_the_lines_it_is_tried_on_are_chains() -> None:
    for kinds in KINDS:
        symbols = [Symbol(kind, kind, i, i + 1) for i, kind in enumerate([*kinds, "$END"])]
        assert not isinstance(by_table(symbols, "line"), int)


def test_the_table_is_that_of_the_grammar() -> None:
    saved = json.loads((ROOM / "line_table.json").read_text("utf-8"))
    assert saved == table_of((ROOM / "line.lark").read_text("utf-8"))
