"""Does a line with letters of its own say the same as with what they stand for, and what is taken back nothing?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Fy, M, Value, judge, load_problem
from tutor.judge import judge_of
from tutor.notation import Unreadable, read_line
from tutor.notation.pages.parted_load import parts_a_load

QUAY = load_problem(Path(__file__).parent / "hands/quay.toml")
NAMES = judge_of(QUAY).names
LETTERS = [
    ("let s = 3/5 then {}", Fy("A"), "A_y + s AD = 0", "A_y - s AD = 0"),
    ("with c = 4/5 we get {}", Fx("A"), "A_x + AB + c AD = 0", "A_x + AB - c AD = 0"),
    ("write c for 4/5: {}", Fx("A"), "A_x + AB + c AD = 0", "A_x + AB + c/2 AD = 0"),
    ("write s for 0.6, c for 0.8: {}", Fy("A"), "A_y + s AD = 0", "A_y + c AD = 0"),
    ("th = atan(3/4): {}", Fy("A"), "A_y + AD sin th = 0", "A_y + AD cos th = 0"),
    ("ang = 36.9 deg. {}", Fx("A"), "A_x + AB + AD cos(ang) = 0", "A_x + AB + AD sin(ang) = 0"),
    ("th = atan(3/4), so sin th = 0.6: {}", Fy("A"), "A_y + AD sin th = 0", "A_y = AD sin th"),
    ("call AD x. {}", Fy("A"), "15 + 0.6x = 0, x = -25", "15 - 0.6x = 0, x = 25"),
    ("let AD be x: {}", Fy("A"), "A_y + 0.6x = 0", "A_y + 0.8x = 0"),
    ("call AB p and AD q: {}", Fx("A"), "A_x + p + 0.8q = 0", "A_x - p + 0.8q = 0"),
    ("P = AB, Q = AD: {}", Fx("A"), "A_x + P + 0.8Q = 0", "A_x + Q + 0.8P = 0"),
    ("P_1 = 24 kN, P_2 = 12 kN: {}", Fy(), "A_y + C_y - P_1 - P_2 = 0", "A_y + C_y = P_1 - P_2"),
    ("W1 = 24, W2 = 12; {}", M("A"), "8C_y - 4W1 - 4W2 - 3(8) = 0", "8C_y - 4W1 - 4W2 = 0"),
    ("F1 = 24 at D, F2 = 12 at B, {}", Fy(), "A_y + C_y - F1 - F2 = 0", "A_y + C_y = F1 - F2"),
    ("total load W = 24 + 12 = 36: {}", Fy(), "A_y + C_y - W = 0", "A_y - C_y - W = 0"),
    ("sina = 0.6: {}", Fy("A"), "A_y + AD sina = 0", "A_y - AD sina = 0"),
    ("sin a = 0.6, so {}", Fy("A"), "A_y + AD sin a = 0", "A_y - AD sin a = 0"),
    ("say AD = q, then {}", Fy("A"), "15 + 0.6q = 0, q = -25", "15 - 0.6q = 0, q = 25"),
    ("{}, th = atan(3/4)", Fy("A"), "A_y + AD sin th = 0", "A_y + AD cos th = 0"),
    ("{} (th = 36.87°)", Fy("A"), "A_y + AD sin th = 0", "A_y + AD cos th = 0"),
    ("{}, s being 3/5", Fy("A"), "A_y + s AD = 0", "A_y - s AD = 0"),
    ("{} where x is the force in AD", Fy("A"), "A_y + 0.6x = 0", "A_y - 0.6x = 0"),
    ("P_x = 8, P_y = 24: {}", Fx(), "A_x + P_x = 0", "A_x - P_x = 0"),
]


@pytest.mark.parametrize(("around", "about", "right", "wrong"), LETTERS)
def test_letters_of_a_line_stand_for_what_it_says_they_are(around, about, right, wrong) -> None:
    known = {"A_y": 15} if "15" in right else {}
    assert judge(QUAY, about, around.format(right), known=known).kind == "right"
    assert judge(QUAY, about, around.format(wrong), known=known).kind == "wrong"


@pytest.mark.parametrize(
    "text",
    [
        "th = 36.9° = 53.1°: A_y + AD sin th = 0",
        "th = atan(3/4), so sin th = 0.8: A_y + AD sin th = 0",
        "B_y = 0: A_y + C_y + B_y - 36 = 0",
        "DE = 4: A_y + 0.6 AD = 0",
        "call AD x and AB x: A_y + 0.6x = 0",
        "call AD x",
        "total load W = 24 + 12 = 38: A_y + C_y - W = 0",
    ],
)
def test_a_letter_with_two_meanings_or_another_one_is_not_read(text: str) -> None:
    assert isinstance(read_line(text, NAMES), Unreadable)


def test_a_letter_that_a_line_defines_is_never_passed_over_as_a_word() -> None:
    line = read_line("let s = 3/5, then -s AD - 15 = 0", NAMES)
    assert not isinstance(line, Unreadable)
    assert [term.value for term in line.result.sides[0].terms if term.name] == [-0.6]


@pytest.mark.parametrize(
    "before",
    [
        "8C_y = 96 + 48 = 144 no wait the 8 turns it too: {}",
        "8C_y = 96 + 48 = 144, hang on the wind at D is 3 up: {}",
        "96 + 48, no they're not alone: {}",
        "8C_y = 144 oh no there are 3 of them: {}",
        "8C_y - 144 = 0, no it needs the wind: {}",
        "8C_y - 144 = 0, scrap that, {}",
        "8C_y - 144 = 0 forgot the wind so {}",
        "8C_y - 144 = 0; actually 24 more: {}",
        "8C_y = 144, no 168. {}",
        "8C_y - 144 = 0, no wait the wind turns it too so +24: {}",
        "8C_y - 144 = 0 ... no, {}",
        "8C_y - 144 = 0, i mean {}",
        "8C_y - 144 = 0, wait, that is not all: ΣM_A: {}",
        "8C_y - 144 = 0 sorry {}",
        "8C_y - 144 = 0 -- wrong, D is 3 m up -- {}",
    ],
)
def test_of_a_line_that_is_taken_back_only_the_new_one_counts(before: str) -> None:
    assert judge(QUAY, M("A"), before.format("8C_y = 96 + 48 + 24 = 168")).right
    assert not judge(QUAY, M("A"), before.format("8C_y = 96 + 48 - 24 = 120")).right


@pytest.mark.parametrize(
    "said", ["no load there", "no unknowns left", "sorry for the mess", "wait for the wind"]
)
def test_words_that_take_nothing_back_leave_the_equation_before_them(said: str) -> None:
    for wrong in ("8C_y - 144 = 0", "A_x - 8 = 0"):
        found = judge(QUAY, M("A"), f"{wrong}, {said}; 8C_y = 96 + 48 + 24 = 168")
        assert not found.right, found.text


@pytest.mark.parametrize("text", ["AD = 25 T.. no it pushes, 25 C", "AD = 20 C, no its more, 25 C"])
def test_a_value_that_is_taken_back_with_a_reason_is_the_new_one(text: str) -> None:
    assert judge(QUAY, Value("AD"), text).right
    assert not judge(QUAY, Value("AD"), text[:-1] + "T").right


def test_a_value_behind_a_word_that_takes_nothing_back_keeps_its_equation() -> None:
    text = "A_y + 0.6 AD = 0, forgot nothing, so AD = -25"
    assert judge(QUAY, Fy("A"), text, known={"A_y": 15}).kind in ("right", "unreadable")


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("A_x = -8, so really 8 kN left", True),
        ("A_x = -8, so actually 8 kN ←", True),
        ("A_x = -8 kN, in fact 8 kN to the left", True),
        ("A_x = -8, so really 8 right", False),
    ],
)
def test_what_a_value_really_is_is_heeded(text: str, right: bool) -> None:
    assert judge(QUAY, Fx(), f"A_x + 8 = 0, {text}").right == right


@pytest.mark.parametrize("way", ["as a push", "as a strut", "as compression"])
def test_a_force_as_a_push_is_drawn_so(way: str) -> None:
    assert judge(QUAY, Fy("A"), f"A_y - 0.6 AD = 0, AD {way}").right
    assert judge(QUAY, Fy("A"), f"A_y - 0.6 AD = 0, AD {way}", senses={"AD": "C"}).right
    assert not judge(QUAY, Fy("A"), f"A_y + 0.6 AD = 0, AD {way}", senses={"AD": "C"}).right


@pytest.mark.parametrize(
    "text",
    [
        "A_y + 0.6 AD = 0   AB is flat so not in this one",
        "8C_y - 96 - 48 - 24 = 0 (A_x and A_y go through A",
        "8C_y - 96 - 48 - 24 = 0, (12 and 24 go down there",
        "8C_y = 96 + 48 + 24 = 168, C_y = 21. wind is level so the arm is just BD",
    ],
)
def test_a_reason_behind_a_line_may_stand_open_or_name_a_length(text: str) -> None:
    about = Fy("A") if "AD" in text else M("A")
    assert judge(QUAY, about, text).right


@pytest.mark.parametrize(
    ("clause", "parts"),
    [
        ("10kN = 7.07 left & 7.07 down", True),
        ("the load at D is 24 kN down and 8 kN right", True),
        ("5 = 3 → + 4 ↓", True),
        ("10kN = 7.07 left & 8 down", False),
        ("10 kN = 7.07 left & 7.07 right", False),
        ("A_x = 7.07 left & 7.07 down", False),
    ],
)
def test_a_load_is_parted_only_truly(clause: str, parts: bool) -> None:
    assert parts_a_load(clause) == parts


def test_words_that_part_a_load_stand_before_a_line_and_make_no_wrong_one_right() -> None:
    said = "load at D = 24 down & 8 right. "
    assert judge(QUAY, M("A"), said + "8C_y - 24*4 - 8*3 - 12*4 = 0").right
    assert not judge(QUAY, M("A"), said + "8C_y - 24*4 + 8*3 - 12*4 = 0").right


@pytest.mark.parametrize("text", ["AD\t-25,001\tkN", "AD = -25,001 kN", "AD | 25,001 | kN | C"])
def test_a_comma_sets_off_decimals_where_no_force_could_be_so_large(text: str) -> None:
    assert judge(QUAY, Value("AD"), text).right
    assert judge(QUAY, Value("AD"), text.replace("25,", "27,")).kind == "wrong"


def test_a_comma_stays_asked_about_where_both_numbers_may_be_meant() -> None:
    assert judge(QUAY, Value("AD"), "AD = -1,500 kN").kind == "unreadable"


@pytest.mark.parametrize("sign", ["(cid:80)", "(cid:88) "])
def test_a_sign_of_a_font_without_names_before_a_sum_is_that_of_the_sum(sign: str) -> None:
    assert judge(QUAY, Fy(), f"{sign}F_y = 0 : A_y + C_y − 24 − 12 = 0").right


def test_a_number_in_brackets_with_a_decimal_comma_is_no_point() -> None:
    known = {"AD": -25}
    assert judge(QUAY, Fx("A"), "−(−25,0)·0,8 − F_AB − A_x = 0", known=known).right
    assert judge(QUAY, Fx("A"), "−(−25,0)·0,8 + F_AB + A_x = 0", known=known).kind == "wrong"
