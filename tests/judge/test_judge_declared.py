"""Is a line right that says itself which members it has drawn pushing?

The truss is our own. That a member whose sense can be seen is drawn so, and that one says so beside
the line, is common practice, no source.
"""

from __future__ import annotations

from typing import Any

import pytest
from paper.measure import problem

from tutor.judge import Fx, Fy, Value, Verdict, judge

# By hand: ΣM_A: 600 C_y = 300*560 + 900*240 + 400*120, C_y = 720; A_y = 80, A_x = -120.
# Joint A: 0.8 AE + 80 = 0, AE = -100 (C); AB - 0.6*100 - 120 = 0, AB = 180 (T).
KNOWN = {"A_x": "-120", "A_y": "80", "C_y": "720"}


def told(about: Any, text: str, **more: Any) -> Verdict:
    return judge(problem("rack"), about, text, known=more.pop("known", KNOWN), **more)


@pytest.mark.parametrize(
    "text",
    [
        "80 - 0.8 F_AE = 0 (AE in compression)",
        "80 - 0.8 F_AE = 0, where AE is in compression",
        "80 - 0.8 F_AE = 0 (compression)",
        "Assuming AE in compression, 80 - 0.8 F_AE = 0",
        "AE drawn in compression: 0.8 F_AE = 80",
        "80 - 0.8 AE = 0 (AE in compression) => AE = 100 N (C)",
    ],
)
def test_a_line_with_a_member_drawn_as_it_says_is_right_and_told_how_it_was_read(text: str) -> None:
    verdict = told(Fy("A"), text)
    assert verdict.right, verdict.text
    said = [remark.text for remark in verdict.remarks if remark.code == "declared"]
    assert len(said) == 1
    assert said[0].startswith("Read with AE drawn pushing on the joint")


@pytest.mark.parametrize(
    ("about", "text", "known", "pushing"),
    [
        (Fy("A"), "0.8 AE = A_y => AE = 100 N (C)", KNOWN, "AE"),
        (Fy("A"), "AE = A_y/0.8 = 100 compression", KNOWN, "AE"),
        (Fx("D"), "CD = 3/5 DF = 180 c", {"DF": "300"}, "CD"),
        (Fy("F"), "CF = 0.8 df = 240 pushing on F", {"DF": "300"}, "CF"),
        (Fx("D"), "DF = 5/3 CD = 300 T", {"CD": "180 C"}, "CD"),
    ],
)
def test_a_value_worked_out_with_letters_may_take_its_forces_as_sizes(
    about: Any, text: str, known: dict[str, str], pushing: str
) -> None:
    verdict = told(about, text, known=known)
    assert verdict.right, verdict.text
    assert verdict.remarks[0].text.startswith(f"Read with {pushing} drawn pushing on the joint")


@pytest.mark.parametrize(
    ("about", "text", "known"),
    [
        (Fy("A"), "AE = A_y/0.8 = 100 T", KNOWN),
        (Fy("A"), "AE = A_y/0.8 = 100", KNOWN),
        (Fy("A"), "AE = A_y/0.8 = -100 C", KNOWN),
        (Fx("D"), "CD = 4/5 DF = 240 C", {"DF": "300"}),
        (Fx("A"), "AB - 120 - 0.6 AE = 0, AB = 180 T", KNOWN | {"AE": "100 C"}),
    ],
)
def test_a_value_said_to_push_mends_neither_its_letter_nor_a_factor_nor_a_sign_in_a_sum(
    about: Any, text: str, known: dict[str, str]
) -> None:
    assert told(about, text, known=known).kind == "wrong"


def test_of_two_forces_in_a_line_the_one_named_is_drawn_so() -> None:
    text = "-120 - 0.6 AE + AB = 0"
    assert not told(Fx("A"), text).right
    assert told(Fx("A"), f"{text} (AE in compression)").right
    assert not told(Fx("A"), f"{text} (AB in compression)").right


def test_a_member_drawn_pushing_may_be_declared_to_pull_in_one_line() -> None:
    senses = {"AE": "C"}
    assert told(Fy("A"), "80 - 0.8 AE = 0", senses=senses).right
    assert told(Fy("A"), "80 + 0.8 AE = 0 (AE in tension)", senses=senses).mistakes
    assert told(Fx("A"), "AB - 120 + 0.6 AE = 0 (AE in tension)", senses=senses).right


def test_a_known_value_goes_with_its_member_as_it_is_drawn() -> None:
    known = KNOWN | {"AB": "180"}
    assert told(Fx("A"), "180 - 120 - 0.6 AE = 0 (AE in compression)", known=known).right
    assert told(Fx("A"), "-AB - 120 - 0.6 AE = 0 (AB, AE compression)", known=known).right


@pytest.mark.parametrize(
    ("text", "codes"),
    [
        ("80 - 0.6 F_AE = 0 (AE in compression)", ["component"]),
        ("80 - 0.8 F_AE = 0 (AE in tension)", ["sign"]),
        ("80 - 0.8 F_AE = 0 (AB in compression)", ["sign"]),
        ("80 - 0.8 F_AE = 0 (AE not in compression)", ["sign"]),
        ("80 - 0.8 F_AE = 0", ["sign"]),
    ],
)
def test_a_line_that_does_not_hold_as_it_says_shows_its_own_mistake(
    text: str, codes: list[str]
) -> None:
    assert [mistake.code for mistake in told(Fy("A"), text).mistakes] == codes


@pytest.mark.parametrize(
    ("value", "right"), [("100 C", True), ("-100", True), ("100 T", False), ("125 C", False)]
)
def test_a_value_follows_from_a_line_as_it_says_it_is_drawn(value: str, right: bool) -> None:
    lines = ["80 - 0.8 F_AE = 0 (AE in compression)"]
    assert told(Value("AE"), f"AE = {value}", lines=lines).right is right


@pytest.mark.parametrize(
    "text",
    [
        "AE in compression: 80 + 0.8 F_AE = 0",
        "AE pushes: 80 + 0.8 F_AE = 0",
        "80 + 0.8 F_AE = 0 with AE drawn in compression",
    ],
)
def test_a_line_that_holds_only_against_its_own_words_is_asked_about(text: str) -> None:
    verdict = told(Fy("A"), text)
    assert verdict.kind == "undecided"
    assert "You say that AE pushes" in verdict.text


@pytest.mark.parametrize(
    "text",
    [
        "80 + 0.8 F_AE = 0 (AE in compression)",
        "80 + 0.8 F_AE = 0, AE = -100, compression",
        "80 + 0.8 F_AE = 0 so AE is in compression",
        "AE in tension: 80 + 0.8 F_AE = 0",
    ],
)
def test_what_a_line_comes_to_may_be_said_behind_it(text: str) -> None:
    assert told(Fy("A"), text).right


@pytest.mark.parametrize(
    ("text", "value"),
    [("AE pushes: AE = 80/0.8 = 100", -100), ("AE pushes: 0.8 AE = 80 so AE = 100 C", -100)],
)
def test_a_value_counts_under_the_students_sense_whatever_its_line_says(
    text: str, value: float
) -> None:
    verdict = told(Value("AE"), text)
    assert verdict.right, verdict.text
    assert verdict.value == value


# By hand: ΣFx of the whole truss: A_x + 120 = 0; drawn to the left, 120 - A_x = 0.
@pytest.mark.parametrize(
    "text",
    [
        "120 - A_x = 0 (A_x drawn to the left)",
        "120 - A_x = 0, A_x taken as acting left",
        "A_x drawn to the left: 120 - A_x = 0",
        "with A_x assumed to the left, A_x = 120",
    ],
)
def test_a_reaction_is_drawn_as_its_line_says(text: str) -> None:
    verdict = told(Fx(), text, known={})
    assert verdict.right, verdict.text
    assert "acting to the left" in " ".join(remark.text for remark in verdict.remarks)


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("120 - A_x = 0 (A_x drawn to the right)", "wrong"),
        ("120 + A_x = 0 (A_x drawn to the left)", "undecided"),
        ("120 + A_x = 0 (A_x drawn to the right)", "right"),
        ("90 - A_x = 0 (A_x drawn to the left)", "wrong"),
        ("120 - A_x = 0 (A_x not drawn to the left)", "unreadable"),
        ("120 - A_x = 0 (A_y drawn down)", "wrong"),
    ],
)
def test_words_about_a_reaction_count_as_they_stand(text: str, kind: str) -> None:
    assert told(Fx(), text, known={}).kind == kind


def test_a_reaction_drawn_otherwise_shows_no_mistake_of_sign_besides_its_own() -> None:
    verdict = told(Fx(), "90 - A_x = 0 (A_x drawn to the left)", known={})
    assert all(mistake.code != "sign" for mistake in verdict.mistakes)


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("AE has to push down on A, so 80 + 0.8 F_AE = 0", "right"),
        ("the wall lifts A, AE must be in compression: 80 + 0.8 F_AE = 0", "right"),
        ("AE must be in compression, so 80 - 0.8 F_AE = 0", "right"),
        ("AE pushes down on A, so 80 + 0.8 F_AE = 0", "undecided"),
        ("AE drawn in compression, it has to push: 80 + 0.8 F_AE = 0", "undecided"),
        ("AE has to push down on A, so 60 + 0.8 F_AE = 0", "wrong"),
    ],
)
def test_what_a_force_has_to_do_is_expected_and_not_drawn(text: str, kind: str) -> None:
    assert told(Fy("A"), text).kind == kind


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("80 + 0.8 F_AE = 0, because the support pushes A up with 80 N", "right"),
        ("80 + 0.8 F_AE = 0, because the pin gives 80 N", "right"),
        ("80 + 0.8 F_AE = 0, since the pin gives 80 N, so F_AE = -100", "right"),
        ("80 + 0.8 F_AE = 0 gives 100 C", "right"),
        ("80 + 0.8 F_AE = 0 gives 80 N", "wrong"),
        ("80 - 0.8 F_AE = 0, because the pin gives 80 N", "wrong"),
        ("80 + 0.8 F_AE = 0, since the pin gives 80 N, so F_AE = 100", "wrong"),
    ],
)
def test_what_something_else_does_in_a_reason_is_no_value_and_no_way_of_a_member(
    text: str, kind: str
) -> None:
    assert told(Fy("A"), text).kind == kind
