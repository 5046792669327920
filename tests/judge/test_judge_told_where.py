"""Is each mistake told in the words for where it was made: at a joint, a part, the whole, in a moment?

The truss is our own, solved by hand; what a lecturer would say of each line is common practice.
"""

from __future__ import annotations

from typing import Any

import pytest
from families import down, plain_problem

from tutor.judge import Asked, Fx, Fy, M, Mistake, Value, judge
from tutor.model import Support

TABLE = plain_problem(
    [("A", 0, 0), ("B", 3, 0), ("C", 6, 0), ("D", 9, 0), ("E", 3, 4), ("F", 6, 4)],
    ["AB", "BC", "CD", "AE", "BE", "EF", "BF", "CF", "DF"],
    [Support("A", "pin"), Support("D", "roller")],
    [down("B", 12), down("F", 6)],
)
"""A_y = 10, D_y = 8, AE = -12.5, AB = 7.5."""
LEFT = ("A", "E")


def first(about: Asked, text: str, more: dict[str, Any]) -> Mistake:
    return judge(TABLE, about, text, **more).mistakes[0]


@pytest.mark.parametrize(
    ("about", "text", "more", "place"),
    [
        (
            Value("AE"),
            "AE = -12.1",
            {"known": {"A_y": "10"}, "lines": ("A_y + 0.8 F_AE = 0",)},
            "Solve for AE once more, step by step, and put the value back in.",
        ),
        (
            M("A"),
            "9 D_y = 75",
            {},
            "The terms with an unknown fit; the sum of the others does not:",
        ),
        (
            M("A"),
            "9 D_y - 12*6 - 6*6 = 0",
            {},
            "The distance beside the load at B or the load at F belongs to another force:",
        ),
        (
            M("A"),
            "9 D_y - 12*3 - 6*7.21 = 0",
            {},
            "The distance beside the load at F is not its arm:",
        ),
        (
            Fx("A"),
            "A_x + F_AB + cos(53.13 rad) F_AE = 0",
            {},
            "The sine or cosine beside the force in AE mixes degrees and radians:",
        ),
        (
            Fx("A"),
            "A_x + F_AB + 0.8 F_AE = 0",
            {},
            "The factor beside the force in AE is that of its other component:",
        ),
        (
            M("A"),
            "9 D_y - 12*3 - 6*6 = 10",
            {},
            "One number stands for no force on the whole truss:",
        ),
        (Fy("A"), "A_y + 0.8 F_AE - 5 = 0", {}, "One number stands for no force on joint A:"),
        (
            Fy("A"),
            "A_y + 0.8 F_AE + F_AB = 0",
            {},
            "The force in AB does not belong in here: does any of it go the way this sum goes?",
        ),
        (
            M("A"),
            "9 D_y - 12*3 - 6*6 + 3 A_x = 0",
            {},
            "The reaction A_x does not belong in here: see where its line of action passes.",
        ),
        (
            Fy(),
            "A_y + D_y - 12 - 6 + F_BE = 0",
            {},
            "The force in BE does not enter the whole truss from outside: see where it acts.",
        ),
        (Fy("A"), "A_y + 0.8 F_AE - 12 = 0", {}, "The load at B acts at another joint:"),
        (Fy(part=LEFT), "A_y - 12 + F_BE = 0", {}, "The load at B acts on the other part:"),
        (
            Fy("A"),
            "A_y + 0.8 F_AE + D_y = 0",
            {},
            "The reaction D_y acts at its own support, which is at another joint.",
        ),
        (
            Fy(part=LEFT),
            "A_y + F_BE + D_y = 0",
            {},
            "The reaction D_y acts at its own support, which is on the other part.",
        ),
        (
            Fy(),
            "A_y + D_y - 12 - 7 = 0",
            {},
            "The number of the load at F is not the one it was given:",
        ),
        (
            Fy("A"),
            "9 + 0.8 F_AE = 0",
            {"known": {"A_y": "10"}},
            "The number put in for the reaction A_y is not your result for it:",
        ),
        (
            Fx("A"),
            "A_x + F_AB + 0.6*12.5 = 0",
            {"known": {"AE": "-12.5"}},
            "The sign of your result for the force in AE is lost here, or counted twice:",
        ),
        (
            Fx("A"),
            "A_x + F_AB - 0.6*(-12.5) = 0",
            {"known": {"AE": "-12.5"}},
            "The minus in the brackets of the force in AE is right;",
        ),
        (Fy("A"), "0.8 F_AE = 0", {}, "The reaction A_y is left out."),
        (Fy("B"), "F_BE = 12", {}, "The force in BF is left out: it has a vertical component."),
        (
            Fy("A"),
            "A_y + F_AE = 0",
            {},
            "The force in AE stands here whole: only its component along the sum counts.",
        ),
        (
            Fy("A"),
            "10000 + 0.8 F_AE = 0",
            {"known": {"A_y": "10"}},
            "The number of the reaction A_y",
        ),
        (
            M("A"),
            "900 D_y - 12*3 - 6*6 = 0",
            {},
            "The distance beside the reaction D_y stands in another unit than the other arms.",
        ),
    ],
)
def test_the_place_of_a_mistake_is_told_as_what_it_is(
    about: Asked, text: str, more: dict[str, Any], place: str
) -> None:
    assert first(about, text, more).place.startswith(place)


@pytest.mark.parametrize(
    ("about", "text", "more", "reason"),
    [
        (
            Value("AE"),
            "AE = -12.1",
            {"known": {"A_y": "10"}, "lines": ("A_y + 0.8 F_AE = 0",)},
            "Put the value back into the equation it came from:",
        ),
        (M("A"), "9 D_y = 75", {}, "Write each product out first,"),
        (
            M("A"),
            "9 D_y - 12*3 - 6*6 = 10",
            {},
            "A force whose line of action passes through A has no moment about it; and a member is inside",
        ),
        (
            Fy("A"),
            "A_y + 0.8 F_AE - 5 = 0",
            {},
            "A force perpendicular to the direction of the sum has no component in it; and only the members that end at joint A,",
        ),
        (
            Fy("A"),
            "0.8 F_AE = 0",
            {},
            "Cut joint A free and draw every arrow on it: each member that",
        ),
        (
            Fy(part=LEFT),
            "A_y = 0",
            {},
            "Draw every arrow from outside on the part with A, E: each load, each reaction and each member that was cut.",
        ),
        (Fy(), "A_y = 12 + 6", {}, "Draw every arrow from outside on the whole truss: each load"),
        (
            Fy("A"),
            "A_y - 0.8 F_AE = 0",
            {},
            "On the free-body diagram of joint A, every arrow with a component along your positive direction enters with plus, every arrow against it with minus; a member drawn in tension pulls",
        ),
        (
            Fy(part=LEFT),
            "A_y + F_BE - 12 = 0",
            {},
            "Cut the part with A, E free: only the members that are cut,",
        ),
        (
            Fy("A"),
            "A_y + 0.8 F_AE - 12 = 0",
            {},
            "Cut joint A free: only the members that meet there,",
        ),
        (
            Fy("A"),
            "A_y + 0.8 F_AE + D_y = 0",
            {},
            "A reaction acts only at its own support. Cut joint A free and draw what touches it: members,",
        ),
        (
            Fy(part=LEFT),
            "A_y + F_BE + D_y = 0",
            {},
            "A reaction acts only at its own support. Cut the part with A, E free and draw what touches it: the members that are cut,",
        ),
        (
            M("E"),
            "0.8*3 F_AE + 4 A_x - 3 A_y = 0",
            {},
            "Go round the free-body diagram force by force: its components, their arms about E,",
        ),
    ],
)
def test_the_principle_is_that_of_the_body_and_the_sum(
    about: Asked, text: str, more: dict[str, Any], reason: str
) -> None:
    assert first(about, text, more).reason.startswith(reason)


@pytest.mark.parametrize(
    ("about", "text", "more", "look"),
    [
        (
            M("A"),
            "9 D_y - 12*6 - 6*6 = 0",
            {},
            "A distance in this line is the arm of another force, not of the one beside it.",
        ),
        (
            Fx("A"),
            "A_x + F_AB + 0.6*12.5 = 0",
            {"known": {"AE": "-12.5"}},
            "An earlier result has not come into this line with its own sign.",
        ),
        (
            Fx("A"),
            "A_x + F_AB - 0.6*(-12.5) = 0",
            {"known": {"AE": "-12.5"}},
            "The sign before the brackets of an earlier result is not the one its arrow gives.",
        ),
        (
            Fy("A"),
            "0.8 F_AE = 0",
            {},
            "On joint A two forces have a vertical component; not all of them are in your line.",
        ),
        (
            Fy("A"),
            "A_y + 0.8 F_AE + D_y = 0",
            {},
            "A support that is not at joint A has come into this line.",
        ),
        (
            Fy(part=LEFT),
            "A_y + F_BE + D_y = 0",
            {},
            "A support that is not on the part with A, E has come into this line.",
        ),
        (
            Fy(),
            "A_y + D_y - 12 - 7 = 0",
            {},
            "A number in this line is not the one that was given.",
        ),
        (
            M("A"),
            "9 D_y = 75",
            {},
            "The known numbers of this line do not add up to what stands in it.",
        ),
    ],
)
def test_what_is_seen_of_a_mistake_is_said_of_its_own_kind(
    about: Asked, text: str, more: dict[str, Any], look: str
) -> None:
    assert first(about, text, more).text == look


@pytest.mark.parametrize(
    ("reason", "said"),
    [
        ("A_y acts down", "“because A_y acts down” is not so: A_y acts the other way."),
        ("A_y is zero", "“because A_y is zero” is not so: A_y is not zero."),
        ("A_y acts to the left", ""),
        ("AE acts up", ""),
        ("AE acts down", ""),
    ],
)
def test_of_a_way_that_a_force_cannot_act_it_is_not_said_that_it_acts_the_other_way(
    reason: str, said: str
) -> None:
    """A_y is 10 upwards; of a member it is said whether it pulls or pushes, not up or down."""
    known = {"A_y": "10", "AE": "-12.5"}
    verdict = judge(TABLE, Fy("A"), f"A_y + 0.8 F_AE = 0 because {reason}", known=known)
    assert verdict.right
    assert " ".join(remark.text for remark in verdict.remarks) == said
