"""Is what is left blank never blamed, and asked for where it would tell more?

The trusses are our own; `sheets_by_hand` works their sheets out with numpy and plain geometry alone.
"""

from __future__ import annotations

import pytest
import sheets_by_hand
from families import plain_problem
from sheets_by_hand import Belief, Truss, sheet
from students_work import homework

from tutor import review
from tutor.homework import Review
from tutor.model import Load, Problem, Support
from tutor.notation import Exact


def _load(at: str, **pushes: int) -> Load:
    return Load(at, tuple((way, Exact.of(size)) for way, size in pushes.items()))


AWNING = Truss(
    plain_problem(
        (("A", 0, 0), ("B", 0, 4), ("C", 3, 4), ("D", 3, 2), ("E", 6, 4)),
        ("AB", "AD", "BD", "BC", "CD", "DE", "CE"),
        (Support("A", "pin"), Support("B", "roller", Exact.of(0))),
        (_load("C", down=6), _load("E", down=9)),
    ),
    {"A_x": ("A", (1, 0)), "A_y": ("A", (0, 1)), "B_x": ("B", (1, 0))},
    {"C": (0, -6), "E": (0, -9)},
    {"E": ("DE", "CE"), "C": ("CD", "BC"), "D": ("BD", "AD"), "B": ("AB",)},
)
RAMP = Truss(
    plain_problem(
        (("A", 0, 0), ("B", 9, 0), ("C", 3, 4), ("D", 6, 4), ("E", 5, 0)),
        ("AC", "AE", "CD", "CE", "DE", "BD", "BE"),
        (Support("A", "pin"), Support("B", "roller", Exact.of(120))),
        (_load("C", down=10, right=4), _load("D", down=16)),
    ),
    {"A_x": ("A", (1, 0)), "A_y": ("A", (0, 1)), "R_B": ("B", (-0.5, 0.75**0.5))},
    {"C": (4, -10), "D": (0, -16)},
    {"A": ("AC", "AE"), "C": ("CD", "CE"), "E": ("DE", "BE"), "D": ("BD",)},
)
"""CE is nearly nothing here, so that what is rounded on the way shows in it."""


SEEDS = (1, 5, 6, 9, 11, 14)


@pytest.fixture
def own(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sheets_by_hand.TRUSSES, "awning", AWNING)
    monkeypatch.setitem(sheets_by_hand.TRUSSES, "ramp", RAMP)


def reviewed(problem: Problem, values: dict[str, str]) -> Review:
    parts = {"reactions": problem.reaction, "forces": problem.member}
    return review(
        problem,
        {part: {n: values[n] for n in names if n in values} for part, names in parts.items()},
    )


@pytest.mark.usefixtures("own")
def test_a_joint_not_reached_is_not_blamed_where_no_slip_explains_the_one_that_was() -> None:
    """30 for the slope at E; at B, of which two members are blank, a slip would leave the same."""
    written = sheet("awning", Belief("30", (), see=sheets_by_hand._sloped(30)), 2)
    assert written is not None
    result = reviewed(AWNING.problem, written)
    assert result.first == "E"
    assert result.accounts[0].mistake.code == "slope"


@pytest.mark.parametrize("steps", [2, 9])
@pytest.mark.parametrize(
    ("code", "factor"), [("tension-compression", -1.0), ("unit", 1000.0), ("unit", 0.2248)]
)
@pytest.mark.usefixtures("own")
def test_one_factor_through_a_page_is_told_where_roundings_were_carried_on(
    code: str, factor: float, steps: int
) -> None:
    written = sheet("ramp", Belief("all", (), times=lambda _: factor), steps)
    assert written is not None
    result = reviewed(RAMP.problem, written)
    assert result.accounts[0].mistake.code == code
    assert result.accounts[0].throughout


@pytest.mark.usefixtures("own")
def test_one_value_off_makes_no_factor_of_the_others() -> None:
    written = sheet("ramp", Belief("all", (), times=lambda _: -1.0), 9)
    assert written is not None
    result = reviewed(RAMP.problem, {**written, "CD": "3"})
    assert not (result.accounts and result.accounts[0].throughout)


def without_reactions(seed: int) -> tuple[Problem, dict[str, str], dict[str, str]] | None:
    """Every member force of a sheet with one slip, and its reactions, which are left blank."""
    both = homework(seed)
    if both is None:
        return None
    work = both[0].work()
    return both[0].problem, work["forces"], work["reactions"]  # type: ignore[return-value]


def test_the_blank_that_would_decide_does_so_when_it_is_entered() -> None:
    """Most often: where the slip was made at two joints as well, it still narrows down the places."""
    asked = decided = 0
    for problem, forces, reactions in filter(None, map(without_reactions, SEEDS)):
        result = reviewed(problem, forces)
        if result.decides is None or len(result.places) < 2:
            continue
        assert f"Enter {result.decides}: it would decide." in result.said
        name = result.decides
        assert name not in forces
        then = reviewed(problem, {**forces, name: reactions[name]})
        asked += 1
        decided += len(then.places) < len(result.places)
    assert asked >= 3
    assert decided >= 0.75 * asked, (decided, asked)


def test_nothing_is_asked_for_that_tells_no_place_from_another() -> None:
    """A full sheet has no blank, and one whose blanks both stories fill alike is told to be undecided."""
    open_still = 0
    for seed in SEEDS:
        made = without_reactions(seed)
        if made is None:
            continue
        problem, forces, reactions = made
        full = reviewed(problem, {**forces, **reactions})
        assert full.decides is None
        assert full.more is None
        result = reviewed(problem, forces)
        if len(result.places) > 1 and result.decides is None and result.more is None:
            assert "do not tell which" in result.said
            open_still += 1
    assert open_still


@pytest.mark.usefixtures("own")
def test_a_value_beside_blanks_that_cannot_be_decided_is_told_with_what_would_tell_more() -> None:
    written = sheet("ramp", Belief("30", (), see=sheets_by_hand._sloped(30)), 2)
    assert written is not None
    result = reviewed(RAMP.problem, written)
    assert result.finding["CE"].state == "unchecked"
    assert "CE cannot be decided with so much left blank." in result.said
    assert result.more in {"DE", "BE", "BD"}
    assert f"Enter {result.more} next" in result.said


ROOF = plain_problem(
    (("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 2, 3), ("E", 6, 3)),
    ("AB", "BC", "AD", "DB", "BE", "EC", "DE"),
    (Support("A", "pin"), Support("C", "roller")),
    (_load("B", down=12),),
)


def test_of_few_values_only_a_joint_at_which_two_of_them_meet_is_looked_at() -> None:
    assert review(ROOF, {"forces": {"DB": "-7.211", "AB": "4"}}).places == ("B",)


def test_a_lone_value_a_thousand_times_too_small_is_in_another_unit() -> None:
    cause = review(ROOF, {"forces": {"DE": "-0.008"}}).finding["DE"].cause
    assert cause is not None
    assert cause.code == "unit"


def test_three_values_reversed_throughout_are_told_as_one_mistake() -> None:
    frame = plain_problem(
        (("A", 0, 0), ("B", 4, 0), ("C", 1, 2)),
        ("AB", "BC", "CA"),
        (Support("A", "pin"), Support("B", "roller")),
        (_load("C", down=6, right=4),),
    )
    result = review(frame, {"forces": {"AB": "-5.25", "BC": "6.31", "CA": "2.795"}})
    assert {f.cause.code for f in result.findings if f.cause} == {"tension-compression"}
