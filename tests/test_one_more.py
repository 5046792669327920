"""Does one more support or mistake need no more than the page for developers says?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from tutor import Fx, Fy, judge, load_problem, review, solve
from tutor.judge import judge_of, right_line
from tutor.judge.example import Example
from tutor.judge.kind import Kind
from tutor.judge.mistakes import KINDS
from tutor.judge.true_equation import TrueTerm
from tutor.model import Direction, Joint, Problem, Reaction, Support
from tutor.model.support_kind import SupportKind
from tutor.model.supports import SUPPORTS
from tutor.notation import Exact
from tutor.shipped import shipped_problems

LAMP = shipped_problems() / "first-steps" / "lamp-arm.toml"
PAGE = (Path(__file__).parents[1] / "DEVELOPERS.md").read_text("utf-8")


@pytest.fixture
def lamp() -> Problem:
    """A problem of its own, so that nothing kept ready for another test is met."""
    return load_problem(LAMP)


def halves(term: TrueTerm) -> Iterator[float]:
    if term.numeric and term.force.size is not None:
        yield 0.5 * term.per_unit


HALVED = Kind(
    code="halved",
    called="half a load",
    cost=0.5,
    why="Half of each load is given to either side of a truss, whatever stands where.",
    look=lambda case: "A load stands here with half its size.",
    reason=lambda case: "A load acts whole where it acts.",
    place=lambda case: f"Look at {case.thing}.",
    variants=halves,
    examples=(Example(Fy(), "A_y + C_y - 10 = 0"),),
    touches="size",
)


def line_with_load(problem: Problem, factor: float) -> str:
    """The sum of forces in y of the whole truss, each load times a factor."""
    loads = sum(load.vector[1] for load in problem.loads)
    names = [r.name for r in problem.reactions if r.name.endswith("_y")]
    return f"{' + '.join(names)} - {abs(loads) * factor:g} = 0"


def test_one_more_mistake_is_one_entry_and_nothing_else(
    lamp: Problem, monkeypatch: pytest.MonkeyPatch
) -> None:
    text = line_with_load(lamp, 0.5)
    assert judge(lamp, Fy(), line_with_load(lamp, 1.0)).right
    assert [m.code for m in judge(lamp, Fy(), text).mistakes] != ["halved"]
    monkeypatch.setitem(KINDS, "halved", HALVED)  # type: ignore[arg-type]
    again = load_problem(LAMP)
    (mistake,) = judge(again, Fy(), text).mistakes
    assert mistake.code == "halved"
    assert mistake.text == "A load stands here with half its size."
    assert "load" in mistake.place
    assert judge(again, Fy(), line_with_load(lamp, 1.0)).right


def slot(support: Support, joint: Joint) -> tuple[Reaction, ...]:
    """Holds its joint across a slot that rises at 45 degrees to the left."""
    return (Reaction(f"R_{joint.name}", joint.name, Direction.at_angle(Exact.of(45))),)


def test_one_more_support_is_solved_judged_and_reviewed_by_its_reactions_alone(
    lamp: Problem, monkeypatch: pytest.MonkeyPatch
) -> None:
    kind = SupportKind("slot", slot, "roller", "A slot holds across itself.", takes="angle")
    monkeypatch.setitem(SUPPORTS, "slot", kind)  # type: ignore[arg-type]
    supports = tuple(Support(s.joint, "slot") if s.kind == "roller" else s for s in lamp.supports)
    problem = replace(lamp, supports=supports)
    (name,) = [reaction.name for reaction in problem.reactions if reaction.name.startswith("R_")]
    answer = solve(problem)
    assert answer.reaction(name) != 0.0
    for about in (Fx(), Fy(), Fx(joint=problem.reaction[name].joint)):
        line = right_line(problem, about, judge_of(problem).known_values())
        assert name in line
        assert judge(problem, about, line).right
    work = {
        "reactions": {each: answer.value(each) for each in problem.reaction},
        "forces": {each: answer.value(each) for each in problem.member},
    }
    assert review(problem, work).right


@pytest.mark.parametrize("what", ["A mistake", "A support", "A step", "A problem"])
def test_every_file_that_the_page_names_for_one_more_is_there(what: str) -> None:
    told = PAGE.partition(f"**{what}.**")[2].partition("\n\n")[0]
    named = [word for word in told.split("`")[1::2] if word.endswith((".py", ".toml", "/"))]
    assert named
    for word in named:
        ways = (word, f"tutor/{word}", f"tutor/lesson/{word}", f"tests/{word}")
        root = Path(__file__).parents[1]
        assert any((root / way).exists() for way in ways) or word in (".toml", "set.toml"), word
