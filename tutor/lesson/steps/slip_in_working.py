"""Which slip does the working of a value show that does not follow from its line: RT = 5/13*10.4 = 4 T?"""

from __future__ import annotations

from collections.abc import Sequence

from tutor.judge import Judge, Mistake, Verdict
from tutor.judge.typed import typed_equation
from tutor.lesson.solvable import in_words_together
from tutor.lesson.state import StandingLine, State
from tutor.notation import Line, Unreadable
from tutor.text import lowered

UNSURE = frozenset({"arithmetic", "carried"})
"""What is said of a value by its size alone; its working knows better."""
UNSAID = frozenset({"arithmetic", "not-equilibrium", "rounding"})


def does_not_follow(
    state: State, desk: Judge, verdict: Verdict, text: str, lines: Sequence[StandingLine]
) -> tuple[str, Mistake] | None:
    """What is said of a value that does not follow from the lines it is found from; None for any other.

    Where its working is the sum of the only such line but for one slip, that slip is named.
    """
    if not lines or not UNSURE & {mistake.code for mistake in verdict.mistakes}:
        return None
    found = verdict.mistakes[0]
    if found.span is not None:
        return None
    named = in_words_together(tuple(lines))
    if len(lines) > 1:
        said = f"{named} are right, but this value does not follow from them."
        return (said, found) if found.code == "arithmetic" else None
    said = f"{named} is right, but this value does not follow from it"
    if (slip := _slip_of(state, desk, text, lines[0])) is not None:
        return f"{said}: {lowered(slip.text)}", slip
    return (f"{said}.", found) if found.code == "arithmetic" else None


def _slip_of(state: State, desk: Judge, text: str, given: StandingLine) -> Mistake | None:
    """The one slip that makes the working the sum of its line; None without any working."""
    line = desk.read(text)
    if isinstance(line, Unreadable) or not _is_worked(line):
        return None
    verdict = desk.judge(given.about, text, state.own)
    if verdict.kind != "wrong" or verdict.stands or len(verdict.mistakes) != 1:
        return None
    return None if verdict.mistakes[0].code in UNSAID else verdict.mistakes[0]


def _is_worked(line: Line) -> bool:
    """Whether some number of a line was typed as a product or as a sum."""
    links = [typed_equation(reading) for step in line.steps for reading in step.links[:1]]
    return any(
        len(each.constants) > 1 or any(factors.count > 1 for factors in each.factors)
        for each in links
    )
