"""What does the judge say of a line? Values, never exceptions."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from tutor.judge.about import Asked, Equation
from tutor.judge.saying import NOTHING, Saying
from tutor.notation import Reading, Span, Unreadable, ValueReading

UNNAMED = "not-equilibrium"
MOST_FAULTS = 99

OPENING = "Right: "
"""How the text of a right verdict begins that has more to say."""

Kind = Literal["right", "wrong", "unreadable", "undecided"]


@dataclass(frozen=True)
class Mistake:
    """A named way in which a line goes wrong.

    `force` is the unknown ("AC", "B_y") or load ("load C", "load C x") it concerns, or None where
    it concerns the whole line. `text` says what kind of thing is wrong and names no unknown
    (level look); `reason` gives the principle, `place` the term and the kind of error. None of
    them holds a number of the answer. `span` is the place in the typed text, where there is one;
    `alike` are other forces of the same number that may have been meant just as well. `look` and `spot` are
    `text` and `place` as they were put together, where other accounts of the line may be told with them.
    """

    code: str
    force: str | None
    text: str
    reason: str = ""
    place: str = ""
    span: Span | None = None
    alike: tuple[str, ...] = ()
    look: Saying = field(default=NOTHING, compare=False, repr=False)
    spot: Saying = field(default=NOTHING, compare=False, repr=False)


@dataclass(frozen=True)
class Remark:
    """Something worth saying about a right line: a stable `code` and a sentence."""

    code: str
    text: str


@dataclass(frozen=True)
class Verdict:
    """What the judge found.

    `text` is one plain sentence or two for the student, `opening` its beginning where that only says
    that the line is right; `true_of` the equation that a line true of
    something else is an answer to; `candidates` other mistakes that explain the line as well.
    `stands` is the beginning of a wrong line that is right by itself as an answer to `about`, where
    only the value behind it is wrong. `restates` is whether a right line only says again what stands, and is no answer to `about`; `without` are the unknowns
    without a value yet that a right line leaves out, because they are zero or put in as numbers.
    """

    kind: Kind
    text: str
    mistakes: tuple[Mistake, ...] = ()
    remarks: tuple[Remark, ...] = ()
    true_of: Equation | None = None
    candidates: tuple[Mistake, ...] = ()
    about: Asked | None = field(default=None, compare=False)
    reading: Reading | ValueReading | None = field(default=None, compare=False, repr=False)
    unreadable: Unreadable | None = field(default=None, compare=False)
    value: float | None = None
    radius: float = 0.0
    restates: bool = False
    stands: str = ""
    without: tuple[str, ...] = ()
    opening: str = ""

    @property
    def right(self) -> bool:
        return self.kind == "right"

    @property
    def others(self) -> tuple[str, ...]:
        """The codes of other mistakes that each explain the line as well as the one that is named."""
        own = {mistake.code for mistake in self.mistakes}
        if len(self.mistakes) != 1 or own == {UNNAMED}:
            return ()
        return tuple(dict.fromkeys(m.code for m in self.candidates if m.code not in own))


def faults(verdict: Verdict) -> int:
    """How much is wrong with a line; a right beginning counts for it, and that nothing is named against it."""
    if verdict.right or verdict.kind != "wrong":
        return 0 if verdict.right else 1 if verdict.stands else MOST_FAULTS
    unnamed = any(mistake.code == UNNAMED for mistake in verdict.mistakes)
    return 2 * (len(verdict.mistakes) + unnamed) - bool(verdict.stands)
