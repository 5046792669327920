"""What is a row of the list? A problem, a file that cannot be used, or what is remembered of either."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from tutor.progress.where import FINISHED

if TYPE_CHECKING:
    from tutor.model import Defect, Problem


class Remembered(NamedTuple):
    """What a row said when the list was last seen, for as long as its file has not been read again.

    `told` is what stood beside it below its title, `faults` how many defects the file had; `changed`
    is whether the file is another one since, so that the row says nothing but its name.
    """

    level: int | None = None
    told: str = ""
    faults: int = 0
    broken: bool = False
    changed: bool = False


class ProblemRow(NamedTuple):
    """One row of the sheet: a problem, or a file that cannot be used, with what is wrong in it.

    `before` has the keys and titles of the problems that come first, `note` what there is to say of
    its numbers. One that is `remembered` has neither problem nor defects yet.
    """

    title: str
    problem: Problem | None = None
    key: str = ""
    path: Path | None = None
    defects: tuple[Defect, ...] = ()
    before: tuple[tuple[str, str], ...] = ()
    note: str = ""
    remembered: Remembered | None = None

    def waits_for(self, left: Mapping[str, str]) -> tuple[str, ...]:
        """The titles of what comes first and is not done; `left` says where each problem stands."""
        return tuple(title for key, title in self.before if left.get(key) not in FINISHED)

    @property
    def broken(self) -> bool:
        """Whether it cannot be worked, as far as is known."""
        if self.remembered is not None:
            return self.remembered.broken
        return self.problem is None

    @property
    def level(self) -> int | None:
        """How hard it is, where its file says so."""
        if self.remembered is not None:
            return self.remembered.level
        return None if self.problem is None else self.problem.level

    @property
    def faults(self) -> int:
        """How many things there are to say of its file."""
        return len(self.defects) if self.remembered is None else self.remembered.faults


class Group(NamedTuple):
    """One set: its title and its rows in their order, broken files last, and how many are to come."""

    title: str
    entries: tuple[ProblemRow, ...]
    unread: int = 0


class Shelf(NamedTuple):
    """All sets that were asked for."""

    groups: tuple[Group, ...]

    @property
    def entries(self) -> tuple[ProblemRow, ...]:
        return tuple(entry for group in self.groups for entry in group.entries)

    @property
    def unread(self) -> int:
        """How many files are still to be read."""
        return sum(group.unread for group in self.groups)

    @property
    def lone(self) -> ProblemRow | None:
        """The one problem there is, where there is nothing else."""
        if self.unread:
            return None
        return self.entries[0] if len(self.entries) == 1 and not self.entries[0].broken else None
