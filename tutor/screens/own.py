"""How do the screens for one's own truss and homework come up, and what follows when they are left?"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

from tutor.board import Board
from tutor.homework.brought import Brought
from tutor.lesson import Say
from tutor.model import Problem
from tutor.screens.background import beside
from tutor.screens.bench_deeds import Drawn
from tutor.screens.entry import ProblemRow
from tutor.screens.homework import HomeworkScreen
from tutor.screens.opening import Opener, open_entry, refuse
from tutor.screens.walk import WalkScreen
from tutor.screens.workbench import WorkbenchScreen
from tutor.session import Session, key_of
from tutor.workbook import Workbook, open_walk, open_workbook

NO_PROBLEM = "Choose a problem that can be used first, then check a homework on it."
DRAWING_KEPT = "Your drawing is kept; it comes up again with o."
DRAWING_NOT_KEPT = "What you drew this time is not kept."
PAPER_NOT_KEPT = "What you entered this time is not kept."
WAY_BACK = "Escape, then q, goes back to your paper."
PAPER_KEPT = "What you entered is kept, and comes up again with this truss."


def open_own(app: Opener, deed: str, entry: ProblemRow | None, path: Path | None = None) -> None:
    """The sheet for one's own truss ("own"), or the paper for a homework on a row ("homework").

    `path` is the problem file whose truss is put on the sheet.
    """
    if deed == "own":
        open_bench(app, path)
    elif entry is None or entry.problem is None:
        app.sheet.say(NO_PROBLEM)
    else:
        open_homework(app, entry.problem, app.sheet.say)


def open_bench(app: Opener, path: Path | None = None) -> None:
    """Show the sheet for drawing a truss; a walk or a homework on it comes over it, and goes again."""

    def use(drawn: Drawn) -> None:
        if drawn.deed == "walk":
            entry = ProblemRow(drawn.problem.title, drawn.problem, key_of(drawn.problem))
            open_entry(app, entry, bench.say)
        else:
            came = board.bring_paper(app.keep)
            open_homework(app, drawn.problem, bench.say, " ".join(came))

    board = Board(app.keep.folder)
    bench = WorkbenchScreen(app.looks, board, use, path)

    def left(_: object) -> None:
        lost = board.kept.trouble
        board.close()
        app.sheet.say(DRAWING_NOT_KEPT if lost else DRAWING_KEPT)

    app.push_screen(bench, left)


def open_homework(
    app: Opener, problem: Problem, say: Callable[[str], object], news: str = ""
) -> None:
    """Show the paper for the numbers of a homework on this problem, with some `news` of it.

    `say` tells of it afterwards.
    """
    book = open_workbook(problem, app.keep)
    news = " ".join((*([news] if news else []), *book.news()))

    def walk(given: Brought) -> None:
        walk_from(app, book, given, paper.say)

    paper = HomeworkScreen(book, app.looks, walk, news)

    def left(_: object) -> None:
        lost = not book.saved
        book.kept.close()
        say(PAPER_NOT_KEPT if lost else PAPER_KEPT)

    app.push_screen(paper, left)


def walk_from(app: Opener, book: Workbook, given: Brought, say: Callable[[str], object]) -> None:
    """Open a walk over the paper, which begins with what is right on it."""
    app.typed.hold()

    def made(opened: tuple[Session, Sequence[Say]]) -> None:
        session, begins = opened
        app.session = session
        session.remarks = app.settings.remarks
        said = (*begins, Say("note", WAY_BACK))
        app.push_screen(WalkScreen(session, app.looks, said=said), lambda _: back(session))

    def back(session: Session) -> None:
        session.close()
        app.session = None

    beside(
        app,
        lambda: open_walk(book, given, app.keep),
        made,
        lambda fault: refuse(app, fault, say),
    )
