"""Can a homework be entered, checked, mended and reported by keys, with no value given away?"""

from __future__ import annotations

import re
from pathlib import Path
from random import Random

import pytest
from homework.students_work import homework
from owning import (
    by_letter,
    check,
    checking,
    enter,
    fill,
    found_of,
    paper_of,
    right_values,
    text_of,
    walks,
)
from pressing import FIRST, opened, seen, settle, type_text
from strategies import make_truss
from textual.events import Paste
from textual.pilot import Pilot

from tutor.homework.paper import Paper
from tutor.model import load_problem, write_problem
from tutor.model.caution import CAUTION
from tutor.screens.dialogs.choose import Choose
from tutor.screens.dialogs.save import SaveDialog
from tutor.screens.homework import HomeworkScreen
from tutor.screens.sheet import SheetScreen
from tutor.screens.widgets.entry_table import EntryTable
from tutor.screens.widgets.line_input import LineInput

SIZES = ((80, 24), (120, 40))
ARM = load_problem(FIRST / "lamp-arm.toml")
RIGHT = [f"{value:.4g}" for value in right_values(ARM).values()]
NAMES = ARM.unknowns


def wrong_at(name: str) -> list[str]:
    """The right values, one of them with the other sign."""
    return [
        f"{-float(text):.4g}" if unknown == name else text
        for unknown, text in zip(NAMES, RIGHT, strict=True)
    ]


def ends_in_view(paper: HomeworkScreen, part: str) -> bool:
    """Whether the end of this part of what was found is seen."""
    pane = paper.query_one("#found-scroll").content_region
    return paper.query_one(part).region.bottom <= pane.bottom


def states(pilot: Pilot[int]) -> dict[str, str]:
    """The words beside each row."""
    return {row.name: row.state for row in paper_of(pilot).query_one(EntryTable).rows}


@pytest.mark.parametrize("size", SIZES)
class TestACheck:
    async def test_finds_right_what_is_right(self, tmp_path: Path, size: tuple[int, int]) -> None:
        async with checking(tmp_path, size=size) as pilot:
            assert CAUTION in found_of(pilot)
            for text in RIGHT:
                await type_text(pilot, text)
                await pilot.press("enter")
            await check(pilot)
            assert set(states(pilot).values()) == {"✓ right"}
            assert "Everything that was checked is right." in found_of(pilot)

    async def test_names_the_place_and_kind_and_leads_to_mending(
        self, tmp_path: Path, size: tuple[int, int]
    ) -> None:
        async with checking(tmp_path, size=size) as pilot:
            await fill(pilot, wrong_at("AB"))
            await check(pilot)
            assert states(pilot)["AB"].startswith("✗ wrong")
            found = found_of(pilot)
            assert "goes wrong" in found
            assert "does not close" in found
            assert "Look:" in found
            paper = paper_of(pilot)
            paper.go(NAMES.index("AB"))
            await enter(pilot, RIGHT[NAMES.index("AB")])
            assert states(pilot)["AB"] == "changed"
            assert "changed since" in found_of(pilot)
            await check(pilot)
            assert set(states(pilot).values()) == {"✓ right"}

    async def test_shows_which_joints_close(self, tmp_path: Path, size: tuple[int, int]) -> None:
        async with checking(tmp_path, size=size) as pilot:
            await fill(pilot, wrong_at("AB"))
            await check(pilot)
            if size[0] < 110:
                await by_letter(pilot, "f")
            shown = seen(pilot)
            assert "A ✗" in shown
            assert "C ✓" in shown


class TestARow:
    async def test_takes_a_value_or_says_why_not(self, tmp_path: Path) -> None:
        async with checking(tmp_path) as pilot:
            for text, kept in (
                ("7.5 C", "7.5 C"),
                ("-7,5", "-7,5"),
                ("12 N T", "12 N T"),
                ("C 12", "C 12"),
                ("1e99", None),
                ("x y", None),
                ("0", "0"),
            ):
                paper_of(pilot).book.put(Paper())
                paper_of(pilot).go(NAMES.index("AB"))
                await enter(pilot, text)
                assert paper_of(pilot).paper.values.get("AB") == kept
                line = paper_of(pilot).query_one(LineInput)
                assert kept is not None or line.value == text
                assert text_of(pilot, "homework-said")

    async def test_that_is_filled_is_replaced_by_typing_and_changed_by_arrows(
        self, tmp_path: Path
    ) -> None:
        async with checking(tmp_path) as pilot:
            await fill(pilot, RIGHT)
            paper_of(pilot).go(0)
            await type_text(pilot, "5")
            await pilot.press("enter")
            assert paper_of(pilot).paper.values[NAMES[0]] == "5"
            paper_of(pilot).go(0)
            await pilot.press("end", "0", "enter")
            assert paper_of(pilot).paper.values[NAMES[0]] == "50"

    async def test_that_is_the_last_leads_on_to_the_check(self, tmp_path: Path) -> None:
        async with checking(tmp_path) as pilot:
            await fill(pilot, RIGHT[:-1])
            assert "last row" not in text_of(pilot, "homework-said")
            await enter(pilot, RIGHT[-1])
            assert "escape, then c, checks" in text_of(pilot, "homework-said")

    async def test_is_undone_step_by_step(self, tmp_path: Path) -> None:
        async with checking(tmp_path) as pilot:
            await fill(pilot, RIGHT[:2])
            await by_letter(pilot, "u")
            assert list(paper_of(pilot).paper.values) == [NAMES[0]]
            await pilot.press("ctrl+z")
            assert paper_of(pilot).paper.blank
            await by_letter(pilot, "u")
            assert "nothing to take back" in text_of(pilot, "homework-said")

    async def test_that_is_emptied_is_not_done(self, tmp_path: Path) -> None:
        async with checking(tmp_path) as pilot:
            await fill(pilot, RIGHT)
            paper_of(pilot).go(0)
            await enter(pilot, "")
            assert NAMES[0] not in paper_of(pilot).paper.values
            assert states(pilot)[NAMES[0]] == "not done"
            await check(pilot)
            assert states(pilot)[NAMES[0]] == "not done"

    async def test_of_another_name_may_be_typed_from_anywhere(self, tmp_path: Path) -> None:
        async with checking(tmp_path) as pilot:
            await enter(pilot, "AB = 7.5 C, BC = 3")
            assert paper_of(pilot).paper.values == {"AB": "7.5 C", "BC": "3"}
            await enter(pilot, "A_x 12 left")
            assert paper_of(pilot).paper.values["A_x"] == "12 left"

    async def test_under_its_own_name_leads_on_to_the_next_row(self, tmp_path: Path) -> None:
        async with checking(tmp_path) as pilot:
            for text in (f"{NAMES[0]} = 6", f"{NAMES[1]} = 5"):
                await type_text(pilot, text)
                await pilot.press("enter")
            values = paper_of(pilot).paper.values
            assert (values[NAMES[0]], values[NAMES[1]]) == ("6", "5")

    async def test_is_reached_by_arrows_and_by_the_mouse_and_nothing_typed_is_lost(
        self, tmp_path: Path
    ) -> None:
        async with checking(tmp_path) as pilot:
            await type_text(pilot, "5")
            await pilot.press("down", "down", "up")
            assert paper_of(pilot).place == 1
            assert paper_of(pilot).paper.values == {NAMES[0]: "5"}
            await pilot.click(EntryTable, offset=(4, 3))
            await pilot.pause()
            assert paper_of(pilot).place == 3
            await type_text(pilot, "5 Q")
            await pilot.press("down")
            assert paper_of(pilot).place == 3
            assert paper_of(pilot).query_one(LineInput).value == "5 Q"


class TestMoreThanValues:
    async def test_a_pasted_table_fills_the_rows(self, tmp_path: Path) -> None:
        rows = ["name\tforce"]
        rows += [
            f"{name}\t{text.replace('.', ',')}" for name, text in zip(NAMES, RIGHT, strict=True)
        ]
        async with checking(tmp_path) as pilot:
            line = paper_of(pilot).query_one(LineInput)
            line.post_message(Paste("\n".join(rows)))
            await settle(pilot, lambda: len(paper_of(pilot).paper.values) == len(NAMES))
            await check(pilot)
            assert set(states(pilot).values()) == {"✓ right"}

    async def test_a_paste_brings_its_order_too_and_is_undone_as_one(self, tmp_path: Path) -> None:
        async with checking(tmp_path) as pilot:
            await enter(pilot, "5")
            before = paper_of(pilot).paper
            line = paper_of(pilot).query_one(LineInput)
            line.post_message(Paste("AB = 7.5 C\nBC;3,25\norder C A B\nA_x drawn left"))
            await settle(pilot, lambda: paper_of(pilot).paper.order)
            paper = paper_of(pilot).paper
            assert paper.order == ("C", "A", "B")
            assert paper.values == {**before.values, "AB": "7.5 C", "BC": "3.25"}
            assert paper.senses == {"A_x": "left"}
            await by_letter(pilot, "u")
            assert paper_of(pilot).paper == before

    async def test_lines_senses_and_order_are_taken_and_lines_are_checked(
        self, tmp_path: Path
    ) -> None:
        async with checking(tmp_path, size=(120, 40)) as pilot:
            await enter(pilot, "A_x drawn left")
            await enter(pilot, "order C A B")
            await enter(pilot, "ΣFy at C: -150 - 5/13 F_BC = 0")
            await enter(pilot, "ΣFx at C: F_AC - 12/13 F_BC = 0")
            paper = paper_of(pilot).paper
            assert len(paper.lines) == 2
            assert paper.order == ("C", "A", "B")
            await check(pilot)
            assert states(pilot)["line 1"] == "✓ right"
            assert states(pilot)["line 2"].startswith("✗ wrong")
            paper_of(pilot).go(len(NAMES) + 1)
            await enter(pilot, "ΣFx at C: -F_AC - 12/13 F_BC = 0")
            await check(pilot)
            assert states(pilot)["line 2"] == "✓ right"
            paper_of(pilot).go(len(NAMES) + 1)
            await enter(pilot, "")
            assert len(paper_of(pilot).paper.lines) == 1


class TestHints:
    async def test_come_one_by_one_and_the_last_only_when_it_is_asked_for_twice(
        self, tmp_path: Path
    ) -> None:
        async with checking(tmp_path) as pilot:
            await by_letter(pilot, "h")
            assert "Check first" in seen(pilot)
            await fill(pilot, wrong_at("AB"))
            await check(pilot)
            levels = [level for level, _ in paper_of(pilot).hints]
            assert levels == ["Look"]
            await by_letter(pilot, "h")
            await by_letter(pilot, "h")
            assert [level for level, _ in paper_of(pilot).hints] == ["Look", "Reason", "Place"]
            await by_letter(pilot, "h")
            assert isinstance(pilot.app.screen, Choose)
            await pilot.press("escape")
            assert len(paper_of(pilot).hints) == 3
            await by_letter(pilot, "h")
            await pilot.press("right", "enter")
            await pilot.pause()
            assert paper_of(pilot).hints[-1][0] == "Line"
            assert "= 0" in paper_of(pilot).hints[-1][1]
            await by_letter(pilot, "h")
            assert "all the hints" in seen(pilot)

    @pytest.mark.parametrize("size", [(80, 24), (60, 20), (120, 40)])
    async def test_the_newest_is_in_view(self, tmp_path: Path, size: tuple[int, int]) -> None:
        async with checking(tmp_path, size=size) as pilot:
            await fill(pilot, wrong_at("AB"))
            await check(pilot)
            if size[0] < 76:
                await by_letter(pilot, "f")
            for _ in range(2):
                await by_letter(pilot, "h")
                await settle(pilot, lambda: ends_in_view(paper_of(pilot), "#found-hints"))

    async def test_are_kept_when_nothing_was_changed_and_begin_anew_after_mending(
        self, tmp_path: Path
    ) -> None:
        async with checking(tmp_path) as pilot:
            await fill(pilot, wrong_at("AB"))
            await check(pilot)
            await by_letter(pilot, "h")
            await check(pilot)
            assert len(paper_of(pilot).hints) == 2
            await fill(pilot, wrong_at("BC"))
            await check(pilot)
            assert len(paper_of(pilot).hints) == 1


class TestTheReport:
    async def test_is_written_to_a_new_file_and_holds_no_value(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        monkeypatch.chdir(tmp_path)
        async with checking(tmp_path / "keep") as pilot:
            await by_letter(pilot, "s")
            assert "Check first" in seen(pilot)
            await fill(pilot, wrong_at("BC"))
            await check(pilot)
            await by_letter(pilot, "s")
            assert isinstance(pilot.app.screen, SaveDialog)
            await pilot.press("enter")
            await pilot.pause()
            assert "Saved in" in seen(pilot)
        (report,) = tmp_path.glob("*.md")
        text = report.read_text(encoding="utf-8")
        assert CAUTION in text
        given, _, found = text.partition("## Values")
        assert "load 150 N down" in given
        assert not any(value in found for value in RIGHT if len(value) > 2)
        assert "![The truss](" in given
        assert len(list(tmp_path.glob("*.svg"))) == 1


class TestALetterTypedFastBehindEscape:
    """A terminal sends both in one: they arrive as alt and the letter."""

    async def test_does_its_deed_and_leaves_no_text(self, tmp_path: Path) -> None:
        async with checking(tmp_path) as pilot:
            await fill(pilot, RIGHT)
            paper = paper_of(pilot)
            paper.go(0)
            await pilot.press("alt+c")
            await settle(pilot, lambda: paper.result is not None)
            assert set(states(pilot).values()) == {"✓ right"}
            await pilot.press("alt+z")
            assert paper.query_one(LineInput).value == RIGHT[0]
            await pilot.press("alt+question_mark")
            await pilot.pause()
            assert "WHAT CAN BE TYPED" in seen(pilot)


class TestLeaving:
    async def test_keeps_the_paper_for_the_next_time(self, tmp_path: Path) -> None:
        async with checking(tmp_path) as pilot:
            await enter(pilot, "A_x drawn left")
            await fill(pilot, wrong_at("AB"))
            await enter(pilot, "ΣFy at C: -150 - 5/13 F_BC = 0")
            await enter(pilot, "ΣM_A: B_x - 2.4*150 = 0")
            await enter(pilot, "order C B")
            paper = paper_of(pilot).paper
            await by_letter(pilot, "q")
            assert isinstance(pilot.app.screen, SheetScreen)
        async with checking(tmp_path) as pilot:
            assert paper_of(pilot).paper == paper

    async def test_nothing_is_cleared_without_asking(self, tmp_path: Path) -> None:
        async with checking(tmp_path) as pilot:
            await fill(pilot, RIGHT)
            await by_letter(pilot, "x")
            await pilot.press("enter")
            await pilot.pause()
            assert len(paper_of(pilot).paper.values) == len(NAMES)
            await by_letter(pilot, "x")
            await pilot.press("right", "enter")
            await pilot.pause()
            assert paper_of(pilot).paper.blank


@pytest.mark.parametrize(
    "seed", [*range(2), *(pytest.param(n, marks=pytest.mark.slow) for n in range(2, 12))]
)
async def test_no_true_value_is_shown_that_the_student_has_not_found(
    seed: int, tmp_path: Path
) -> None:
    made = homework(seed, 1 + seed % 2)
    if made is None:
        pytest.skip("this seed makes no homework")
    done = made[0]
    file = tmp_path / "own.toml"
    file.write_text(write_problem(done.problem), encoding="utf-8")
    async with opened(tmp_path / "keep", file, FIRST, size=(120, 40)) as pilot:
        await pilot.press("escape", "c")
        await settle(pilot, lambda: isinstance(pilot.app.screen, HomeworkScreen))
        problem = paper_of(pilot).problem
        work = done.work()
        lines = [f"{n} = {t}" for part in ("reactions", "forces") for n, t in work[part].items()]
        line = paper_of(pilot).query_one(LineInput)
        line.post_message(Paste("\n".join([*lines, "order " + " ".join(done.order)])))
        await settle(pilot, lambda: paper_of(pilot).paper.values)
        await check(pilot)
        shown = [seen(pilot)]
        for _ in range(2):
            await by_letter(pilot, "h")
            shown.append(seen(pilot))
        for place in range(len(problem.unknowns)):
            paper_of(pilot).go(place)
            paper_of(pilot).say_finding()
            await pilot.pause()
            shown.append(text_of(pilot, "homework-said"))
        shown.append(found_of(pilot))
        shown += paper_of(pilot).query_one("#closing-picture #drawing").figure.sentences  # type: ignore[attr-defined]
    told = numbers("\n".join(shown)) - numbers(repr(problem)) - numbers(str(work))
    own = {f"{abs(value):g}" for value in done.values.values()}
    for name, value in right_values(problem).items():
        for figures in range(3, 8):
            hidden = {f"{abs(value):.{figures}g}"} - own - {"0", "1"}
            assert not hidden & told, (name, hidden & told)


def numbers(text: str) -> set[str]:
    return set(re.findall(r"(?<![A-Za-z\d.])\d+(?:\.\d+)?(?![\d.])", text))


@pytest.mark.parametrize(
    "seed", [*range(2), *(pytest.param(n, marks=pytest.mark.slow) for n in range(2, 6))]
)
async def test_any_text_entered_is_answered_and_nothing_ends(seed: int, tmp_path: Path) -> None:
    rng = Random(seed)
    alphabet = "0123456789.,;:= ABCxyTC+-*/()[]\\\x1bΣ°[b]é\u202e"
    file = tmp_path / "own.toml"
    file.write_text(write_problem(make_truss(seed, 4)), encoding="utf-8")
    async with checking(tmp_path / "keep", file) as pilot:
        for _ in range(12):
            text = "".join(rng.choice(alphabet) for _ in range(rng.randrange(24)))
            await enter(pilot, text.replace("\x1b", ""))
            assert text_of(pilot, "homework-said")
        await by_letter(pilot, "c")
        await pilot.pause()
        assert isinstance(pilot.app.screen, HomeworkScreen)


@pytest.mark.parametrize("size", [(80, 24), (120, 40), (50, 24), (80, 14)])
async def test_every_part_is_in_reach_at_every_size(tmp_path: Path, size: tuple[int, int]) -> None:
    async with checking(tmp_path, size=size) as pilot:
        await fill(pilot, wrong_at("AB"))
        await check(pilot)
        assert "Your paper" in seen(pilot)
        if size[0] < 60:
            await by_letter(pilot, "f")
            assert "What was found" in seen(pilot)
            await by_letter(pilot, "f")
            assert "too few" in seen(pilot)
            await by_letter(pilot, "f")
            assert "Your paper" in seen(pilot)
        await by_letter(pilot, "?")
        assert "WHAT CAN BE TYPED" in seen(pilot)


class TestTheWalk:
    async def test_begins_at_the_first_wrong_joint_with_what_is_right_given(
        self, tmp_path: Path
    ) -> None:
        async with checking(tmp_path) as pilot:
            await by_letter(pilot, "w")
            assert "Check first" in seen(pilot)
            await fill(pilot, wrong_at("AB"))
            await check(pilot)
            first = paper_of(pilot).result.first  # type: ignore[union-attr]
            await by_letter(pilot, "w")
            await settle(pilot, lambda: walks(pilot))
            state = pilot.app.session.lesson.state  # type: ignore[attr-defined]
            assert state.step == "joints"
            assert state.joint == first
            assert set(state.result) == set(NAMES) - {"AB"}
            await by_letter(pilot, "q")
            await pilot.pause()
            assert isinstance(pilot.app.screen, HomeworkScreen)

    async def test_begins_at_the_reactions_where_these_go_wrong_first(self, tmp_path: Path) -> None:
        async with checking(tmp_path) as pilot:
            await fill(pilot, wrong_at("B_x")[:3])
            await check(pilot)
            assert paper_of(pilot).result.first == "whole"  # type: ignore[union-attr]
            await by_letter(pilot, "w")
            await settle(pilot, lambda: walks(pilot))
            state = pilot.app.session.lesson.state  # type: ignore[attr-defined]
            assert state.step == "reactions"
            assert not state.result


async def test_a_value_typed_after_a_refused_one_takes_its_place(tmp_path: Path) -> None:
    async with checking(tmp_path) as pilot:
        await type_text(pilot, "7.5.5")
        await pilot.press("enter")
        assert paper_of(pilot).query_one(LineInput).value == "7.5.5"
        await type_text(pilot, "7.5")
        await pilot.press("enter")
        await pilot.pause()
        assert paper_of(pilot).paper.values == {NAMES[0]: "7.5"}


class TestTheRowAtHand:
    async def test_stands_at_the_first_wrong_row_and_else_where_one_was(
        self, tmp_path: Path
    ) -> None:
        async with checking(tmp_path) as pilot:
            await fill(pilot, RIGHT)
            paper_of(pilot).go(2)
            await check(pilot)
            assert paper_of(pilot).place == 2
            wrong = len(NAMES) - 2
            await enter(pilot, f"{NAMES[wrong]} = 3.21")
            paper_of(pilot).go(0)
            await check(pilot)
            assert paper_of(pilot).row == NAMES[wrong]
            assert paper_of(pilot).query_one(LineInput).value == "3.21"
