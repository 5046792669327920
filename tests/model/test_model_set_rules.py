"""Does a set.toml say how its set is worked, and is every slip in it told with the cure?"""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from test_model_defects import SOUND
from test_model_sets import messages, put, titled

from tutor.model import Rules, Tolerance, load_problem, load_set

ALL = """\
title = "Harbour"
id = "week-3"
hints = "no lines"
attempts = 3
mode = "check"
due = 2026-12-01
[tolerance]
silent = 1
remark = 3
[after]
b = ["a"]
c = ["a", "b.toml"]
"""


def folder_with(tmp_path: Path, text: str) -> Path:
    for name in ("a", "b", "c"):
        put(tmp_path, f"{name}.toml", titled(name))
    put(tmp_path, "set.toml", text)
    return tmp_path


def test_every_key_of_a_set_file_is_read(tmp_path: Path) -> None:
    read = load_set(folder_with(tmp_path, ALL))
    assert not read.broken
    assert read.rules == Rules(
        hints="no lines",
        attempts=3,
        mode="check",
        tolerance=Tolerance(0.01, 0.03),
        after={"b": ("a",), "c": ("a", "b")},
        due=date(2026, 12, 1),
        id="week-3",
    )
    assert all(problem.rules == read.rules for problem in read.problems)


def test_a_set_without_rules_has_those_of_a_problem_alone(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, 'title = "Harbour"')
    assert load_set(folder).rules == Rules() == load_problem(folder / "a.toml").rules


def test_a_file_opened_alone_is_worked_under_the_rules_of_its_set(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, ALL)
    (problem,) = load_set(folder / "b.toml").problems
    assert problem.rules.mode == "check"
    assert problem.tolerance == Tolerance(0.01, 0.03)


def test_the_tolerance_of_a_set_is_that_of_files_which_give_none(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, ALL)
    put(folder, "b.toml", SOUND.split("[tolerance]")[0] + "[tolerance]\nsilent = 0.5\nremark = 2\n")
    put(folder, "c.toml", SOUND.split("[tolerance]")[0])
    found = {p.source.name: p.tolerance for p in load_set(folder).problems if p.source}
    assert found["b.toml"] == Tolerance()
    assert found["c.toml"] == Tolerance(0.01, 0.03)


@pytest.mark.parametrize(
    ("line", "message", "cure"),
    [
        ('hints = "no line"', 'hints is "no line"', 'did you mean "no lines"?'),
        ('mode = "exam"', 'mode is "exam"', "practice and check"),
        ("mode = 3", "mode is a number, not a text", "in quotes"),
        ("attempts = 0", "attempts is 0", "from 1 to 99"),
        ("attempts = true", "attempts is true or false", "from 1 to 99"),
        ('due = "2026-12-01"', "due is a text, not a date", "due = 2026-12-01"),
        ("after = 3", "after is a number, not a table", "[after]"),
        ('after = { a = "b" }', '"a" is a text, not a list', "[after]"),
        ('after = { a = ["d"] }', 'after names "d", which is not there', "the files are"),
        ('after = { d = ["a"] }', 'after names "d", which is not there', "the files are"),
        ("after = { a = [3] }", "after holds a number, not only texts", "file names"),
        (
            'after = { a = ["b"], b = ["a"] }',
            "a would have to come after itself: a, which comes after b, which comes after a",
            "let one of them come first",
        ),
        ("tolerance = { silent = 3 }", "silent, 3 %, is more than remark, 2 %", "give both"),
        ("hint = 3", '"hint" is an unknown key', 'did you mean "hints"?'),
    ],
)
def test_a_slip_in_a_set_file_is_told_with_its_cure_and_costs_no_problem(
    tmp_path: Path, line: str, message: str, cure: str
) -> None:
    folder = folder_with(tmp_path, f'title = "Harbour"\n{line}\n')
    read = load_set(folder)
    assert len(read.problems) == 3
    error = read.broken[folder / "set.toml"]
    assert messages(error) == [(2, message)]
    assert cure in error.problems[0].cure


def test_the_order_before_and_after_is_looked_through_quickly_however_it_branches(
    tmp_path: Path,
) -> None:
    names = [f"p{i}" for i in range(40)]
    for name in names:
        put(tmp_path, f"{name}.toml", titled(name))
    rows = [
        f'{name} = ["{names[i - 1]}", "{names[i - 2]}"]' for i, name in enumerate(names) if i > 1
    ]
    put(tmp_path, "set.toml", "\n".join(['title = "Long"', "[after]", *rows]))
    read = load_set(tmp_path)
    assert not read.broken
    assert len(read.rules.after) == 38
