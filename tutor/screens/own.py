"""How do the screens for one's own truss and homework come up, and what follows when they are left?"""

from __future__ import annotations

from tutor.homework.brought import Brought
from tutor.model import Problem
from tutor.records.kept_lines import TRUSS, KeptLines, homework_name
from tutor.screens.background import beside
from tutor.screens.homework import HomeworkScreen
from tutor.screens.opening import Desk, open_entry, refuse
from tutor.screens.shelf import Entry
from tutor.screens.walk import WalkScreen
from tutor.screens.workbench import Drawn, WorkbenchScreen
from tutor.session import Session, key_of, open_session

NO_PROBLEM = "Choose a problem that can be used first, then check a homework on it."


def open_own(app: Desk, deed: str, entry: Entry | None) -> None:
    """The sheet for one's own truss ("own"), or the paper for a homework on a row ("homework")."""
    if deed == "own":
        open_bench(app)
    elif entry is None or entry.problem is None:
        app.sheet.say(NO_PROBLEM)
    else:
        open_homework(app, entry.problem)


def open_bench(app: Desk) -> None:
    """Show the sheet for drawing a truss; then walk it or check a homework on it, if asked to."""

    def left(drawn: Drawn | None) -> None:
        app.sheet.say("")
        if drawn is None:
            app.sheet.say("Your drawing is kept; it comes up again with escape, then o.")
        elif drawn.deed == "walk":
            open_entry(app, Entry(drawn.problem.title, drawn.problem, key_of(drawn.problem)))
        else:
            open_homework(app, drawn.problem)

    app.push_screen(WorkbenchScreen(app.looks, KeptLines(app.keep.folder, TRUSS)), left)


def open_homework(app: Desk, problem: Problem) -> None:
    """Show the paper for the numbers of a homework on this problem."""
    kept = KeptLines(app.keep.folder, homework_name(key_of(problem)))

    def left(_: None) -> None:
        app.sheet.say("What you entered is kept, and comes up again with this truss.")

    def walk(brought: Brought) -> None:
        walk_from(app, problem, brought)

    app.push_screen(HomeworkScreen(problem, app.looks, kept, walk), left)


def walk_from(app: Desk, problem: Problem, brought: Brought) -> None:
    """Open a walk over the paper, which begins with what is right on it."""

    def make() -> Session:
        session = open_session(problem, app.keep)
        session.do(
            "bring",
            values=dict(brought.values),
            senses=dict(brought.senses),
            joint=brought.joint,
        )
        return session

    def made(session: Session) -> None:
        app.session = session
        session.remarks = app.settings.remarks
        app.push_screen(WalkScreen(session, app.looks), lambda _: back(session))

    def back(session: Session) -> None:
        session.close()
        app.session = None

    beside(app, make, made, lambda fault: refuse(app, fault))
