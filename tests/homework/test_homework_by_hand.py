"""Is a sheet with one belief told as a teacher beside it would, half done as well as full?"""

from __future__ import annotations

import pytest
from families import plain_problem, root
from sheets_by_hand import TRUSSES, Sheet, beliefs, sheet

from tutor import review, solve
from tutor.homework import Review
from tutor.model import Load, Support
from tutor.notation import Exact

HALF_DONE, FULL = 2, 9
BOAT_SHED = plain_problem(
    (("A", 0, 0), ("B", 14, 0), ("C", 8, 6), ("D", 4, 3), ("E", 11, 3), ("F", 8, 0)),
    ("AD", "DC", "CE", "EB", "AF", "FB", "DF", "CF", "EF"),
    (Support("A", "pin"), Support("B", "roller", Exact.of(110))),
    (Load("D", (("down", Exact.of(9)), ("right", Exact.of(4)))), Load("C", (("down", Exact.of(12)),)),
     Load("E", (("down", Exact.of(5)),))),
)  # fmt: skip
BOOKS = {
    "Beer and Johnston 6.1": {"AB": 1500, "AD": -2500, "BD": 2500, "DE": -3000, "BE": -3750, "BC": 5250,
                              "CE": -8750, "C_x": 0, "C_y": -7000, "E_y": 10000},
    "Meriam and Kraige 4/1": {"AB": 34.6, "AC": -17.3, "BC": -34.6, "BD": 34.6, "CD": 57.7, "CE": -63.5,
                              "DE": -11.55, "E_x": -69.3, "E_y": 10, "R_D": 80},
    "Hibbeler 6-1": {"BC": 0, "CD": -20, "BD": 33.3, "AD": -36.7, "AB": 0},
}  # fmt: skip
"""The answers as printed, from memory; those to AB of the last and its reactions are not printed."""


def reviewed(name: str, written: Sheet, before: Sheet | None = None) -> Review:
    problem = TRUSSES[name].problem

    def work(values: Sheet) -> dict[str, dict[str, str]]:
        parts = {"reactions": problem.reaction, "forces": problem.member}
        return {part: {n: values[n] for n in names if n in values} for part, names in parts.items()}

    return review(problem, work(written), None if before is None else work(before))


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


@pytest.mark.parametrize("factor", [-1.0, 1000.0])
def test_a_page_off_by_one_factor_is_told_so_where_roundings_come_to_much(factor: float) -> None:
    """EF is 3 % off at a flat angle by three figures carried on, and is right as it is."""
    values = {"A_x": 1.17, "A_y": 11.8, "R_B": 15.1, "AD": -19.7, "AF": 14.6, "DC": -14.7,
              "DF": -10.0, "CE": -16.6, "CF": 8.58, "EF": -3.65, "FB": 9.18, "EB": -20.3}  # fmt: skip
    parts = {"reactions": BOAT_SHED.reaction, "forces": BOAT_SHED.member}
    work = {p: {n: f"{factor * values[n]:.10g}" for n in names} for p, names in parts.items()}
    assert review(
        BOAT_SHED, {p: {n: f"{values[n]:g}" for n in ns} for p, ns in parts.items()}
    ).right
    result = review(BOAT_SHED, work)
    assert result.accounts[0].throughout
    assert result.accounts[0].mistake.code == ("unit" if factor > 0 else "tension-compression")


def test_arms_along_the_members_are_told_before_a_lone_distance_in_another_unit() -> None:
    """Moments about A with 5, 10, 14 and the root of 130 for arms; the rest is left blank."""
    reactions = {"A_x": "1.91", "A_y": "9.76", "R_B": "17.3"}
    result = review(BOAT_SHED, {"reactions": reactions})
    assert (result.first, result.accounts[0].mistake.code) == ("whole", "arm")


BRACKET = plain_problem(
    (("A", 0, 0), ("B", 0, 4), ("C", 3, 4), ("D", 6, 4), ("E", 3, 2)),
    ("AB", "BC", "CD", "AE", "ED", "BE", "CE"),
    (Support("B", "pin"), Support("A", "roller", Exact.of(0))),
    (Load("C", (("down", Exact.of(8)),)), Load("D", (("down", Exact.of(14)), ("right", Exact.of(3))))),
)  # fmt: skip


def test_a_member_flatter_than_45_degrees_with_its_components_exchanged_is_named() -> None:
    """At E, in both sums; AE, BE and AB were worked from it."""
    reactions = {"B_x": "-30", "B_y": "22", "A_x": "27"}
    forces = {"CD": "24", "ED": "-25.2", "BC": "24", "CE": "-8", "AE": "-29.6", "BE": "6.66", "AB": "16.4"}  # fmt: skip
    result = review(BRACKET, {"reactions": reactions, "forces": forces})
    mistake = result.accounts[0].mistake
    assert (result.first, mistake.code, mistake.force) == ("E", "component", "BE")


def test_a_page_of_reversed_members_begins_where_a_walk_may_begin() -> None:
    """D has two members, C three; of the others not all is written."""
    reactions = {"B_x": "-30", "B_y": "22", "A_x": "27"}
    forces = {"CD": "-24", "ED": "25.2", "BC": "-24", "CE": "8"}
    result = review(BRACKET, {"reactions": reactions, "forces": forces})
    assert (result.first, result.accounts[0].throughout) == ("D", True)


FOOTBRIDGE = plain_problem(
    tuple((n, x, 0) for n, x in zip("ABCD", (0, 4, 8, 12), strict=True))
    + tuple((n, x, root(12)) for n, x in zip("EFG", (2, 6, 10), strict=True)),
    ("AB", "BC", "CD", "AE", "EB", "BF", "FC", "CG", "GD", "EF", "FG"),
    (Support("A", "pin"), Support("D", "roller")),
    (Load("B", (("down", Exact.of(10)),)), Load("C", (("down", Exact.of(26)),)),
     Load("E", (("right", Exact.of(7)),))),
)  # fmt: skip


def test_one_is_sent_on_from_the_value_that_was_mended_last() -> None:
    """Reactions mended first, then joint A: on to E, although D has a new reaction as well."""
    old = {"A_y": "22", "D_y": "14", "AE": "-25.4", "AB": "19.7", "EB": "25.4", "EF": "-32.4",
           "BF": "-13.9", "BC": "39.3", "FC": "13.9", "FG": "-46.3", "CG": "16.1", "CD": "38.2",
           "GD": "-16.1"}  # fmt: skip
    new = {"A_y": "13.3", "D_y": "22.7", "AE": "-15.4", "AB": "14.7"}
    reactions = {"A_x": "-7", "A_y": new["A_y"], "D_y": new["D_y"]}
    forces = {name: new.get(name, text) for name, text in old.items() if name in FOOTBRIDGE.member}
    result = review(FOOTBRIDGE, {"reactions": reactions, "forces": forces}, {"forces": old})
    assert result.first == "E"
    assert "on your old AE" in result.said


def test_what_joints_give_from_reactions_that_are_taken_for_granted_follows_from_these() -> None:
    """Half of the load to each support: the walk from there closes nowhere at its end."""
    reactions = {"A_x": "-7", "A_y": "18", "D_y": "18"}
    forces = {"AE": "-20.8", "AB": "17.4", "EB": "20.8", "EF": "-27.8", "BF": "-9.25", "BC": "32.4",
              "FC": "9.25", "FG": "-37", "CG": "20.8", "CD": "26.6", "GD": "-20.8"}  # fmt: skip
    result = review(FOOTBRIDGE, {"reactions": reactions, "forces": forces})
    assert (result.first, result.accounts[0].mistake.code) == ("whole", "symmetry")
    assert {result.finding[name].state for name in ("A_y", "D_y")} == {"wrong"}
    assert {result.finding[name].state for name in forces} == {"follows"}


@pytest.mark.parametrize(("share", "code"), [(0.0, "missing"), (-1.0, "sign")])
def test_a_load_with_two_components_that_goes_wrong_as_a_whole_is_named(
    share: float, code: str
) -> None:
    """DC and DF from the two sums at D, by hand: they share what AD and the load leave."""
    across, up = 19.7 * 0.8 + share * 4, 19.7 * 0.6 - share * 9
    forces = {"AD": "-19.7", "AF": "14.6", "DC": f"{-(across / 0.8 + up / 0.6) / 2:.3g}",
              "DF": f"{(up / 0.6 - across / 0.8) / 2:.3g}"}  # fmt: skip
    reactions = {"A_x": "1.17", "A_y": "11.8", "R_B": "15.1"}
    result = review(BOAT_SHED, {"reactions": reactions, "forces": forces})
    assert result.first == "D"
    assert (code, "load D") in {(a.mistake.code, a.mistake.force) for a in result.accounts}
