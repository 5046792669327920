"""The report on a class can be looked through, sorted and opened by keys alone."""

from __future__ import annotations

from dataclasses import replace

import pytest
from textual.widgets import DataTable

from tutor.cohort.facts import (
    AnswerGiven,
    ClassReport,
    FileFault,
    KindOverSet,
    Mistaken,
    ProblemOf,
    Student,
    StudentWork,
)
from tutor.screens.class_app import ClassApp
from tutor.screens.column_widths import longest, widths
from tutor.screens.dialogs.told import Told

WRONG = AnswerGiven("joints", "Fx @ C", "\x1b[31mAB + 4 = 0", "wrong", ("sign",), 1.0)
WORKS = (
    StudentWork(
        "eel-trap", "Eel trap", "finished", "table", 6, 6, 12, 3, 0, 9.0, 4, answers=(WRONG,)
    ),
    StudentWork("eel-trap", "Eel trap", "begun", "joints", 3, 6, 30, 9, 2, 31.0, 14),
)
REPORT = ClassReport(
    "week-3",
    "Week 3",
    (ProblemOf("eel-trap", "Eel trap"),),
    tuple(Student(f"s{n}", "", (work,), f"s{n}.txt") for n, work in enumerate(WORKS)),
    (
        Mistaken("sign", "a sign turned", "eel-trap", "joints", 3, 2, ("AB + 4 = 0",), (3,)),
        Mistaken("arm", "a wrong arm", "eel-trap", "reactions", 9, 1, (), ()),
    ),
    (
        KindOverSet("sign", "a sign turned", 3, 2, "eel-trap", "joints"),
        KindOverSet("arm", "a wrong arm", 9, 1, "eel-trap", "reactions"),
    ),
    (),
    (
        "Explain again [b]signs[/b]: 2 of 2 students, and this sentence is longer than one row of it.",
    ),
    (FileFault("x.pdf", "it was not written by pinjoint hand-in"),),
)


def column(app: ClassApp, at: int) -> list[str]:
    table = app.query_one(DataTable)
    return [str(table.get_row_at(n)[at]).strip() for n in range(table.row_count)]


@pytest.mark.parametrize("size", [(80, 24), (120, 40)])
async def test_every_table_is_reached_by_its_figure_and_by_arrows(size) -> None:
    app = ClassApp(REPORT)
    async with app.run_test(size=size) as pilot:
        names = [view.name for view in app.views]
        for number, name in enumerate(names, 1):
            await pilot.press(str(number))
            assert app.view.name == name
        await pilot.press("right")
        assert app.view.name == names[0]
        await pilot.press("left")
        assert app.view.name == names[-1]


async def test_a_table_is_sorted_by_one_column_after_the_other_and_turned_round() -> None:
    app = ClassApp(REPORT)
    async with app.run_test() as pilot:
        await pilot.press("2")
        assert column(app, 0) == ["a sign turned", "a wrong arm"]
        await pilot.press("s", "s", "s")
        assert column(app, 2) == ["9", "3"]
        await pilot.press("r")
        assert column(app, 2) == ["3", "9"]
        await pilot.press("s", "s")
        assert column(app, 0) == ["a sign turned", "a wrong arm"]


async def test_a_row_is_opened_and_left_again_and_harmless_whatever_was_typed() -> None:
    app = ClassApp(REPORT)
    async with app.run_test() as pilot:
        await pilot.press("4", "enter")
        assert isinstance(app.screen, Told)
        assert "AB + 4 = 0" in app.screen.text
        assert "\x1b" not in app.screen.text
        await pilot.press("right", "escape")
        assert app.view.name == "students"
        await pilot.press("q")
    assert app.return_value == 0


async def test_a_sentence_is_shown_in_full_and_as_it_is() -> None:
    app = ClassApp(REPORT)
    async with app.run_test(size=(80, 24)):
        assert column(app, 1) == list(REPORT.again)
        assert (
            app.query_one(DataTable).get_row_height(next(iter(app.query_one(DataTable).rows))) > 1
        )


LONG = "a cosine for a sine, twisted all along"
WIDE = replace(
    REPORT,
    kinds=(KindOverSet("sign", LONG, 3, 2, "flour-bridge-of-the-mill", "reactions"), *REPORT.kinds),
    students=tuple(replace(s, name="Wilhelmina Featherstonehaugh") for s in REPORT.students),
)


@pytest.mark.parametrize("columns", [80, 120])
async def test_no_column_of_a_table_is_cut_at_the_edge(columns: int) -> None:
    app = ClassApp(WIDE)
    async with app.run_test(size=(columns, 24)) as pilot:
        table = app.query_one(DataTable)
        for at in range(len(app.views)):
            app.action_show(at)
            await pilot.pause()
            assert table.virtual_size.width <= table.size.width
        app.action_show(1)
        assert column(app, 3)[0] == "flour-bridge-of-the-mill (reactions)"
        assert column(app, 0)[0] == LONG


async def test_a_window_made_narrower_has_its_table_fitted_and_the_row_kept() -> None:
    app = ClassApp(WIDE)
    async with app.run_test(size=(120, 24)) as pilot:
        app.action_show(1)
        table = app.query_one(DataTable)
        table.move_cursor(row=2)
        await pilot.resize_terminal(80, 24)
        await pilot.pause()
        assert table.virtual_size.width <= table.size.width
        assert table.cursor_row == 2


@pytest.mark.parametrize("room", [10, 20, 33, 60])
def test_columns_fit_or_are_as_narrow_as_their_longest_words(room: int) -> None:
    columns = [
        ("a head", "two words"),
        ("n", "   12"),
        ("most in", "eel-trap (joints) or elsewhere"),
    ]
    found = widths(columns, room)
    least = [max(map(longest, column)) for column in columns]
    assert all(width >= narrow for width, narrow in zip(found, least, strict=True))
    assert sum(found) <= room or found == least
    assert widths(columns, 60) == [9, 5, 30]


async def test_a_report_on_nobody_can_be_looked_through() -> None:
    empty = ClassReport("w", "W", (), (), (), (), (), (), ())
    app = ClassApp(empty)
    async with app.run_test() as pilot:
        await pilot.press("2", "enter", "3", "s", "r", "4", "5", "6", "enter")
        assert len(app.screen_stack) == 1
