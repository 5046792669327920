"""The lines that people write are sound data: their sheets are true and their codes are known."""

from __future__ import annotations

import math
import re
from pathlib import Path

import pytest
from paper.measure import OUTCOMES, about, counts, judged, lines, outcome, problem, said

from tutor import Value, solve

FILES = ("lecturer", "own-a", "own-b", "typed", "hurry", "night")
DOCUMENT = Path(__file__).parents[2] / "docs" / "mistakes.md"
CODES = {*re.findall(r"^### `([a-z-]+)`$", DOCUMENT.read_text(encoding="utf-8"), re.MULTILINE)} | {
    "component-missing",
    "slope-assumed",
}
KINDS = frozenset(("right", "wrong", "unreadable", "undecided"))
AGAINST = ("left", "down", "C", "against")


def true_value(truss: str, name: str) -> float:
    """The force of the unknown `name`, tension, right and up positive."""
    answer = solve(problem(truss))
    if "_" in name:
        return float(answer.reaction(name))
    first, second = name.split("-") if "-" in name else tuple(name)
    return float(answer.force(first, second))


@pytest.mark.parametrize("name", FILES)
def test_every_earlier_value_on_a_sheet_is_the_true_one_to_its_figures(name: str) -> None:
    sheets = {
        (line["truss"], unknown, value, line.get("senses", {}).get(unknown))
        for line in lines(name)
        for unknown, value in line.get("known", {}).items()
    }
    for truss, unknown, value, sense in sheets:
        true = true_value(truss, unknown) * (-1 if sense in AGAINST else 1)
        assert math.isclose(float(value), true, rel_tol=0.005, abs_tol=0.01), (truss, unknown)


@pytest.mark.parametrize("name", FILES)
def test_every_line_says_what_a_lecturer_would_say(name: str) -> None:
    for line in lines(name):
        assert line["kind"] in OUTCOMES, line
        assert set(line.get("want", ())) | set(line.get("never", ())) <= CODES, line
        assert not set(line.get("want", ())) & set(line.get("never", ())), line
        assert set(line.get("expect", ())) <= CODES | KINDS, line
        assert ("expect" in line) == (line["kind"] == "substance"), line
        assert ("want" in line) == (line["kind"] == "wrong"), line


@pytest.mark.parametrize("name", ["own-a", "own-b", "night"])
def test_every_line_of_our_own_says_why(name: str) -> None:
    assert all(line["why"].endswith(".") for line in lines(name))


def test_what_is_counted_is_what_was_said() -> None:
    line = {"truss": "pratt", "about": ["Fy", "A"], "known": {"A_y": "12"}, "text": "12 + F_AF = 0"}
    verdict = said(line)
    assert outcome(line | {"kind": "wrong", "want": ["whole-force"]}, verdict) == "named"
    assert outcome(line | {"kind": "wrong", "want": ["missing"]}, verdict) == "otherwise"
    assert outcome(line | {"kind": "wrong", "want": []}, verdict) == "refused"
    never = {"want": ["missing"], "never": ["whole-force"]}
    assert outcome(line | {"kind": "wrong"} | never, verdict) == "falsely"
    assert outcome(line | {"kind": "right"}, verdict) == "wrong"
    assert outcome(line | {"kind": "substance", "expect": ["whole-force"]}, verdict) == "expected"


def test_a_value_is_asked_for_by_its_name() -> None:
    assert about({"about": ["Value", "AF"]}) == Value("AF")


def test_every_line_counts_once() -> None:
    table = counts(judged("own-a"))
    assert sum(sum(row.values()) for row in table.values()) == len(lines("own-a"))
    assert all(set(row) <= set(OUTCOMES[kind]) for kind, row in table.items())
