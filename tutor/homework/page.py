"""What is a homework's paper while a line is written on it, with the names of its truss?"""

from __future__ import annotations

from dataclasses import dataclass

from tutor.homework.paper import Paper
from tutor.homework.table import DecimalSign
from tutor.homework.work import LeftOut
from tutor.judge import Judge
from tutor.model import Problem
from tutor.notation import Unreadable
from tutor.notation.elements.characters import plain
from tutor.text import listed, printable, shown


@dataclass(frozen=True)
class EnteredTwice:
    """A value that a line of a file puts in the place of an earlier one: which line, and how that is said."""

    line: int
    said: str

    @property
    def text(self) -> str:
        """The same with its line."""
        return f"line {self.line}: {self.said}"


@dataclass(frozen=True)
class Written:
    """What came of a typed line: the paper after it, what was noted, and what was refused.

    Of a whole file, `twice` are the values that took the place of others, and `numbers` tells in which
    of its lines each line of the paper stands. `aside` is what was read as none of the work.
    """

    paper: Paper
    noted: tuple[str, ...] = ()
    refused: tuple[LeftOut, ...] = ()
    numbers: tuple[int, ...] = ()
    aside: tuple[str, ...] = ()
    twice: tuple[EnteredTwice, ...] = ()


@dataclass(frozen=True)
class Page:
    """The paper with what is needed to write on it."""

    desk: Judge
    paper: Paper
    sign: DecimalSign

    @property
    def problem(self) -> Problem:
        return self.desk.problem

    def noted(self, paper: Paper, *words: str) -> Written:
        return Written(paper, words)

    def refuse(self, text: str, why: str | Unreadable, name: str = "line") -> Written:
        complaint = why if isinstance(why, Unreadable) else None
        message = why.message if isinstance(why, Unreadable) else printable(why)
        return Written(self.paper, (), (LeftOut(name, shown(text)[1:-1], message, complaint),))


def unknown_of(page: Page, name: str) -> str | None:
    meant = page.desk.names.meant(plain(name)[:80])
    return meant[0] if len(meant) == 1 else None


def no_unknown(page: Page, name: str) -> str:
    close = page.desk.names.nearest(name[:40])
    hint = (
        f"did you mean {' or '.join(close)}?"
        if close
        else f"there are {listed(page.problem.unknowns, 12)}."
    )
    return f"This truss has no member or reaction {shown(name)[1:-1]}; {hint}"


def joints_said(page: Page) -> str:
    return f"the joints are {', '.join(page.desk.names.joints)}"
