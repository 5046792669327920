"""What does a whole homework show: what is right, where it goes wrong first, and why?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from tutor.homework.account import Account
from tutor.homework.closing import Closure
from tutor.homework.work import LeftOut
from tutor.judge import Mistake

State = Literal["right", "wrong", "follows", "unchecked"]
Sure = Literal["certain", "likely", "unclear"]


@dataclass(frozen=True)
class Finding:
    """What is said of one entry.

    `name` is the unknown ("AB", "B_y") or the index of the line, from 0. `follows` is wrong in
    value, but right given the student's own earlier error. `cause` is the mistake that explains a
    wrong entry, None where none does. `sure` says how far the numbers settle it. `stands` is whether
    of a wrong line only the value behind it is wrong, and its equation is right. `undecided` is whether
    an unchecked entry was read and looked at, and nobody can say.
    """

    name: str | int
    state: State
    cause: Mistake | None = None
    sure: Sure = "certain"
    stands: bool = False
    undecided: bool = False


@dataclass(frozen=True)
class Review:
    """What a whole homework shows. No field holds a value that the student has not written.

    `first` is the first wrong place: a joint, "whole", or None where nothing is wrong. `places` are
    all places that explain the numbers about equally well, best first; `accounts` the mistakes that
    explain `first`, best first, empty where none does. `clear` is False where the numbers do not
    tell the place, and where nothing can be checked, since statics alone does not give the forces. `refused` is what could not be read and was left out. `said` is the outcome in a
    sentence or two, `note` what there is to tell of the page as a whole ("" for nothing). `rests` are
    entries that still rest on a value mended since the last check; `decides` is a blank that would
    settle what is open, `more` one that would tell more; `coarse` are entries too far off to be right,
    as rounding may explain; `stopped` says that not every explanation could be looked at.
    """

    findings: tuple[Finding, ...]
    first: str | None
    places: tuple[str, ...] = ()
    accounts: tuple[Account, ...] = ()
    closures: tuple[Closure, ...] = ()
    refused: tuple[LeftOut, ...] = ()
    clear: bool = True
    said: str = field(default="")
    note: str = ""
    rests: tuple[str, ...] = ()
    decides: str | None = None
    more: str | None = None
    coarse: tuple[str, ...] = ()
    stopped: bool = False

    @property
    def right(self) -> bool:
        """Whether everything that was checked is right, and something was."""
        states = {finding.state for finding in self.findings}
        return "right" in states and states <= {"right", "unchecked"}

    @property
    def finding(self) -> Mapping[str | int, Finding]:
        """Findings by name."""
        return {finding.name: finding for finding in self.findings}
