"""What does a page with an entry or two left out still tell, and one with nothing that can be read?

The truss is our own; a page is marked as a lecturer would, common practice, no source.
"""

from __future__ import annotations

from collections.abc import Collection
from fractions import Fraction

import pytest
from lines import figures
from pages import TRUSSES
from students_work import Homework, homework
from test_homework_misdrawn import FRAME, moved

from tutor import review
from tutor.homework import Review
from tutor.homework.deciding import closing, separating
from tutor.homework.places import Story, Turn
from tutor.homework.reading import FilledIn
from tutor.homework.sheet import Bodies, sheets
from tutor.homework.work import Entry
from tutor.model import Problem
from tutor.statics import solve


def page(worked: Problem, without: Collection[str], wrong: str = "") -> Review:
    """A page on FRAME with the values of `worked`, some left out and one of them wrong."""
    values = {
        name: figures(1.3 * value if name == wrong else value, 4)
        for name, value in solve(worked).values.items()
        if name not in without
    }
    return review(
        FRAME,
        {
            "reactions": {n: v for n, v in values.items() if n in FRAME.reaction},
            "forces": {n: v for n, v in values.items() if n in FRAME.member},
        },
    )


def test_numbers_of_another_truss_are_known_though_one_was_not_written() -> None:
    other = moved(FRAME, "D", Fraction(6), Fraction(3))
    assert "fit a truss with D at 6, 3" in page(other, ["CB"]).said


@pytest.mark.parametrize(("wrong", "places"), [("CD", ("C", "D")), ("AE", ("E", "A"))])
def test_where_a_joint_lacks_an_entry_that_was_found_out_of_order_both_ends_may_be_wrong(
    wrong: str, places: tuple[str, ...]
) -> None:
    assert page(FRAME, ["AC", "CB"], wrong).places == places


def test_a_page_without_an_entry_that_can_be_read_holds_nothing_to_check() -> None:
    result = review(FRAME, {"forces": {"AC": "abc"}})
    assert result.said.startswith("There was nothing to check yet.")


@pytest.mark.parametrize("seed", range(12))
def test_what_follows_from_a_plain_slip_follows_though_another_member_is_blank(seed: int) -> None:
    """The blank was worked with; a member at the joint of the slip is none of these."""
    both = homework(seed)
    if both is None:
        return
    problem, work = both[0].problem, both[0].work()
    full = review(problem, work)
    if full.places != (both[0].slips[0].place,):
        return
    after = {f.name for f in full.findings if f.state == "follows"}
    for blank in problem.member:
        if full.places[0] in (problem.member[blank].start, problem.member[blank].end):
            continue
        forces = {name: value for name, value in work["forces"].items() if name != blank}
        result = review(problem, {**work, "forces": forces})
        if result.clear and result.places == full.places:
            assert {result.finding[n].state for n in after - {blank}} <= {"follows"}, blank


@pytest.mark.parametrize("seed", [1, 4, 5, 7, 15])
def test_what_rests_on_a_value_mended_since_is_told_though_another_member_is_blank(
    seed: int,
) -> None:
    """The member that is blank was right from the first, and is so on both pages."""
    both = homework(seed)
    assert both is not None
    done, right = both
    changed = {name for name in done.values if done.values[name] != right.values[name]}
    here = changed & set(done.solved[done.slips[0].place])
    values = {**done.values, **{name: right.values[name] for name in here}}
    mended = Homework(done.problem, digits=done.digits, values=values).work()
    for blank in [name for name in mended["forces"] if name not in changed][:3]:
        now, before = (
            {**work, "forces": {n: v for n, v in work["forces"].items() if n != blank}}
            for work in (mended, done.work())
        )
        result = review(done.problem, now, before)
        assert result.rests, blank
        assert set(result.rests) <= changed - here


def begun_at(place: str, **blanks: float) -> tuple[Story, FilledIn]:
    """A story that begins at a place, with its blanks filled in to 0.3."""
    entries = {name: Entry(name, value, 0.3, "") for name, value in blanks.items()}
    return Story((Turn(place, (), ()),), {}, frozenset()), FilledIn(Bodies(), entries, ())


@pytest.mark.parametrize(("other", "asked"), [(10.5, None), (10.7, "AB"), (9.5, None), (9.3, "AB")])
def test_a_blank_is_asked_for_where_stories_differ_in_it_by_more_than_both_roundings(
    other: float, asked: str | None
) -> None:
    stories = [begun_at("A", AB=10.0, BC=3.0), begun_at("B", AB=other, BC=3.0)]
    assert separating(stories, ["AB", "BC"]) == ((asked, True) if asked is not None else None)


def test_of_two_blanks_the_one_that_tells_from_more_places_is_asked_for() -> None:
    first, others = begun_at("A", AB=1.0, BC=1.0), [("B", 1.0, 5.0), ("C", 5.0, 5.0)]
    stories = [first, *(begun_at(place, AB=ab, BC=bc) for place, ab, bc in others)]
    assert separating(stories, ["AB", "BC"]) == ("BC", True)
    assert separating(stories, ["AB"]) == ("AB", False)
    assert separating(stories, []) is None
    assert separating([first, begun_at("A", AB=5.0)], ["AB"]) is None


@pytest.mark.parametrize(("undecided", "asked"), [("DB", "AD"), ("CD", None), ("BC", None)])
def test_a_blank_is_asked_for_where_a_joint_does_not_give_a_value_without_it(
    undecided: str, asked: str | None
) -> None:
    """D gives CD without AD, since that lies along the other two; DB it does not."""
    rafters = TRUSSES["rafters"]
    entries = {n: Entry(n, v, 0.01, "") for n, v in solve(rafters).values.items() if n != "AD"}
    assert closing(sheets(rafters, entries), {undecided}) == asked
