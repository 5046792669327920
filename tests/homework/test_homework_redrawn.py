"""Does a paper stay when its truss is corrected, and its entries go by the joints' new names?"""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from strategies import make_truss

from tutor.drafting import Draft
from tutor.homework import Paper, read_paper, review
from tutor.homework.redrawn import redrawn
from tutor.judge import Along, Fx, Fy, M
from tutor.model import Problem

ARM = ("A 0 0 B 4 0 C 2 3/2", "AB BC CA", "A pin B roller", "C 12 down")
PAPER = """\
A_x = 0
A_y = 6 up
BC = 10 C
A_x drawn left
ΣFy at C: -12 - 3/5 F_AC - 0.6F_BC = 0
ΣM_A: 4 B_y - 2(12) = 0
joint A
ΣFx: A_x + AB + 4/5 AC = 0
order C A
"""


def truss(*lines: str) -> Problem:
    draft = Draft()
    for line in (*ARM, *lines):
        assert draft.type(line).taken
    return draft.problem


def paper(problem: Problem) -> Paper:
    written = read_paper(problem, PAPER)
    assert not written.refused
    return written.paper


def test_a_corrected_coordinate_or_load_keeps_the_whole_paper() -> None:
    before = truss()
    for line in ("C 2 2", "C 15 down", "kN ft", "title Other", "D 9 9 CD"):
        after = truss(*line.split(", "))
        kept = redrawn(paper(before), before, after, {})
        assert kept.paper == paper(before), line
        assert not kept.told


def test_of_a_changed_support_it_is_told_what_stays_and_what_is_off() -> None:
    before = truss()
    kept = redrawn(paper(before), before, truss("A roller", "B pin"), {})
    assert kept.paper.values == {"A_y": "6 up", "BC": "10 C"}
    off, stays = kept.told
    assert off.startswith("A_x = 0 is off the paper")
    assert stays.startswith("The support at A was changed: A_y stays on the paper")
    slanted = truss("B roller 60")
    value = read_paper(slanted, "R_B = 5").paper
    turned = redrawn(value, slanted, truss("B roller 120"), {})
    assert turned.paper == value
    assert turned.told[0].startswith("The support at B was changed: R_B stays")


def test_a_renamed_joint_renames_values_lines_senses_and_order() -> None:
    before, after = truss(), truss("rename A U1")
    kept = redrawn(paper(before), before, after, {"A": "U1"})
    assert not kept.told
    assert kept.paper.values == {"U1_x": "0", "U1_y": "6 up", "BC": "10 C"}
    assert kept.paper.senses == {"U1_x": "left"}
    assert kept.paper.order == ("C", "U1")
    assert kept.paper.place == "U1"
    assert [about for about, _ in kept.paper.lines] == [Fy("C"), M("U1"), Fx("U1")]
    texts = [text for _, text in kept.paper.lines]
    assert "F_{C-U1}" in texts[0]
    assert texts[1].startswith("ΣM_{U1}:")
    assert "U1_x" in texts[2]
    was = [finding.state for finding in review(before, paper(before).work(before)).findings]
    now = [finding.state for finding in review(after, kept.paper.work(after)).findings]
    assert was == now


def test_a_component_is_one_of_the_renamed_member_and_its_force_no_component() -> None:
    before, after = truss(), truss("rename C Q")
    line = read_paper(before, "ΣFx at C: -AC_x - 0.8 BC = 0").paper
    ((_, text),) = redrawn(line, before, after, {"C": "Q"}).paper.lines
    assert text == "ΣFx at Q: -QA_x - 0.8 F_BQ = 0"


def test_a_value_stays_below_the_joint_at_which_it_was_found_while_that_is_there() -> None:
    before, after = truss(), truss("rename C Q")
    found = read_paper(before, "joint C\nBC = 10 C\nAC = 10 C\njoint A\nAB = 8").paper
    assert redrawn(found, before, after, {"C": "Q"}).paper.found_at == {
        "BQ": "Q",
        "QA": "Q",
        "AB": "A",
    }
    gone = truss("drop C", "D 2 3", "AD DB")
    assert redrawn(found, before, gone, {}).paper.found_at == {"AB": "A"}


def test_two_joints_that_exchange_their_names_exchange_their_entries() -> None:
    before = truss()
    after = truss("rename A X", "rename B A", "rename X B")
    kept = redrawn(paper(before), before, after, {"A": "B", "B": "A"})
    assert kept.paper.values == {"B_x": "0", "B_y": "6 up", "AC": "10 C"}


def test_what_the_corrected_truss_has_not_is_taken_off_and_told() -> None:
    before = truss()
    after = truss("A roller", "drop C", "D 2 3", "AD DB")
    kept = redrawn(paper(before), before, after, {})
    assert kept.paper.values == {"A_y": "6 up"}
    assert [about for about, _ in kept.paper.lines] == [M("A"), Fx("A")]
    said = " ".join(kept.told)
    assert "A_x = 0 is off the paper" in said
    assert "BC = 10 C is off the paper" in said
    assert "Line 1 is off" in said
    assert kept.paper.order == ("A",)


def test_a_sum_of_moments_about_a_point_that_is_no_joint_stays() -> None:
    before, after = truss(), truss("rename A U1")
    line = read_paper(before, "ΣM_(2,0): 2 B_y - 2 A_y = 0").paper
    ((about, _),) = line.lines
    assert isinstance(about, M)
    assert about.at == (2.0, 0.0)
    ((moved, text),) = redrawn(line, before, after, {"A": "U1"}).paper.lines
    assert moved == about
    assert "U1_y" in text


def test_a_line_along_a_direction_stays_of_its_joint() -> None:
    before, after = truss(), truss("rename C Q")
    line = replace(paper(before), lines=((Along(30.0, "C"), "ΣF along 30: F_AC = 3"),))
    kept = redrawn(line, before, after, {"C": "Q"})
    assert kept.paper.lines[0][0] == Along(30.0, "Q")


@given(st.integers(0, 10**6))
def test_a_paper_on_the_same_truss_is_the_same_paper(seed: int) -> None:
    problem = make_truss(seed, 4)
    values = dict.fromkeys(problem.unknowns, "3")
    done = Paper(values, (), {}, tuple(problem.joint), None)
    assert redrawn(done, problem, problem, {}).paper == done
