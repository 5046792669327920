"""Does every module and function stay short enough to be read at once?

A module has 300 lines at most and a function 40; how many ways a function may take is held by ruff
(C901 in pyproject.toml). What was longer before there were limits stands here with its length: it may
get shorter, never longer, and is taken off the list once it keeps the limit.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "tutor"
MOST_LINES, MOST_IN_FUNCTION = 300, 40
LONGER: dict[str, int] = {}
LONGER_FUNCTIONS: dict[str, int] = {
    "figure/free_body.py:joint_figure": 43,
    "figure/layout.py:lay_out": 47,
    "figure/slopes.py:slope_words": 45,
    "figure/truss.py:truss_figure": 47,
    "lesson/replay.py:replay": 44,
    "notation/elements/tree.py:to_sympy": 42,
    "paper/roster.py:read_roster": 48,
}
BEGINS = re.compile(r" *(?:async )?def (\w+)\(")


def lengths_of_modules() -> dict[str, int]:
    return {name(path): len(path.read_text("utf-8").splitlines()) for path in modules()}


def lengths_of_functions() -> dict[str, int]:
    """How many lines each function has, from its `def` to where the text steps back again."""
    found: dict[str, int] = {}
    for path in modules():
        open_ones: list[tuple[int, str, int]] = []
        last = 0
        for number, line in enumerate((*path.read_text("utf-8").splitlines(), "end"), start=1):
            if not line.strip():
                continue
            depth = len(line) - len(line.lstrip())
            while open_ones and depth <= open_ones[-1][0] and not line.lstrip().startswith(")"):
                _, called, begun = open_ones.pop()
                where = f"{name(path)}:{called}"
                found[where] = max(last - begun + 1, found.get(where, 0))
            if begins := BEGINS.match(line):
                open_ones.append((depth, begins[1], number))
            last = number
    return found


def modules() -> list[Path]:
    return sorted(PACKAGE.rglob("*.py"))


def name(path: Path) -> str:
    return path.relative_to(PACKAGE).as_posix()


@pytest.mark.parametrize(
    ("measured", "limit", "longer"),
    [
        (lengths_of_modules, MOST_LINES, LONGER),
        (lengths_of_functions, MOST_IN_FUNCTION, LONGER_FUNCTIONS),
    ],
)
def test_nothing_is_longer_than_its_limit_but_for_what_may_only_shrink(
    measured: Callable[[], dict[str, int]], limit: int, longer: dict[str, int]
) -> None:
    lengths = measured()
    assert not {each: n for each, n in lengths.items() if n > longer.get(each, limit)}
    assert longer.keys() <= lengths.keys(), "take off the list what is no more"
