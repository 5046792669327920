"""What is said of a page, of a body and of an entry: how much is left over, where to look, what follows."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from families import plain_problem
from pages import TRUSSES

from tutor.homework import LEVELS, Finding, Review, hint, markdown, review
from tutor.homework.words import outcome, summary
from tutor.judge import Equation, Fx, Fy, Value
from tutor.model import Load, Support
from tutor.notation import Exact
from tutor.statics import joint_body, solve

MAST = plain_problem(
    (("A", 0, 0), ("B", 8, 0), ("C", 4, 3)),
    ("AB", "BC", "AC"),
    (Support("A", "pin"), Support("B", "roller")),
    (Load("C", (("down", Exact.of(12)), ("right", Exact.of(6)))),),
)
"""AB = 11, BC = -13.75, AC = -6.25"""


WHEN = datetime(2031, 5, 6, 7, 8, tzinfo=UTC)


def page(**forces: str) -> Review:
    reactions = {"A_x": "-6", "A_y": "3.75", "B_y": "8.25"}
    right = {"AB": "11", "BC": "-13.75", "AC": "-6.25"}
    return review(MAST, {"reactions": reactions, "forces": {**right, **forces}})


LEFT = (
    (0.2, "less than a fifth of"),
    (0.4, "about a third of"),
    (0.6, "about half of"),
    (9, "most of"),
)


@pytest.mark.parametrize(
    ("value", "left"),
    [
        ("12", "a little is"),
        ("12.5", "less than a fifth of"),
        ("15", "less than a fifth of"),
        ("17", "about a third of"),
        ("24", "about a third of"),
        ("26", "about half of"),
        ("30", "about half of"),
        ("50", "most of"),
    ],
)
def test_how_much_of_a_body_is_left_over_is_said_in_words(value: str, left: str) -> None:
    """Of 11 + 5 + 6 added up at A, with AB off by 1, by 1.5, by 4, …"""
    said = [closure.said for closure in page(AB=value).closures]
    assert said[1].startswith(f"Joint A does not close: {left}")
    assert said[3] == "Joint C closes."


@pytest.mark.parametrize("kept", [2, 3, 4])
@pytest.mark.parametrize("truss", TRUSSES)
def test_a_body_is_called_by_the_sum_that_is_worst_off_in_it(truss: str, kept: int) -> None:
    """Every member of a page wrong by a size of its own, and each sum added up here once more."""
    problem = TRUSSES[truss]
    values = {
        n: round(v * (1 + 0.3 * k), kept) for k, (n, v) in enumerate(solve(problem).values.items())
    }
    done = {
        "reactions": {r.name: values[r.name] for r in problem.reactions},
        "forces": {m.name: values[m.name] for m in problem.members},
    }
    said = {closure.name: closure.said for closure in review(problem, done).closures}
    for joint in problem.joints:
        sums = [[], []]
        for force in joint_body(problem, joint.name).forces:
            size = force.size if force.size is not None else values[force.name]
            for axis, way in zip(sums, (force.x, force.y), strict=True):
                axis.append(way * size)
        worst = max(abs(sum(axis)) / (sum(map(abs, axis)) or 1) for axis in sums)
        if worst > 0.02:
            (words,) = [words for most, words in LEFT if worst <= most][:1]
            assert said[joint.name].endswith(f"{words} what was added up is left over."), (
                joint,
                worst,
            )


@pytest.mark.parametrize(
    ("forces", "look", "place"),
    [
        ({"AB": "20"}, "At joint A: This value does not follow", "Solve for AB once more"),
        ({"AC": "6.25"}, "At joint A: The size is right; the sign is not.", "A sign was lost on"),
        (
            {"AB": "5", "BC": "-6.25"},
            "At joint A: On joint A three forces have a horizontal component; not all of them are in your work.",
            "The reaction A_x is left out.",
        ),
        (
            {"AC": "6.25", "AB": "1", "BC": "-1.25"},
            "At joint A: The sizes fit, but something in your work points the other way.",
            "The force in AC has the wrong sign",
        ),
    ],
)
def test_the_first_hint_says_at_which_joint_and_the_third_at_which_force(
    forces: dict[str, str], look: str, place: str
) -> None:
    said = page(**forces)
    assert hint(said, "look").startswith(look)
    assert hint(said, "place").startswith(place)
    assert not hint(said, "reason").startswith("At ")


@pytest.mark.parametrize(
    ("sure", "words"),
    [
        ("certain", "is wrong only because of what came before"),
        ("likely", "is wrong, most likely only because of what came before"),
        ("unclear", "is wrong; how it came about is not clear"),
    ],
)
def test_what_follows_from_a_mistake_is_told_as_sure_as_it_is(sure, words: str) -> None:
    assert words in outcome(Finding("AB", "follows", None, sure))


@pytest.mark.parametrize(
    ("places", "where"),
    [
        ("AB", "joint A or joint B"),
        ("ABCD", "joint A or joint B or joint C or joint D"),
        ("ABCDE", "joint A or joint B or joint C or one of 2 others"),
    ],
)
def test_of_many_places_the_first_four_are_named(places: str, where: str) -> None:
    said = summary(Review((Finding("AB", "wrong"),), "A", tuple(places)))
    assert said == f"It first goes wrong at {where}; the numbers alone do not tell which of them."


@pytest.mark.parametrize(
    ("names", "said"),
    [
        (("AB",), "AB is farther"),
        (("AB", "AC", "BC", "BD"), "AB, AC, BC and BD are farther"),
        (("AB", "AC", "BC", "BD", "CD"), "AB, AC, BC and 2 others are farther"),
    ],
)
def test_of_many_coarse_values_the_first_are_named(names: tuple[str, ...], said: str) -> None:
    assert f" {said} off" in summary(Review((), None, coarse=names))


@pytest.mark.parametrize(
    "forces",
    [
        {"AB": "6.25 C", "AC": "11 T"},
        {"AB": "6.25 T", "AC": "11 C"},
        {"AB": "-6.25", "AC": "11"},
    ],
)
@pytest.mark.parametrize("order", [[], ["A", "C", "B"]])
def test_two_results_of_a_joint_in_each_others_rows_are_told_so(
    forces: dict[str, str], order: list[str]
) -> None:
    """With the letters they had, or with the sizes exchanged alone; nobody is told which row is which."""
    reactions = {"A_x": "-6", "A_y": "3.75", "B_y": "8.25"}
    work = {"reactions": reactions, "forces": {"BC": "-13.75", **forces}, "order": order}
    result = review(MAST, work)
    assert result.places == ("A",)
    (account,) = result.accounts
    assert account.mistake.text == "A number here may stand in the wrong row."
    assert account.mistake.place == (
        "Compare the row of AB with your work: is it the value of another row?"
    )


TWO_WAYS = {"BC": "6.25 C", "AC": "13.75 C"}
"""At C with 6 to the left, or each in the other's row."""


def test_where_two_mistakes_fit_about_as_well_a_hint_tells_both() -> None:
    result = page(**TWO_WAYS)
    assert len(result.accounts) == 3
    for level in ("look", "reason", "place"):
        one, other = hint(result, level).split(" Or, which fits as well: ")
        assert one != other
    assert "points the other way" in hint(result, "look")
    assert hint(result, "look").endswith("A number here may stand in the wrong row.")


@pytest.mark.parametrize(
    "lines",
    [
        [(Fy("A"), "A_y - 0.6 AC = 0"), (Fx("A"), "A_x + AB - 0.8 AC = 0")],
        [(Fy("A"), "A_y + 0.6 AC = 0"), (Fx("A"), "A_x + AB + 0.8 AC = 0")],
    ],
)
def test_of_two_mistakes_that_lines_show_a_hint_tells_the_first_and_weighs_none(
    lines: list[tuple[Equation, str]],
) -> None:
    """Both lines wrong, or both right and both values wrong: A_x + AB + 0.8 AC = 0 and A_y + 0.6 AC = 0."""
    reactions = {"A_x": "-6", "A_y": "3.75", "B_y": "8.25"}
    forces = {"AB": "15", "AC": "-2.25", "BC": "-13.75"}
    result = review(MAST, {"reactions": reactions, "forces": forces, "lines": lines})
    assert result.places == ("A",)
    assert len(result.accounts) == 2
    for level in LEVELS:
        assert "fits as well" not in hint(result, level)
    assert all(account.certain for account in result.accounts)


UP, ALONG = (Fy("A"), "A_y + 0.6 AC = 0"), (Fx("A"), "A_x + AB + 0.8 AC = 0")


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        ([UP, ALONG], ["AC", "AB"]),
        ([ALONG, UP], ["AB", "AC"]),
        ([UP], ["AC"]),
        ([ALONG], ["AB", "AC"]),
    ],
)
@pytest.mark.parametrize("ab", ["15", "-11"])
def test_of_wrong_values_behind_right_lines_each_is_told_of_the_first_line_that_holds_it(
    lines: list[tuple[Equation, str]], told: list[str], ab: str
) -> None:
    """Where only the sum upwards is written, nothing is said of how AB was found."""
    reactions = {"A_x": "-6", "A_y": "3.75", "B_y": "8.25"}
    forces = {"AB": ab, "AC": "-2.25", "BC": "-13.75"}
    result = review(MAST, {"reactions": reactions, "forces": forces, "lines": lines})
    assert [account.mistake.force for account in result.accounts] == told
    assert [account.about for account in result.accounts] == list(map(Value, told))


@pytest.mark.parametrize("ab", ["11.5", "10.5", "20", "9.3"])
def test_a_value_that_no_slip_in_a_line_gives_is_told_not_to_follow(ab: str) -> None:
    (account,) = page(AB=ab).accounts
    assert (account.mistake.code, account.mistake.force) == ("arithmetic", "AB")
    assert account.about == Value("AB")


@pytest.mark.parametrize(
    ("ac", "turned"), [("6.25", True), ("6.28", True), ("6.32", True), ("6.35", False)]
)
def test_a_force_is_turned_round_as_long_as_the_figures_explain_the_rest(
    ac: str, turned: bool
) -> None:
    """AC = -6.25: of 6.32 the sums miss twice 6.285, and a half of the last figure of each number."""
    codes = [account.mistake.code for account in page(AC=ac).accounts]
    assert ("tension-compression" in codes) == turned
    assert codes[0] == "sign"


def test_a_report_tells_every_mistake_that_may_have_begun_it_or_that_none_is_known() -> None:
    told = markdown(MAST, page(**TWO_WAYS), WHEN)
    rows = told.partition("## Where it goes wrong first")[2].partition("## ")[0]
    for account in page(**TWO_WAYS).accounts:
        assert account.mistake.text in rows
    assert "Of no kind" not in rows
    unknown = Review((Finding("AB", "wrong"),), "A", ("A", "B"))
    rows = markdown(MAST, unknown, WHEN).partition("## Where it goes wrong first")[2]
    assert "- Joint A or joint B (the numbers do not tell which of them)" in rows
    assert "- Of no kind that is known here." in rows


def test_a_wrong_value_of_no_known_cause_is_told_as_that() -> None:
    assert outcome(Finding("AB", "wrong")) == "is wrong; how it came about is not clear."
