"""Does a student see what to do next: on the list, and when a problem is finished?"""

from __future__ import annotations

from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st
from pressing import FIRST, deed, finished, load, opened, press, seen, settle, walk_of
from resuming import JOINTS, Resumed
from student import Student
from textual.widgets import OptionList

from tutor.judge.called import counted
from tutor.lesson import CAUTION
from tutor.progress.where import DONE
from tutor.records import Keep
from tutor.screens.closing import ClosingScreen, table_content
from tutor.screens.entry import ProblemRow
from tutor.screens.onward import onward
from tutor.screens.sheet import SheetScreen
from tutor.screens.walk import WalkScreen
from tutor.session import open_session

PROBLEM = load("lamp-arm")
states = st.sampled_from((None, "at the joints", DONE))


@given(st.lists(states, min_size=2, max_size=6), st.integers(0, 5), st.integers(0, 6))
def test_what_is_next_is_never_finished_and_everything_comes_in_its_turn(
    left: list[str | None], place: int, broken_at: int
) -> None:
    entries = [ProblemRow(f"problem {i}", PROBLEM, str(i)) for i in range(len(left))]
    here = entries[place % len(entries)]
    kept = {entry.key: where for entry, where in zip(entries, left, strict=True) if where}
    rows = [*entries[:broken_at], ProblemRow("broken.toml"), *entries[broken_at:]]
    found = onward(rows, kept, here)
    assert found is not None
    open_ones = [e for e in entries if kept.get(e.key) != DONE and e is not here]
    if not open_ones:
        assert found.entry is None
        assert f"{len(entries)} of {len(entries)} problems" in found.said
        return
    assert found.entry in open_ones
    after = [e for e in open_ones if int(e.key) > int(here.key)]
    assert found.entry == (after or open_ones)[0]
    assert found.entry.title in found.said
    assert f"{len(entries) - len(open_ones)} of {len(entries)} problems" in found.said


def test_a_lone_problem_leads_nowhere() -> None:
    entry = ProblemRow("alone", PROBLEM, "a")
    assert onward([entry], {}, entry) is None
    assert (
        onward([ProblemRow("one", PROBLEM, "b"), ProblemRow("two", PROBLEM, "c")], {}, entry)
        is None
    )


def walked(folder: Path, problem: str) -> None:
    """A whole walk through this problem, as if done before."""
    session = open_session(load(problem), Keep(folder))
    Student(session.lesson, lambda kind, **data: session.do(kind, **data)).walk()
    assert session.lesson.done
    session.close()


async def test_a_finished_problem_leads_to_the_next_and_the_list_stands_on_one_to_do(
    tmp_path: Path,
) -> None:
    walked(tmp_path, "bell-frame")
    async with opened(tmp_path, FIRST) as pilot:
        sheet = pilot.app.screen
        assert isinstance(sheet, SheetScreen)
        await settle(pilot, lambda: "1 of" in seen(pilot))
        highlighted = sheet.query_one(OptionList).highlighted
        assert highlighted is not None
        chosen = sheet.entries[highlighted]
        assert chosen is not None
        assert chosen.title == PROBLEM.title
        await press(pilot, "up", "enter")
        await settle(pilot, lambda: pilot.app.screen is not sheet)
        await press(pilot, "1")
        await settle(pilot, lambda: finished(pilot))
        await settle(pilot, lambda: "n next problem" in seen(pilot))
        assert f"Next: {PROBLEM.title}" in seen(pilot)
        assert "1 of " in seen(pilot)
        assert CAUTION in " ".join(seen(pilot).split())
        read = [seen(pilot)]
        while "more row" in read[-1]:
            rows_below = int(read[-1].split(" more row")[0].split()[-1])
            await press(pilot, "down")
            read.append(seen(pilot))
            left = f"{rows_below - 1} more row"
            assert left in read[-1] if rows_below > 1 else "more row" not in read[-1]
        assert len(read) > 1
        walked_through = pilot.app.screen.session.lesson  # type: ignore[attr-defined]
        words = table_content(walked_through).plain.split()
        assert set(words) <= {word for page in read for word in page.split()}
        await press(pilot, "n")
        await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))
        assert walk_of(pilot).session.lesson.problem.title == PROBLEM.title


async def test_what_is_next_is_said_and_done_behind_the_table_too_and_named_on_the_list(
    tmp_path: Path,
) -> None:
    walked(tmp_path, "bell-frame")
    async with opened(tmp_path, FIRST) as pilot:
        sheet = pilot.app.screen
        await settle(pilot, lambda: "1 of" in seen(pilot))
        await press(pilot, "up", "enter")
        await settle(pilot, lambda: pilot.app.screen is not sheet)
        await press(pilot, "1")
        await settle(pilot, lambda: finished(pilot))
        await press(pilot, "b")
        await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))
        assert f"Next: {PROBLEM.title}; n opens it." in " ".join(seen(pilot).split())
        assert "n next problem" in seen(pilot)
        await press(pilot, "t")
        await settle(pilot, lambda: finished(pilot))
        await press(pilot, "b")
        await press(pilot, "q")
        await settle(pilot, lambda: pilot.app.screen is sheet)
        said = f"Next: {PROBLEM.title}; enter opens it. Everything you did is kept"
        assert said in " ".join(seen(pilot).split())
        await press(pilot, "enter")
        await settle(pilot, lambda: isinstance(pilot.app.screen, WalkScreen))
        assert walk_of(pilot).session.lesson.problem.title == PROBLEM.title


async def test_a_letter_behind_the_table_opens_the_next_problem(tmp_path: Path) -> None:
    walked(tmp_path, "bell-frame")
    async with opened(tmp_path, FIRST) as pilot:
        await settle(pilot, lambda: "1 of" in seen(pilot))
        await press(pilot, "up", "enter")
        await settle(pilot, lambda: "Look at the finished walk" in seen(pilot))
        await press(pilot, "1")
        await settle(pilot, lambda: finished(pilot))
        await press(pilot, "b")
        await press(pilot, "n")
        await settle(pilot, lambda: walk_of(pilot).session.lesson.problem.title == PROBLEM.title)


async def test_the_table_says_in_words_what_went_wrong_and_all_that_tie(tmp_path: Path) -> None:
    walked(tmp_path, "bell-frame")
    (kept,) = Keep(tmp_path).lessons()
    session = open_session(load("bell-frame"), Keep(tmp_path), kept.path)
    told = " ".join(table_content(session.lesson).plain.split())
    session.close()
    table = session.lesson.table
    assert table.mistakes
    for code, count in table.mistakes:
        assert counted(code, count) in told
    assert len(table.compressions) == 2
    names = " and ".join(row.member for row in table.compressions)
    assert f"Largest compression: {names}," in told


async def test_nothing_is_next_before_the_problem_is_finished(tmp_path: Path) -> None:
    async with Resumed(tmp_path, JOINTS) as pilot:
        await deed(pilot, "t")
        assert isinstance(pilot.app.screen, ClosingScreen)
        assert "next problem" not in seen(pilot)
        await press(pilot, "n")
        assert isinstance(pilot.app.screen, ClosingScreen)


async def test_a_window_too_small_shows_a_problem_and_offers_the_plain_lesson(
    tmp_path: Path,
) -> None:
    async with opened(tmp_path, FIRST, size=(40, 12)) as pilot:
        await settle(pilot, lambda: "--plain" in " ".join(seen(pilot).split()))
        assert PROBLEM.title[:20] in seen(pilot)
