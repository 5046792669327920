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
from tutor.screens.dialogs.save import Save
from tutor.screens.dialogs.told import Told
from tutor.screens.homework_help import homework_help
from tutor.screens.widgets.choices import Choice
from tutor.truss_file import Saved, free_name
from tutor.workbook import Workbook

FIRST = "Check first: escape, then c. {why}"
NOT_CHECKED = "This could not be checked: the fault is in the program. What you entered is kept."
BLANK = "There is nothing to check yet: enter a value or a line first."
LAST = "This shows what would be right at the first wrong place. Do you want to see it?"


class Desk(Protocol):
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


def check(desk: Desk) -> None:
    """Review the whole paper beside the screen."""
    if not desk.settle_row():
        return
    if desk.paper.blank:
        desk.say(BLANK)
        return
    paper, work, before = desk.paper, desk.paper.work(desk.problem), desk.book.before
    desk.say("Checking…")
    beside(
        desk.app,
        lambda: review(desk.problem, work, before),
        lambda result: checked(desk, paper, result),
        lambda fault: desk.say(NOT_CHECKED),
    )


def checked(desk: Desk, paper: Paper, result: Review) -> None:
    """Show what a check found; the hints given stay where nothing was changed."""
    if paper != desk.checked or desk.result is None:
        look = hint(result, "look")
        desk.hints = [("Look", look)] if look else []
    desk.result, desk.checked = result, paper
    desk.book.note_check(paper, result)
    more = " Escape, then h, says more." if result.first is not None else ""
    desk.say(f"{result.said}{more}")
    desk.show()


def reviewed(desk: Desk, why: str) -> Review | None:
    """The review of the paper as it stands; None, after saying why, where it was not checked."""
    if desk.result is None or desk.changed:
        desk.say(FIRST.format(why=why))
        return None
    return desk.result


def next_hint(desk: Desk) -> None:
    """One hint more for the first wrong place; the last only after asking."""
    result = reviewed(desk, "Hints are for the first wrong place.")
    if result is None:
        return
    if result.first is None:
        desk.say("Nothing wrong was found, so there is nothing to hint at.")
    elif len(desk.hints) < len(LEVELS):
        level = LEVELS[len(desk.hints)]
        give(desk, level.capitalize(), hint(result, level))
    elif len(desk.hints) == len(LEVELS):
        choices = [Choice("no", "No, I try again"), Choice("yes", "Show the right lines")]

        def answered(key: str | None) -> None:
            if key == "yes":
                lines = right_lines(desk.problem, desk.checked.work(desk.problem), result)
                give(desk, "Line", "\n".join(f"{about}: {line}" for about, line in lines))

        desk.app.push_screen(Choose("The last hint", LAST, choices), answered)
    else:
        desk.say("These are all the hints there are for this place.")


def give(desk: Desk, level: str, text: str) -> None:
    """Say a hint, and put it among those given."""
    desk.book.note_hint(len(desk.hints))
    desk.hints.append((level, text))
    desk.say(text)
    desk.show()


def walk(desk: Desk) -> None:
    """Walk the first wrong place with everything right before it given."""
    result = reviewed(desk, "The walk begins at the first wrong place.")
    if result is None:
        return
    if result.first is None:
        desk.say("Nothing wrong was found, so there is no joint to walk.")
    else:
        desk.walk(brought(desk.problem, desk.checked, result))


def undo(desk: Desk) -> None:
    """Take the last change of the paper back."""
    if not desk.book.undo():
        desk.say("There is nothing to take back.")
        return
    desk.say(" ".join(["Taken back.", *desk.book.news()]))
    desk.go(desk.place)


def clear(desk: Desk) -> None:
    """Take everything off the paper, after asking."""

    def answered(key: str | None) -> None:
        if key == "yes":
            desk.result = None
            desk.take(Written(Paper(), ("a blank paper; undo brings the old one back",)))
            desk.go(0)

    choices = [Choice("no", "No, keep it"), Choice("yes", "Take everything off")]
    desk.app.push_screen(Choose("Clear", "Take everything off the paper?", choices), answered)


def save(desk: Desk) -> None:
    """Write the report of the check into a new file."""
    result = reviewed(desk, "The report says what was checked.")
    if result is None:
        return
    name = free_name(Path.cwd(), f"{slug(desk.problem.title) or 'homework'}-check", ".md")

    def write(typed: str, over: bool) -> Saved:
        return desk.book.save_report(typed, datetime.now().astimezone(), result, over=over)

    def saved(path: str | None) -> None:
        if path is not None:
            desk.say(f"Saved in {one_line(path)}, with the picture of the truss beside it.")

    desk.app.push_screen(Save(write, name, "Save the report"), saved)


def tell_help(desk: Desk) -> None:
    desk.app.push_screen(Told("Check a homework", homework_help()))


DO: Mapping[str, Callable[[Desk], object]] = {
    "check": check,
    "hint": next_hint,
    "figure": lambda desk: desk.next_view(),
    "walk": walk,
    "undo": undo,
    "clear": clear,
    "save": save,
    "help": tell_help,
    "leave": lambda desk: desk.dismiss(None),
}
