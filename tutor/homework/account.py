"""What is one account of a body that does not close?"""

from __future__ import annotations

from dataclasses import dataclass, field

from tutor.judge import Fx, LineAbout, Mistake, Value
from tutor.judge.given import Given
from tutor.judge.kind import Case
from tutor.judge.mistakes import KINDS
from tutor.judge.truth import Spot, TrueLine
from tutor.model import Problem


@dataclass(frozen=True)
class Account:
    """A mistake that explains what is left over at `place`; `about` is the line it was made in.

    `about` is None where it runs through both lines of a joint, and a value where the line was
    right but its result was not. Lower `cost` is more plausible; our own judgement, no source.
    """

    place: str
    mistake: Mistake
    about: LineAbout | Value | None
    cost: float = field(repr=False)

    @property
    def certain(self) -> bool:
        """Whether it was read off the student's own line and not inferred from values."""
        return self.cost == 0.0


@dataclass(frozen=True)
class Draft:
    """An account before it is put into words."""

    code: str
    force: str | None
    cost: float
    about: LineAbout | Value | None = None
    spot: Spot | None = None


def put_in_words(problem: Problem, place: str, joint: str | None, draft: Draft) -> Account:
    """The account with the mistake and its hints, in the words of the catalogue."""
    about = draft.about if draft.about is not None else Fx(joint)
    mistake = mistake_of(problem, about, draft.code, draft.force, draft.spot)
    return Account(place, mistake, draft.about, draft.cost)


def mistake_of(
    problem: Problem,
    about: LineAbout | Value,
    code: str,
    force: str | None,
    spot: Spot | None = None,
) -> Mistake:
    """One mistake of the catalogue, made at one force of one line or in one value."""
    acting = 0
    if not isinstance(about, Value):
        true = TrueLine(problem, about, Given({}, {}))
        acting = sum(1 for s in (*true.unknowns.values(), *true.loads) if s.true != 0.0)
    kind = KINDS[code]
    case = Case(problem, about, force, spot, acting)
    return Mistake(code, force, kind.look(case), kind.reason(case), kind.place(case))
