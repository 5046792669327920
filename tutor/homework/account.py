"""What is one account of a body that does not close?"""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from tutor.homework.sheet import place_in_words
from tutor.homework.slips import TrueTerm, mistake_of
from tutor.judge import Equation, Fx, Mistake, Value
from tutor.model import Problem

RIVAL = 0.9
"""Explanations that cost no more than this above the best one leave no certainty."""


@dataclass(frozen=True)
class Account:
    """A mistake that explains what is left over at `place`; `about` is the line it was made in.

    `about` is None where it runs through both lines of a joint, and a value where the line was
    right but its result was not. Lower `cost` is more plausible; our own judgement, no source.
    `throughout` is whether it runs through the whole page; `here` is the first hint where that does not
    name the place.
    """

    place: str
    mistake: Mistake
    about: Equation | Value | None
    cost: float = field(repr=False)
    throughout: bool = False
    here: str = ""

    @property
    def look(self) -> str:
        """The first hint as it is said behind its place."""
        return self.here or self.mistake.text

    @property
    def certain(self) -> bool:
        """Whether it was read off the student's own line and not inferred from values."""
        return self.cost == 0.0


@dataclass(frozen=True)
class AccountDraft:
    """An account before it is put into words; `words` are its three hints where it has its own."""

    code: str
    force: str | None
    cost: float
    about: Equation | Value | None = None
    spot: TrueTerm | None = None
    words: tuple[str, str, str] | None = None


def put_in_words(problem: Problem, place: str, joint: str | None, draft: AccountDraft) -> Account:
    """The account with the mistake and its hints, in the words of the catalogue."""
    about = draft.about if draft.about is not None else Fx(joint)
    made = (problem, about, draft.code, draft.force, draft.spot)
    mistake = mistake_of(*made, f"your work at {place_in_words(place)}")
    here = mistake_of(*made, "your work").text
    if draft.words is not None:
        here, reason, where = draft.words
        mistake = replace(mistake, text=here, reason=reason, place=where)
    return Account(place, mistake, draft.about, draft.cost, here=here)
