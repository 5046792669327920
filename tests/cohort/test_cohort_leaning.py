"""A line that two mistakes explain equally well counts as the one that its student makes elsewhere."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest
from classroom import HABIT, handed_in
from habits import Habit
from hypothesis import given
from hypothesis import strategies as st

from tutor.cohort import class_report
from tutor.cohort.facts import AnswerGiven, StudentWork
from tutor.cohort.leaning import leaning

BRACKET = """\
title = "Bracket over the sluice"
force = "kN"
length = "m"
members = ["AB", "AC", "BC", "BD", "CD"]
[joints]
A = [0, 0]
B = [0, 3]
C = [4, 0]
D = [4, 3]
[supports]
A = "pin"
B = { roller = 180 }
[[loads]]
at = "D"
down = 12
right = 4
[vary]
loads = { D = { down = [6, 9, 12, 15, 18], right = [2, 4, 5, 8] } }
"""
CODES = ("sign", "minus", "pull-push", "slope")


def wrong(codes: tuple[str, ...], others: tuple[str, ...] = ()) -> AnswerGiven:
    return AnswerGiven("joints", "Fx @ A", "…", "wrong", codes, 0.0, others)


@st.composite
def answers(draw: st.DrawFn) -> AnswerGiven:
    codes = draw(st.lists(st.sampled_from(CODES), min_size=1, max_size=2, unique=True))
    left = [code for code in CODES if code not in codes]
    others = draw(st.lists(st.sampled_from(left), max_size=2, unique=True)) if not codes[1:] else []
    return wrong(tuple(codes), tuple(others))


def work(*given: AnswerGiven, name: str = "w") -> StudentWork:
    return StudentWork(name, name, "finished", answers=given)


@given(st.lists(answers(), max_size=8), st.lists(answers(), max_size=8))
def test_each_line_keeps_its_mistakes_and_the_likeliest_of_them_leads(one, other) -> None:
    works = leaning((work(*one), work(*other, name="v")))
    before = [*one, *other]
    after = [answer for each in works for answer in each.answers]
    explains = Counter(code for answer in before for code in (*answer.codes, *answer.others))
    for was, now in zip(before, after, strict=True):
        assert {*was.codes, *was.others} == {*now.codes, *now.others}
        assert len(now.codes) == len(was.codes)
        if was.others:
            assert explains[now.codes[0]] == max(explains[c] for c in (*was.codes, *was.others))
        else:
            assert now == was
    assert leaning(works) == works


def test_a_line_that_stands_alone_counts_as_it_was_told() -> None:
    alone = work(wrong(("minus",), ("pull-push",)))
    assert leaning((alone,)) == (alone,)


PLANTED = ("pull-push", "minus", "sign", "component", "missing", "no-arm", "turning", "whole-force")


@pytest.fixture(scope="module")
def sluice(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("sluice")
    (folder / "set.toml").write_text('title = "Week 4"\nid = "week-4"\n', "utf-8")
    (folder / "bracket.toml").write_text(BRACKET, "utf-8")
    (folder / "higher.toml").write_text(BRACKET.replace(", 3]", ", 5]"), "utf-8")
    return folder


@pytest.mark.parametrize(
    "code",
    [
        each if n < 2 else pytest.param(each, marks=pytest.mark.slow)
        for n, each in enumerate(PLANTED)
    ],
)
def test_a_weakness_planted_in_a_group_is_what_its_lines_are_told_as(
    code: str, sluice: Path, tmp_path: Path, monkeypatch
) -> None:
    monkeypatch.setitem(HABIT, code, Habit(code, 1.0, frozenset({code}), 0.0, (), sees_at=2))
    for number in range(6):
        data = handed_in(sluice, f"r{number}", code, seed=number)
        (tmp_path / f"r{number}.txt").write_bytes(data)
    report = class_report(tmp_path, sluice)
    typed = Counter(
        made
        for student in report.students
        for each in student.problems
        for answer in each.answers
        if answer.text
        for made in answer.codes
    )
    assert typed.most_common(1)[0][0] == code
    kind = next(kind for kind in report.kinds if kind.code == code)
    assert kind.students >= 5
    assert any(f"“{kind.called}”: {kind.students} of 6" in sentence for sentence in report.again)
