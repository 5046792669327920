"""What is wrong with a problem file, where, and what would be right?"""

from __future__ import annotations

import difflib
from collections.abc import Callable, Iterable, MutableMapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Literal

from tutor.text import FEW, listed, printable, shown

Severity = Literal["error", "warning"]
DefectKind = Literal["", "lacking", "unjoined", "cancelled"]
"""What a defect comes to, where that asks for another cure while a truss is drawn up: a part that is
not there or empty, a joint without a member, pushes that cancel."""
KeyPath = tuple[str | int, ...]
MOST = 200
SUGGESTED = 40
LONGEST = 600
"""How many characters a message or a cure may have."""


@dataclass(frozen=True)
class Defect:
    """One defect of a file. `line` counts from 1; what concerns the whole file is on line 1.

    `message` says what was read and what is wrong, `cure` what would be right; both are plain text
    on one line. A warning does not keep the file from being used; `code` is the stable name of its
    kind, where it has one; `kind` says what it comes to, and `of` which joints and members it is of.
    """

    file: str
    line: int
    message: str
    cure: str
    severity: Severity = "error"
    code: str = ""
    kind: DefectKind = ""
    of: tuple[str, ...] = ()

    def __str__(self) -> str:
        kind = "warning: " if self.severity == "warning" else ""
        return f"{self.file}:{self.line}: {kind}{self.message}; {self.cure}"


class ProblemError(Exception):
    """A problem file or set that cannot be used; `problems` holds all its defects in line order."""

    def __init__(self, problems: Iterable[Defect]) -> None:
        self.problems = tuple(problems)
        super().__init__(self.problems)

    def __str__(self) -> str:
        return "\n".join(map(str, self.problems))


class Findings:
    """Collects the defects of one file; a place in the file is named by its keys.

    `lines` gives the line of each key path, e.g. ("loads", 0, "down"), and is asked for only where
    there is something to note; a path that is not there is where its nearest known beginning is. After `MOST` defects the rest is counted, not listed.
    """

    def __init__(self, file: str, lines: Callable[[], MutableMapping[KeyPath, int]]) -> None:
        self._file = file
        self._read_lines = lines
        self._found: list[Defect] = []
        self._more = 0

    @cached_property
    def _lines(self) -> MutableMapping[KeyPath, int]:
        return self._read_lines()

    def line(self, path: KeyPath) -> int:
        """The line of `path`."""
        while path and path not in self._lines:
            path = path[:-1]
        return self._lines.get(path, 1)

    def move(self, path: KeyPath, to: KeyPath) -> None:
        """What stands at `path` is read as if it stood at `to`."""
        for old, line in list(self._lines.items()):
            if old[: len(path)] == path:
                self._lines[(*to, *old[len(path) :])] = line

    def error(
        self,
        path: KeyPath,
        message: str,
        cure: str,
        kind: DefectKind = "",
        of: tuple[str, ...] = (),
    ) -> None:
        self._note(Defect(self._file, self.line(path), message, cure, kind=kind, of=of))

    def warning(self, path: KeyPath, message: str, cure: str, of: tuple[str, ...] = ()) -> None:
        self._note(Defect(self._file, self.line(path), message, cure, "warning", of=of))

    def at(self, line: int, message: str, cure: str) -> None:
        """Note a defect on a line that is already known."""
        self._note(Defect(self._file, line, message, cure))

    def _note(self, defect: Defect) -> None:
        if len(self._found) < MOST:
            message, cure = (_in_bounds(printable(said)) for said in (defect.message, defect.cure))
            self._found.append(replace(defect, message=message, cure=cure))
        else:
            self._more += defect.severity == "error"

    def all(self) -> tuple[Defect, ...]:
        """The defects in line order; on one line, in the order they were noted."""
        found = sorted(self._found, key=lambda defect: defect.line)
        if self._more:
            last = found[-1].line
            message = f"{self._more} more defects follow"
            found.append(Defect(self._file, last, message, "cure the ones above first"))
        return tuple(found)


def _in_bounds(text: str) -> str:
    """A text with its middle left out where a file with endless names made it too long."""
    if len(text) <= LONGEST:
        return text
    return f"{text[: LONGEST - 100]}…{text[-99:]}"


def nearest_name(name: str, known: Iterable[str]) -> str | None:
    """The known name most like `name`, or None."""
    names = list(known)
    if len(name) > SUGGESTED:
        return None
    folded = {k.casefold(): k for k in reversed(names)}
    close = difflib.get_close_matches(name.casefold(), list(folded), n=1, cutoff=0.6)
    return folded[close[0]] if close else None


def choose_from(name: str, known: Iterable[str], what: str) -> str:
    """The cure for an unknown name: the nearest known one, or all of them."""
    names = list(known)
    close = nearest_name(name, names)
    if close is not None:
        return f"did you mean {shown(close)}? {what}: {listed(names, FEW)}"
    return f"{what}: {listed(names, FEW)}"
