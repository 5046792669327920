"""Is a line that was spoken into a machine, or whose letters stand apart, read as what it says, and nothing else?"""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tutor import load_problem
from tutor.judge import judge_of
from tutor.notation import Line, Names, Unreadable, read_line
from tutor.notation.sentences.number_words import number_heard

PAPER = Path(__file__).parents[1] / "paper/more"


def names(truss: str) -> Names:
    return judge_of(load_problem(PAPER / f"dictated-{truss}.toml")).names


COWSHED, CREEK, AWNING, CRADLE = map(names, ("cowshed", "creek", "awning", "cradle"))

ONES = "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()  # noqa: SIM905
TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()  # noqa: SIM905


def below_a_hundred(number: int) -> str:
    if number < 20:
        return ONES[number]
    return TENS[number // 10 - 2] + (f" -{ONES[number % 10]}" if number % 10 else "")


def below_a_thousand(number: int, joined: str) -> str:
    if number < 100:
        return below_a_hundred(number)
    rest = f"{joined}{below_a_hundred(number % 100)}" if number % 100 else ""
    return f"{ONES[number // 100]} hundred{rest}"


def in_words(number: int, joined: str) -> str:
    if number < 1000:
        return below_a_thousand(number, joined)
    rest = number % 1000
    behind = (joined if rest < 100 else " ") + below_a_thousand(rest, joined) if rest else ""
    return f"{below_a_thousand(number // 1000, joined)} thousand{behind}"


def said(text: str, of: Names) -> list[tuple[object, ...]]:
    line = read_line(text, of)
    assert isinstance(line, Line), line
    assert not line.unread
    return [
        (side.letter, side.sense, *((term.name, pytest.approx(term.value)) for term in side.terms))
        for step in line.steps
        for side in step.sides
    ]


@given(st.integers(0, 999_999), st.sampled_from((" and ", " ")))
def test_every_whole_number_below_a_million_is_heard_as_it_is_said(
    number: int, joined: str
) -> None:
    words = in_words(number, joined).split()
    assert number_heard(words, 0) == (str(number), len(words))


@given(st.integers(10, 99), st.sampled_from((" and ", " ")))
def test_hundreds_may_be_counted_beyond_a_thousand(hundreds: int, joined: str) -> None:
    words = f"{below_a_hundred(hundreds)} hundred{joined}five".split()
    assert number_heard(words, 0) == (str(100 * hundreds + 5), len(words))


@given(st.integers(0, 99), st.lists(st.integers(0, 9), min_size=1, max_size=4))
def test_figures_behind_a_point_are_heard_one_by_one(whole: int, places: list[int]) -> None:
    words = f"{below_a_hundred(whole)} point {' '.join(ONES[each] for each in places)}".split()
    figures = "".join(map(str, places))
    assert number_heard(words, 0) == (f"{whole}.{figures}", len(words))


@pytest.mark.parametrize(
    ("words", "number"),
    [
        ("point oh eight", "0.08"),
        ("nought point twenty -five", "0.25"),
        ("12 point 5", "12.5"),
        ("eight seventeenths", "(8/17)"),
        ("seven twenty -fifths", "(7/25)"),
        ("twenty -one twenty -ninths", "(21/29)"),
        ("twenty twenty -ninths", "(20/29)"),
        ("three quarters", "(3/4)"),
        ("one half", "(1/2)"),
        ("a third", "(1/3)"),
        ("half", "(1/2)"),
        ("thirteen and a half", "(13+1/2)"),
        ("two and three quarters", "(2+3/4)"),
        ("a hundred and ten", "110"),
    ],
)
def test_parts_and_decimals_are_numbers(words: str, number: str) -> None:
    assert number_heard(words.split(), 0) == (number, len(words.split()))


@pytest.mark.parametrize("words", ["a y", "to", "for", "point", "hundred", "fifth", "won", "oh"])
def test_a_word_that_is_no_number_is_none(words: str) -> None:
    assert number_heard(words.split(), 0) is None


def test_a_fraction_that_may_be_cut_in_two_ways_is_none() -> None:
    assert number_heard(["one", "hundred", "twenty", "fifths"], 0) == ("120", 3)
    assert isinstance(read_line("one hundred twenty fifths A D equals six", COWSHED), Unreadable)


@pytest.mark.parametrize(
    ("dictation", "written"),
    [
        ("A y plus four fifths A D equals zero", "A_y + 4/5 F_AD = 0"),
        ("a y plus four fifths a d equals nought", "A_y + 4/5 F_AD = 0"),
        ("A y + 4 / 5 A D = 0", "A_y + 4/5 F_AD = 0"),
        ("A D - 4 / 5 C D - A x = 0", "F_AD - 4/5 F_CD - A_x = 0"),
        ("F A D = -7.5", "F_AD = -7.5"),
        ("F sub A D equals minus seven point five", "F_AD = -7.5"),
        ("half of A D plus twice A y is equal to zero", "1/2 F_AD + 2 A_y = 0"),
        ("A y plus open bracket four over five close bracket A D equals zero", "A_y + (4/5) F_AD = 0"),
        ("A D is seven and a half kilonewtons in compression", "F_AD = 7.5 kN C"),
        ("B D equals twenty four kilonewtons, tension", "F_BD = 24 kN T"),
        ("A y equals six kilonewtons up", "A_y = 6 kN up"),
        ("B D is a zero force member", "F_BD = 0"),
        ("c y times 12 equals two hundred and sixteen kilonewton metres", "C_y*12 = 216 kN*m"),
        ("Sum F y = 0: A y + 4 / 5 A D = 0", "ΣFy = 0: A_y + 4/5 F_AD = 0"),
        ("A y equals six, so A D equals minus seven point five", "A_y = 6, F_AD = -7.5"),
        ("joint A A y plus four fifths A D equals zero", "A_y + 4/5 F_AD = 0"),
        ("sum of moments about A C y times twelve equals two hundred and sixteen", "12 C_y = 216"),
        ("A y plus A D times sine of forty-five degrees equals zero", "A_y + F_AD sin 45 = 0"),
    ],
)  # fmt: skip
def test_a_line_says_in_words_what_it_says_in_signs(dictation: str, written: str) -> None:
    assert said(dictation, COWSHED) == said(written, COWSHED)


@pytest.mark.parametrize(
    ("dictation", "written", "of"),
    [
        ("L zero y plus eight over seventeen L zero U one equals zero", "L0_y + 8/17 F_{L0-U1} = 0", CREEK),
        ("L oh y + 8 / 17 L 0 U 1 = 0", "L0_y + 8/17 F_{L0-U1} = 0", CREEK),
        ("moments about L two thirty feet times L zero y equals nine hundred foot pounds", "30 ft*L0_y = 900 ft*lb", CREEK),
        ("L zero L one is three thousand three hundred seventy-five pounds T", "F_{L0-L1} = 3375 lb T", CREEK),
        ("A sub x minus twelve over thirteen R sub E equals zero", "A_x - 12/13 R_E = 0", AWNING),
        ("A E is negative three kips, compression", "F_AE = -3 kip C", AWNING),
        ("minus ten plus B E times open parenthesis five divided by thirteen close parenthesis equals zero", "-10 + F_BE*(5/13) = 0", AWNING),
        ("C T equals eight point four nine C", "F_CT = 8.49 C", CRADLE),
        ("B C = 8 T", "F_BC = 8 T", CRADLE),
        ("C T over the square root of two equals minus six", "F_CT/√2 = -6", CRADLE),
        ("six plus root two over two C T equals zero", "6 + √2/2*F_CT = 0", CRADLE),
        ("eight root two kilonewtons compression", "8√2 kN C", CRADLE),
    ],
)  # fmt: skip
def test_figures_subscripts_and_senses_go_by_the_names_of_the_truss(
    dictation: str, written: str, of: Names
) -> None:
    assert said(dictation, of) == said(written, of)


@pytest.mark.parametrize(
    "text",
    [
        "no one equals 4",
        "for one thing A y equals six",
        "this one is A y equals six",
        "A y does not equal six",
        "A y equals six or seven",
        "A y plus C y too equals twenty-four",
        "A y plus some of A D equals zero",
        "A y plus equals six",
        "A y equals six plus, so A D equals two",
        "A y four plus C y equals six",
        "two thousand twelve hundred equals A y",
        "to A y equals six",
        "A D = - 7 . 5",
        "be d equals twenty four",
    ],
)
def test_a_line_of_which_a_word_may_be_anything_else_is_not_taken_down(text: str) -> None:
    assert isinstance(read_line(text, COWSHED), Unreadable)


@pytest.mark.parametrize(
    ("text", "letters"),
    [
        ("A y plus B C D equals zero", "B C D"),
        ("A y plus A equals zero", "A"),
        ("A y plus A z equals zero", "A z"),
        ("four fifths A B C plus A y equals zero", "A B C"),
    ],
)
def test_letters_that_together_name_no_force_are_told_of(text: str, letters: str) -> None:
    line = read_line(text, COWSHED)
    assert isinstance(line, Unreadable)
    assert line.found == letters
    assert text[line.column - 1 :].startswith(letters)


def test_every_term_points_at_the_words_that_were_said() -> None:
    text = "C y times twelve minus twenty-four times six equals nought"
    line = read_line(text, COWSHED)
    assert isinstance(line, Line)
    left, right = line.steps[0].sides
    places = [text[term.span.start : term.span.end] for term in (*left.terms, *right.terms)]
    assert places == ["C y times twelve", "twenty-four times six", "nought"]


WORDS = "a A y x C D B one twenty hundred half fifths point and plus minus times over open bracket close root sine of equals is zero kilonewtons tension Fx ΣFy ! so joint about sub degrees the , = 4 / - ( )".split()  # noqa: SIM905


@given(st.lists(st.sampled_from(WORDS), max_size=24))
def test_any_words_of_dictation_are_read_or_told_of(words: list[str]) -> None:
    text = " ".join(words)
    line = read_line(text, COWSHED)
    if isinstance(line, Line):
        spans = [side.span for step in line.steps for side in step.sides]
        assert all(0 <= span.start <= span.end <= len(text) for span in spans)
    else:
        assert line.message
