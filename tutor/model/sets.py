"""Which problems are in a folder, and which of its files cannot be used?"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from tutor.model.defect import Defect, ProblemError
from tutor.model.problem import Problem
from tutor.model.read import ReadProblem, outcome
from tutor.model.rules import Rules
from tutor.model.set_file import SET_FILE, read_order_of_sets, read_set_file
from tutor.model.source import file_name
from tutor.text import one_line, raised

DEEPEST = 3


@dataclass(frozen=True)
class ProblemSet:
    """Problems to be worked one after another.

    `broken` holds the error of each file that cannot be used, `set.toml` included; `warnings` what
    else there is to say of those that can. Both are by the file's path, in the set's order. Each
    problem carries the set's `rules` too. `unread` is how many files the reader has left out. `note`
    is a sentence about its numbers, for whoever opens it.
    """

    title: str
    problems: tuple[Problem, ...]
    broken: Mapping[Path, ProblemError] = field(default_factory=dict)
    warnings: Mapping[Path, tuple[Defect, ...]] = field(default_factory=dict)
    path: Path | None = None
    rules: Rules = field(default_factory=Rules)
    unread: int = 0
    note: str = ""

    @property
    def file(self) -> Path | None:
        """Where the set.toml of a folder is, or would be."""
        return None if self.path is None else self.path / SET_FILE

    @property
    def name(self) -> str:
        """The name by which the set is known to students and to the numbers they draw: the `id` of
        its set.toml, or the name of its folder; a file alone has that of the folder it is in."""
        if self.rules.id or self.path is None:
            return self.rules.id or self.title
        folder = self.path.absolute()
        return folder.parent.name if folder.suffix == ".toml" else folder.name

    def before(self, problem: Problem) -> tuple[Problem, ...]:
        """The problems of the set that come before one, as `after` in its set.toml says."""
        stems = {p.source.stem: p for p in self.problems if p.source is not None}
        own = "" if problem.source is None else problem.source.stem
        return tuple(stems[stem] for stem in self.rules.after.get(own, ()) if stem in stems)


Reader = Callable[[Sequence[Path], Rules], Iterable[ReadProblem]]
"""Reads files under the rules of their set, in their order; it may leave out the last ones."""


def one_by_one(files: Sequence[Path], rules: Rules) -> Iterator[ReadProblem]:
    """The usual reader."""
    return (outcome(file, rules) for file in files)


class FirstFew:
    """A reader that reads no more than so many files, however many sets they are in."""

    def __init__(self, most: int) -> None:
        self.left = most

    def __call__(self, files: Sequence[Path], rules: Rules) -> Iterator[ReadProblem]:
        few = files[: self.left]
        self.left -= len(few)
        return one_by_one(few, rules)


def load_set(path: str | Path) -> ProblemSet:
    """The set in a folder (or named by its set.toml), or the set of one problem in a file.

    One file out of a folder with a set.toml is worked under that set's rules. A file that cannot be used is in `broken` and the rest is read all the same. Raises ProblemError
    where there is nothing to read at all: no such file, or no problem file in the folder.
    """
    path = Path(path)
    if path.name == SET_FILE and _is_file(path):
        path = path.parent
    if not _is_folder(path):
        return _set_of_one(path)
    files = _problem_files(path)
    if not files:
        raise ProblemError([_folder_defect(path, "there is no problem file in this folder")])
    return _folder_set(path, files, one_by_one)


def _set_of_one(path: Path) -> ProblemSet:
    rules = Rules()
    if _is_file(path.parent / SET_FILE):
        rules = read_set_file(path.parent, "", (path,)).rules
    read = outcome(path, rules)
    if read.problem is None:
        if not _is_file(path):
            raise ProblemError(read.defects)
        return ProblemSet(
            _title_of(path.stem), (), {path: ProblemError(read.defects)}, {}, path, rules
        )
    warnings = {path: read.defects} if read.defects else {}
    return ProblemSet(read.problem.title, (read.problem,), {}, warnings, path, rules)


def load_sets(path: str | Path, read: Reader = one_by_one) -> tuple[ProblemSet, ...]:
    """The set at `path` and, under a folder, those of its folders, in name order.

    A set.toml in a folder of sets may give them another `order`. Folders without problem files are
    passed over, and hidden ones. `read` reads the files of a folder. Raises ProblemError where no set
    is found.
    """
    path = Path(path)
    if path.name == SET_FILE and _is_file(path):
        path = path.parent
    if not _is_folder(path):
        return (load_set(path),)
    sets = tuple(_sets_under(path, DEEPEST, read))
    if not sets:
        raise ProblemError(
            [_folder_defect(path, "there is no problem file in or under this folder")]
        )
    return sets


def _sets_under(folder: Path, depth: int, read: Reader) -> Iterator[ProblemSet]:
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
        yield _folder_set(folder, files, read)
    if not depth:
        return
    found = {inner: tuple(_sets_under(inner, depth - 1, read)) for inner in below}
    order = tuple(inner for inner, sets in found.items() if sets)
    if not files and order:
        order, defects = read_order_of_sets(folder, order)
        if defects:
            told = {folder / SET_FILE: ProblemError(defects)}
            yield ProblemSet(_title_of(folder.name), (), told, {}, folder)
    for inner in order:
        yield from found[inner]


def _folder_set(folder: Path, files: tuple[Path, ...], read: Reader) -> ProblemSet:
    said = read_set_file(folder, _title_of(folder.absolute().name), files)
    broken: dict[Path, ProblemError] = {}
    warnings: dict[Path, tuple[Defect, ...]] = {}
    problems = []
    if said.defects:
        broken[folder / SET_FILE] = ProblemError(said.defects)
    unread = len(said.order)
    for file, found in zip(said.order, read(said.order, said.rules), strict=False):
        unread -= 1
        if found.problem is None:
            broken[file] = ProblemError(found.defects)
            continue
        problems.append(found.problem)
        if found.defects:
            warnings[file] = found.defects
    return ProblemSet(said.title, tuple(problems), broken, warnings, folder, said.rules, unread)


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
    return raised(plain)
