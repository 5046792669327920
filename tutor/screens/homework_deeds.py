"""What does each deed on the bar of a homework do?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import datetime
from pathlib import Path
from typing import Any, Protocol

from textual.app import App

from tutor.homework import LEVELS, Review, hint, review, right_lines
from tutor.homework.brought import Brought, brought
from tutor.homework.page import Written
from tutor.homework.paper import Paper
from tutor.model import Problem
from tutor.records.keep import slug
from tutor.screens.background import beside
from tutor.screens.clean import one_line
from tutor.screens.dialogs.choose import Choose
from tutor.screens.dialogs.save import SaveDialog
from tutor.screens.dialogs.told import Told
from tutor.screens.homework_help import homework_help
from tutor.screens.widgets.choices import OneOption
from tutor.truss_file import Saved, free_name
from tutor.workbook import Workbook

FIRST = "Check first: escape, then c. {why}"
NOT_CHECKED = "This could not be checked: the fault is in the program. What you entered is kept."
BLANK = "There is nothing to check yet: enter a value or a line first."
LAST = "This shows what would be right at the first wrong place. Do you want to see it?"


class Filler(Protocol):
    """What a deed needs of the screen of a homework."""

    book: Workbook
    problem: Problem
    place: int
    result: Review | None
    checked: Paper
    hints: list[tuple[str, str]]
    walk: Callable[[Brought], object]

    @property
    def app(self) -> App[Any]: ...
    @property
    def paper(self) -> Paper: ...
    @property
    def changed(self) -> set[str | int]: ...
    def say(self, text: str) -> None: ...
    def show(self) -> None: ...
    def go(self, place: int) -> None: ...
    def take(self, written: Written) -> str: ...
    def settle_row(self) -> bool: ...
    def next_view(self) -> None: ...
    def dismiss(self, result: None = None) -> Any: ...


def check(screen: Filler) -> None:
    """Review the whole paper beside the screen."""
    if not screen.settle_row():
        return
    if screen.paper.blank:
        screen.say(BLANK)
        return
    paper, work, before = screen.paper, screen.paper.work(screen.problem), screen.book.before
    screen.say("Checking…")
    beside(
        screen.app,
        lambda: review(screen.problem, work, before),
        lambda result: checked(screen, paper, result),
        lambda fault: screen.say(NOT_CHECKED),
    )


def checked(screen: Filler, paper: Paper, result: Review) -> None:
    """Show what a check found; the hints given stay where nothing was changed."""
    if paper != screen.checked or screen.result is None:
        look = hint(result, "look")
        screen.hints = [("Look", look)] if look else []
    screen.result, screen.checked = result, paper
    screen.book.note_check(paper, result)
    more = " Escape, then h, says more." if result.first is not None else ""
    screen.go(row_to_mend(screen.problem, result, screen.place))
    screen.say(f"{result.said}{more}")


def row_to_mend(problem: Problem, result: Review, place: int) -> int:
    """The row of the first wrong entry, one at the first wrong place before all others; else the row at hand."""
    names = problem.unknowns
    here = {member.name for member in problem.meeting.get(result.first or "", ())}
    rows = {
        f.name: len(names) + f.name if isinstance(f.name, int) else names.index(f.name)
        for f in result.findings
        if f.state == "wrong"
    }
    return min(
        rows.values(),
        key=lambda row: (row < len(names) and names[row] not in here, row),
        default=place,
    )


def reviewed(screen: Filler, why: str) -> Review | None:
    """The review of the paper as it stands; None, after saying why, where it was not checked."""
    if screen.result is None or screen.changed:
        screen.say(FIRST.format(why=why))
        return None
    return screen.result


def next_hint(screen: Filler) -> None:
    """One hint more for the first wrong place; the last only after asking."""
    result = reviewed(screen, "Hints are for the first wrong place.")
    if result is None:
        return
    if result.first is None:
        screen.say("Nothing wrong was found, so there is nothing to hint at.")
    elif len(screen.hints) < len(LEVELS):
        level = LEVELS[len(screen.hints)]
        give(screen, level.capitalize(), hint(result, level))
    elif len(screen.hints) == len(LEVELS):
        choices = [OneOption("no", "No, I try again"), OneOption("yes", "Show the right lines")]

        def answered(key: str | None) -> None:
            if key == "yes":
                lines = right_lines(screen.problem, screen.checked.work(screen.problem), result)
                give(screen, "Line", "\n".join(f"{about}: {line}" for about, line in lines))

        screen.app.push_screen(Choose("The last hint", LAST, choices), answered)
    else:
        screen.say("These are all the hints there are for this place.")


def give(screen: Filler, level: str, text: str) -> None:
    """Say a hint, and put it among those given."""
    screen.book.note_hint(len(screen.hints))
    screen.hints.append((level, text))
    screen.say(text)
    screen.show()


def walk(screen: Filler) -> None:
    """Walk the first wrong place with everything right before it given."""
    result = reviewed(screen, "The walk begins at the first wrong place.")
    if result is None:
        return
    if result.first is None:
        screen.say("Nothing wrong was found, so there is no joint to walk.")
    else:
        screen.walk(brought(screen.problem, screen.checked, result))


def undo(screen: Filler) -> None:
    """Take the last change of the paper back."""
    if not screen.book.undo():
        screen.say("There is nothing to take back.")
        return
    screen.say(" ".join(["Taken back.", *screen.book.news()]))
    screen.go(screen.place)


def clear(screen: Filler) -> None:
    """Take everything off the paper, after asking."""

    def answered(key: str | None) -> None:
        if key == "yes":
            screen.result = None
            screen.take(Written(Paper(), ("a blank paper; undo brings the old one back",)))
            screen.go(0)

    choices = [OneOption("no", "No, keep it"), OneOption("yes", "Take everything off")]
    screen.app.push_screen(Choose("Clear", "Take everything off the paper?", choices), answered)


def save(screen: Filler) -> None:
    """Write the report of the check into a new file."""
    result = reviewed(screen, "The report says what was checked.")
    if result is None:
        return
    name = free_name(Path.cwd(), f"{slug(screen.problem.title) or 'homework'}-check", ".md")

    def write(typed: str, over: bool) -> Saved:
        return screen.book.save_report(typed, datetime.now().astimezone(), result, over=over)

    def saved(path: str | None) -> None:
        if path is not None:
            screen.say(f"Saved in {one_line(path)}, with the picture of the truss beside it.")

    screen.app.push_screen(SaveDialog(write, name, "Save the report"), saved)


def tell_help(screen: Filler) -> None:
    screen.app.push_screen(Told("Check a homework", homework_help()))


DO: Mapping[str, Callable[[Filler], object]] = {
    "check": check,
    "hint": next_hint,
    "figure": lambda screen: screen.next_view(),
    "walk": walk,
    "undo": undo,
    "clear": clear,
    "save": save,
    "help": tell_help,
    "leave": lambda screen: screen.dismiss(None),
}

TYPED: Mapping[str, str] = {
    **{deed: deed for deed in DO},
    **dict.fromkeys(("bodies", "joints"), "figure"),
    **dict.fromkeys(("quit", "exit", "bye"), "leave"),
    "?": "help",
}
"""The deeds by the words that ask for them where lines are typed."""
