"""What do the student's own lines show?"""

from __future__ import annotations

from dataclasses import dataclass

from tutor.homework.sheet import WHOLE
from tutor.homework.work import Line, Work
from tutor.judge import Judge, Value, Verdict

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
        return self.verdict.kind == "wrong" and all(
            m.code not in TRUE_ALL_THE_SAME for m in self.verdict.mistakes
        )


def judged_lines(desk: Judge, work: Work) -> list[Judged]:
    """Every line judged under the student's senses, with the student's own values."""
    found = []
    for line in work.lines:
        if isinstance(line.about, Value):
            own = work.own(without=(line.about.unknown,))
            found.append(Judged(line, None, desk.judge(line.about, line.text, own)))
            continue
        place = line.about.joint or WHOLE
        found.append(Judged(line, place, desk.judge(line.about, line.text, work.own())))
    return found


def order_of(judged: list[Judged]) -> tuple[str, ...]:
    """The bodies in the order in which their lines come."""
    return tuple(dict.fromkeys(j.place for j in judged if j.place is not None))
