"""Is what is struck out gone, and is a bracket that only talks left out, with nothing else?"""

from __future__ import annotations

from itertools import product

import pytest
from truss_names import LETTERED

from tutor.notation import Line, Unreadable, read_line

OPERANDS = ("3/5 AB", "F_AC cos 30", "12", "(4)(3)", "sqrt(2) BC", "0.8(7.5)")
STRUCK = ("5/3", "12·4", "6cos30", "F_AC", "(12)(3)", "7")
WAYS = (
    "[crossed out: {}]", "(deleted: {})", "[struck out {}]", "[strike]{}[/strike]", "[rubbed out: {}]", "~~{}~~", "<s>{}</s>", "<del>{}</del>", "[s]{}[/s]", "~{}~", "\\sout{{{}}}",
)  # fmt: skip
TALK = (
    "(minus minus = plus!)",
    "(- × - = +)",
    "[careful, two minuses!]",
    "(AB pushes A ↑)",
    "(hm, sign? yes)",
    "[wait.. the other one turns cw, ok]",
    "(halfway)",
    "(goes through A)",
    "(the load hangs at B)",
)
FACTORS = ("(arm 4)", "(4 m from A)", "(lever arm of 4 m)", "(4 m)", "(4 m to the left of A)")
TAKING_BACK = ("(should be minus)", "(or is it 8?)")


def terms(text: str) -> list[tuple[str | None, float]]:
    line = read_line(text, LETTERED)
    assert isinstance(line, Line), (text, line)
    return [(term.name, term.value) for side in line.steps[0].sides for term in side.terms]


@pytest.mark.parametrize("way", WAYS)
def test_what_is_struck_out_before_what_stands_in_its_place_is_gone(way: str) -> None:
    for struck, operand in product(STRUCK, OPERANDS):
        plain = f"A_y - {operand} + AB = 0"
        assert terms(f"A_y - {way.format(struck)} {operand} + AB = 0") == terms(plain)


@pytest.mark.parametrize("way", WAYS)
def test_a_term_that_is_struck_out_is_nothing(way: str) -> None:
    for struck in STRUCK:
        found = terms(f"A_y + {way.format(struck)} - 12 + AB = 0")
        assert [each for each in found if each[1]] == [("A_y", 1.0), (None, -12.0), ("AB", 1.0)]


@pytest.mark.parametrize(
    ("typed", "plain"),
    [
        ("F_AB = 600 (crossed out) 346 T", "F_AB = 346 T"),
        ("F_AB = 600 kN C [struck out] 346 T", "F_AB = 346 T"),
        ("F_AB = [600, deleted] 346 T", "F_AB = 346 T"),
        ("F_AB = 346 [crossed out: C] T", "F_AB = 346 T"),
        ("A_y - 600 (erased) - 346 + AB = 0", "A_y - 346 + AB = 0"),
        ("A_y - 600 (erased) 346 + AB = 0", "A_y - 346 + AB = 0"),
    ],
)
def test_a_number_that_is_said_to_be_struck_out_is_gone(typed: str, plain: str) -> None:
    assert [each for each in terms(typed) if each[1]] == [each for each in terms(plain) if each[1]]


@pytest.mark.parametrize(
    "line",
    ["F_AB = ~~346~~", "F_AB = [crossed out: 346]", "F_AB = 346 kN T (deleted)", "F_AB = <s>0</s>"],
)
def test_a_side_of_which_all_is_struck_out_is_no_zero(line: str) -> None:
    assert isinstance(read_line(line, LETTERED), Unreadable)


def test_a_stroke_through_each_character_strikes_them_out() -> None:
    for struck, operand in product(("12·4", "0.8", "6cos30"), OPERANDS):
        through = "".join(f"{char}\u0336" for char in struck)
        assert terms(f"A_y - {through} {operand} = 0") == terms(f"A_y - {operand} = 0")


@pytest.mark.parametrize("talk", TALK)
def test_a_bracket_that_only_talks_changes_no_term(talk: str) -> None:
    plain = "A_y - 3·4 + 0.6 BC = 0"
    for text in (
        f"A_y - 3·4 {talk} + 0.6 BC = 0",
        f"A_y - 3·4 + 0.6 BC {talk} = 0",
        f"A_y - 3·4 + 0.6 BC = 0 {talk}",
        f"A_y - 3·4 + 0.6 BC = 0 {talk}, BC = 20",
    ):
        assert terms(text) == terms(plain)


@pytest.mark.parametrize("factor", FACTORS)
def test_an_arm_in_words_is_a_factor(factor: str) -> None:
    assert terms(f"3 A_y = 12 {factor}") == terms("3 A_y = 12·4")


@pytest.mark.parametrize("talk", TAKING_BACK)
def test_a_bracket_that_takes_something_back_is_not_left_out(talk: str) -> None:
    assert isinstance(read_line(f"A_y - 3·4 {talk} + 0.6 BC = 0", LETTERED), Unreadable)
    assert isinstance(read_line(f"A_y + 0.6 BC = 0 {talk}, BC = 20", LETTERED), Unreadable)


def test_the_way_of_a_value_in_a_bracket_is_heeded_or_asked_for() -> None:
    for text, letter in (
        ("AB = 12 kN (pushes A →)", "C"),
        ("AB = 12 kN (pulls joint A to the right)", "T"),
        ("12 (pushes B ←, strut)", "C"),
    ):
        line = read_line(text, LETTERED)
        assert isinstance(line, Line)
        assert line.steps[0].sides[-1].letter == letter


def test_an_arrow_behind_a_reaction_that_would_be_drawn_otherwise_is_not_left_out() -> None:
    assert terms("12→ + A_x→ - AB← = 0") == terms("12 + A_x - AB = 0")
    assert isinstance(read_line("12→ - A_x← = 0", LETTERED), Unreadable)


def test_a_place_behind_a_value_is_no_way_of_it() -> None:
    for text in ("A_y = 12 (halfway up)", "A_y = 12 (down there)"):
        line = read_line(text, LETTERED)
        assert isinstance(line, Line)
        assert line.steps[0].sides[-1].sense is None


def test_a_force_with_its_factor_is_no_talk() -> None:
    found = terms("about D: 4A_x (hm, sign? yes) - 6A_y + 3(10) = 0, (the others go thru D")
    assert found[0] == ("A_x", 4.0)


def test_no_term_is_left_out_with_an_aside_behind_it() -> None:
    for aside in ("(as the sketch says)", "(hm, sign? yes)", "(so that one is done)"):
        found = terms(f"hey, for A i have A_y {aside} + 0.6 BC = 0 (both pull away from the wall)")
        assert [name for name, _ in found if name] == ["A_y", "BC"]
