"""Where is the student? One frozen state, made from the events alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal

from tutor.judge import Equation, Mistake
from tutor.judge.known_values import KnownValue, KnownValues
from tutor.lesson.place import Place, place_key
from tutor.model import Problem
from tutor.notation.elements.fact import fact


@dataclass(frozen=True)
class StandingLine:
    """A line that was judged right. `closing` lines only check; `adds` is False for a dependent one.

    `without` are the unknowns that had no value then and are left out, as zero or put in as numbers.
    """

    about: Equation
    text: str
    adds: bool = True
    closing: bool = False
    without: tuple[str, ...] = ()


@fact
class Result:
    """A value found: as typed, and as a number under the student's own sense."""

    unknown: str
    text: str
    value: float
    radius: float
    how: Literal["solved", "zero-force", "given"] = "solved"


@fact
class Try:
    """One thing typed or chosen, what it was for (`at`), and how it was judged.

    `codes` are the mistakes named, `others` those of which each explains it as well.
    """

    step: str
    at: Place
    text: str
    verdict: str
    codes: tuple[str, ...] = ()
    time: float = 0.0
    others: tuple[str, ...] = ()

    @property
    def place(self) -> str:
        """What it was for, as it is kept."""
        return place_key(self.at)


@dataclass(frozen=True)
class HintsGiven:
    """How far the hints at one place have gone: 0 none, 1 look, 2 reason, 3 place, 4 line."""

    level: int = 0
    time: float = 0.0
    tried_since: bool = True
    mistakes: tuple[Mistake, ...] = ()


@dataclass(frozen=True)
class State:
    """Everything a front end may show of a lesson; nothing in it is changed in place.

    `taught` are the kinds of teaching remarks made; `in_row` the mistakes for which the last hint
    was asked since a line was last found without it; `practice` the code and turn of the smaller
    problem that is offered; `proposed` says that `about` was not chosen by the student;
    `shown` what was written at the board instead of by the student;
    `part` the joints of the part kept, where a section is open; `halves_done` that it was said why a
    load on members may be brought to the joints, `brought` the joints to which it was; `letters` the angles (degrees) and lengths that the student's own
    lines give a letter.
    """

    problem: Problem
    step: str = "idealise"
    reasons_done: bool = False
    count_done: bool = False
    sound_done: bool = False
    moving_done: bool = False
    supports_done: tuple[str, ...] = ()
    senses: Mapping[str, str] = field(default_factory=dict)
    turning: str | None = None
    about: Equation | None = None
    proposed: bool = False
    joint: str | None = None
    lines: tuple[StandingLine, ...] = ()
    results: tuple[Result, ...] = ()
    tries: tuple[Try, ...] = ()
    hints: Mapping[Place, HintsGiven] = field(default_factory=dict)
    hints_used: tuple[int, ...] = ()
    taught: tuple[str, ...] = ()
    in_row: tuple[str, ...] = ()
    practice: tuple[str, int] | None = None
    offered: tuple[Equation, str] | None = None
    started: float | None = None
    ended: float | None = None
    last_time: float = 0.0
    shown: tuple[str, ...] = ()
    part: tuple[str, ...] = ()
    halves_done: bool = False
    brought: tuple[str, ...] = ()
    letters: Mapping[str, float] = field(default_factory=dict)

    @cached_property
    def result(self) -> Mapping[str, Result]:
        """Results by unknown."""
        return {result.unknown: result for result in self.results}

    @cached_property
    def own(self) -> KnownValues:
        """The student's senses and values, as the judge takes them."""
        known = {r.unknown: KnownValue(r.value, r.radius) for r in self.results}
        return KnownValues(self.senses, known)

    def signed(self, unknown: str) -> float:
        """A result in the positive sense: tension, right, up, the stated direction. KeyError."""
        return self.own.sign(unknown) * self.result[unknown].value + 0.0

    @property
    def free_body_done(self) -> bool:
        """Whether every support is replaced, every arrow drawn and the turning sense chosen."""
        return (
            all(s.joint in self.supports_done for s in self.problem.supports)
            and all(r.name in self.senses for r in self.problem.reactions)
            and self.turning is not None
        )

    @property
    def reactions_done(self) -> bool:
        return all(r.name in self.result for r in self.problem.reactions)

    @property
    def members_done(self) -> bool:
        return all(m.name in self.result for m in self.problem.members)

    @property
    def closed(self) -> bool:
        """Whether a line that was not needed has been seen to hold."""
        return any(line.closing for line in self.lines)

    def answered(self, place: Place) -> bool:
        """Whether what is asked at a place was answered rightly, or shown."""
        return any(t.at == place and t.verdict in ("right", "shown") for t in self.tries)

    def unknown_at(self, joint: str) -> tuple[str, ...]:
        """The members and reactions at a joint that have no value yet."""
        names = [m.name for m in self.problem.meeting[joint]]
        names += [r.name for r in self.problem.reactions if r.joint == joint]
        return tuple(name for name in names if name not in self.result)

    @property
    def standing(self) -> tuple[Equation, ...]:
        """The equations of all standing lines that say something new."""
        return tuple(line.about for line in self.lines if line.adds)

    def lines_of(self, joint: str | None) -> tuple[StandingLine, ...]:
        """The standing lines of one joint, or of the whole truss for None; never of a cut part."""
        return tuple(
            line for line in self.lines if line.about.joint == joint and not line.about.part
        )

    def equations_of(self, joint: str | None) -> tuple[Equation, ...]:
        """The equations of those lines."""
        return tuple(line.about for line in self.lines_of(joint))
