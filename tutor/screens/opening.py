"""How does a problem come onto the screen? Gone on with or begun afresh, and nothing overwritten."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any, Protocol

from textual.screen import Screen

from tutor.deeds.board import invitation
from tutor.lesson import Say
from tutor.model import Problem
from tutor.progress.attained import attained_of
from tutor.progress.guide import Guide
from tutor.progress.kept import Summaries
from tutor.progress.where import DONE
from tutor.records import Keep, Settings
from tutor.records.anew import anew, can_be_anew
from tutor.records.settings import ThisTime
from tutor.screens import walk_deeds
from tutor.screens.background import Runs, beside
from tutor.screens.clean import one_line
from tutor.screens.dialogs.choose import Choose
from tutor.screens.entry import ProblemRow
from tutor.screens.going_on import onward_from
from tutor.screens.in_turn import InTurn
from tutor.screens.looks import Looks
from tutor.screens.sheet import SheetScreen
from tutor.screens.shelf import Left, lessons_on
from tutor.screens.walk import WalkScreen
from tutor.screens.widgets.choices import OneOption
from tutor.session import LOG, Session, note_fault, open_session
from tutor.statics import Unsolvable

AFRESH = "afresh"
ANEW = "anew"
FEW = 20
"""So many of the latest lessons say what is offered where the list was not gone through."""
Tell = Callable[[str], object]


class Opener(Runs, Protocol):
    """What opening a lesson needs of the app."""

    keep: Keep
    settings: Settings
    sheet: SheetScreen
    guide: Guide | None
    given: ThisTime
    session: Session | None
    typed: InTurn

    @property
    def looks(self) -> Looks: ...
    @property
    def guided(self) -> bool: ...
    def look_where_left(self) -> None: ...
    def call_after_refresh(self, callback: Any, *args: Any) -> Any: ...
    def push_screen(self, screen: Screen[Any], callback: Any = None) -> Any: ...


def open_entry(app: Opener, entry: ProblemRow, say: Tell | None = None) -> None:
    """Ask whether to go on where lessons on this problem are kept; else begin one.

    `say` tells of it on the screen below: the list, where none is given.
    """
    tell = app.sheet.say if say is None else say
    tell(f"Opening {entry.title}…")
    app.typed.hold()

    def look() -> tuple[Left, ...]:
        return lessons_on(entry, app.keep)

    def found(lessons: tuple[Left, ...]) -> None:
        if lessons:
            ask(app, entry, lessons, tell)
        else:
            start(app, entry, None, tell)

    beside(app, look, found, lambda fault: refuse(app, fault, tell))


def ask(app: Opener, entry: ProblemRow, lessons: tuple[Left, ...], say: Tell) -> None:
    """Go on with one of the kept lessons, or begin again beside them?"""
    choices = [OneOption(str(i), told(left)) for i, left in enumerate(lessons)]
    choices.append(OneOption(AFRESH, "Start afresh; what is kept stays kept"))
    problem = entry.problem
    if problem is not None and can_be_anew(problem) and any(each.where == DONE for each in lessons):
        choices.append(OneOption(ANEW, "Start afresh with other numbers"))

    def chosen(key: str | None) -> None:
        say("")
        if key == ANEW and problem is not None:
            other = anew(problem, (each.kept for each in lessons))
            start(app, entry._replace(problem=other), None, say)
        elif key is not None:
            start(app, entry, None if key == AFRESH else lessons[int(key)].kept.path, say)

    app.push_screen(Choose(entry.title, "You have worked on this problem before.", choices), chosen)
    app.typed.let_go()


def told(left: Left) -> str:
    """A kept lesson in a few words: where it stands and when it was left."""
    when = (
        "" if left.kept.last is None else f", left on {left.kept.last.astimezone():%d %b %Y, %H:%M}"
    )
    if left.where == DONE:
        return f"Look at the finished walk{when}{left.then}"
    return f"Go on {left.where}{when}{left.then}"


def start(app: Opener, entry: ProblemRow, path: Path | None, say: Tell) -> None:
    """Open the lesson beside the screen, then show it."""
    problem = entry.problem
    if problem is None:
        app.typed.let_go(forget=True)
        return
    app.typed.hold()

    def make() -> Session:
        session = open_session(problem, app.keep, path)
        if path is None and app.guided and not app.given.begin:
            offer(session, app.guide, app.keep)
        return session

    def made(session: Session) -> None:
        say("")
        app.session = session
        session.remarks = app.settings.remarks
        session.skippable = frozenset(filter(app.settings.skippable, app.settings.done))
        said = [Say("note", text) for text in invited(app, session)]

        def gone(way: str | None) -> None:
            ahead = left(app, session, say, entry)
            if way == "next" and ahead is not None:
                open_entry(app, ahead)
            elif way == "homework":
                from tutor.screens.own import open_own  # it leads here, too

                open_own(app, "homework", entry)

        walk = WalkScreen(
            session, app.looks, said, onward=lambda: onward_from(app.sheet, entry, session)
        )
        walk.guided = app.guided
        app.push_screen(walk, gone)
        if app.given.begin and not session.lesson.events:
            app.call_after_refresh(walk_deeds.begin, walk, app.given.begin)

    beside(app, make, made, lambda fault: refuse(app, fault, say))


def offer(session: Session, guide: Guide | None, keep: Keep) -> None:
    """Note in a session that begins what is offered to be left to the student, and how that is said."""
    attained = guide.attained if guide is not None else attained_of(Summaries(keep), FEW)
    session.stage = attained.stage(session.lesson.problem)
    session.offer = attained.offer(session.lesson.problem)


def invited(app: Opener, session: Session) -> tuple[str, ...]:
    """What is said to who begins a lesson."""
    if app.given.begin:
        return ()
    said = invitation(session.lesson, app.settings.done, session.offer)
    return (said,) if said else ()


def practise(app: Opener, problem: Problem, waiting: Session | None) -> None:
    """Open a smaller problem over the walk that waits for it."""

    app.typed.hold()

    def made(session: Session) -> None:
        app.session = session
        session.remarks = app.settings.remarks
        session.skippable = frozenset({"idealise"})
        app.push_screen(WalkScreen(session, app.looks), lambda _: back(session))

    def back(session: Session) -> None:
        session.close()
        app.session = waiting

    def failed(fault: Exception) -> None:
        refuse(app, fault, app.sheet.say)

    beside(app, lambda: open_session(problem, app.keep), made, failed)


def left(app: Opener, session: Session, say: Tell, entry: ProblemRow) -> ProblemRow | None:
    """The walk on a problem was left: say what is kept, and where, and what comes next, if it is done."""
    after = onward_from(app.sheet, entry, session) if session.lesson.done else None
    ahead = None if after is None else after.entry
    session.close()
    app.session = None
    onward = "" if ahead is None else f"Next: {one_line(ahead.title)}; enter opens it. "
    say(f"{onward}{kept_words(session)}")
    app.look_where_left()
    return ahead


def kept_words(session: Session) -> str:
    """Whether what was done is kept, in a sentence."""
    if session.gone:
        return session.gone
    if session.journal.saved:
        kept = f"Everything you did is kept, in {session.journal.path}."
        return kept if session.lesson.done else f"{kept} It goes on from there."
    return "What you did this time is not kept."


def refuse(app: Opener, fault: Exception, say: Tell) -> None:
    """Say why a problem cannot be opened."""
    app.typed.let_go(forget=True)
    app.sheet.uncover()
    if isinstance(fault, Unsolvable):
        say(f"This problem cannot be worked: {fault.reason} {fault.how}".rstrip())
        return
    note_fault(app.keep.folder / LOG, fault)
    say("This problem could not be opened: the fault is in the program.")
