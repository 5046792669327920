"""Does the builder take what students type, and answer what no truss has as a teacher would?"""

from __future__ import annotations

import math

import pytest

from tutor.drafting import Draft, soundness_of
from tutor.model import Load, Support
from tutor.notation import Exact

ARM = ("A 0 0 B 4 0 C 2 3/2", "AB BC CA", "A pin B roller", "C 12 down")
DOWN = Load("C", (("down", Exact.of(12)),))


def drawn(*lines: str) -> Draft:
    draft = Draft()
    for line in (*ARM, *lines):
        answer = draft.type(line)
        assert answer.taken, answer.said
    return draft


def at(draft: Draft, name: str) -> tuple[float, float]:
    return draft.problem.joint[name].at


@pytest.mark.parametrize(
    ("line", "place"),
    [
        ("move C 7 1", (7, 1)),
        ("move C to (7, 1)", (7, 1)),
        ("move joint C to 7,1", (7, 1)),
        ("move C by 1 -0.5", (3, 1)),
        ("move C 2 right", (4, 1.5)),
        ("move C 2 left 1/2 up", (0, 2)),
        ("move C 3 above B", (4, 3)),
    ],
)
def test_a_joint_is_moved_to_a_place_or_by_so_much(line: str, place: tuple[float, float]) -> None:
    draft = drawn(line)
    assert at(draft, "C") == pytest.approx(place)
    assert [joint.name for joint in draft.problem.joints] == ["A", "B", "C"]


@pytest.mark.parametrize(
    ("line", "place"),
    [
        ("F(3,4)", (3, 4)),
        ("F (3, 4)", (3, 4)),
        ("F=(3,4)", (3, 4)),
        ("F: 3, 4", (3, 4)),
        ("joint F 3 4", (3, 4)),
        ("F x=3 y=4", (3, 4)),
        ("F(3,sqrt(16))", (3, 4)),
        ("F 3 right 4 up from A", (3, 4)),
        ("F 4 up and 3 right of A", (3, 4)),
        ("F 3 right of A 4 above B", (3, 4)),
        ("F is 4 m above A", (0, 4)),
        ("F 2 below B", (4, -2)),
        ("F 1.5 left of C", (0.5, 1.5)),
        ("F from C 2 right 1 down", (4, 0.5)),
        ("F 5 at 90 from A", (0, 5)),
        ("F from B 2 at 180", (2, 0)),
        ("F 5 from A at 60", (2.5, 5 * math.sqrt(3) / 2)),
        ("F middle of AB", (2, 0)),
        ("F halfway between A and C", (1, 0.75)),
        ("F 5 from A 3 from B", (4, 3)),
        ("F 5 from A 3 from B below", (4, -3)),
        ("F 4 from A and 4 from B", (2, 2 * math.sqrt(3))),
        ("F 3 right of A and 4 up", (3, 4)),
        ("F 1/4 of AB", (1, 0)),
        ("F 1/3 along AC", (2 / 3, 0.5)),
        ("F 1.25 from A along AC", (1, 0.75)),
        ("F 1.25 m from C towards A", (1, 0.75)),
        ("F 1.25 along AC", (1, 0.75)),
    ],
)
def test_a_place_is_said_by_brackets_or_from_other_joints(
    line: str, place: tuple[float, float]
) -> None:
    assert at(drawn(line), "F") == pytest.approx(place)


def test_places_from_other_joints_stay_exact() -> None:
    draft = drawn("F 4 from A 4 from B", "G 5 at 60 from A", "H 1 right of F")
    assert draft.problem.joint["F"].y.text == "2*sqrt(3)"
    assert draft.problem.joint["G"].x.text == "2.5"
    assert draft.problem.joint["H"].x.fraction == 3


def test_plain_places_and_places_from_others_stand_in_one_line() -> None:
    draft = Draft()
    assert draft.type("A 0 0, B 3 right of A, C (3, 4), D 3 right of B E 1,1").taken
    places = {joint.name: joint.at for joint in draft.problem.joints}
    assert places == {"A": (0, 0), "B": (3, 0), "C": (3, 4), "D": (6, 0), "E": (1, 1)}


def test_a_share_may_be_of_a_line_between_joints_of_the_same_statement() -> None:
    draft = Draft()
    assert draft.type("A 0 0  B 32 0  C 16 12  D 1/2 of AC  E 5 along BC  F 16 4").taken
    places = {joint.name: joint.at for joint in draft.problem.joints}
    assert (places["D"], places["E"], places["F"]) == ((8, 6), (28, 3), (16, 4))


def test_several_joints_are_brought_at_once_in_brackets() -> None:
    draft = Draft()
    assert draft.type("A(0,0), B(4,0), C(2,tan(45))").taken
    assert {j.name: j.at for j in draft.problem.joints} == {"A": (0, 0), "B": (4, 0), "C": (2, 1)}


@pytest.mark.parametrize(
    "line",
    [
        "12 down at C",
        "12 kN down at C",
        "load 12 down at C",
        "load C 12 down",
        "C load 12 kN downwards",
        "a load of 12 kN at C down",
        "weight 12 at C",
        "C weight 12 kN",
        "C Fy = -12",
        "C 12 ↓",
        "force of 12 kN at C, downward",
        "P = 12 kN down at C",
        "snow load 12 kN at C",
        "C wind 12 down",
        "live load of 12 kN down at C",
        "12 kN hanging from C",
        "C 12 kilonewtons down",
    ],
)
def test_a_load_is_read_in_every_order_of_its_words(line: str) -> None:
    draft = Draft()
    for each in (*ARM[:3], line):
        answer = draft.type(each)
        assert answer.taken, answer.said
    assert draft.problem.loads == (DOWN,)


@pytest.mark.parametrize(
    ("line", "support"),
    [
        ("pin at B", Support("B", "pin")),
        ("B is pinned", Support("B", "pin")),
        ("B hinge", Support("B", "pin")),
        ("B is a pin support", Support("B", "pin")),
        ("B is on a roller", Support("B", "roller")),
        ("B rocker", Support("B", "roller")),
        ("B roller up", Support("B", "roller")),
        ("B roller right", Support("B", "roller", angle=Exact.of(0))),
        ("B roller left", Support("B", "roller", angle=Exact.of(180))),
    ],
)
def test_a_support_is_read_as_it_is_spoken(line: str, support: Support) -> None:
    draft = drawn("drop support B", line)
    assert draft.problem.supports[-1] == support


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("A roller", "A: roller on a level floor, in place of pin."),
        ("A link -1 4", "A: link to -1, 4, in place of pin."),
        ("B roller 150", "B: roller, pushes at 150°, in place of roller on a level floor."),
        ("A pin", "A: pin."),
    ],
)
def test_a_support_that_takes_the_place_of_another_says_so(line: str, said: str) -> None:
    assert drawn().type(line).said == said


def test_both_supports_may_stand_before_their_joints() -> None:
    draft = drawn("pin at B, roller at A")
    assert [s.kind for s in draft.problem.supports] == ["roller", "pin"]


@pytest.mark.parametrize("line", ["connect A D", "join A and D", "member AD", "A to D", "bar AD"])
def test_a_member_is_read_as_it_is_spoken(line: str) -> None:
    draft = drawn("D 6 2", line)
    assert draft.problem.between("A", "D") is not None


def test_what_is_named_by_a_word_of_speech_keeps_its_name() -> None:
    draft = drawn('"load" 5 5', "load-A", '"load" 3 up')
    assert draft.problem.between("load", "A") is not None
    assert [load.joint for load in draft.problem.loads] == ["C", "load"]
    assert "by" in drawn("by 7 7").problem.joint
    assert at(drawn('"AB" 4 3'), "AB") == (4, 3)


def test_a_part_is_copied_with_its_members_and_joined_where_it_meets_the_rest() -> None:
    draft = drawn("copy A B C by 4 0")
    assert at(draft, "D") == (8, 0)
    assert at(draft, "E") == (6, 1.5)
    assert {m.name for m in draft.problem.members} == {"AB", "BC", "CA", "BD", "DE", "EB"}
    assert draft.problem.loads == (DOWN,)
    assert draft.type("undo").taken
    assert len(draft.problem.joints) == 3


def test_a_load_is_copied_and_moved_to_other_joints() -> None:
    draft = drawn("copy load C to A B")
    assert sorted(load.joint for load in draft.problem.loads) == ["A", "B", "C"]
    draft = drawn("move the load from C to B")
    assert [load.joint for load in draft.problem.loads] == ["B"]


def test_a_half_is_mirrored_about_its_last_joint_and_a_truss_with_both_halves_stays() -> None:
    half = Draft()
    for line in (
        "A 0 0 B 3 0 C 3 4 D 6 0 E 6 4",
        "AB BD AC CE BC CD DE",
        "B 5 down D 6 down 1 left",
    ):
        assert half.type(line).taken
    assert half.type("mirror").taken
    made = half.problem
    assert len(made.joints) == 8
    assert len(made.members) == 13
    assert {load.joint for load in made.loads} == {"B", "D", "G"}
    for line in ("A pin", "F roller"):
        half.type(line)
    places = sorted(joint.at for joint in made.joints)
    assert places == sorted((12 - x, y) for x, y in places)
    again = half.problem
    assert half.type("mirror about x = 6").taken
    assert (half.problem.joints, half.problem.members) == (again.joints, again.members)


def test_a_truss_that_is_flipped_twice_is_as_it_was() -> None:
    draft = drawn("C 5 at 30", "B roller 60", "C 3 right")
    before = draft.problem
    turned = draft.type("flip")
    assert turned.taken
    assert "Dropped" not in turned.said
    assert at(draft, "A") == (4, 0)
    assert draft.problem.supports[1].angle == Exact.of(120)
    assert draft.problem.loads[0].pushes[1][0] == "left"
    assert draft.type("flip").taken
    assert draft.problem == before
    assert soundness_of(draft.problem).sound


TEACHER = {
    "AB 100 down": ("loaded at its joints", "A and B, 50 down each"),
    "AB 50 kN/m": ("at its joints only", "A and B, 100 kN"),
    "AB 50 lb/ft down": ("at its joints only", "half of its size times the length"),
    "50 kN/m on AB": ("at its joints only", "100 kN down each"),
    "C fixed": ("holds against turning", "C pin"),
    "fixed at A": ("holds against turning", "A pin"),
    "C moment 30": ("no moment", "equal and opposite"),
    "C 30 kN*m moment": ("no moment", "equal and opposite"),
    "AB cable": ("member or a link that pulls", "tension"),
    "cable at C": ("member or a link that pulls", "C link -1 4"),
    "R_C = 60 T": ("force that was found", "paper"),
    "F_AB = 60": ("force that was found", "paper"),
    "AB = 60 T": ("force that was found", "paper"),
    "A_y = 6 kN": ("force that was found", "paper"),
    "AB = 4 m": ("places of A and B", "4 right of"),
    "AB 4 3": ("member from A to B", "B 4 0"),
    "AX 3 right": ("no joint X yet", "X 3 right of A"),
    "C 12": ("without its way", "C 12 down"),
    "C 12 kN": ("without its way", "C 12 down"),
    "C 5 at 30 from horizontal": ("from which side", "from +x"),
    "B roller on the wall": ("to which side", "B roller right"),
    "B roller on a slope of 30": ("perpendicular", "B roller 120"),
    "spring at B": ("gives way", "B roller"),
    "A beam": ("bends", "AB BC CA"),
    "pulley at C": ("rope pulls", "C 5 down"),
    "F 5 from A": ("alone does not give a place", "5 from A 4 from B"),
    "F 9 from A 1 from B": ("no point is so far", "two lengths"),
    "F 3 right": ("no joint F yet", ""),
    "F 3 right 2 right of A 4 right of B": ("twice", ""),
    "move C": ("where to is missing", "move D 7 1"),
    "move A B 7 1": ("several joints", "by 1 0"),
    "move Q 1 1": ("no joint Q", ""),
    "copy load A to B": ("no load at A", ""),
    "mirror about Q": ("no joint Q", ""),
    "C internal hinge": ("hinge already", "from joint to joint"),
    "A on a smooth wall": ("only pushes", "A roller right"),
    "pin to the wall at A": ("needs no wall", "A pin"),
    "B roller on a slope of 3 in 4": ("perpendicular", "B roller 126.87"),
    "reaction at A": ("follow from the supports", "A roller"),
    "AB zero force": ("is found", "like AB"),
    "udl 5 on AB": ("at its joints only", "spread 2 down AB"),
    "angle BAC = 30": ("follow from the places", "C 5 at 30 from A"),
    "C 5 towards B": ("no way in which a load acts", "C 5 at 210"),
    "C 5 along CB": ("no way in which a load acts", "C 5 at 210"),
    "5 kN at all joints": ("no joint before it", "C 12 down"),
    "F 3/2 of AB": ("between 0 and 1", "2 from A along AB"),
    "F 1 from C along AB": ("does not begin at C", "ends at C"),
    "C 1,500 down": ("1500 or 1.500", ""),
}


@pytest.mark.parametrize(("line", "parts"), TEACHER.items())
def test_what_no_truss_has_is_answered_with_the_reason_and_the_cure(
    line: str, parts: tuple[str, str]
) -> None:
    draft = drawn()
    before = draft.problem
    answer = draft.type(line)
    assert not answer.taken
    assert draft.problem is before
    assert all(part in answer.said for part in parts), answer.said
    assert answer.span is not None


def test_a_comma_parts_thousands_where_the_unit_leaves_no_doubt() -> None:
    pounds = drawn("lb ft", "C 1,500 down", "D 1,200 6")
    assert pounds.problem.loads == (Load("C", (("down", Exact.of(1500)),)),)
    assert at(pounds, "D") == (1200, 6)
    metres = drawn("D 1,250 6")
    assert at(metres, "D") == (1.25, 6)


def test_a_space_parts_thousands_of_a_load_and_of_nothing_else() -> None:
    assert drawn("C 1 500 down").problem.loads == (Load("C", (("down", Exact.of(1500)),)),)
    assert at(drawn("C 1 500"), "C") == (1, 500)


def test_units_may_be_spelled_out_and_everything_dropped_in_words() -> None:
    assert (drawn("kips and feet").problem.force, drawn("kips and feet").problem.length) == (
        "kip",
        "ft",
    )
    assert not drawn("drop everything").problem.joints


def test_a_joint_that_is_moved_is_said_to_be_moved_to_its_place() -> None:
    assert drawn().type("move C 7 1").said == "Moved joint C to 7, 1."
