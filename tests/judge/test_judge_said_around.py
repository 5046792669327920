"""Words around a value or a sum: are they read for what they say, whatever their order?"""

from __future__ import annotations

import re
from typing import Any

import pytest
from paper.measure import problem

from tutor import Fx, Fy, M, Value, judge
from tutor.judge import Verdict


def said(truss: str, about: Fx | Fy | M | Value, text: str, **more: Any) -> Verdict:
    return judge(problem(truss), about, text, **more)


def codes(verdict: Verdict) -> list[tuple[str, str | None]]:
    return [(mistake.code, mistake.force) for mistake in verdict.mistakes]


PUSHED = [
    "So {name} is being squeezed: {size}",
    "{name} is being pushed: {size}.",
    "The strut {name} is squeezed: {size}",
    "Thus {name} is in compression: {size}",
    "That means {name} is a strut: {size}",
    "Then {name} must be a strut: {size}",
    "{name} isn't pulling at all, it's being squeezed: {size}",
    "{name} is not in tension but in compression: {size}",
    "So {name} isn't a tie, it's a strut: {size} of compression",
    "So {name} is pushed together with {size} (compression)",
]


@pytest.mark.parametrize("words", PUSHED)
@pytest.mark.parametrize(
    ("truss", "name", "size"),
    [("rack", "CE", "600 N"), ("gantry", "DK", "6.5 kN"), ("davit", "AC", "500 lb")],
)
def test_what_a_member_does_before_its_size_is_its_t_or_c(
    truss: str, name: str, size: str, words: str
) -> None:
    assert said(truss, Value(name), words.format(name=name, size=size)).right
    tie = {"rack": ("BE", "560 N"), "gantry": ("BK", "10 kN"), "davit": ("BC", "500 lb")}[truss]
    line = words.format(name=tie[0], size=tie[1])
    assert codes(said(truss, Value(tie[0]), line)) == [("tension-compression", tie[0])]


@pytest.mark.parametrize(
    "line",
    [
        "CE isn't squeezed: 600 N",
        "The tie CE is squeezed: 600 N",
        "CE is no strut: 600 N",
        "CE is not a strut, it's being squeezed: 600 N",
    ],
)
def test_what_denies_or_contradicts_itself_is_no_value(line: str) -> None:
    assert not said("rack", Value("CE"), line).right


def test_a_value_told_of_another_member_is_not_that_of_the_one_asked_for() -> None:
    assert not said("rack", Value("EF"), "So AB is being pulled: 180 N").mistakes
    assert not said("rack", Value("CE"), "So AE is being squeezed: 600 N").right


@pytest.mark.parametrize(
    "line",
    [
        "the floor pushes on it with about 720 N, thats Cy",
        "720 N, that's C_y",
        "the roller at C gives 720 N, which is Cy",
        "so it holds up 720 N and that's C_y",
        "the roller has 720 N, this is C_y.",
    ],
)
def test_a_size_before_the_name_of_its_force_is_its_value(line: str) -> None:
    assert said("rack", Value("C_y"), line).right
    assert said("rack", Value("C_y"), line.replace("720", "270")).kind == "wrong"


@pytest.mark.parametrize(
    ("truss", "name", "line"),
    [
        ("rack", "AE", "AE is pushed with 100 N (C), because F_AE = -80 / 0.8"),
        ("rack", "DF", "so DF is in tension with 300 N since DF = 240 / 0.8."),
        ("gantry", "CK", "CK is pulled with 5.5 kN, because F_CK = 3 + 6.5(1.8)/4.68"),
        ("davit", "AB", "AB pulls with 250 lb (tension), because AB = 500 sin 30"),
        ("davit", "CD", "CD is squeezed by 300 lb, as CD = -300"),
    ],
)
def test_the_working_behind_a_value_in_words_is_held_against_it(
    truss: str, name: str, line: str
) -> None:
    assert said(truss, Value(name), line).right
    assert not said(truss, Value(name), re.sub(r"(?<!\w)[0-9]", "7", line, count=1)).right


@pytest.mark.parametrize(
    "value",
    ["100 N C (= 80 / 0.8)", "100 N C = 80/0.8", "100 (C) = 80 / 0.8", "100 C (= 80(5/4))"],
)
def test_a_letter_before_the_working_is_that_of_the_value(value: str) -> None:
    assert said("rack", Value("AE"), f"AE = {value}").right
    assert not said("rack", Value("AE"), f"AE = {value.replace('C', 'T')}").right
    assert not said("rack", Value("AE"), f"AE = {value.replace('80', '60')}").right


@pytest.mark.parametrize("near", ["about", "roughly", "around", "nearly", "approx.", "some"])
def test_talk_before_a_working_that_comes_to_about_a_number_only_leads_to_it(near: str) -> None:
    line = f"divide by the slope and AE = -80 / (4/5) = {near} -100 N"
    assert said("rack", Value("AE"), line).right
    wrong = line.replace("4/5", "3/5").replace("100", "133.3")
    assert codes(said("rack", Value("AE"), wrong)) == [("component", "AE")]


@pytest.mark.parametrize("its", ["its", "it's", "thats", "that's"])
def test_what_a_sum_in_talk_comes_to_is_its_value(its: str) -> None:
    line = f"The end post pushes down on A, 80 - 0.8 AE = 0 so {its} 100 N"
    more: dict[str, Any] = {"known": {"A_y": 80.0}, "senses": {"AE": "C"}}
    assert said("rack", Fy("A"), line, **more).right
    assert not said("rack", Fy("A"), line.replace("100", "110"), **more).right
    assert not said(
        "rack", Fy("A"), line.replace("0.8", "0.6").replace("100", "133.3"), **more
    ).right


LED = ["so it's {}", "so it is {}", "which gives {}", "giving {}", ", so AE is {}", "-> {}"]
LED += ["and that gives us {}", "ie {}", "so the answer is {}", "so the post takes {}"]


@pytest.mark.parametrize("led", LED)
@pytest.mark.parametrize("talk", ["", "The end post pushes down on A, "])
def test_a_value_behind_a_sum_is_held_against_it_with_and_without_talk_before(
    talk: str, led: str
) -> None:
    more: dict[str, Any] = {"known": {"A_y": 80.0}, "senses": {"AE": "C"}}
    line = f"{talk}80 - 0.8 AE = 0 {led}"
    assert said("rack", Fy("A"), line.format("100 N"), **more).right
    assert not said("rack", Fy("A"), line.format("110 N"), **more).right


@pytest.mark.parametrize(
    "words", ["If you look along CD instead, BC drops out: {}", "Looking along CD instead, {}"]
)
def test_another_line_instead_takes_nothing_back(words: str) -> None:
    assert said("rack", Fx("D"), words.format("-CD - 0.6 DF = 0")).right
    verdict = said("rack", Fx("D"), words.format("-CD + 0.6 DF = 0"))
    assert codes(verdict)[0][0] == "sign"


@pytest.mark.parametrize("before", ["", "With ", "Taking "])
@pytest.mark.parametrize("way", ["→+ : ", "→+: ", "ΣFx: "])
def test_how_a_reaction_is_drawn_may_be_said_before_the_sum(before: str, way: str) -> None:
    lead, more = f"{before}A_x drawn to the left, {way}", {"senses": {"A_x": "left"}}
    assert said("rack", Fx(), f"{lead}-A_x + 120 = 0", **more).right
    assert codes(said("rack", Fx(), f"{lead}A_x + 120 = 0", **more)) == [("sense", "A_x")]
    assert said("rack", Fx(), f"{lead}120 - A_x = 0").right


def test_a_sum_with_a_force_drawn_by_its_own_words_is_judged_so() -> None:
    lead = "AE drawn in compression, →+: "
    assert said("rack", Fx("A"), f"{lead}A_x + AB - 0.6 AE = 0").right
    assert codes(said("rack", Fx("A"), f"{lead}-A_x + AB - 0.6 AE = 0")) == [("sign", "A_x")]
    assert codes(said("rack", Fx("A"), f"{lead}A_x - AB - 0.6 AE = 0")) == [("sign", "AB")]


@pytest.mark.parametrize("arrows", ["←→", "← →", "→←", "(→ ←)", "↔"])
@pytest.mark.parametrize("way", ["C", "(C)", "compression", "comp"])
def test_two_arrows_beside_a_letter_say_no_way(way: str, arrows: str) -> None:
    assert said("rack", Value("CE"), f"CE = 600 N {way} {arrows}").right
    wrong = said("rack", Value("BE"), f"BE = 560 N {way} {arrows}")
    assert codes(wrong) == [("tension-compression", "BE")]


@pytest.mark.parametrize("gap", [" ", "  ", "     "])
def test_a_name_and_its_value_behind_a_sum_that_ends_in_it_are_apart(gap: str) -> None:
    line = f"560(300) + 240(900) + 120(400) = 600 C_y{gap}C_y = 720 N"
    assert said("rack", M("A"), line).right
    assert not said("rack", M("A"), line.replace("720", "730")).right
    assert codes(said("rack", M("A"), line.replace("900", "600"))) == [("arm-from", "load D")]
