"""Is a sentence of talk judged by the clause it ends in, and by nothing that the talk leaves open?"""

from __future__ import annotations

import re
from typing import Any

import pytest
from paper.measure import about, lines, problem

from tutor import Fy, M, Value, judge

SPOKEN = lines("sayings")
RIGHT = [line for line in SPOKEN if line["kind"] == "right"]
NUMBER = re.compile(r"(?<![\w.])[0-9]+(?:\.[0-9]+)?")
JIB = problem("more/dais-jib")
CANOPY = problem("more/couch-canopy")
COALING = problem("coaling")
HOLDS = "12 kN times 8 m plus 20 kN times 4 m plus 5 kN times 3 m"


def verdict(line: dict[str, Any], text: str) -> Any:
    given = {"senses": line.get("senses"), "known": line.get("known")}
    return judge(problem(line["truss"]), about(line), text, **given)


def texts(found: list[dict[str, Any]]) -> list[str]:
    return [line["text"] for line in found]


@pytest.mark.parametrize("line", RIGHT, ids=texts(RIGHT))
def test_another_number_in_its_last_place_makes_no_spoken_line_right(line: dict[str, Any]) -> None:
    last = list(NUMBER.finditer(line["text"]))[-1]
    other = "7" if float(last[0]) == 0.0 else f"{1.25 * float(last[0]):g}"
    text = f"{line['text'][: last.start()]}{other}{line['text'][last.end() :]}"
    turned = {"cos 45": "cos 56.25", "sin 45": "sin 56.25"}
    assert not verdict(line, turned.get(text, text)).right


@pytest.mark.parametrize("line", RIGHT, ids=texts(RIGHT))
def test_what_forbids_or_gives_up_a_spoken_value_leaves_it_unread(line: dict[str, Any]) -> None:
    assert not verdict(line, f"Don't write this: {line['text']}").right
    given_up = verdict(line, f"{line['text'].rstrip('.')}, no wait.")
    assert not given_up.right


def test_a_reaction_is_judged_as_the_words_of_its_line_have_it_act() -> None:
    text = f"B_x pulls left 3 m above A and holds back all the rest, so B_x times 3 m = {HOLDS}."
    found = judge(CANOPY, M("A"), text)
    assert found.right
    assert "declared" in [remark.code for remark in found.remarks]
    assert judge(CANOPY, M("A"), text, senses={"B_x": "left"}).right
    plain = judge(CANOPY, M("A"), f"B_x times 3 m = {HOLDS}")
    assert plain.kind == "wrong"


def test_words_on_another_axis_draw_no_reaction() -> None:
    text = f"B_x pulls up 3 m above A and holds back all the rest, so B_x times 3 m = {HOLDS}."
    assert not judge(CANOPY, M("A"), text).right


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("BD does all the work out there so it is 587 N C.", "tension-compression"),
        ("AC does all the work down there, and AC is 1173 N, T.", "tension-compression"),
    ],
)
def test_a_wrong_letter_behind_talk_is_told(text: str, code: str) -> None:
    name = text[:2]
    found = judge(JIB, Value(name), text)
    assert [mistake.code for mistake in found.mistakes] == [code]


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("BC has the worst of it, 1247 N C.", "CD"),
        ("CD has the worst of it, 1247 N T.", "BC"),
    ],
)
def test_a_value_said_of_one_force_is_never_right_for_another(text: str, name: str) -> None:
    assert not judge(JIB, Value(name), text).right


COAL = "E is where the coal hangs, 12 kip, CE can't lift it, DE can, hence {}"


def test_an_equation_behind_talk_that_cannot_be_read_is_judged_and_the_talk_told() -> None:
    right = judge(COALING, Fy("E"), COAL.format("3/5 DE = 12 kip."))
    assert right.right
    assert "E is where the coal hangs" in right.remarks[0].text
    wrong = judge(COALING, Fy("E"), COAL.format("4/5 DE = 12 kip."))
    assert [mistake.code for mistake in wrong.mistakes] == ["component"]


def test_a_mistake_of_sense_is_not_told_where_the_talk_may_draw_the_force() -> None:
    turned = "3/5 DE + 12 kip = 0."
    assert judge(COALING, Fy("E"), COAL.format(turned)).kind == "wrong"
    going = COAL.replace("DE can", "DE goes down to it")
    assert judge(COALING, Fy("E"), going.format(turned)).kind == "unreadable"


def test_a_part_or_another_unit_in_the_talk_leaves_a_wrong_line_unread() -> None:
    for talk in (
        "Looking at the right half and no more, it is",
        "Taken in kip here it gets small,",
    ):
        text = f"{talk} and the far post is steep, but CD is 1147 N, C."
        assert judge(JIB, Value("CD"), text).kind == "unreadable"


BARN = problem("more/satchel-barn")
TAKEN = "24 B_y = 500(12) + 400(18) {} 300(6/cos 30)"
RUN_ON = f"{TAKEN} = 6000 + 7200 + 2078 = 15278, B_y = 637 lb"
TALK = "wind is square to the rafter so the arm is just AD"


@pytest.mark.parametrize("text", [f"{TAKEN}. {TALK}", f"{RUN_ON}. {TALK}"])
def test_talk_behind_a_sum_leaves_it_right_or_wrong(text: str) -> None:
    assert judge(BARN, M("A"), text.format("+")).right
    found = judge(BARN, M("A"), text.format("-"))
    assert [(mistake.code, mistake.force) for mistake in found.mistakes] == [("turning", "load D")]
