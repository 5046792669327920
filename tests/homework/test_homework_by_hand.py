"""Is a sheet with one belief told as a teacher beside it would, half done as well as full?"""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from sheets_by_hand import TRUSSES, Sheet, beliefs, sheet

from tutor import review, solve
from tutor.homework import Review

HALF_DONE, FULL = 2, 9
BOOKS = {
    "Beer and Johnston 6.1": {"AB": 1500, "AD": -2500, "BD": 2500, "DE": -3000, "BE": -3750, "BC": 5250,
                              "CE": -8750, "C_x": 0, "C_y": -7000, "E_y": 10000},
    "Meriam and Kraige 4/1": {"AB": 34.6, "AC": -17.3, "BC": -34.6, "BD": 34.6, "CD": 57.7, "CE": -63.5,
                              "DE": -11.55, "E_x": -69.3, "E_y": 10, "R_D": 80},
    "Hibbeler 6-1": {"BC": 0, "CD": -20, "BD": 33.3, "AD": -36.7, "AB": 0},
}  # fmt: skip
"""The answers as printed, from memory; those to AB of the last and its reactions are not printed."""


def reviewed(
    name: str, written: Sheet, before: Sheet | None = None, order: Sequence[str] = ()
) -> Review:
    problem = TRUSSES[name].problem

    def work(values: Sheet) -> dict[str, dict[str, str]]:
        parts = {"reactions": problem.reaction, "forces": problem.member}
        return {part: {n: values[n] for n in names if n in values} for part, names in parts.items()}

    told = {"order": list(order)} if order else {}
    return review(problem, {**work(written), **told}, None if before is None else work(before))


def right(name: str, steps: int = FULL) -> Sheet:
    made = sheet(name, None, steps)
    assert made is not None
    return made


def wrong_in(written: Sheet, name: str) -> set[str]:
    """What is off by more than rounding to three figures on the way comes to."""
    true = {n: float(v) for n, v in right(name).items()}
    least = 0.005 * max(map(abs, true.values()))
    return {n for n in written if abs(float(written[n]) - true[n]) > least}


@pytest.mark.parametrize("name", BOOKS)
def test_the_answers_of_the_books_come_out(name: str) -> None:
    for unknown, printed in BOOKS[name].items():
        assert solve(TRUSSES[name].problem).values[unknown] == pytest.approx(
            printed, abs=0.05, rel=2e-3
        )
        assert float(right(name)[unknown]) == pytest.approx(printed, abs=0.05, rel=5e-3)


@pytest.mark.parametrize("name", TRUSSES)
def test_a_right_sheet_is_right_at_every_step(name: str) -> None:
    for steps in range(len(TRUSSES[name].walk) + 1):
        assert reviewed(name, right(name, steps)).right


@pytest.mark.parametrize("steps", [HALF_DONE, FULL])
@pytest.mark.parametrize("name", TRUSSES)
def test_a_belief_is_told_or_its_place_and_nothing_false_is_called_certain(
    name: str, steps: int
) -> None:
    walk = TRUSSES[name].walk
    told = []
    for belief in beliefs(name):
        written = sheet(name, belief, steps)
        assert written is not None, belief.name
        wrong = wrong_in(written, name)
        first = next(
            j for j, new in (("whole", TRUSSES[name].reactions), *walk.items()) if wrong & set(new)
        )
        result = reviewed(name, written)
        named = bool(result.accounts) and result.accounts[0].mistake.code in belief.means
        assert named or first in result.places[:2], belief.name
        assert steps == FULL or set(result.places) <= {"whole", *list(walk)[:steps]}, belief.name
        told.append(named)
        assert not [f for f in result.findings if f.state == "right" and f.name in wrong], (
            belief.name
        )
        for finding in result.findings:
            if finding.sure == "certain" and finding.state == "wrong" and finding.cause is not None:
                assert finding.cause.code in belief.means, (belief.name, finding.name)
    assert told.count(False) <= 1


@pytest.mark.parametrize("name", TRUSSES)
def test_a_sheet_mended_step_by_step_is_sent_on_until_all_is_right(name: str) -> None:
    """Each check is followed by putting right what was found at the first place, and nothing else."""
    belief = next(iter(beliefs(name)))
    written, true = sheet(name, belief, FULL), right(name)
    assert written is not None
    walk = {"whole": tuple(TRUSSES[name].reactions), **TRUSSES[name].walk}
    before: Sheet = {}
    result = reviewed(name, written)
    for _ in range(2 * len(walk)):
        if result.right:
            break
        wrong = wrong_in(written, name)
        members = TRUSSES[name].problem.member
        at = {p: {n for n in wrong if n not in members or p in (members[n].start, members[n].end)}
              for p in result.places[:2]}  # fmt: skip
        assert any(at.values()), (result.places, wrong)
        mend = next(names for names in at.values() if names)
        before |= {n: written[n] for n in wrong}
        written |= {n: true[n] for n in mend}
        result = reviewed(name, written, before)
        assert not [n for n in mend if result.finding[n].state != "right"]
    assert result.right


@pytest.mark.parametrize("steps", [3, FULL])
@pytest.mark.parametrize("name", TRUSSES)
def test_once_one_place_is_mended_the_rest_still_rests_on_the_belief(name: str, steps: int) -> None:
    """Or on the old reactions, where the belief is about these. Nothing of it is called certain."""
    places = {"whole": tuple(TRUSSES[name].reactions), **TRUSSES[name].walk}
    for belief in beliefs(name):
        written = sheet(name, belief, steps)
        assert written is not None
        wrong = wrong_in(written, name)
        first = next(place for place, new in places.items() if wrong & set(new))
        mended = {**written, **{n: right(name)[n] for n in wrong & set(places[first])}}
        left = wrong_in(mended, name)
        if len(left) < 2:
            continue
        result = reviewed(name, mended, written)
        named = {account.mistake.code for account in result.accounts[:1]}
        about_reactions = belief.reactions or belief.given or belief.along
        assert named & ({"carried"} if about_reactions else set(belief.means)), belief.name
        uniformly = not result.rests and result.accounts[0].throughout
        assert uniformly or set(result.rests) == left, belief.name
        assert {result.finding[n].state for n in left} <= {"wrong", "follows"}
        assert uniformly or "certain" not in {result.finding[n].sure for n in left}
        assert uniformly or "go on at" in result.said
        assert not {n for n in places[first] if n in mended} & set(result.rests)


@pytest.mark.parametrize("name", TRUSSES)
def test_reactions_that_are_blank_and_were_worked_with_wrongly_are_looked_at_in_any_order(
    name: str,
) -> None:
    """The order of the joints shows nothing of reactions that are not written."""
    walk = list(TRUSSES[name].walk)
    members = TRUSSES[name].problem.member
    for belief in beliefs(name):
        if not (belief.given or belief.along or belief.reactions):
            continue
        written = sheet(name, belief, FULL)
        assert written is not None
        forces = {n: value for n, value in written.items() if n in members}
        for order in (walk, walk[::-1]):
            assert "whole" in reviewed(name, forces, order=order).places, belief.name


@pytest.mark.parametrize("name", TRUSSES)
def test_a_belief_is_told_as_well_where_any_one_member_is_left_blank(name: str) -> None:
    told = []
    for belief in beliefs(name):
        if belief.times("") != 1.0 or belief.name == "arms along":
            continue
        for blank in TRUSSES[name].problem.member:
            written = sheet(name, belief, FULL)
            assert written is not None
            del written[blank]
            accounts = reviewed(name, written).accounts
            told.append(bool(accounts) and accounts[0].mistake.code in belief.means)
    assert 7 * told.count(True) >= 5 * len(told)


@pytest.mark.parametrize("name", TRUSSES)
def test_where_the_order_is_told_one_is_sent_on_to_the_first_joint_in_it_that_is_left(
    name: str,
) -> None:
    truss = TRUSSES[name]
    places = {"whole": tuple(truss.reactions), **truss.walk}
    for belief in beliefs(name):
        if belief.name not in ("sine for cosine", "radians", "component for force"):
            continue
        written = sheet(name, belief, FULL)
        assert written is not None
        wrong = wrong_in(written, name)
        first = next(place for place, new in places.items() if wrong & set(new))
        mended = {**written, **{n: right(name)[n] for n in wrong & set(places[first])}}
        left = wrong_in(mended, name)
        result = reviewed(name, mended, written, order=list(truss.walk))
        if result.rests:
            assert result.places[0] == next(p for p, new in places.items() if left & set(new))


@pytest.mark.parametrize("name", TRUSSES)
def test_a_belief_is_told_where_no_check_saw_what_was_mended(name: str) -> None:
    places = {"whole": tuple(TRUSSES[name].reactions), **TRUSSES[name].walk}
    for belief in beliefs(name):
        written = sheet(name, belief, FULL)
        assert written is not None
        wrong = wrong_in(written, name)
        first = next(place for place, new in places.items() if wrong & set(new))
        if first == "whole" and len(belief.given or belief.reactions) + belief.along:
            continue
        mended = {**written, **{n: right(name)[n] for n in wrong & set(places[first])}}
        if len(wrong_in(mended, name)) < 3:
            continue
        result = reviewed(name, mended)
        assert result.accounts, belief.name
        assert result.accounts[0].mistake.code in belief.means, belief.name


def test_a_joint_that_closes_for_who_holds_the_belief_is_named_before_one_that_does_not() -> None:
    """B closes with the swapped components in one of its sums only, D in both."""
    name = "Hibbeler 6-1"
    written = sheet(name, next(iter(beliefs(name))), FULL)
    assert written is not None
    assert reviewed(name, written).first == "D"


def test_what_else_is_wrong_where_an_old_value_stands_rests_on_it_too() -> None:
    """DE was found with exchanged components from the old AD; BD from the old AD alone."""
    name = "Beer and Johnston 6.1"
    written = sheet(name, next(iter(beliefs(name))), HALF_DONE)
    assert written is not None
    result = reviewed(name, {**written, "AB": "1500", "AD": "-2500"}, written)
    assert set(result.rests) == {"BD", "DE"}
    assert result.places[0] == "D"


@pytest.mark.parametrize(
    ("name", "belief", "steps", "mended", "said"),
    [
        (
            "Beer and Johnston 6.1",
            "sine for cosine",
            FULL,
            "A",
            "BD, DE, BE, BC and CE look as if worked out before AB and AD were put right: go on at joint C.",
        ),
        (
            "loading bay",
            "members reversed",
            3,
            "D",
            "AB, AC, BC and CD look as if worked out before BD was put right: go on at joint A.",
        ),
    ],
)
def test_where_one_joint_was_mended_one_is_sent_on_though_another_place_explains_the_rest(
    name: str, belief: str, steps: int, mended: str, said: str
) -> None:
    written = sheet(name, next(b for b in beliefs(name) if b.name == belief), steps)
    assert written is not None
    true = {n: right(name)[n] for n in TRUSSES[name].walk[mended]}
    assert reviewed(name, {**written, **true}).said == said
