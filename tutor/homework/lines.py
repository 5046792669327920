"""What do the student's own lines show?"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace

from tutor.homework.sheet import WHOLE, Sheet
from tutor.homework.slips import acting
from tutor.homework.work import Line, Work
from tutor.judge import Equation, Judge, Value, Verdict
from tutor.judge.same import NEAR

NUMBER = re.compile(r"\d+(?:\.\d*)?|\.\d+")
LITTLE = "These numbers alone do not show which forces they stand for."
PUT_IN = frozenset({"magnitude", "not-equilibrium", "arithmetic", "rounding"})
"""What a line shows in which a wrong value stands as a number, judged without that value."""
TRUE_ALL_THE_SAME = frozenset({"other-point", "other-equation", "dependent"})


@dataclass(frozen=True)
class Judged:
    """One line with its verdict; `place` is the body it belongs to, None for a value."""

    line: Line
    place: str | None
    verdict: Verdict

    @property
    def misleads(self) -> bool:
        """Whether it is wrong in a way that gives wrong values."""
        return _misleads(self.verdict)


def _misleads(verdict: Verdict) -> bool:
    return verdict.kind == "wrong" and all(
        mistake.code not in TRUE_ALL_THE_SAME for mistake in verdict.mistakes
    )


def judged_lines(desk: Judge, work: Work, bodies: Mapping[str, Sheet]) -> list[Judged]:
    """Every line judged under the student's senses, with the student's own values."""
    found = []
    again: dict[tuple[Equation | Value, str], Judged] = {}
    for line in work.lines:
        key = (line.about, line.text)
        if key not in again:
            again[key] = _judged(desk, work, line, bodies)
        found.append(replace(again[key], line=line))
    return found


def _judged(desk: Judge, work: Work, line: Line, bodies: Mapping[str, Sheet]) -> Judged:
    if isinstance(line.about, Value):
        own = work.own(without=(line.about.unknown,))
        return Judged(line, None, desk.judge(line.about, line.text, own))
    place = line.about.joint or WHOLE
    verdict = _verdict(desk, work, line, bodies[place])
    if verdict.kind == "right" and _stands_for_little(desk, line):
        verdict = Verdict("undecided", LITTLE, about=line.about)
    return Judged(line, place, verdict)


def _stands_for_little(desk: Judge, line: Line) -> bool:
    """Whether a line of numbers alone has fewer of them than forces act in its equation."""
    body = line.text.rpartition(":")[2]
    if isinstance(line.about, Value) or any(c.isalpha() for c in body):
        return False
    return len(NUMBER.findall(body)) < acting(desk.problem, line.about)


def _verdict(desk: Judge, work: Work, line: Line, body: Sheet) -> Verdict:
    """The verdict under the student's values; a line is not held true by what it gave itself.

    Wrong values found at a body satisfy the very lines they came from. So where a line would be
    "true of something else", it is judged again without the wrong values of its body.
    """
    verdict = desk.judge(line.about, line.text, work.own())
    if verdict.kind != "wrong" or _misleads(verdict):
        return verdict
    true = desk.values()
    wrong = {
        name
        for name, entry in work.entries.items()
        if name in body.part
        and abs(entry.value - true[name]) > entry.radius + NEAR * abs(true[name])
    }
    again = desk.judge(line.about, line.text, work.own(without=wrong)) if wrong else verdict
    by_numbers = any(mistake.code in PUT_IN for mistake in again.mistakes)
    return again if _misleads(again) and not by_numbers else verdict


def order_of(judged: list[Judged]) -> tuple[str, ...]:
    """The bodies in the order in which their lines come."""
    return tuple(dict.fromkeys(j.place for j in judged if j.place is not None))
