"""Can a truss be drawn by keys alone, and by the mouse alone, with nothing lost and all defects told?"""

from __future__ import annotations

from pathlib import Path

import pytest
from owning import TRIANGLE, bench_of, by_letter, drawing, enter, text_of, walks
from pressing import deed, seen, settle, type_text
from textual.events import Paste
from textual.pilot import Pilot
from textual.widgets import Input

from tutor.model import load_problem
from tutor.screens.dialogs.choose import Choose
from tutor.screens.dialogs.save import SaveDialog
from tutor.screens.homework import HomeworkScreen
from tutor.screens.sheet import SheetScreen
from tutor.screens.walk import WalkScreen
from tutor.screens.widgets.line_input import LineInput
from tutor.screens.widgets.sketch_pad import SketchPad

SIZES = ((80, 24), (120, 40))
BRIDGE = (
    "0 0 2 0 4 0 6 0 8 0 10 0 12 0 14 0 1 2 3 2 5 2 7 2 9 2 11 2 13 2",
    "abcdefgh ijklmno aibjckdlemfngoh",
    "a pin h roller c d 10 d",
)
"""Fifteen joints and 27 members, as a practised hand types them."""


async def drag(pilot: Pilot[int], start: tuple[float, float], end: tuple[float, float]) -> None:
    """Press the mouse on one place of the truss and let it go on another."""
    pad = bench_of(pilot).query_one(SketchPad)
    cells = [pad.cell_of(*place) for place in (start, end)]
    first, last = ((c + pad.gutter.left, r + pad.gutter.top) for c, r in cells)
    await pilot.mouse_down(SketchPad, offset=first)
    await pilot.hover(SketchPad, offset=last)
    await pilot.mouse_up(SketchPad, offset=last)
    await pilot.pause()


async def click(pilot: Pilot[int], x: float, y: float) -> None:
    """Click on a place of the truss."""
    pad = bench_of(pilot).query_one(SketchPad)
    column, row = pad.cell_of(x, y)
    await pilot.click(SketchPad, offset=(column + pad.gutter.left, row + pad.gutter.top))
    await pilot.pause()


@pytest.mark.parametrize("size", SIZES)
class TestByKeys:
    async def test_a_whole_truss_is_drawn_key_by_key(
        self, tmp_path: Path, size: tuple[int, int]
    ) -> None:
        async with drawing(tmp_path, size) as pilot:
            assert "There is no joint" in text_of(pilot, "inventory")
            await type_text(pilot, "a 0 0 b 4 0 c 2 1.5")
            await pilot.press("enter")
            await type_text(pilot, "abca")
            await pilot.press("enter")
            await type_text(pilot, "a pin b roller c 12 d")
            await pilot.press("enter")
            shown = seen(pilot)
            assert "(ready)" in shown
            assert "stable" in shown
            assert "12 kN" in shown
            assert len(bench_of(pilot).board.draft.problem.members) == 3

    async def test_the_picture_goes_along_while_a_line_is_typed(
        self, tmp_path: Path, size: tuple[int, int]
    ) -> None:
        async with drawing(tmp_path, size) as pilot:
            await enter(pilot, "A 0 0 B 4 0 C 2 3/2")
            await type_text(pilot, "D 6 3")
            await pilot.pause()
            assert "[D]" in seen(pilot)
            assert "D" not in bench_of(pilot).board.draft.problem.joint
            await pilot.press(*["backspace"] * 5)
            await pilot.pause()
            assert "[D]" not in seen(pilot)

    async def test_a_drawing_that_moves_shows_and_says_how(
        self, tmp_path: Path, size: tuple[int, int]
    ) -> None:
        async with drawing(tmp_path, size) as pilot:
            await enter(pilot, "A 0 0 B 3 0 C 3 3 D 0 3; ABCDA; A pin B roller; C 3 right")
            shown = text_of(pilot, "inventory")
            assert "1 too few" in shown
            assert "it moves" in shown
            figure = bench_of(pilot).query_one(SketchPad).figure
            assert figure is not None
            assert sum(getattr(item, "role", "") == "line-of-action" for item in figure.items) == 3
            await enter(pilot, "AC")
            assert "it moves" not in seen(pilot)


class TestALine:
    async def test_that_cannot_be_taken_stays_with_its_bad_word_marked(
        self, tmp_path: Path
    ) -> None:
        async with drawing(tmp_path) as pilot:
            await enter(pilot, TRIANGLE)
            await enter(pilot, "D 1 1; B rollr")
            line = bench_of(pilot).query_one(LineInput)
            assert line.value == "D 1 1; B rollr"
            assert line._marked.span == (9, 14)
            assert "write roller" in seen(pilot)
            assert "D" not in bench_of(pilot).board.draft.problem.joint

    async def test_is_undone_and_done_again_by_letter_and_by_word(self, tmp_path: Path) -> None:
        async with drawing(tmp_path) as pilot:
            await enter(pilot, TRIANGLE)
            whole = bench_of(pilot).board.draft.problem
            await enter(pilot, "drop C")
            await by_letter(pilot, "u")
            assert bench_of(pilot).board.draft.problem == whole
            await by_letter(pilot, "r")
            assert "C" not in bench_of(pilot).board.draft.problem.joint
            await enter(pilot, "undo")
            assert bench_of(pilot).board.draft.problem == whole
            await pilot.press("ctrl+z")
            assert not bench_of(pilot).board.draft.problem.joints

    async def test_may_be_many_when_it_is_pasted(self, tmp_path: Path) -> None:
        async with drawing(tmp_path) as pilot:
            bench_of(pilot).query_one(LineInput).post_message(
                Paste("A\t0\t0\nB\t4\t0\nC\t2\t1,5\nAB BC CA\nA pin\nB roller\nC 12 down\n")
            )
            await pilot.pause()
            await settle(pilot, lambda: "(ready)" in seen(pilot))


class TestTheMouse:
    @pytest.mark.parametrize("size", SIZES)
    async def test_alone_draws_a_truss_that_can_be_worked(
        self, tmp_path: Path, size: tuple[int, int]
    ) -> None:
        async with drawing(tmp_path, size) as pilot:
            for place in ((0, 0), (4, 0), (2, 2)):
                await click(pilot, *place)
            places = {j.name: j.at for j in bench_of(pilot).board.draft.problem.joints}
            assert places == {"A": (0, 0), "B": (4, 0), "C": (2, 2)}
            for one, other in ("AB", "BC", "CA"):
                await click(pilot, *places[one])
                await click(pilot, *places[other])
            names = [m.name for m in bench_of(pilot).board.draft.problem.members]
            assert names == ["AB", "BC", "CA"]
            for joint, choice in (("A", "pin"), ("B", "roller"), ("C", "load down")):
                await click(pilot, *places[joint])
                bench_of(pilot).action_deed("at")
                await pilot.pause()
                await choose(pilot, choice)
            await choose(pilot, "12")
            assert "(ready)" in seen(pilot)

    async def test_drags_a_joint_and_leaves_no_stray_one(self, tmp_path: Path) -> None:
        async with drawing(tmp_path) as pilot:
            await enter(pilot, TRIANGLE)
            before = bench_of(pilot).board.problem
            await drag(pilot, (2, 1.5), (3, 2))
            moved = bench_of(pilot).board.problem
            assert moved.joint["C"].at == (3, 2)
            assert len(moved.joints) == 3
            assert [m.name for m in moved.members] == [m.name for m in before.members]
            await drag(pilot, (3, 2), (0, 0))
            assert "is there already" in text_of(pilot, "bench-said")
            assert bench_of(pilot).board.problem == moved
            await drag(pilot, (1, 2), (2, 3))
            assert bench_of(pilot).board.problem == moved
            await by_letter(pilot, "u")
            assert bench_of(pilot).board.problem == before

    async def test_is_told_where_it_is_and_what_came_of_a_click(self, tmp_path: Path) -> None:
        async with drawing(tmp_path) as pilot:
            pad = bench_of(pilot).query_one(SketchPad)
            assert "grid 1 m" in seen(pilot)
            column, row = pad.cell_of(3, 2)
            offset = (column + pad.gutter.left, row + pad.gutter.top)
            await pilot.hover(SketchPad, offset=offset)
            assert "here 3, 2" in seen(pilot)
            await pilot.click(SketchPad, offset=offset)
            await pilot.pause()
            assert "Joint A at 3, 2." in text_of(pilot, "bench-said")
            await pilot.hover(SketchPad, offset=offset)
            assert "here joint A" in seen(pilot)

    async def test_reads_its_place_from_the_numbers_at_the_edges(self, tmp_path: Path) -> None:
        async with drawing(tmp_path) as pilot:
            await enter(pilot, "grid 2")
            for step in (0, 2, 4, 10):
                assert f" {step:g} " in seen(pilot)
            pad = bench_of(pilot).query_one(SketchPad)
            rows = [row[1 : pad.size.width + 1] for row in seen(pilot).splitlines()[2:]]
            for x in (2, 6, 10):
                column, row = pad.cell_of(x, float(pad.grid.low * pad.grid.step))  # type: ignore[union-attr]
                assert f"{x:g}" in rows[row][column - 2 : column + 4]

    async def test_chooses_and_lets_go_of_a_joint(self, tmp_path: Path) -> None:
        async with drawing(tmp_path) as pilot:
            await enter(pilot, TRIANGLE)
            await click(pilot, 2, 1.5)
            assert bench_of(pilot).chosen == "C"
            assert "[C]" in seen(pilot)
            await click(pilot, 2, 1.5)
            assert bench_of(pilot).chosen is None

    async def test_puts_joints_where_the_grid_is(self, tmp_path: Path) -> None:
        async with drawing(tmp_path) as pilot:
            await enter(pilot, "grid 0.5")
            await click(pilot, 1.5, 2.5)
            assert bench_of(pilot).board.draft.problem.joints[0].at == (1.5, 2.5)
            await enter(pilot, "grid off")
            await pilot.click(SketchPad, offset=(3, 3))
            assert len(bench_of(pilot).board.draft.problem.joints) == 1
            await enter(pilot, "grid nothing")
            assert "like grid 0.5" in seen(pilot)


async def choose(pilot: Pilot[int], key: str) -> None:
    """Click the choice with this key."""
    from tutor.screens.widgets.choices import Choices

    choices = pilot.app.screen.query_one(Choices)
    place = [choice.key for choice in choices.choices].index(key)
    await pilot.press("home", *["right"] * place, "enter")
    await pilot.pause()


class TestAFile:
    BY_HAND = (
        '# by hand\ntitle = "Arm"  # short\nforce = "kN"\nlength = "m"\n'
        'members = ["AB", "BC", "AC"]\n[joints]\nA = [0, 0] # wall\nB = [0, 3]\nC = [4, 0]\n'
        '[supports]\nA = "pin"\nB = { roller = 0 }\n[[loads]]\nat = "C"\ndown = 12\n'
    )

    async def test_is_opened_changed_and_saved_with_its_comments(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        monkeypatch.chdir(tmp_path)
        (tmp_path / "arm.toml").write_text(self.BY_HAND, encoding="utf-8")
        async with drawing(tmp_path / "keep") as pilot:
            await by_letter(pilot, "o")
            await choose(pilot, "0")
            await enter(pilot, "C 5 0")
            await by_letter(pilot, "s")
            await choose(pilot, "over")
            assert "Saved in" in seen(pilot)
        text = (tmp_path / "arm.toml").read_text(encoding="utf-8")
        assert all(word in text for word in ("# by hand", "# short", "# wall"))
        assert load_problem(tmp_path / "arm.toml").joint["C"].at == (5, 0)

    async def test_is_not_written_over_once_its_opening_is_taken_back(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        monkeypatch.chdir(tmp_path)
        file = tmp_path / "arm.toml"
        file.write_text(self.BY_HAND, encoding="utf-8")
        async with drawing(tmp_path / "keep") as pilot:
            await enter(pilot, TRIANGLE)
            await enter(pilot, "open arm.toml")
            await by_letter(pilot, "u")
            await enter(pilot, "save")
            assert isinstance(pilot.app.screen, SaveDialog)
            await pilot.press("escape")
            await by_letter(pilot, "r")
            await enter(pilot, "C 5 0")
            await enter(pilot, "save")
            assert "Saved in" in seen(pilot)
        assert load_problem(file).joint["C"].at == (5, 0)
        assert "# wall" in file.read_text(encoding="utf-8")

    async def test_of_another_program_is_never_written_over(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        monkeypatch.chdir(tmp_path)
        file = tmp_path / "arm.toml"
        file.write_text(self.BY_HAND, encoding="utf-8")
        async with drawing(tmp_path / "keep") as pilot:
            await enter(pilot, "open arm.toml")
            file.write_text(self.BY_HAND + "# later\n", encoding="utf-8")
            for line in ("save", "save arm.toml"):
                await enter(pilot, line)
                assert isinstance(pilot.app.screen, Choose)
                assert "changed by another program" in seen(pilot)
                await pilot.press("escape")
            await enter(pilot, "save new.toml")
        assert file.read_text(encoding="utf-8").endswith("# later\n")
        assert load_problem(tmp_path / "new.toml").title == "Arm"

    async def test_is_written_over_by_another_truss_only_when_that_is_chosen(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        monkeypatch.chdir(tmp_path)
        file = tmp_path / "first.toml"
        async with drawing(tmp_path / "keep") as pilot:
            await enter(pilot, TRIANGLE)
            await enter(pilot, "title First")
            await enter(pilot, "save first.toml")
            await enter(pilot, "Warren span 12 height 3 panels 4 load 10")
            await enter(pilot, "save")
            assert isinstance(pilot.app.screen, SaveDialog)
            await pilot.press("escape")
            await enter(pilot, "save first.toml")
            assert "“First”" in seen(pilot)
            await choose(pilot, "no")
            assert load_problem(file).title == "First"
            await enter(pilot, "save first.toml")
            await choose(pilot, "over")
            assert load_problem(file).title == "Warren truss"

    async def test_that_is_there_is_asked_about_in_the_dialog_too(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        monkeypatch.chdir(tmp_path)
        file = tmp_path / "arm.toml"
        file.write_text(self.BY_HAND, encoding="utf-8")
        async with drawing(tmp_path / "keep") as pilot:
            await enter(pilot, TRIANGLE)
            await by_letter(pilot, "s")
            path = pilot.app.screen.query_one("#path", Input)
            path.value = "arm.toml"
            await pilot.press("enter")
            assert "with the truss “Arm”" in seen(pilot)
            assert file.read_text(encoding="utf-8") == self.BY_HAND
            await pilot.click("#over")
            await pilot.pause()
            assert "Saved in" in text_of(pilot, "bench-said")
        assert load_problem(file).title == "My truss"

    async def test_that_is_broken_is_told_with_its_lines(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        monkeypatch.chdir(tmp_path)
        (tmp_path / "bad.toml").write_text("title = 3\n[bold]\n", encoding="utf-8")
        async with drawing(tmp_path / "keep", (120, 40)) as pilot:
            await enter(pilot, TRIANGLE)
            await enter(pilot, "open bad.toml")
            assert "bad.toml cannot be opened: line 1" in seen(pilot)
            await enter(pilot, "open none.toml")
            assert "no such file" in seen(pilot)
            assert len(bench_of(pilot).board.draft.problem.joints) == 3


class TestLeaving:
    async def test_keeps_the_drawing_for_the_next_time(self, tmp_path: Path) -> None:
        async with drawing(tmp_path) as pilot:
            await enter(pilot, TRIANGLE)
            problem = bench_of(pilot).board.draft.problem
            await by_letter(pilot, "q")
            assert isinstance(pilot.app.screen, SheetScreen)
        async with drawing(tmp_path) as pilot:
            assert bench_of(pilot).board.draft.problem == problem
            assert "Here is the truss you drew last" in seen(pilot)

    async def test_for_the_walk_opens_the_walk_of_this_truss(self, tmp_path: Path) -> None:
        async with drawing(tmp_path) as pilot:
            await by_letter(pilot, "w")
            assert "cannot be worked yet" in seen(pilot)
            await enter(pilot, TRIANGLE)
            await by_letter(pilot, "w")
            await settle(pilot, lambda: walks(pilot))
            walk = pilot.app.screen
            assert isinstance(walk, WalkScreen)
            assert [m.name for m in walk.session.lesson.problem.members] == ["AB", "BC", "CA"]

    async def test_for_a_check_opens_the_paper_of_this_truss(self, tmp_path: Path) -> None:
        async with drawing(tmp_path) as pilot:
            await enter(pilot, "warren 12 3 4 load 10")
            await by_letter(pilot, "c")
            await settle(pilot, lambda: isinstance(pilot.app.screen, HomeworkScreen))
            assert "Warren truss" in seen(pilot)


async def test_a_common_shape_is_chosen_and_its_line_can_be_changed(tmp_path: Path) -> None:
    async with drawing(tmp_path) as pilot:
        await by_letter(pilot, "n")
        await choose(pilot, "pratt")
        line = bench_of(pilot).query_one(LineInput)
        assert line.value.startswith("Pratt span 12")
        assert len(bench_of(pilot).board.draft.problem.joints) == 8
        await enter(pilot, line.value.replace("panels 4", "panels 6"))
        assert len(bench_of(pilot).board.draft.problem.joints) == 12


@pytest.mark.parametrize("size", [(80, 24), (120, 40), (50, 24), (80, 14)])
async def test_every_part_is_in_reach_at_every_size(tmp_path: Path, size: tuple[int, int]) -> None:
    async with drawing(tmp_path, size) as pilot:
        await enter(pilot, TRIANGLE)
        assert "C" in seen(pilot)
        if size[0] < 60:
            await by_letter(pilot, "f")
        assert "What is there" in seen(pilot) or size[1] < 20
        await by_letter(pilot, "?")
        assert "WHAT CAN BE TYPED" in seen(pilot)
        await pilot.press("escape")
        await deed(pilot, "g")


async def test_a_truss_of_15_joints_and_27_members_takes_few_keystrokes(tmp_path: Path) -> None:
    async with drawing(tmp_path) as pilot:
        pressed = 0
        for text in BRIDGE:
            await type_text(pilot, text)
            await pilot.press("enter")
            pressed += len(text) + 1
        problem = bench_of(pilot).board.draft.problem
        assert len(problem.joints) == 15
        assert len(problem.members) == 27
        assert "(ready)" in seen(pilot)
        print(f"\n15 joints, 27 members, supports and two loads: {pressed} keystrokes")
        assert pressed < 200


async def test_a_line_typed_after_a_refused_one_takes_its_place_and_a_change_keeps_it(
    tmp_path: Path,
) -> None:
    async with drawing(tmp_path) as pilot:
        line = bench_of(pilot).query_one(LineInput)
        await type_text(pilot, "a 0 q")
        await pilot.press("enter")
        assert line.value == "a 0 q"
        await type_text(pilot, "b 4 0")
        assert line.value == "b 4 0"
        await pilot.press("enter")
        assert "B" in bench_of(pilot).board.problem.joint
        await type_text(pilot, "c 0 q")
        await pilot.press("enter", "backspace", "2", "enter")
        assert "C" in bench_of(pilot).board.problem.joint
        await type_text(pilot, "d 0")
        await pilot.press("enter")
        await type_text(pilot, " 7")
        await pilot.press("enter")
        assert "D" in bench_of(pilot).board.problem.joint
