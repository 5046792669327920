"""How is a value read that says in a word which way the reaction acts?"""

from __future__ import annotations

import pytest

from tutor.judge import Value, judge
from tutor.model import Joint, Load, Member, Problem, Support
from tutor.notation import Exact
from tutor.statics import solve

TRESTLE = Problem(
    title="Trestle on a slope",
    force="kN",
    length="m",
    joints=tuple(
        Joint(name, Exact.of(x), Exact.of(y))
        for name, x, y in (("A", 0, 0), ("B", 8, 0), ("C", 4, 3))
    ),
    members=tuple(Member(name, *name) for name in ("AB", "AC", "BC")),
    supports=(Support("A", "pin"), Support("B", "roller", angle=Exact.of(120))),
    loads=(Load("C", (("down", Exact.of(24)), ("right", Exact.of(4)))),),
)


def said(text: str, unknown: str, **senses: str) -> tuple[str, tuple[str, ...]]:
    verdict = judge(TRESTLE, Value(unknown), text, senses=senses)
    return verdict.kind, tuple(mistake.code for mistake in verdict.mistakes)


TRUE = {name: abs(value) for name, value in solve(TRESTLE).values.items()}


@pytest.mark.parametrize(
    ("unknown", "way", "other"), [("A_y", "up", "down"), ("A_x", "right", "left")]
)
@pytest.mark.parametrize("drawn", ["positive", "negative"])
def test_a_way_said_decides_whichever_way_the_arrow_was_drawn(
    unknown: str, way: str, other: str, drawn: str
) -> None:
    senses = {} if drawn == "positive" else {unknown: other}
    size = TRUE[unknown]
    assert said(f"{size:.4f} {way}", unknown, **senses)[0] == "right"
    kind, codes = said(f"{size:.4f} {other}", unknown, **senses)
    assert (kind, len(codes)) == ("wrong", 1)
    assert codes[0] in ("sign", "sense")


def test_a_way_that_the_reaction_cannot_act_in_is_not_taken_for_a_wrong_sign() -> None:
    for unknown, way in (("A_x", "up"), ("A_x", "down"), ("A_y", "left"), ("A_y", "right")):
        verdict = judge(TRESTLE, Value(unknown), f"7000 {way}")
        assert verdict.kind == "undecided"
        assert f"not {way}: say which" in verdict.text


def test_an_inclined_reaction_may_be_said_by_either_of_the_ways_it_goes() -> None:
    size = f"{TRUE['R_B']:.4f}"
    for way in ("up", "left"):
        assert said(f"{size} {way}", "R_B")[0] == "right"
        assert said(f"{size} {way}", "R_B", R_B="against")[0] == "right"
    for way in ("down", "right", "against"):
        assert said(f"{size} {way}", "R_B")[0] == "wrong"


def test_against_is_against_the_students_own_arrow() -> None:
    size = f"{TRUE['A_y']:.4f}"
    assert said(f"{size} against", "A_y")[0] == "wrong"
    assert said(f"{size} against", "A_y", A_y="down")[0] == "right"


def test_the_hints_on_a_wrong_way_speak_of_ways_and_not_of_a_sign_that_was_not_typed() -> None:
    mistake = judge(TRESTLE, Value("A_y"), f"{TRUE['A_y']:.4f} down").mistakes[0]
    assert mistake.text == "The size is right; the way it acts is not."
    assert mistake.place.startswith("The way the reaction A_y acts")
