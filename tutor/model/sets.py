"""Which problems are in a folder, and which of its files cannot be used?"""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from tutor.model.amounts import kind_of
from tutor.model.defect import Defect, Findings, ProblemError, choose
from tutor.model.problem import Problem
from tutor.model.read import outcome
from tutor.model.source import file_name, read_source
from tutor.model.text import one_line, shown
from tutor.model.toml_read import UNREAD, read_toml

SET_FILE = "set.toml"
KEYS = ("title", "order")
DEEPEST = 3


@dataclass(frozen=True)
class ProblemSet:
    """Problems to be worked one after another.

    `broken` holds the error of each file that cannot be used, `set.toml` included; `warnings` what
    else there is to say of those that can. Both are by the file's path, in the set's order.
    """

    title: str
    problems: tuple[Problem, ...]
    broken: Mapping[Path, ProblemError] = field(default_factory=dict)
    warnings: Mapping[Path, tuple[Defect, ...]] = field(default_factory=dict)
    path: Path | None = None


def load_set(path: str | Path) -> ProblemSet:
    """The set in a folder (or named by its set.toml), or the set of one problem in a file.

    A file that cannot be used is in `broken` and the rest is read all the same. Raises ProblemError
    where there is nothing to read at all: no such file, or no problem file in the folder.
    """
    path = Path(path)
    if path.name == SET_FILE and _is_file(path):
        path = path.parent
    if not _is_folder(path):
        read = outcome(path)
        if read.problem is None:
            if not _is_file(path):
                raise ProblemError(read.defects)
            return ProblemSet(
                _title_of(path.stem), (), {path: ProblemError(read.defects)}, {}, path
            )
        warnings = {path: read.defects} if read.defects else {}
        return ProblemSet(read.problem.title, (read.problem,), {}, warnings, path)
    files = _problem_files(path)
    if not files:
        raise ProblemError([_folder_defect(path, "there is no problem file in this folder")])
    return _folder_set(path, files)


def load_sets(path: str | Path) -> tuple[ProblemSet, ...]:
    """The set at `path` and, under a folder, those of its folders, in name order.

    Folders without problem files are passed over, and hidden ones. Raises ProblemError where no
    set is found.
    """
    path = Path(path)
    if not _is_folder(path):
        return (load_set(path),)
    sets = tuple(_sets_under(path, DEEPEST))
    if not sets:
        raise ProblemError(
            [_folder_defect(path, "there is no problem file in or under this folder")]
        )
    return sets


def _sets_under(folder: Path, depth: int) -> Iterator[ProblemSet]:
    try:
        files = _problem_files(folder)
        below = sorted(
            Path(entry.path)
            for entry in os.scandir(folder)
            if entry.is_dir(follow_symlinks=False) and not entry.name.startswith(".")
        )
    except ProblemError as refused:
        yield ProblemSet(_title_of(folder.name), (), {folder: refused}, {}, folder)
        return
    if files:
        yield _folder_set(folder, files)
    if depth:
        for inner in below:
            yield from _sets_under(inner, depth - 1)


def _folder_set(folder: Path, files: tuple[Path, ...]) -> ProblemSet:
    title, order, found = _read_set_file(folder, files)
    broken: dict[Path, ProblemError] = {}
    warnings: dict[Path, tuple[Defect, ...]] = {}
    problems = []
    if found:
        broken[folder / SET_FILE] = ProblemError(found)
    for file in order:
        read = outcome(file)
        if read.problem is None:
            broken[file] = ProblemError(read.defects)
            continue
        problems.append(read.problem)
        if read.defects:
            warnings[file] = read.defects
    return ProblemSet(title, tuple(problems), broken, warnings, folder)


def _read_set_file(
    folder: Path, files: tuple[Path, ...]
) -> tuple[str, tuple[Path, ...], tuple[Defect, ...]]:
    """Title, files in order, and the defects of set.toml; defaults where there is none."""
    title = _title_of(folder.absolute().name)
    if not os.path.lexists(folder / SET_FILE):
        return title, files, ()
    source = read_source(folder / SET_FILE)
    if source.text is None:
        return title, files, source.defects
    document = read_toml(source.text, source.file)
    notes = document.findings
    for key in document.data:
        if key not in KEYS:
            notes.error(
                (key,), f"{shown(key)} is an unknown key", choose(key, KEYS, "the keys are")
            )
    given = document.data.get("title", UNREAD)
    if isinstance(given, str) and one_line(given):
        title = one_line(given)
    elif given is not UNREAD or document.whole():
        read = "there is no title" if given is UNREAD else "the title is not a text with words"
        notes.error(("title",), read, 'write title = "…"')
    order = _ordered(notes, document.data.get("order", UNREAD), files)
    return title, order, tuple(sorted((*source.defects, *notes.all()), key=lambda d: d.line))


def _ordered(notes: Findings, names: Any, files: tuple[Path, ...]) -> tuple[Path, ...]:
    """The files as `order` names them, then those it leaves out, which is a defect."""
    if names is UNREAD:
        return files
    if not isinstance(names, list):
        cure = 'write a list of file names, like order = ["lamp-arm", "gangway"]'
        notes.error(("order",), f"order is {kind_of(names)}, not a list", cure)
        return files
    known = {file.stem: file for file in files}
    chosen: dict[str, Path] = {}
    for place, name in enumerate(names):
        if not isinstance(name, str):
            cure = "write file names in quotes"
            notes.error(("order", place), f"order holds {kind_of(name)}, not only texts", cure)
            continue
        stem = name.removesuffix(".toml")
        if stem not in known:
            cure = choose(stem, known, "the files are")
            notes.error(("order", place), f"order names {shown(name)}, which is not there", cure)
        elif stem in chosen:
            notes.error(("order", place), f"order names {shown(name)} twice", "name it once")
        else:
            chosen[stem] = known[stem]
    left = [file for file in files if file.stem not in chosen]
    for file in left:
        message = f"order leaves out {shown(file.stem)}"
        notes.error(("order",), message, "add it, or move the file to another folder")
    return (*chosen.values(), *left)


def _problem_files(folder: Path) -> tuple[Path, ...]:
    """The problem files of a folder in name order; raises ProblemError if it cannot be listed."""
    try:
        names = sorted(os.listdir(folder))
    except OSError as refused:
        reason = one_line(refused.strerror or "it cannot be listed")
        raise ProblemError(
            [_folder_defect(folder, f"the folder cannot be read: {reason}")]
        ) from None
    return tuple(
        folder / name
        for name in names
        if name.endswith(".toml") and name != SET_FILE and not name.startswith(".")
    )


def _folder_defect(folder: Path, message: str) -> Defect:
    return Defect(file_name(folder), 1, message, "name a folder with problem files, *.toml")


def _is_folder(path: Path) -> bool:
    try:
        return path.is_dir()
    except (OSError, ValueError):
        return False


def _is_file(path: Path) -> bool:
    try:
        return path.is_file()
    except (OSError, ValueError):
        return False


def _title_of(name: str) -> str:
    """A title made of a file name: "first-steps" becomes "First steps"."""
    plain = one_line(file_name(name).replace("-", " ").replace("_", " "))
    return plain[:1].upper() + plain[1:]
