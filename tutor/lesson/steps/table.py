"""Step 6: what came out, and what went wrong on the way?"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from math import isclose

from tutor.judge import Judge
from tutor.lesson.hints import Hints
from tutor.lesson.place import Question
from tutor.lesson.reply import Ask, Say
from tutor.lesson.state import State, Try
from tutor.lesson.step import LessonStep
from tutor.lesson.steps.close import unfound
from tutor.model.caution import CAUTION
from tutor.statics import forces_follow
from tutor.text import listed

ARRIVED = Say("note", "Done: the table is complete.")
EQUAL = 5e-4
"""Forces this near to each other are told as one size."""


@dataclass(frozen=True)
class Row:
    """One member in the table: its force in the positive sense of tension, and T, C or neither."""

    member: str
    force: float
    letter: str


@dataclass(frozen=True)
class Table:
    """The finished truss: a row a member, the extremes, and how the walk went.

    `tension` and `compression` are the first of the largest ones, `tensions` and `compressions` all
    that tie. `mistakes` counts wrong tries by code; `hints` counts hints by level (1 to 4);
    `shown` is how many things were shown at the board instead of done by the student,
    `seconds` is the time from the first event to the closing line, pauses included.
    """

    rows: tuple[Row, ...]
    unit: str
    tension: Row | None
    compression: Row | None
    mistakes: tuple[tuple[str, int], ...]
    hints: tuple[int, int, int, int]
    tries: int
    seconds: float
    shown: int = 0

    @property
    def tensions(self) -> tuple[Row, ...]:
        return self._like(self.tension)

    @property
    def compressions(self) -> tuple[Row, ...]:
        return self._like(self.compression)

    def _like(self, largest: Row | None) -> tuple[Row, ...]:
        """The rows whose force is as large, to the four figures in which it is told."""
        if largest is None:
            return ()
        return tuple(row for row in self.rows if isclose(row.force, largest.force, rel_tol=EQUAL))


def table(state: State) -> Table:
    """The table of the forces found so far."""
    rows = tuple(
        Row(name, value, "T" if value > 0 else "C" if value < 0 else "0")
        for name in (m.name for m in state.problem.members)
        if name in state.result
        for value in (state.signed(name),)
    )
    pulled = [row for row in rows if row.force > 0]
    pushed = [row for row in rows if row.force < 0]
    codes = Counter(code for t in state.tries if t.verdict == "wrong" for code in _codes(t))
    used = Counter(state.hints_used)
    end = state.ended if state.ended is not None else state.last_time
    return Table(
        rows,
        state.problem.force,
        max(pulled, key=lambda row: row.force, default=None),
        min(pushed, key=lambda row: row.force, default=None),
        tuple(sorted(codes.items(), key=lambda item: (-item[1], item[0]))),
        (used[1], used[2], used[3], used[4]),
        sum(made.verdict != "shown" for made in state.tries),
        max(0.0, end - (state.started if state.started is not None else end)),
        len(state.shown),
    )


def largest_in_words(rows: Sequence[Row], unit: str) -> str:
    """All members of one size: "AC and BC, 12 kN each"."""
    each = " each" if len(rows) > 1 else ""
    return f"{listed([row.member for row in rows])}, {abs(rows[0].force):.5g} {unit}{each}"


def _codes(made: Try) -> tuple[str, ...]:
    """What went wrong in a try: a count is no value worked out."""
    return ("count",) if made.at == Question("count") else made.codes


HINTS = ("where to look", "the principle", "the place", "the line itself")
"""What each level of a hint says."""


def hints_in_words(used: Sequence[int]) -> str:
    """How often each level was asked for: "where to look (2), the line itself (1)"."""
    told = (f"{said} ({count})" for said, count in zip(HINTS, used, strict=True) if count)
    return ", ".join(told) or "none"


def time_in_words(seconds: float) -> str:
    """A time in full minutes: "under a minute", "1 minute", "12 minutes"."""
    minutes = round(seconds / 60)
    if minutes == 0:
        return "under a minute"
    return "1 minute" if minutes == 1 else f"{minutes} minutes"


def ask(state: State) -> Ask:
    """Nothing is asked; the table is shown."""
    return Ask("table", "table", "Table", f"The walk is done. {CAUTION}", caution=CAUTION)


def hints(state: State, desk: Judge) -> Hints:
    """There is nothing left to hint at."""
    if not forces_follow(state.problem):
        return "Nothing is left to do: what this truss is has been said."
    return "Nothing is left to find: all forces are known and the truss closes."


def _barred(state: State) -> str | None:
    if why := unfound(state):
        return why
    if not state.closed:
        return "First see whether the truss closes: write one equation that was not needed."
    return None


STEP = LessonStep(
    name="table",
    order=6,
    where="done",
    arrived=ARRIVED,
    not_here="The walk is done. To change something, take back the last line or go to a step.",
    ask=ask,
    hints=hints,
    handles={},
    done=lambda state: True,
    barred=_barred,
    stays=True,
    without_forces=True,
)
