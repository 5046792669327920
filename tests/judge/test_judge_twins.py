"""Where two forces have one number, does the hint name both, and only then?"""

from __future__ import annotations

from itertools import permutations

import pytest
from corpus import wrong_line

from tutor.judge import Fx, Fy, M, judge
from tutor.judge.equal_forces import MOST_ALIKE
from tutor.judge.kind import force_in_words
from tutor.model import Joint, Load, Member, Problem, Support
from tutor.notation import Exact


def trestle(*loads: tuple[str, str, int]) -> Problem:
    """Three joints on a span of eight, with loads (joint, direction, size)."""
    return Problem(
        title="Trestle",
        force="kN",
        length="m",
        joints=tuple(
            Joint(name, Exact.of(x), Exact.of(y))
            for name, x, y in (("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3))
        ),
        members=tuple(Member(name, *name) for name in ("AB", "BC", "AD", "BD", "CD")),
        supports=(Support("A", "pin"), Support("C", "roller")),
        loads=tuple(Load(at, (((way), Exact.of(size)),)) for at, way, size in loads),  # type: ignore[arg-type]
    )


ALIKE = trestle(("B", "down", 6), ("D", "down", 6))
APART = trestle(("B", "down", 6), ("D", "down", 7), ("D", "right", 8))


def lowered(text: str) -> str:
    """A sentence as it goes on behind a comma."""
    return text[:1].lower() + text[1:]


@pytest.mark.parametrize(
    ("about", "text", "code", "told"),
    [
        (Fy(), "A_y + C_y - 6 + 6 = 0", "sign", "{either} has the wrong sign"),
        (Fy(), "A_y + C_y - 6 = 0", "missing", "{either} is left out"),
        (Fy(), "A_y + C_y - 6 - 6000 = 0", "unit", "of {either} is in another unit"),
        (M("A"), "8 C_y - 4*6 + 4*6 = 0", "turning", "{either} has the wrong sign"),
    ],
)
def test_two_forces_that_a_slip_fits_alike_are_both_named(about, text, code, told) -> None:
    (mistake,) = judge(ALIKE, about, text).mistakes
    assert mistake.code == code
    either = [" or ".join(two) for two in permutations(("the load at B", "the load at D"))]
    assert any(told.format(either=words) in lowered(mistake.place) for words in either)
    assert {mistake.force, *mistake.alike} == {"load B", "load D"}


def test_one_of_two_loads_at_a_joint_that_is_left_out_may_be_the_like_at_another_joint() -> None:
    loads = [(at, way, size) for at in "BD" for way, size in (("down", 6), ("right", 5))]
    (mistake,) = judge(trestle(*loads), M("A"), "8 C_y - 4*6 - 3*5 = 0").mistakes
    assert {mistake.force, *mistake.alike} == {"load B", "load D"}
    assert "one of the loads at B" in mistake.place


def test_a_number_too_many_is_told_with_all_that_it_may_be() -> None:
    problem = trestle(("B", "down", 6), ("D", "right", 6))
    (mistake,) = judge(problem, Fx(), "A_x + 6 - 6 = 0").mistakes
    assert mistake.place == (
        "There is one number too many in this line; it is that of the load at B, which does not "
        "count here, or that of the load at D, a second time."
    )


def test_more_candidates_than_one_can_take_in_are_not_listed() -> None:
    many = trestle(*((joint, "down", 6) for joint in "ABCD"))
    (mistake,) = judge(many, Fx("B"), "F_BC - F_AB - 6 = 0").mistakes
    assert len(mistake.alike) >= MOST_ALIKE
    assert mistake.place == (
        "One number stands for no force on joint B: say what it is, or leave it out."
    )


@pytest.mark.parametrize(
    ("about", "text"),
    [
        (Fy(), "A_y + C_y - 6 + 7 = 0"),
        (Fx(), "A_x + 8 - 6 = 0"),
        (Fy("A"), "A_y + 4/5 F_AD = 0"),
        (Fy("D"), "-7 - 3/5 F_AD + 3/5 F_CD - F_BD = 0"),
    ],
)
def test_one_force_is_named_where_no_other_has_its_number(about, text) -> None:
    (mistake,) = judge(APART, about, text).mistakes
    assert mistake.alike == ()
    assert force_in_words(APART, mistake.force)[4:] in mistake.place


@pytest.mark.parametrize(
    "seeds",
    [
        pytest.param(range(200), id="some"),
        pytest.param(range(200, 400), id="others", marks=pytest.mark.slow),
    ],
)
def test_the_forces_named_alike_are_others_and_each_is_named_once(seeds: range) -> None:
    named = 0
    for seed in seeds:
        wrong = wrong_line(seed, 1 + seed % 2)
        if wrong is None:
            continue
        verdict = judge(
            wrong.problem, wrong.about, wrong.text, senses=wrong.senses, known=wrong.known
        )
        place = " ".join(mistake.place for mistake in verdict.mistakes).lower()
        for mistake in verdict.mistakes:
            forces = [f for f in (mistake.force, *mistake.alike) if f is not None]
            named += len(forces) > 1
            assert len(set(forces)) == len(forces)
            if 1 < len(forces) <= MOST_ALIKE:
                assert all(force_in_words(wrong.problem, f).lower() in place for f in forces)
    assert named > 3
