"""Which file is a drawing of, and may it be written there? Nothing else is written over unasked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from tutor.drafting import Draft, Mark, Whole, saved
from tutor.model import Defect, Problem
from tutor.model.read import read_text
from tutor.model.source import file_name, read_source
from tutor.records.disk import replace, why_not, write_new

NO_NAME = "This name cannot be used for a file."


@dataclass(frozen=True)
class Origin:
    """The file that a drawing was opened from or last saved to, its text, and the drawing then."""

    path: Path
    text: str
    mark: Mark


@dataclass(frozen=True)
class Opened:
    """What came of opening a file: where the drawing is from now, or what is wrong with the file.

    `said` is a sentence where the name itself cannot be used, else "".
    """

    origin: Origin | None = None
    defects: tuple[Defect, ...] = ()
    said: str = ""


@dataclass(frozen=True)
class Saved:
    """What came of saving. `path` is None where nothing was written, for the reason that is `said`.

    `over` is the file that is there already, where it has to be asked about first; `origin` is what
    the drawing is of from now on.
    """

    said: str
    path: Path | None = None
    over: Path | None = None
    origin: Origin | None = None


def origin_of(draft: Draft, was: Origin | None) -> Origin | None:
    """The file that the drawing is of now: none once it is another truss, or before it was opened."""
    return None if was is None or draft.renamed_since(was.mark) is None else was


def path_named(name: str) -> Path | None:
    """The whole path that a typed name means; None where it cannot be one."""
    try:
        return Path(name).expanduser().absolute() if name and "\0" not in name else None
    except (RuntimeError, OSError, ValueError):
        return None


def open_into(draft: Draft, name: str) -> Opened:
    """Put the truss of a file in the place of what is drawn, as one step that can be taken back."""
    path = path_named(name)
    if path is None:
        return Opened(said=NO_NAME)
    source = read_source(path)
    problem, found = (None, ()) if source.text is None else read_text(source.text, source.file)
    if problem is None or source.text is None or source.defects:
        return Opened(defects=(*source.defects, *found))
    draft.do((Whole(problem),))
    return Opened(Origin(path, source.text, draft.mark))


def save(draft: Draft, was: Origin | None, name: str = "", *, over: bool = False) -> Saved:
    """Save the drawing into the file of this name, or without one into the file it is of.

    Another file that is there, or one that another program changed, is written only with `over`.
    """
    own = origin_of(draft, was)
    path = path_named(name) if name else None if own is None else own.path
    if path is None:
        return Saved(NO_NAME if name else "Name the file as well, like save arm.toml.")
    text = saved(draft.problem, None if own is None else own.text)
    mine = own is not None and path == own.path
    unchanged = own is not None and mine and read_source(path).text == own.text
    outcome = write_all({path: text}, over=over or unchanged)
    if outcome.over is not None and mine:
        name = file_name(path.name)
        said = f"{name} was changed by another program since. Write over it?"
        return Saved(said, over=path)
    if outcome.path is None:
        return outcome
    said = f"Saved in {file_name(name or path)}."
    return Saved(said, path, origin=Origin(path, text, draft.mark))


def save_text(text: str, name: str, over: bool = False) -> Saved:
    """Write a text into the file of this name; one that is there is written over only with `over`."""
    path = path_named(name)
    return Saved(NO_NAME) if path is None else write_all({path: text}, over=over)


def write_all(texts: Mapping[Path, str], *, over: bool = False) -> Saved:
    """Write each text into its file, the first being the one that is told of.

    Nothing is written where one of the files is there already with something else in it, but with
    `over`.
    """
    first, *_ = texts
    try:
        there = [path for path, text in texts.items() if path.exists() and _differs(path, text)]
        if there and not over:
            return Saved(question(there[0]), over=there[0])
        for path, text in texts.items():
            if over or path.exists():
                replace(path, text.encode("utf-8"))
            else:
                write_new(path, text.encode("utf-8"))
    except OSError as refused:
        return Saved(f"It could not be written: {why_not(refused)}.")
    except ValueError:
        return Saved(NO_NAME)
    return Saved(f"Saved in {file_name(first)}.", first)


def _differs(path: Path, text: str) -> bool:
    return read_source(path).text != text


def question(path: Path) -> str:
    """What is there already, and whether it may go."""
    held = f", with {_held(path)}" if path.suffix == ".toml" else ""
    return f"{file_name(path.name)} is there already{held}. Write over it?"


def _held(path: Path) -> str:
    """What a file holds, in a few words."""
    source = read_source(path)
    problem = None if source.text is None else read_text(source.text, source.file).problem
    return "something that is no truss" if problem is None else _named(problem)


def _named(problem: Problem) -> str:
    return f"the truss “{file_name(problem.title)}”"


def free_name(folder: Path, stem: str, ending: str = ".toml") -> str:
    """A name in a folder that no file has: the stem, or with a number behind it."""
    names = (f"{stem}{f'-{n}' if n > 1 else ''}{ending}" for n in range(1, 1000))
    return next((name for name in names if not (folder / name).exists()), f"{stem}{ending}")
