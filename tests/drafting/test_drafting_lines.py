"""Which lines draw what, and which sentence answers those that cannot be read?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor.drafting import Draft, lines_of, read, rows, saved, soundness_of, statement_of
from tutor.drafting.entries import EMPTY, Hold, Join, Push, Put
from tutor.model import Load, Support, load_problem
from tutor.model.read import read_text
from tutor.notation import Exact

TRIANGLE = "A 0 0 B 4 0 C 2 3/2; AB BC CA"


def drawn(*lines: str) -> Draft:
    draft = Draft()
    for line in lines:
        answer = draft.type(line)
        assert answer.taken, answer.said
    return draft


def places(draft: Draft) -> dict[str, tuple[float, float]]:
    return {joint.name: joint.at for joint in draft.problem.joints}


@pytest.mark.parametrize(
    "line",
    [
        "A 0 0 B 4 0 C 2 1.5",
        "a 0 0 b 4 0 c 2 1,5",
        "A 0,0 B 4,0 C 2,1.5",
        "A (0, 0), B (4, 0), C (2, 3/2)",
        "A = [0, 0]; B = [4, 0]; C = [2, '3/2']",
        "0 0 4 0 2 1.5",
        "A: 0 m 0 m\nB: 4m 0m\nC: 2 m 1.5 m",
        "A at 0 0 B at 4 0 and C at +2 6/4",
    ],
)
def test_joints_are_read_in_every_usual_way(line: str) -> None:
    assert places(drawn(line)) == {"A": (0, 0), "B": (4, 0), "C": (2, 1.5)}


@pytest.mark.parametrize("line", ["AB BC CA", "ab, bc, ca", "ABCA", "A-B-C-A", "A B; B C; C-A"])
def test_members_are_read_one_by_one_or_as_a_path(line: str) -> None:
    draft = drawn("A 0 0 B 4 0 C 2 3/2", line)
    assert [m.name for m in draft.problem.members] == ["AB", "BC", "CA"]


@pytest.mark.parametrize("line", ["U1-L0 L0-L1", "u1l0 l0l1", "U1-L0-L1", "U1 L0; L0 L1"])
def test_members_between_longer_names_are_read_too(line: str) -> None:
    draft = drawn("L0 0 0 L1 4 0 U1 2 3", line)
    assert [m.name for m in draft.problem.members] == ["U1-L0", "L0-L1"]


@pytest.mark.parametrize(
    ("line", "support"),
    [
        ("A pin", Support("A", "pin")),
        ("a pinned", Support("A", "pin")),
        ("A roller", Support("A", "roller")),
        ("A roller 150", Support("A", "roller", angle=Exact.of(150))),
        ("A roller at 150 deg", Support("A", "roller", angle=Exact.of(150))),
        ("A link -1 4", Support("A", "link", anchor=(Exact.of(-1), Exact.of(4)))),
        ("A link to (-1, 4)", Support("A", "link", anchor=(Exact.of(-1), Exact.of(4)))),
    ],
)
def test_supports_are_read_by_their_names(line: str, support: Support) -> None:
    assert drawn(TRIANGLE, line).problem.supports == (support,)


@pytest.mark.parametrize(
    ("line", "loads"),
    [
        ("C 12 down", [Load("C", (("down", Exact.of(12)),))]),
        ("C 12 d", [Load("C", (("down", Exact.of(12)),))]),
        ("C down 12 kN", [Load("C", (("down", Exact.of(12)),))]),
        ("C 12kN downward", [Load("C", (("down", Exact.of(12)),))]),
        ("C 12 down 3 right", [Load("C", (("down", Exact.of(12)), ("right", Exact.of(3))))]),
        ("C 12 kN down and 3 r", [Load("C", (("down", Exact.of(12)), ("right", Exact.of(3))))]),
        ("C 5 at 210", [Load("C", (), Exact.of(5), Exact.of(210))]),
        ("C 5 kN @210°", [Load("C", (), Exact.of(5), Exact.of(210))]),
        ("B C 2 up", [Load("B", (("up", Exact.of(2)),)), Load("C", (("up", Exact.of(2)),))]),
        ("C 9 up; C 12 down", [Load("C", (("down", Exact.of(12)),))]),
    ],
)
def test_loads_are_read_by_way_or_angle(line: str, loads: list[Load]) -> None:
    assert list(drawn(TRIANGLE, line).problem.loads) == loads


def test_a_whole_truss_goes_into_one_line() -> None:
    draft = drawn("0 0 4 0 2 1.5; abca; a pin b roller c 12 d; title Lamp arm; N ft")
    assert soundness_of(draft.problem).sound
    assert (draft.problem.force, draft.problem.length) == ("N", "ft")
    assert draft.problem.title == "Lamp arm"
    assert [row.kind for row in rows(draft.problem)].count("member") == 3


def test_things_are_dropped_and_renamed_with_all_that_hangs_on_them() -> None:
    draft = drawn(TRIANGLE, "A pin B roller C 12 down", "rename A U1")
    assert [m.name for m in draft.problem.members] == ["U1-B", "BC", "C-U1"]
    assert draft.problem.supports[0].joint == "U1"
    draft.type("drop C")
    assert [m.name for m in draft.problem.members] == ["U1-B"]
    assert not draft.problem.loads
    draft.type("undo")
    draft.type("no load at C; remove member BC; drop support B")
    assert not draft.problem.loads
    assert [s.joint for s in draft.problem.supports] == ["U1"]
    draft.type("clear")
    assert draft.problem == EMPTY


REFUSED = {
    "": "Read nothing",
    "C 12": "write y too",
    "AX": "no joint X yet",
    "A": "alone says nothing",
    "AA": "from A to A",
    "A-": "beside the dash",
    "pin": "no joint is named before this",
    "A rollr": "write roller",
    "A pin roller": "no joint is named before this",
    "A link": "like A link -1 4",
    "A link 0 0": "no length",
    "C -5 down": "opposite way",
    "C 0 down": "no load",
    "C 5 at 400": "from -360 to 360",
    "C 5 down 3 up": "along one line",
    "C 10 lb down": "in kN, not lb",
    "C 4 ft 3": "in m, not ft",
    "Q 12 down": "no joint Q yet",
    "C 1/0 2": "C",
    "C 1e99 2": "larger",
    "Warren span 12": "lacks its height and panels",
    "Warren 12 3 99": "1 to 40 panels",
    "Pratt 12 3 4.5": "panels",
    "king post 6 0": "more than nothing",
    "Howe 12 3 4 5 6": "one number too many",
    "fink 12 yards": "no size",
    "fink 12 feet": "lacks its height",
    "drop": "nothing is named",
    "drop load A": "no load at A",
    "drop AC AB BX": "no joint X",
    "rename A": "new name",
    "rename A B": "already",
    "title": "title is missing",
    "units parsec": "no unit known",
    "clear all": "clear alone",
    "toolongname 0 0": "a letter and up to 7",
}


@pytest.mark.parametrize(("line", "part"), REFUSED.items())
def test_what_cannot_be_taken_is_answered_by_a_sentence(line: str, part: str) -> None:
    draft = drawn(TRIANGLE)
    before = draft.problem
    answer = draft.type(line)
    assert not answer.taken
    assert part in answer.said
    assert answer.said.endswith(".")
    assert draft.problem is before


def test_a_line_with_one_bad_statement_is_not_taken_in_part() -> None:
    draft = drawn(TRIANGLE)
    answer = draft.type("A pin; B rollr; C 12 down")
    assert not answer.taken
    assert answer.span == (9, 14)
    assert not draft.problem.supports


def test_entries_are_facts() -> None:
    entries = read(EMPTY, "A 0 0 B 4 0; AB; A pin; B 5 down")
    assert isinstance(entries, tuple)
    assert [type(entry) for entry in entries] == [Put, Put, Join, Hold, Push]


BY_HAND = """\
# The lamp arm, as measured on the quay.
title = "Lamp arm"     # a working title
story = "Over the steps."
force = "kN"
length = "m"
members = [
    "AB",  # along the wall
    "BC",
    "AC",  # the strut
]

[joints]
A = [0, 0]   # on the wall
B = [0, 3]
C = [4, 0]

# held twice
[supports]
A = "pin"
B = { roller = 0 }  # against the wall

[[loads]]
at = "C"
down = 12  # the lamp
"""


@pytest.mark.parametrize(
    ("lines", "lost"),
    [
        ([], set()),
        (["C 5 0"], set()),
        (["title Long lamp arm", "N ft"], set()),
        (["D 4 3; BD DC"], set()),
        (["A roller 45; B pin"], {"# against the wall"}),
        (["C 15 down"], {"# the lamp"}),
    ],
)
def test_comments_of_a_file_by_hand_survive_a_save(
    lines: list[str], lost: set[str], tmp_path: Path
) -> None:
    problem = read_text(BY_HAND, "text").problem
    assert problem is not None
    draft = Draft(start=problem)
    for line in lines:
        assert draft.type(line).taken
    text = saved(draft.problem, BY_HAND)
    path = tmp_path / "arm.toml"
    path.write_text(text, encoding="utf-8")
    assert load_problem(path) == draft.problem
    comments = {line[line.index("#") :].strip() for line in BY_HAND.splitlines() if "#" in line}
    assert {comment for comment in comments if comment not in text} <= lost


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("a 0 0", "A"),
        ("u1 0 0", "U1"),
        ("Top 0 0", "Top"),
        ("top 0 0", "top"),
        ('"a" 0 0', "a"),
        ("'pin1' 0 0", "pin1"),
    ],
)
def test_a_small_letter_is_its_capital_and_any_other_name_stays_as_typed(
    line: str, name: str
) -> None:
    assert list(places(drawn(line))) == [name]


def test_a_joint_is_meant_in_any_capitals_where_one_alone_fits() -> None:
    draft = drawn("Top 0 3; A 0 0", "TOP-a", "top 5 down", "rename top Ridge")
    assert [m.name for m in draft.problem.members] == ["Ridge-A"]
    assert [load.joint for load in draft.problem.loads] == ["Ridge"]


def test_joints_that_differ_in_capitals_alone_are_two() -> None:
    draft = drawn('A 0 0; "a" 4 0; A-a; "a" 12 down')
    assert [m.name for m in draft.problem.members] == ["Aa"]
    assert [load.joint for load in draft.problem.loads] == ["a"]
    assert drawn(*lines_of(draft.problem)).problem == draft.problem


def test_a_fink_roof_has_four_or_eight_panels() -> None:
    eight = drawn("Fink span 16 height 4 panels 8 load 1")
    assert (len(eight.problem.joints), len(eight.problem.members)) == (15, 27)
    assert len(eight.problem.loads) == 7
    assert len(drawn("Fink 12 3").problem.members) == 11
    answer = Draft().type("Fink 12 3 5")
    assert "4 or 8 panels" in answer.said


@pytest.mark.parametrize(
    "rows",
    [
        ["A\t0\t0", "B\t4\t0", "C\t2\t1,5"],
        ["joint\tx\ty", "A\t0\t0", "B\t4\t0", "C\t2\t1.5"],
        ["Joint;x [m];y [m]", "A;0;0", "B;4;0", "C;2;1,5"],
        ["x;y", "a; 0; 0", "b; 4; 0", "c; 2; 3/2"],
        ["A,0,0", "B,4,0", "C,2,1.5"],
        ["name,x,y", "A,0,0", "B,4,0", "C,2,3/2"],
    ],
)
def test_a_pasted_table_of_joints_is_read_with_any_sign_between_its_columns(
    rows: list[str],
) -> None:
    line = "; ".join(filter(None, map(statement_of, rows)))
    assert places(drawn(line)) == {"A": (0, 0), "B": (4, 0), "C": (2, 1.5)}
    one_by_one = Draft()
    for row in rows:
        one_by_one.type(row)
    assert places(one_by_one) == {"A": (0, 0), "B": (4, 0), "C": (2, 1.5)}


def test_what_was_taken_back_or_done_again_is_said() -> None:
    draft = drawn(TRIANGLE, "drop BC")
    assert draft.type("undo").said == "Taken back: Dropped member BC."
    assert draft.type("redo").said == "Done again: Dropped member BC."
    draft.type("D 5 5")
    assert draft.type("undo").said == "Taken back: Joint D at 5, 5."


@pytest.mark.parametrize("part", ["\t", " ", "A;1;"], ids=["tabs", "spaces", "cells"])
def test_a_long_line_that_is_no_row_is_met_and_left(part: str) -> None:
    assert statement_of(4000 * part + "x") == (4000 * part + "x").replace("\t", " ")
