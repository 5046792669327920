"""A member said to be zero: what forbids it, and hints that go on from there."""

from __future__ import annotations

import pytest
from walks import FOLDER, MAST, walk_to

from tutor.lesson.place import NoForce
from tutor.model import load_problem
from tutor.statics import solve

FILES = sorted(path for path in FOLDER.glob("*.toml") if path.name != "set.toml")


@pytest.mark.parametrize(
    ("member", "rule", "code", "place"),
    [
        ("AC", "two", "zero-loaded", "a load acts as well"),
        ("AB", "three", "zero-loaded", "a reaction acts as well"),
        ("BC", "two", "zero-loaded", "a load acts as well"),
    ],
)
def test_what_forbids_a_member_to_be_zero_is_told_apart(member, rule, code, place) -> None:
    lesson, do = walk_to("joints")
    reply = do("zero", member=member, rule=rule)
    assert lesson.state.tries[-1].codes == (code,), reply.text
    told = [reply.text, *(do("hint").text for _ in range(3))]
    assert place in told[2]
    assert len(set(told)) == 4


def test_a_third_member_that_can_balance_the_first_is_named_in_the_third_hint() -> None:
    lesson, do = walk_to("joints", load_problem(FOLDER / "boat-shed-roof.toml"))
    do("zero", member="DE", rule="two")
    assert lesson.state.tries[-1].codes == ("zero-third-member",)
    assert "the force in BD can balance DE" in [do("hint").text for _ in range(2)][1]


def test_a_zero_member_by_another_rule_is_told_so() -> None:
    lesson, do = walk_to("joints", MAST)
    do("zero", member="EF", rule="three")
    assert lesson.state.tries[-1].codes == ("zero-rule",)
    assert "EF" not in lesson.state.result
    told = lesson.state.hints[NoForce("EF")].mistakes[0].text
    assert told.startswith("That rule looks for a joint where three members meet, two of them in")
    assert "it is not so at E or F" in told or "it is not so at F or E" in told


def test_the_general_rule_shows_whatever_a_special_one_shows() -> None:
    for name in [m.name for m in MAST.members]:
        taken = []
        for rule in ("two", "three", "along"):
            _, do = walk_to("joints", MAST)
            taken.append(do("zero", member=name, rule=rule).accepted)
        assert taken[2] >= max(taken[:2]), name


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
@pytest.mark.parametrize("rule", ["two", "three", "along"])
def test_no_member_that_carries_a_force_is_taken_for_zero_and_each_is_told_why(path, rule) -> None:
    problem = load_problem(path)
    truth = solve(problem).values
    lesson, do = walk_to("joints", problem)
    for member in problem.members:
        if abs(truth[member.name]) > 1e-9:
            reply = do("zero", member=member.name, rule=rule)
            assert not reply.accepted
            mistake = lesson.state.hints[NoForce(member.name)].mistakes[0]
            assert mistake.code in ("zero-loaded", "zero-third-member")
            joint = mistake.place.removeprefix("At ").partition(" ")[0]
            assert joint in (member.start, member.end)
            assert not any(c.isdigit() for c in mistake.place if c not in "".join(problem.joint))


def test_a_member_said_to_be_zero_while_reactions_are_asked_for_has_its_own_hints() -> None:
    _, do = walk_to("reactions")
    do("zero", member="AB", rule="two")
    assert "acts as well" in [do("hint").text for _ in range(2)][1]


def test_the_rule_that_shows_both_members_of_a_corner_records_both_at_once() -> None:
    lesson, do = walk_to("joints", MAST)
    reply = do("zero", member="DF", rule="two")
    assert "both are zero" in reply.text
    assert {name: lesson.state.result[name].value for name in ("DF", "EF")} == {"DF": 0, "EF": 0}
    assert [t.place for t in lesson.state.tries if t.step == "joints"] == ["zero DF"]
    do("undo")
    assert not {"DF", "EF"} & set(lesson.state.result)


def test_the_general_rule_records_the_one_member_it_was_named_for() -> None:
    lesson, do = walk_to("joints", MAST)
    do("zero", member="DF", rule="along")
    assert "DF" in lesson.state.result
    assert "EF" not in lesson.state.result


def test_the_second_member_of_a_corner_leaves_what_the_first_has() -> None:
    lesson, do = walk_to("joints", MAST)
    do("zero", member="DF", rule="along")
    first = lesson.state.result["DF"]
    do("zero", member="EF", rule="two")
    assert lesson.state.result["DF"] is first
