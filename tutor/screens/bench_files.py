"""How does a drawing come from a problem file and go into one, comments and all?"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

from textual.app import App

from tutor.drafting import Draft, Entry, Whole, saved, standing
from tutor.model.read import read_text
from tutor.model.source import read_source
from tutor.records.disk import reason, replace, write_new
from tutor.records.keep import slug
from tutor.screens.clean import one_line
from tutor.screens.dialogs.choose import Choose
from tutor.screens.dialogs.save import Save
from tutor.screens.widgets.choices import Choice

MOST_FILES = 20
OVER = "over"
NEW = "new"


@dataclass(frozen=True)
class Opened:
    """The file that a drawing was opened from or last saved to, and its text.

    `since` is how many steps the drawing had then: it is of this file from there on, and not when
    the opening is taken back.
    """

    path: Path | None = None
    text: str | None = None
    since: int = 0


class Bench(Protocol):
    """What opening and saving need of the sheet."""

    draft: Draft
    file: Opened

    @property
    def app(self) -> App[Any]: ...
    def say(self, text: str) -> None: ...
    def take(self, *entries: Entry) -> None: ...


def origin(bench: Bench) -> Opened:
    """The file that the drawing is of, as it stands now."""
    return bench.file if len(bench.draft.steps) >= bench.file.since else Opened()


def ask_open(bench: Bench) -> None:
    """Which problem file of this folder?"""
    try:
        files = sorted(path for path in Path.cwd().glob("*.toml") if path.name != "set.toml")
    except OSError:
        files = []
    if not files:
        bench.say("There is no problem file in this folder; type open and the path of one.")
        return
    choices = [Choice(str(n), one_line(path.name)) for n, path in enumerate(files[:MOST_FILES])]

    def picked(key: str | None) -> None:
        if key is not None:
            open_file(bench, files[int(key)])

    asked = "Which file? Another one is typed: open and its path. Undo brings the drawing back."
    bench.app.push_screen(Choose("Open", asked, choices), picked)


def open_file(bench: Bench, path: Path) -> bool:
    """Put the truss of a file on the sheet; say every defect that keeps it from that."""
    try:
        path = path.expanduser().absolute()
    except (RuntimeError, OSError):
        bench.say(f"Read {one_line(str(path))}: this name cannot be used for a file.")
        return False
    source = read_source(path)
    problem, found = (None, ()) if source.text is None else read_text(source.text, source.file)
    if problem is None or source.text is None or source.defects:
        defects = [f"line {d.line}: {d.message}; {d.cure}." for d in (*source.defects, *found)]
        bench.say(f"{one_line(path.name)} cannot be opened: {' '.join(defects)}")
        return False
    bench.take(Whole(problem))
    bench.file = Opened(path, source.text, since=len(bench.draft.steps))
    return True


def ask_save(bench: Bench) -> None:
    """Over the file it is from, or into a new one?"""
    path = origin(bench).path
    if path is None:
        name_file(bench)
        return
    choices = [
        Choice(OVER, f"Over {one_line(path.name)}; its comments stay"),
        Choice(NEW, "Into a new file"),
    ]

    def picked(key: str | None) -> None:
        if key == OVER:
            save(bench, "")
        elif key == NEW:
            name_file(bench)

    bench.app.push_screen(Choose("Save", f"Where? It is from {path}.", choices), picked)


def name_file(bench: Bench) -> None:
    """Into a new file, whose name is asked for."""
    name = f"{slug(bench.draft.problem.title) or 'truss'}.toml"
    text = saved(bench.draft.problem, origin(bench).text)

    def written(path: str | None) -> None:
        if path is not None:
            bench.file = Opened(Path(path), text)
            bench.say(told(bench, Path(path)))

    bench.app.push_screen(Save(text, name, "Save as a problem file"), written)


def open_named(bench: Bench, name: str) -> bool:
    """Open the file of this name; False where that cannot be."""
    return open_file(bench, Path(name))


def save(bench: Bench, name: str) -> bool:
    """Save into the file named, a new one; without a name into the one it is from.

    False, after saying why, where it cannot be written.
    """
    text = saved(bench.draft.problem, origin(bench).text)
    old = origin(bench).path
    try:
        path = Path(name).expanduser().absolute() if name else old
        if path is None:
            name_file(bench)
            return True
        if old is not None and path == old:
            if read_source(path).text not in (None, bench.file.text):
                bench.say(
                    f"{one_line(path.name)} was changed by another program: save under another name."
                )
                return False
            replace(path, text.encode("utf-8"))
        else:
            write_new(path, text.encode("utf-8"))
    except FileExistsError:
        bench.say("There is such a file already, and it stays as it is: choose another name.")
    except OSError as refused:
        bench.say(f"It could not be written: {reason(refused)}.")
    except (ValueError, RuntimeError):
        bench.say("This name cannot be used for a file.")
    else:
        bench.file = Opened(path, text)
        bench.say(told(bench, path))
        return True
    return False


def told(bench: Bench, path: Path) -> str:
    """Where it is saved, and whether it can be worked from there."""
    said = f"Saved in {one_line(str(path))}."
    if standing(bench.draft.problem).sound:
        return f"{said} It can be opened wherever a problem file can."
    return f"{said} It cannot be worked until what is named beside the picture is mended."
