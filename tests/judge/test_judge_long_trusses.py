"""Lines of trusses with many joints and loads, where not everything can be tried."""

from __future__ import annotations

from functools import cache

import pytest
from families import exact, plain_problem

from tutor import Fy, M, judge
from tutor.judge import Value, right_line
from tutor.judge.known_values import KnownValues
from tutor.model import Load, Problem, Support


@cache
def span(panels: int) -> Problem:
    """Panels 2 wide and 2 high, with 11, 12, 13, … down at the joints of the lower chord."""
    inner = range(1, panels)
    joints = [(f"L{i}", 2 * i, 0) for i in range(panels + 1)] + [(f"U{i}", 2 * i, 2) for i in inner]
    members = [f"L{i}-L{i + 1}" for i in range(panels)] + [f"L{i}-U{i}" for i in inner]
    members += [f"U{i}-U{i + 1}" for i in inner[:-1]] + ["L0-U1", f"L{panels}-U{panels - 1}"]
    members += [
        f"U{i}-L{i + 1}" if i < panels // 2 else f"L{i}-U{i + 1}" for i in range(1, panels - 1)
    ]
    loads = [Load(f"L{i}", (("down", exact(10 + i)),)) for i in inner]
    held = [Support("L0", "pin"), Support(f"L{panels}", "roller")]
    return plain_problem(joints, members, held, loads)


def named(panels: int, about, text: str) -> list[tuple[str, str | None]]:
    return [(m.code, m.force) for m in judge(span(panels), about, text).mistakes]


@pytest.mark.parametrize(
    ("total", "found"),
    [
        (206, ("missing", "load L5")),
        (191, ("sign", "load L5")),
        (214, ("arithmetic", None)),
    ],
)
def test_of_thirteen_loads_that_were_added_up_the_one_that_is_off_is_named(
    total: int, found: tuple[str, str | None]
) -> None:
    """They are 221 together; within the figures of the sum, the load nearest to what is missing."""
    assert named(14, Fy(), "L0_y + L14_y - 221 = 0") == []
    assert named(14, Fy(), f"L0_y + L14_y - {total} = 0") == [found]


def test_all_loads_counted_twice_are_doubled_each() -> None:
    doubled = [("double", f"load L{i}") for i in range(1, 14)]
    assert named(14, Fy(), "L0_y + L14_y - 442 = 0") == doubled


@pytest.mark.parametrize("panels", [14, 22])
def test_an_arm_measured_from_a_neighbour_is_known_in_a_long_truss(panels: int) -> None:
    rest = "".join(f" - {10 + i}*{2 * i}" for i in range(1, panels))
    end = f"L{panels}"
    right = f"{2 * panels} {end}_y{rest} = 0"
    assert named(panels, M("L0"), right) == []
    assert named(panels, M("L0"), f"{2 * panels - 4} {end}_y{rest} = 0") == [
        ("arm-from", f"{end}_y")
    ]


@pytest.mark.parametrize(
    ("panels", "left", "said"), [(10, 61.5, "slope-assumed"), (16, 117.5, "arithmetic")]
)
def test_which_part_a_heading_leaves_open_is_looked_for_up_to_thirty_joints(
    panels: int, left: float, said: str
) -> None:
    """The diagonal falls at 45 degrees; beyond, it is only said that the value does not follow."""
    text = f"Left part: {left} - 11 - 0.6 F_{{U1-L2}} = 0 → F_{{U1-L2}} = 5"
    known = {"L0_y": str(left)}
    (mistake,) = judge(span(panels), Value("U1-L2"), text, known=known).mistakes
    assert (mistake.code, mistake.force) == (said, "U1-L2")


def test_a_sum_about_another_support_or_load_of_a_long_truss_is_told_as_that() -> None:
    rest = "".join(f" + {10 + i}*{2 * (22 - i)}" for i in range(1, 22))
    said = judge(span(22), M("L0"), f"-44 L0_y{rest} = 0")
    assert said.true_of == M("L22")
    total = sum((10 + i) * 2 * (18 - i) for i in range(1, 22))
    said = judge(span(22), M("L0"), f"-36 L0_y + {total} + 8 L22_y = 0")
    assert said.true_of == M("L18")


def test_in_a_small_truss_an_arm_may_be_measured_from_any_joint() -> None:
    """E at 1 is no support, bears no load, and no member runs from it to D: 11 from E to D."""
    truss = plain_problem(
        [
            ("A", 0, 0),
            ("B", 4, 0),
            ("C", 8, 0),
            ("D", 12, 0),
            ("E", 1, 3),
            ("F", 6, 3),
            ("G", 10, 3),
        ],
        ("AB", "BC", "CD", "EF", "FG", "AE", "BE", "BF", "CF", "CG", "DG"),
        [Support("A", "pin"), Support("D", "roller")],
        [Load("B", (("down", exact(6)),)), Load("C", (("down", exact(9)),))],
    )
    said = judge(truss, M("A"), "11 D_y - 6*4 - 9*8 = 0").mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == [("arm-from", "D_y")]


@pytest.mark.parametrize("panels", [4, 14, 22])
@pytest.mark.parametrize("about", [Fy(), M("L0"), Fy("L1")])
def test_the_line_that_a_hint_ends_in_can_be_typed_whatever_the_truss(panels: int, about) -> None:
    line = right_line(span(panels), about, KnownValues({}, {}))
    assert judge(span(panels), about, line).right


def test_products_are_written_out_where_the_line_stays_short_enough_and_multiplied_where_not() -> (
    None
):
    line = right_line(span(4), M("L0"), KnownValues({}, {}))
    assert line == "8 L4_y - 11*2 - 12*4 - 13*6 = 0"
    line = right_line(span(45), M("L0"), KnownValues({}, {}))
    assert line.startswith("90 L45_y - 22 - 48 - 78 - 112 - 150")
    assert judge(span(45), M("L0"), line).right
