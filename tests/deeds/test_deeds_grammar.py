"""Does a typed word do what it says, on the screen as in the plain lesson, and never steal a name?"""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tutor.deeds import completions, deed_of
from tutor.deeds.deed import Await, Do, Go, Lost, Show, Tell, Unfinished
from tutor.deeds.words import BY_WORD, COMMANDS
from tutor.lesson import Lesson
from tutor.model import Problem, load_problem
from tutor.screens.deeds import CLOSING, WALK
from tutor.shipped import shipped_problems

LAMP = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
LONGEST_MEMBER = 1 + 8
"""Letters in a member whose first joint is one letter and whose second has as many as a name may."""
SPLITTABLE = sorted(w for w in BY_WORD if w.isalpha() and 1 < len(w) <= LONGEST_MEMBER)
TRUSS = """\
title = "A frame whose names are words"
force = "kN"
length = "m"
members = ["{one}-{two}", "{two}-Z9", "Z9-{one}"]
[joints]
{one} = [0, 0]
{two} = [4, 0]
Z9 = [2, 1]
[supports]
{one} = "pin"
{two} = "roller"
[[loads]]
at = "Z9"
down = 3
"""


WAY: dict[str, tuple[tuple[str, dict[str, object]], ...]] = {
    "idealise": (),
    "reactions": (
        ("go", {"step": "free body"}),
        ("support", {"joint": "A", "acts": ["x", "y"]}),
        ("support", {"joint": "B", "acts": ["x"]}),
        ("sense", {"unknown": "A_x", "sense": "right"}),
        ("sense", {"unknown": "A_y", "sense": "up"}),
        ("sense", {"unknown": "B_x", "sense": "right"}),
        ("turning", {"positive": "counter-clockwise"}),
    ),
}
WAY["joints"] = (*WAY["reactions"], ("go", {"step": "joints"}), ("joint", {"joint": "C"}))


def lesson(step: str = "reactions", problem: Problem = LAMP) -> Lesson:
    """A lesson at a step; of another truss than the lamp arm, at the first question."""
    found = Lesson(problem)
    for kind, data in WAY[step] if problem is LAMP else ():
        assert found.take(kind, **data).accepted, (kind, data)
    return found


def named_like(word: str, folder: Path) -> Problem:
    """A truss with a member whose two joints spell this word."""
    path = folder / "truss.toml"
    one, two = word[:1].upper(), word[1:].upper()
    path.write_text(TRUSS.format(one=one, two=two), encoding="utf-8")
    return load_problem(path)


class TestAWordThatIsAlsoAName:
    @pytest.mark.parametrize("word", SPLITTABLE)
    def test_is_taken_for_neither_in_silence(self, word: str, tmp_path: Path) -> None:
        here = lesson("joints", named_like(word, tmp_path))
        deed = deed_of(here, word)
        assert isinstance(deed, Tell), deed
        assert f'"{word}"' in deed.lines[0]

    def test_is_told_how_to_say_each(self, tmp_path: Path) -> None:
        here = lesson("joints", named_like("hint", tmp_path))
        deed = deed_of(here, "hint")
        assert isinstance(deed, Tell)
        assert "value H-INT" in deed.lines[0]
        assert "do hint" in deed.lines[0]
        assert deed_of(here, "value H-INT") == Await("H-INT")
        assert deed_of(here, "do hint") == Do("hint", {})

    def test_does_its_deed_where_the_rest_of_the_line_tells(self, tmp_path: Path) -> None:
        here = lesson("joints", named_like("go", tmp_path))
        assert deed_of(here, "go reactions") == Do("go", {"step": "reactions"})
        assert isinstance(deed_of(here, "go"), Tell)

    def test_stays_a_force_in_an_equation(self, tmp_path: Path) -> None:
        here = lesson("joints", named_like("go", tmp_path))
        text = "GO + 3 = 0"
        assert deed_of(here, text) == Do("type", {"text": text}, text)


class TestEveryDeedOfTheBar:
    @pytest.mark.parametrize("bar", [d for d in WALK if d.id != "leave"], ids=lambda d: d.id)
    def test_is_a_word_that_can_be_typed(self, bar: object) -> None:
        deed = deed_of(lesson("joints"), bar.label)  # type: ignore[attr-defined]
        assert not isinstance(deed, Lost), deed

    @pytest.mark.parametrize("word", ["save", "leave", "help"])
    def test_of_the_table_is_one_too(self, word: str) -> None:
        assert any(word in each.label or each.id == word for each in CLOSING)
        assert not isinstance(deed_of(lesson("joints"), word), Lost)


class TestTheWords:
    @pytest.mark.parametrize(
        ("text", "deed"),
        [
            ("hint", Do("hint", {})),
            ("undo", Do("undo", {})),
            ("joint C", Do("joint", {"joint": "C"})),
            ("zero AB two", Do("zero", {"member": "AB", "rule": "two"})),
            ("zero ba 2", Do("zero", {"member": "AB", "rule": "three"})),
            ("assume AC pushing", Do("assume", {"member": "AC", "sense": "C"})),
            ("table", Show("table")),
            ("figure C", Show("figure", "C")),
            ("problems", Go("problems")),
        ],
    )
    def test_do_what_they_say(self, text: str, deed: object) -> None:
        assert deed_of(lesson("joints"), text) == deed

    @pytest.mark.parametrize(
        ("text", "half", "given"),
        [
            ("zero", "zero", ""),
            ("zero AB", "zero", "AB"),
            ("assume", "assume", ""),
            ("assume CB", "assume", "BC"),
            ("steps", "step", ""),
            ("step", "step", ""),
            ("save", "save", ""),
        ],
    )
    def test_that_need_a_name_ask_for_it(self, text: str, half: str, given: str) -> None:
        deed = deed_of(lesson("joints"), text)
        assert isinstance(deed, Unfinished)
        assert (deed.deed, deed.given) == (half, given)
        assert deed.lines

    @pytest.mark.parametrize(
        "heading",
        [
            "ΣM_A",
            "ΣM A",
            "M A",
            "sum M about A",
            "moments about A",
            "moment A",
            "ΣM about A:",
            "M_A",
        ],
    )
    def test_choose_a_sum_of_moments_however_it_is_written(self, heading: str) -> None:
        assert deed_of(lesson(), heading) == Do("choose", {"about": "M A"})

    @pytest.mark.parametrize("heading", ["ΣFx", "Fx", "sum Fx", "x", "F_x", "ΣF_x:", "sum of Fx"])
    def test_choose_a_sum_of_forces_however_it_is_written(self, heading: str) -> None:
        assert deed_of(lesson(), heading) == Do("choose", {"about": "Fx"})

    @pytest.mark.parametrize("word", ["joints", "truss", "along", "hint", "help"])
    def test_are_no_answer_to_the_first_question(self, word: str) -> None:
        assert getattr(deed_of(lesson("idealise"), word), "kind", "") != "reasons"

    def test_are_reached_by_the_number_on_the_screen(self) -> None:
        here = lesson()
        for number, option in enumerate(here.ask.options, start=1):
            assert deed_of(here, str(number)) == Do("choose", {"about": option.key})

    @given(st.text(max_size=60))
    def test_never_raise_whatever_is_typed(self, text: str) -> None:
        for step in WAY:
            deed_of(lesson(step), text)
            completions(lesson(step), text)


class TestCompleting:
    @given(st.sampled_from(sorted(each.words[0] for each in COMMANDS)), st.integers(2, 12))
    def test_goes_on_from_what_is_typed_and_to_the_word(self, word: str, length: int) -> None:
        begun = word[:length]
        assume(not any(n.casefold().startswith(begun) for n in LAMP.names.own_spellings))
        ways = completions(lesson("joints"), begun)
        assert all(way.startswith(begun) for way in ways)
        if len(word) > 1:
            assert word in [way.strip() for way in ways]

    def test_adds_the_names_that_go_with_a_word(self) -> None:
        here = lesson("joints")
        assert completions(here, "zero B") == ("zero BC",)
        assert completions(here, "zero BC t") == ("zero BC two", "zero BC three")
        assert completions(here, "joint ") == ("joint A", "joint B", "joint C")
        assert completions(here, "step cl") == ("step close",)

    @pytest.mark.parametrize("begun", ["F", "fa", "FAB", "ab", "A_x", "ax", "b", ""])
    def test_leaves_the_beginning_of_a_name_alone(self, begun: str) -> None:
        assert completions(lesson("joints"), begun) == ()


def test_a_word_that_takes_no_names_says_which_word_does() -> None:
    deed = deed_of(Lesson(LAMP), "joints A B")
    assert isinstance(deed, Tell)
    assert "“joints” cannot be read with that behind it" in deed.lines[0]
    assert "joint C: goes to a joint" in deed.lines[0]
    assert isinstance(deed_of(Lesson(LAMP), "jionts A B"), Lost)


@pytest.mark.parametrize("step", ["reactions", "joints"])
@pytest.mark.parametrize("text", ["hint 2", "hint for AB", "Hint (B_x)", "again 3", "undo 2x"])
def test_a_word_that_does_something_is_no_line_whatever_stands_behind_it(
    step: str, text: str
) -> None:
    deed = deed_of(lesson(step), text)
    assert isinstance(deed, Tell)
    word = text.split()[0].lower()
    assert f"“{word}” cannot be read with that behind it. Type {word}" in deed.lines[0]


def test_numbers_of_options_may_be_written_together_where_they_can_be_nothing_else() -> None:
    found = Lesson(LAMP)
    keys = [option.key for option in found.ask.options]
    assert deed_of(found, "135") == Do("reasons", {"chosen": [keys[0], keys[2], keys[4]]})
    assert isinstance(deed_of(found, "1309"), Tell)


@pytest.mark.parametrize(
    "text", ["joint C (by symmetry)", "joint C(next)", "Joint C:", "joint c —"]
)
def test_a_word_beside_the_joint_one_goes_to_changes_nothing(text: str) -> None:
    assert deed_of(Lesson(LAMP), text) == Do("joint", {"joint": "C"})


def test_a_joint_in_brackets_is_not_passed_over_as_a_remark() -> None:
    assert deed_of(Lesson(LAMP), "joint (C)") != Do("joint", {"joint": None})


@pytest.mark.parametrize("text", ["AB | 12.5 | C", "AB: 12.5", "AB 12.5 C", "AB\t12.5\tkN\tC"])
def test_a_row_that_names_its_force_is_taken_as_it_is_where_its_value_is_awaited(text: str) -> None:
    assert deed_of(lesson("joints"), text, awaited="AB") == Do("type", {"text": text}, text)


@pytest.mark.parametrize("amount", ["12.5", "-12.5", "12.5 kN"])
def test_a_blank_between_the_force_that_is_awaited_and_its_value_is_an_equals_sign(amount) -> None:
    deed = deed_of(lesson("joints"), f"AB {amount}", awaited="AB")
    assert deed == Do("type", {"text": f"AB={amount}"}, f"AB {amount}")


def test_a_number_alone_is_the_value_that_is_awaited() -> None:
    assert deed_of(lesson("joints"), "12.5 C", awaited="AB") == Do(
        "type", {"text": "AB = 12.5 C"}, "AB = 12.5 C"
    )
