"""Is everything about one's own truss and homework shown as plain text, whatever is in it?"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from owning import TRIANGLE, bench_of, by_letter, checking, drawing, enter, paper_of, text_of
from pressing import seen
from test_plain_text import BAD, ESCAPES, MARKUP, Host
from textual.events import Paste
from textual.widget import Widget

from tutor.drafting import Title, Whole, fold
from tutor.homework.paper import Paper
from tutor.screens.widgets.entry_table import EntryRow, EntryTable
from tutor.screens.widgets.line_input import LineInput


def table(text: str) -> Widget:
    widget = EntryTable()
    widget.rows = (EntryRow(text[:20], text, text[:20], "bold"), EntryRow("AB", text))
    return widget


@pytest.mark.parametrize("text", BAD)
async def test_a_row_shows_only_what_is_in_it(text: str) -> None:
    app = Host(lambda: table(text))
    async with app.run_test(size=(120, 12)) as pilot:
        await pilot.pause()
        shown = seen(pilot)  # type: ignore[arg-type]
        assert not ESCAPES.search(shown)
        if text in MARKUP and len(text) < 40:
            assert text in shown


async def test_a_truss_shows_its_title_and_answers_as_they_are(tmp_path: Path) -> None:
    async with drawing(tmp_path, (120, 40)) as pilot:
        await enter(pilot, TRIANGLE)
        for text in BAD:
            problem = fold([Title(text)], bench_of(pilot).board.draft.problem)
            bench_of(pilot).take(Whole(problem))
            await pilot.pause()
            shown = seen(pilot)
            assert not ESCAPES.search(shown)
            if text in MARKUP:
                assert text[:40] in shown
        for place in range(0, len(BAD), 3):
            some = [text for text in BAD[place : place + 3] if text]
            for text in some:
                bench_of(pilot).board.draft.type(text)
            bench_of(pilot).query_one(LineInput).post_message(Paste("\n".join(some)))
            await pilot.pause()
            assert not ESCAPES.search(seen(pilot))
            bench_of(pilot).query_one(LineInput).clear()
        await by_letter(pilot, "w")


async def test_a_paper_shows_its_entries_and_answers_as_they_are(tmp_path: Path) -> None:
    async with checking(tmp_path, size=(120, 40)) as pilot:
        for text in BAD:
            paper = paper_of(pilot)
            paper.book.put(Paper(values={"A_x": text}))
            paper.problem = replace(paper.problem, title=text)
            paper.show()
            paper.say(text)
            await pilot.pause()
            shown = seen(pilot)
            assert not ESCAPES.search(shown)
            if text in MARKUP:
                assert text[:30] in shown
        for place in range(0, len(BAD), 3):
            some = [f"{text}\tx\n{text}" for text in BAD[place : place + 3]]
            paper.query_one(LineInput).post_message(Paste("\n".join(some)))
            await pilot.pause()
            assert not ESCAPES.search(seen(pilot))
        assert text_of(pilot, "homework-said")


async def test_what_was_kept_and_is_damaged_is_passed_over(tmp_path: Path) -> None:
    for name in ("truss",):
        (tmp_path / "own").mkdir()
        (tmp_path / "own" / f"{name}.txt").write_bytes(b"A 0 0\n\xff\x00\x1b[31m\nB 1 1\n")
    async with drawing(tmp_path) as pilot:
        assert not ESCAPES.search(seen(pilot))
    (tmp_path / "own" / "truss.txt").write_text(
        "A 0 0\n\x1b[31m nonsense\nB 4 0\n", encoding="utf-8"
    )
    async with drawing(tmp_path) as pilot:
        assert set(bench_of(pilot).board.draft.problem.joint) == {"A", "B"}
        assert "could not be read" in text_of(pilot, "bench-said")
