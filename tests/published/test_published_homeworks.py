"""Is a printed solution handed in as a homework right, and is a mistake in it found where it is?

The sources of the first two trusses stand beside them in `worked_examples.py` (from memory), that
of the third in `cases.jsonl`. The printed values are entered as a student writes them; the mistakes
are ours, with everything after them worked out by hand from the wrong value.
"""

from __future__ import annotations

import pytest
from test_published_trusses import CASES, problem_of
from worked_examples import BEER_JOHNSTON, HIBBELER

from tutor import Fx, Fy, M, review
from tutor.homework import LEVELS, Review, hint, read_paper

# R. C. Hibbeler, Engineering Mechanics: Statics, Example 6.1; printed values from memory.
HIBBELER_PRINTED = """
A_x = 500 N left, A_y = 500 N down, C_y = 500 N up
BC = 707.1 N (C), AB = 500 N (T), AC = 500 N (T)
"""
# F. P. Beer & E. R. Johnston, Vector Mechanics for Engineers: Statics, Sample Problem 6.1; printed
# values from memory.
BEER_JOHNSTON_PRINTED = """
E_y = 10000 lb up, C_x = 0, C_y = 7000 lb down
AB = 1500 T, AD = 2500 C, DB = 2500 T, DE = 3000 C
BE = 3750 C, BC = 5250 T, EC = 8750 C
"""
# W. Bober, MATLAB Essentials, Example 7.2 (author from memory); member forces in kN as printed.
(BOBER_CASE,) = (case for case in CASES if "Bober" in case["source"])
BOBER = problem_of(BOBER_CASE)
BOBER_PRINTED = "\n".join(
    f"{name} = {abs(value)} {'T' if value > 0 else 'C'}"
    for name, value in BOBER_CASE["forces"].items()
)


def handed_in(problem, text: str, *changed: str, **more: object) -> Review:
    """The review of printed values, some of them entered again."""
    written = read_paper(problem, "\n".join([text, *changed]))
    assert written.refused == ()
    return review(problem, {**written.paper.work(problem), **more})


def not_right(result: Review) -> set[str]:
    return {str(f.name) for f in result.findings if f.state != "right"}


def named(result: Review) -> set[tuple[str, str | None]]:
    return {(a.mistake.code, a.mistake.force) for a in result.accounts}


@pytest.mark.parametrize(
    ("problem", "text"),
    [
        (HIBBELER, HIBBELER_PRINTED),
        (BEER_JOHNSTON, BEER_JOHNSTON_PRINTED),
        (BOBER, BOBER_PRINTED),
    ],
    ids=["Hibbeler", "Beer & Johnston", "Bober"],
)
def test_a_printed_solution_is_all_right(problem, text) -> None:
    result = handed_in(problem, text)
    assert result.right, not_right(result)
    assert result.first is None
    assert all(closure.closes is not False for closure in result.closures)


def test_a_letter_swapped_in_hibbelers_example_is_that_member_and_nothing_else() -> None:
    result = handed_in(HIBBELER, HIBBELER_PRINTED, "BC = 707.1 N (T)")
    assert not_right(result) == {"BC"}
    assert set(result.places) == {"B", "C"}
    assert ("tension-compression", "BC") in named(result)


def test_a_sign_in_hibbelers_example_is_named_with_its_line() -> None:
    # ΣFy at B written with both terms down: AB comes out as 500 in compression.
    lines = [(Fx("B"), "500 + F_BC sin 45° = 0"), (Fy("B"), "F_BC sin 45° - F_AB = 0")]
    alone = handed_in(HIBBELER, HIBBELER_PRINTED, "AB = 500 N (C)")
    assert not_right(alone) == {"AB"}
    assert "B" in alone.places
    result = handed_in(HIBBELER, HIBBELER_PRINTED, "AB = 500 N (C)", lines=lines)
    assert result.first == "B"
    assert result.places == ("B",)
    assert {code for code, _ in named(result)} == {"sign"}


def test_a_load_forgotten_at_a_joint_of_the_sample_is_named() -> None:
    # The 1000 lb at B left out of ΣFy: BE = 2500 C; then BC = 1500 + 1500 + 1500 = 4500 T, and at E
    # 3/5 EC = -3000 - 1500, EC = 7500 C.
    result = handed_in(
        BEER_JOHNSTON, BEER_JOHNSTON_PRINTED, "BE = 2500 C, BC = 4500 T, EC = 7500 C"
    )
    assert result.first == "B"
    assert result.accounts[0].mistake.code == "missing"
    assert result.accounts[0].mistake.force == "load B"
    assert result.finding["BE"].state == "wrong"
    assert {result.finding[name].state for name in ("BC", "EC")} == {"follows"}
    assert {result.finding[name].state for name in ("AB", "AD", "DB", "DE", "E_y")} == {"right"}


def test_a_load_forgotten_in_the_moments_of_the_sample_is_found_in_the_whole_truss() -> None:
    # ΣM about C without the 1000 lb: E_y = 8000; then C_y = 3000 - 8000 = -5000. The same numbers
    # come from the 1000 lb turned round in a sum about E, which is named beside it.
    text = BEER_JOHNSTON_PRINTED
    result = handed_in(BEER_JOHNSTON, text, "E_y = 8000 lb, C_y = -5000 lb")
    assert result.first == "whole"
    assert ("missing", "load B") in named(result)
    lines = [(M("C"), "2000*24 - 6 E_y = 0")]
    told = handed_in(BEER_JOHNSTON, text, "E_y = 8000 lb, C_y = -5000 lb", lines=lines)
    assert named(told) == {("missing", "load B")}
    assert told.finding["C_y"].state == "follows"


def test_a_load_forgotten_under_bobers_truss_is_named_and_all_that_follows_is_told() -> None:
    # The 30 kN at E left out: DE = 0; then at D DG = 15.63, DF = -65.63, at G FG = 27.50 and
    # GH = 65.63, and at F FH = -109.4.
    result = handed_in(
        BOBER,
        BOBER_PRINTED,
        "DE = 0, DG = 15.63 T, DF = 65.63 C, FG = 27.50 T, GH = 65.63 T, FH = 109.4 C",
    )
    assert result.first == "E"
    assert ("missing", "load E") in named(result)
    assert result.finding["DE"].state == "wrong"
    follows = {str(f.name) for f in result.findings if f.state == "follows"}
    assert follows == {"DG", "DF", "FG", "GH", "FH"}


# Bober's truss with A_y and H_y in each other's rows, and every member worked from them.
EXCHANGED = """A_y = 57.5, H_y = 62.5, AB = -71.88, AC = 43.13, BC = 57.5, BD = -43.13, CD = -9.375,
CE = 48.75, DG = -28.13, DF = -31.88, EG = 48.75, FH = -53.13, FG = 42.5, GH = 31.88"""


def hints(result: Review) -> str:
    return "\n".join([result.said, *(hint(result, level) for level in LEVELS)])


def test_where_two_explanations_differ_on_the_wrong_reaction_neither_is_certain() -> None:
    # The load forgotten about C makes E_y wrong; turned round about E it makes C_y wrong.
    result = handed_in(BEER_JOHNSTON, BEER_JOHNSTON_PRINTED, "E_y = 8000 lb, C_y = -5000 lb")
    assert len(result.accounts) > 1
    assert {result.finding[name].sure for name in ("E_y", "C_y")} == {"likely"}
    told = handed_in(
        BEER_JOHNSTON,
        BEER_JOHNSTON_PRINTED,
        "E_y = 8000 lb, C_y = -5000 lb",
        lines=[(M("C"), "2000*24 - 6 E_y = 0")],
    )
    assert {result.finding[name].state for name in ("E_y", "C_y")} == {"wrong", "follows"}
    assert {told.finding[name].sure for name in ("E_y", "C_y")} == {"certain"}


def test_two_reactions_in_each_others_rows_are_called_that_and_no_arm() -> None:
    result = handed_in(BOBER, BOBER_PRINTED, *EXCHANGED.split("\n"))
    assert result.first == "whole"
    assert {result.finding[name].state for name in ("A_y", "H_y")} == {"wrong"}
    assert "wrong row" in hint(result, "look")
    assert "arm" not in hints(result)


def test_no_hint_names_both_rows_that_were_exchanged() -> None:
    result = handed_in(BOBER, BOBER_PRINTED, *EXCHANGED.split("\n"))
    assert "A_y" in hint(result, "place")
    assert "H_y" not in hints(result)
    assert "A_y" not in hint(result, "look") + hint(result, "reason")


@pytest.mark.parametrize(
    "changed", ["DF = 57.5, FG = -43.13", "DF = -57.5, FG = 43.13"], ids=["whole", "sizes alone"]
)
def test_two_members_of_a_joint_in_each_others_rows_are_called_that(changed: str) -> None:
    result = handed_in(BOBER, BOBER_PRINTED, changed)
    assert result.first == "F"
    assert not_right(result) == {"DF", "FG"}
    assert "wrong row" in hint(result, "look")


def test_a_load_left_out_is_not_called_a_thousandth_of_it_as_well() -> None:
    result = handed_in(
        BEER_JOHNSTON, BEER_JOHNSTON_PRINTED, "BE = 2500 C, BC = 4500 T, EC = 7500 C"
    )
    assert ("missing", "load B") in named(result)
    assert "unit" not in {code for code, _ in named(result)}


def test_without_reactions_a_slip_at_a_joint_that_explains_all_is_not_sought_elsewhere() -> None:
    # BD with the wrong sign, and DF, FG and FH worked from it.
    text = "\n".join(line for line in BOBER_PRINTED.split("\n") if "_" not in line)
    result = handed_in(BOBER, text, "BD = 46.88, DF = 50.63, FH = 84.38, FG = -67.5")
    assert result.places == ("B",)
    assert {result.finding[name].state for name in ("DF", "FG", "FH")} == {"follows"}


def test_nothing_follows_where_nothing_explains_the_numbers() -> None:
    result = handed_in(BEER_JOHNSTON, "AB = 17, BE = 23, EC = -91, DE = 8")
    assert {finding.state for finding in result.findings} == {"wrong"}
    assert not result.clear
    assert "no single slip explains" in hint(result, "look")


@pytest.mark.parametrize("factor", [-1.0, 1000.0])
def test_a_mistake_of_the_whole_paper_does_not_send_to_a_free_body_diagram(factor: float) -> None:
    values = {name: factor * value for name, value in BOBER_CASE["forces"].items()}
    result = review(BOBER, {"forces": values})
    assert {finding.state for finding in result.findings} <= {"wrong", "right"}
    assert "No line need be written again" in hint(result, "place")
    assert "free-body" not in hint(result, "place")
    assert hint(result, "place") != hint(result, "reason")
