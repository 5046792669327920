"""Does the judge agree with the picture of a joint: symbol, arrow and value as they stand there?"""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import trusses, wall_trusses

from tutor.figure import Figure, joint_figure
from tutor.figure.parts import Arrow
from tutor.judge import Equation, Fx, Fy, Judge
from tutor.judge.known_values import senses_for
from tutor.model import Problem, load_problem
from tutor.shipped import shipped_problems

SHOWN = re.compile(r"(\S+) = (-?[\d.]+|\?)(?: .*)?")
"""The words beside an arrow: its symbol, and its value under that arrow."""


def shown(figure: Figure) -> list[tuple[Arrow, str, str]]:
    """Every arrow of a joint's picture with its symbol and value; a load has only a value."""
    found = []
    for item in figure.items:
        if isinstance(item, Arrow):
            words = SHOWN.fullmatch(item.texts[0])
            symbol, value = (words[1], words[2]) if words else ("", item.texts[-1].split()[0])
            found.append((item, symbol, value))
    return found


def term(arrow: Arrow, along: tuple[float, float], symbol: str, value: str, way: str) -> str:
    """The term of one arrow in the sum along `along`, read off the picture in one of three ways.

    "symbol": the symbol under the arrow; "value": the number under the arrow; "real": the size of
    the number in its real direction.
    """
    part = arrow.toward[0] * along[0] + arrow.toward[1] * along[1]
    if abs(part) < 1e-9:
        return ""
    if symbol and (way == "symbol" or value == "?"):
        return f"{part:+.8f} {symbol}"
    if way == "real" and value.startswith("-"):
        return f"{-part:+.8f}({value[1:]})"
    return f"{part:+.8f}({value})"


problems = st.one_of(trusses(max_joints=6), wall_trusses(max_joints=6))


@given(problems, st.data())
def test_every_term_that_the_picture_of_a_joint_shows_is_right_in_its_lines(
    problem: Problem, data: st.DataObject
) -> None:
    desk = Judge(problem)
    senses = {
        name: data.draw(st.sampled_from(senses_for(problem, name))) for name in problem.unknowns
    }
    found = [name for name in problem.unknowns if data.draw(st.booleans())]
    signed = {name: desk.values()[name] for name in found}
    bare = desk.known_values(senses, {})
    own = desk.known_values(senses, {n: f"{bare.sign(n) * v:.4g}" for n, v in signed.items()})
    known = {
        n: own.sign(n) * own.known[n].value if n in problem.member else own.known[n].value
        for n in found
    }
    joint = data.draw(st.sampled_from(problem.joints)).name
    arrows = shown(joint_figure(problem, joint, known=known, senses=senses))
    axes: tuple[tuple[Equation, tuple[float, float]], ...] = (
        (Fx(joint), (1.0, 0.0)),
        (Fy(joint), (0.0, 1.0)),
    )
    for about, along in axes:
        ways = [data.draw(st.sampled_from(("symbol", "value", "real"))) for _ in arrows]
        parts = [
            term(arrow, along, *words, way)
            for (arrow, *words), way in zip(arrows, ways, strict=True)
        ]
        line = " ".join(part for part in parts if part) + " = 0"
        if not any(name in line for _, name, _ in arrows if name):
            continue
        verdict = desk.judge(about, line, own)
        assert verdict.right, (line, verdict.text, known, senses)


def test_a_reaction_found_against_its_arrow_is_written_as_the_picture_shows_it() -> None:
    problem = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
    desk = Judge(problem)
    (reaction,) = [r for r in problem.reactions if r.name.endswith("_y")][:1]
    sense = senses_for(problem, reaction.name)[desk.values()[reaction.name] > 0]
    value = -abs(desk.values()[reaction.name])
    figure = joint_figure(
        problem, reaction.joint, known={reaction.name: value}, senses={reaction.name: sense}
    )
    ((arrow, _, text),) = [one for one in shown(figure) if one[1] == reaction.name]
    assert float(text) == pytest.approx(value)
    assert (arrow.toward[1] > 0) == (sense == "up")
