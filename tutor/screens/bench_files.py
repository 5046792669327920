"""How does a drawing come from a problem file and go into one, comments and all?"""

from __future__ import annotations

from pathlib import Path
from typing import Any, Protocol

from textual.app import App

from tutor.board import Board
from tutor.drafting import soundness_of
from tutor.drafting.telling import told_of
from tutor.records.keep import slug
from tutor.screens.clean import one_line
from tutor.screens.dialogs.choose import Choose
from tutor.screens.dialogs.save import SaveDialog
from tutor.screens.widgets.choices import OneOption
from tutor.truss_file import Saved, free_name

MOST_FILES = 20
OVER = "over"
NEW = "new"


class FilesBench(Protocol):
    """What opening and saving need of the sheet."""

    board: Board

    @property
    def app(self) -> App[Any]: ...
    def say(self, text: str) -> None: ...
    def took(self, said: str) -> None: ...


def ask_open(bench: FilesBench) -> None:
    """Which problem file of this folder?"""
    try:
        files = sorted(path for path in Path.cwd().glob("*.toml") if path.name != "set.toml")
    except OSError:
        files = []
    if not files:
        bench.say("There is no problem file in this folder; type open and the path of one.")
        return
    choices = [OneOption(str(n), one_line(path.name)) for n, path in enumerate(files[:MOST_FILES])]

    def picked(key: str | None) -> None:
        if key is not None:
            open_named(bench, str(files[int(key)]))

    asked = "Which file? Another one is typed: open and its path. Undo brings the drawing back."
    bench.app.push_screen(Choose("Open", asked, choices), picked)


def open_named(bench: FilesBench, name: str) -> bool:
    """Put the truss of a file on the sheet; False, after saying every defect, where that cannot be."""
    opened, trouble = bench.board.open(name)
    if opened.origin is None:
        defects = [f"line {d.line}: {d.message}; {d.cure}." for d in opened.defects]
        why = f"{one_line(Path(name).name)} cannot be opened: {' '.join(defects)}"
        bench.say(why if defects else f"Read {one_line(name)}: {opened.said}")
        return False
    bench.took(f"{told_of(bench.board.problem)} {trouble}".strip())
    return True


def ask_save(bench: FilesBench) -> None:
    """Over the file it is from, or into a new one?"""
    origin = bench.board.origin
    if origin is None:
        name_file(bench)
        return
    choices = [
        OneOption(OVER, f"Over {one_line(origin.path.name)}; its comments stay"),
        OneOption(NEW, "Into a new file"),
    ]

    def picked(key: str | None) -> None:
        if key == OVER:
            save(bench, "")
        elif key == NEW:
            name_file(bench)

    bench.app.push_screen(Choose("Save", f"Where? It is from {origin.path}.", choices), picked)


def name_file(bench: FilesBench) -> None:
    """Into a new file, whose name is asked for."""
    name = free_name(Path.cwd(), slug(bench.board.problem.title) or "truss")
    outcome: list[Saved] = []

    def write(typed: str, over: bool) -> Saved:
        outcome.append(bench.board.save(typed, over=over))
        return outcome[-1]

    def written(path: str | None) -> None:
        if path is not None:
            bench.say(told(bench, outcome[-1]))

    bench.app.push_screen(SaveDialog(write, name, "Save as a problem file"), written)


def save(bench: FilesBench, name: str, *, over: bool = False) -> bool:
    """Save into the file named; without a name into the one it is from.

    False, after saying why or asking, where it was not written.
    """
    if not name and bench.board.origin is None:
        name_file(bench)
        return True
    outcome = bench.board.save(name, over=over)
    if outcome.over is not None:
        ask_over(bench, name, outcome.said)
        return True
    bench.say(outcome.said if outcome.origin is None else told(bench, outcome))
    return outcome.origin is not None


def ask_over(bench: FilesBench, name: str, question: str) -> None:
    """Over a file that is there already, or into another?"""
    choices = [
        OneOption("no", "No, leave it as it is"),
        OneOption(NEW, "Into a new file"),
        OneOption(OVER, "Yes, write over it"),
    ]

    def picked(key: str | None) -> None:
        if key == OVER:
            save(bench, name, over=True)
        elif key == NEW:
            name_file(bench)
        else:
            bench.say("Nothing was written; the file is as it was.")

    bench.app.push_screen(Choose("Save", question, choices), picked)


def told(bench: FilesBench, outcome: Saved) -> str:
    """Where it is saved, and whether it can be worked from there."""
    said = f"Saved in {one_line(str(outcome.origin.path))}." if outcome.origin else outcome.said
    if soundness_of(bench.board.problem).sound:
        return f"{said} It can be opened wherever a problem file can."
    return f"{said} It cannot be worked until what is named beside the picture is mended."
