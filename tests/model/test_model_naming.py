"""Does every name that comes from outside mean what it means in a typed line, and else say what is near?"""

from __future__ import annotations

import math
import re
from contextlib import suppress
from typing import Any

import pytest
from families import pratt
from hypothesis import given
from hypothesis import strategies as st
from strategies import trusses

from tutor import Along, Fx, M, Value, judge, load_problem, review, solve
from tutor.model import Problem, UnknownNameError
from tutor.notation import Unreadable, read_line
from tutor.shipped import shipped_problems

LAMP = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
LONG = pratt(4, 3, 4, 8)


def of_a_member(start: str, end: str) -> list[str]:
    """How a member is written on paper, its dash where the names need one."""
    dash = "" if len(start) == len(end) == 1 else "-"
    ways = []
    for core in (f"{start}{dash}{end}", f"{end}{dash}{start}"):
        ways += [core, f"F_{{{core}}}", f"$F_{{{core}}}$", f"F({core})", f" S_{{{core}}} "]
    return ways


@given(trusses())
def test_a_force_is_found_by_every_spelling_that_is_read_in_a_line(problem: Problem) -> None:
    answer = solve(problem)
    for member in problem.members[:3]:
        for way in of_a_member(member.start, member.end):
            assert answer.force(way) == answer.values[member.name], way
    for name in problem.reaction:
        for way in (name, name.replace("_", ""), f"{name[:-2]}_{{{name[-1]}}}"):
            line = read_line(f"{way} = 0", problem.names)
            if not isinstance(line, Unreadable) and line.result.sides[0].name == name:
                assert answer.reaction(way) == answer.values[name]


def test_longer_names_need_no_dash_where_only_one_member_can_be_meant() -> None:
    answer = solve(LONG)
    ways = ("U1-L1", "U1L1", "F_U1L1", "F_{L1-U1}", "u1l1", "U_1L_1")
    assert len({answer.force(way) for way in ways} | {answer.force("u1", "L1")}) == 1


@pytest.mark.parametrize(
    ("look_up", "says"),
    [
        (lambda: solve(LONG).force("U1-L9"), r'"U1-L9" is no member here; .* did you mean U1-L\d'),
        (lambda: solve(LONG).force("U1", "L9"), r"did you mean U1-L\d"),
        (lambda: solve(LAMP).reaction("B_z"), "the reactions are .* did you mean B_"),
        (lambda: solve(LAMP).value("2 AB"), '"2 AB" is no unknown here.* did you mean AB'),
        (lambda: solve(LAMP).value("-AB"), '"-AB" is no unknown here'),
        (lambda: solve(LAMP).force("AB\x1b[31m"), "is no member here"),
        (lambda: solve(LAMP).force("A" * 100_000), "is no member here"),
        (lambda: solve(LAMP).force(3), '"3" is no member here'),  # type: ignore[arg-type]
        (lambda: judge(LAMP, Fx(joint="Q"), "AB = 0"), "no joint here; the joints are"),
        (lambda: judge(LAMP, M("Q"), "AB = 0"), "no joint here; the joints are"),
        (lambda: judge(LAMP, Value("AZ"), "3"), "no unknown here.* did you mean A"),
        (lambda: judge(LAMP, Fx(), "AB = 0", senses={"AZ": "C"}), "no unknown here"),
        (lambda: judge(LAMP, Fx(), "AB = 0", known={"AZ": 3}), "no unknown here"),
        (lambda: judge(LAMP, Fx(), "AB = 0", known={"AB": float("nan")}), "AB is no number"),
        (lambda: judge(LAMP, Fx(), "AB = 0", standing=[M("Q")]), "no joint here"),
    ],
)
def test_a_name_that_is_none_here_is_told_with_the_nearest(look_up, says) -> None:
    with pytest.raises(ValueError, match=says) as told:
        look_up()
    assert str(told.value).isprintable()
    assert len(str(told.value)) < 300


def test_a_wrong_name_is_a_key_error_too_as_it_was_before() -> None:
    with pytest.raises(KeyError, match="no member here"):
        solve(LAMP).force("AZ")
    assert issubclass(UnknownNameError, ValueError)


@pytest.mark.parametrize(
    "about",
    [
        Along(math.nan, joint="A"),
        Along(1e300),
        Along("30"),
        Along(True),
        M(at=(math.inf, 0.0)),
        M(at=("a", "b")),
        M(at=(1.0, 2.0, 3.0)),
        M(at=3),
        Fx(joint=3),
        Fx(part="AB"),
        "Fx",
        None,
    ],
    ids=repr,
)
def test_what_is_no_equation_is_told_as_a_wrong_type(about: Any) -> None:
    with pytest.raises(TypeError, match="a line is about Fx"):
        judge(LAMP, about, "A_x + AB = 0")
    (refused,) = review(LAMP, {"lines": [(about, "A_x + AB = 0")]}).refused
    assert "such as Fx" in refused.message


def test_the_judge_takes_names_of_all_kinds_in_every_spelling() -> None:
    plain = judge(LAMP, Along(30, joint="C"), "AC = 0", senses={"AC": "C"}, known={"BC": 3})
    ways = judge(LAMP, Along(30, joint="c"), "AC = 0", senses={"F_CA": "C"}, known={"F_{CB}": 3})
    assert plain == ways
    assert judge(LAMP, Value("F_CA"), "3") == judge(LAMP, Value("AC"), "3")


def test_a_homework_takes_names_of_all_kinds_in_every_spelling() -> None:
    answer = solve(LAMP)
    line = (Fx(joint="C"), "AC = 0")
    told = review(
        LAMP,
        {
            "reactions": {name: answer.value(name) for name in LAMP.reaction},
            "forces": {name: answer.value(name) for name in LAMP.member},
            "senses": {"AC": "T"},
            "order": ["C"],
            "lines": [line],
        },
    )
    again = review(
        LAMP,
        {
            "reactions": {n.replace("_", ""): answer.value(n) for n in LAMP.reaction},
            "forces": {f"F_{{{n[::-1]}}}": answer.value(n) for n in LAMP.member},
            "senses": {"$F_{CA}$": "T"},
            "order": ["c"],
            "lines": [(Fx(joint="c"), line[1])],
        },
    )
    assert not told.refused
    assert told == again


@pytest.mark.parametrize(
    "work",
    [
        {"forces": {"AZ": 3}},
        {"senses": {"AZ": "T"}},
        {"order": ["Q"]},
        {"lines": [(Fx(joint="Q"), "AB = 0")]},
        {"lines": [(Value("AZ"), "3")]},
    ],
)
def test_a_name_in_a_homework_that_is_none_is_refused_with_those_there_are(work) -> None:
    (refused,) = review(LAMP, work).refused
    assert re.search(r"is no (unknown|joint) here; (there|the joints) are", refused.message)
    assert refused.message.endswith(("?", "."))


@given(st.text(max_size=12))
def test_no_text_is_a_fault_as_a_name(text: str) -> None:
    with suppress(UnknownNameError):
        assert solve(LAMP).value(text) in solve(LAMP).values.values()
