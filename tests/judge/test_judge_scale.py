"""Is each step of the scale seen, halved and doubled, in what is said first of a line?

The trusses are our own; what is said of each line is what a lecturer would say, common practice, no
source.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from importlib import import_module
from importlib.util import module_from_spec, spec_from_file_location
from itertools import pairwise
from types import ModuleType
from typing import NamedTuple

import pytest
from families import exact, plain_problem

from tutor.judge import scale
from tutor.judge.mistakes import KINDS
from tutor.model import Load, Problem, Support

STEPS = {name: getattr(scale, name) for name in ("SOMEWHAT", "A_SLIP", "FAR_LESS")}
ORDERS = {name: getattr(scale, name) for name in ("HARDLY", "SLIGHTLY")}


def warren() -> Problem:
    """A_y = 12.5, E_y = (10*3 + 6*6 + 8*9)/12 = 11.5; all diagonals rise 4 over 3."""
    return plain_problem(
        [("A", 0, 0), ("B", 3, 4), ("C", 6, 0), ("D", 9, 4), ("E", 12, 0)],
        ("AB", "AC", "BC", "BD", "CD", "CE", "DE"),
        [Support("A", "pin"), Support("E", "roller")],
        [Load(joint, (("down", exact(size)),)) for joint, size in (("B", 10), ("C", 6), ("D", 8))],
    )


def gable() -> Problem:
    """The rafters rise 2 over 1: 0.447 of each is level."""
    return plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 2, 4)],
        ("AB", "AC", "BC"),
        [Support("A", "pin"), Support("B", "roller")],
        [Load("C", (("down", exact(18)),))],
    )


def wall() -> Problem:
    """About D: 2 A_y + 3 B_x + 10*2 = 0."""
    return plain_problem(
        [("A", 0, 0), ("B", 0, 3), ("C", 4, 0), ("D", 2, 0)],
        ("AB", "AD", "CD", "BC", "BD"),
        [Support("A", "pin"), Support("B", "roller", exact(0))],
        [Load("C", (("down", exact(10)),))],
    )


def leg() -> Problem:
    """The reaction at C rises at 60°: about B, 3 A_x + (8 sin 60° + 3 cos 60°) R_C = 0."""
    return plain_problem(
        [("A", 0, 0), ("B", 0, 3), ("C", 8, 0)],
        ("AB", "BC", "AC"),
        [Support("A", "pin"), Support("C", "roller", exact(60))],
        [Load("B", (("right", exact(12)),))],
    )


class Wrong(NamedTuple):
    """A wrong line and what is said of it first."""

    truss: Callable[[], Problem]
    about: tuple[str, ...]
    text: str
    said: tuple[tuple[str, str | None], ...]
    known: Mapping[str, str] = {}


REACTIONS = {"A_x": "0", "A_y": "12.5"}
LINES = (
    Wrong(warren, ("M", "A"), "12 E_y - 10*3 - 8*6 - 6*6 = 0", (("arm-from", "load D"),)),
    Wrong(warren, ("M", "A"), "12 E_y - 10*3 - 8*9 - 6*9 = 0", (("arm-from", "load C"),)),
    Wrong(warren, ("Fy",), "A_y + E_y - 6 = 0", (("missing", "load B"), ("missing", "load D"))),
    Wrong(warren, ("Fy", "A"), "12.5 + 0.33 F_AB = 0", (("not-equilibrium", "AB"),), REACTIONS),
    Wrong(warren, ("Fy", "A"), "12.5 + 2/5 F_AB = 0", (("not-equilibrium", "AB"),), REACTIONS),
    Wrong(gable, ("Fx", "A"), "F_AB + 0.4 F_AC = 0", (("rounding", "AC"),), {"A_x": "0"}),
    Wrong(
        gable,
        ("Fx", "A"),
        "-F_AB - 0.447*10.06 = 0",
        (("minus", "AC"),),
        {"A_x": "0", "AC": "-10.06"},
    ),
    Wrong(warren, ("M", "A"), "12 E_y - 138000 = 0", (("arm-unit", "E_y"),)),
    Wrong(wall, ("M", "D"), "2 A_y + B_x + 10*5 = 0", (("no-arm", "B_x"), ("arm", "load C"))),
    Wrong(leg, ("M", "B"), "3 A_x + 8*R_C*sin(60) = 0", (("component-missing", "R_C"),)),
)


def said_by(room: ModuleType) -> list[tuple[tuple[str, str | None], ...]]:
    """What this judge says first of each line."""
    found = []
    for line in LINES:
        about = getattr(room, line.about[0])(*line.about[1:])
        verdict = room.judge(line.truss(), about, line.text, known=line.known)
        found.append(tuple((mistake.code, mistake.force) for mistake in verdict.mistakes))
    return found


def said_where(**steps: float) -> list[tuple[tuple[str, str | None], ...]]:
    """What a judge says whose steps are these, loaded anew beside the one that is there."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(sys.modules["tutor"], "judge", sys.modules["tutor.judge"], raising=False)
        for name in [name for name in sys.modules if f"{name}.".startswith("tutor.judge.")]:
            patch.delitem(sys.modules, name)
        spec = spec_from_file_location(scale.__name__, scale.__file__)
        assert spec is not None
        assert spec.loader is not None
        other = module_from_spec(spec)
        spec.loader.exec_module(other)
        for name, size in steps.items():
            setattr(other, name, size)
        sys.modules[scale.__name__] = other
        try:
            return said_by(import_module("tutor.judge"))
        finally:
            for name in [name for name in sys.modules if f"{name}.".startswith("tutor.judge.")]:
                del sys.modules[name]


SAID = [line.said for line in LINES]


def test_of_each_line_the_likeliest_is_said_first() -> None:
    assert said_where() == SAID


@pytest.mark.parametrize("factor", [0.5, 2.0])
@pytest.mark.parametrize("name", STEPS)
def test_a_step_halved_or_doubled_is_seen(name: str, factor: float) -> None:
    assert said_where(**{name: factor * STEPS[name]}) != SAID


@pytest.mark.parametrize("factor", [0.25, 4.0])
def test_an_order_is_no_size_and_none_is_seen_where_both_are_made_larger_or_smaller(
    factor: float,
) -> None:
    assert said_where(**{name: factor * size for name, size in ORDERS.items()}) == SAID


@pytest.mark.parametrize(
    "orders",
    [
        {"HARDLY": 0.0},
        {"HARDLY": ORDERS["SLIGHTLY"]},
        {"SLIGHTLY": ORDERS["HARDLY"]},
        {"SLIGHTLY": STEPS["SOMEWHAT"]},
    ],
    ids=str,
)
def test_an_order_that_is_none_or_another_one_is_seen(orders: dict[str, float]) -> None:
    assert said_where(**orders) != SAID


def test_what_is_rarer_in_a_line_is_not_commoner_in_numbers_alone() -> None:
    degrees = sorted((0.0, *ORDERS.values(), *STEPS.values()))
    alone = list(map(scale.in_numbers, degrees))
    assert alone[0] == 0.0
    assert all(2 * one <= other for one, other in pairwise(alone))


def test_the_degree_of_a_mistake_is_one_of_the_scale() -> None:
    sizes = {0.0, *STEPS.values(), *ORDERS.values()}
    assert [kind.code for kind in KINDS.values() if kind.rare not in sizes] == []
    assert {kind.rare for kind in KINDS.values()} == sizes
