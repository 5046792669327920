"""Is a typed value right, as the true one or as what follows from the student's own values?"""

from __future__ import annotations

import math
from collections.abc import Sequence

from tutor.judge.about import Value
from tutor.judge.follow import Possible, from_bodies, from_lines
from tutor.judge.given import Given, fits, senses_for, signed
from tutor.judge.typed import Typed
from tutor.judge.value_mistakes import value_mistake
from tutor.judge.verdict import Remark, Verdict
from tutor.model import Problem
from tutor.notation import ValueReading

NEGLIGIBLE = 0.0005


def judge_value(
    problem: Problem,
    about: Value,
    reading: ValueReading,
    given: Given,
    true: float,
    lines: Sequence[Typed] = (),
) -> Verdict:
    """The verdict on one value; `true` is the exact answer in the positive sense.

    `lines` are the student's own lines that stand: what follows from them as they were typed is
    right as well.
    """
    unknown = about.unknown
    sign = given.sign(unknown)
    if reading.letter is not None and unknown not in problem.member:
        return _undecided(
            about,
            reading,
            f"T and C say what a member does; {unknown} is a reaction. Write its number, and a minus if it acts against the arrow you drew.",
        )
    if reading.letter == "T" and reading.value < 0:
        return _undecided(
            about,
            reading,
            "A minus and a T contradict each other: tension is the positive sense here. Write the size with T or C, or a signed number alone.",
        )
    if reading.sense is not None and unknown in problem.member:
        return _undecided(
            about, reading, f"{unknown} is a member: say T or C, not {reading.sense}."
        )
    if reading.sense is not None and not fits(problem, unknown, reading.sense):
        one, other = senses_for(problem, unknown)
        return _undecided(
            about,
            reading,
            f"{unknown} acts {one} or {other}, not {reading.sense}: say which, or write its number with a minus if it acts against the arrow you drew.",
        )
    value = signed(problem, unknown, reading.value, reading.letter, reading.sense, sign)
    carried = NEGLIGIBLE * largest_load(problem) if true == 0.0 else 0.0
    possible = [
        *from_bodies(problem, unknown, given),
        *from_lines(problem, unknown, given, lines),
        Possible(true, carried, abs(true)),
    ]
    level = best_level(problem, value, possible)
    own = replace_sign(value, sign)
    if level is not None:
        remarks = (_rounded(),) if level == "remark" else ()
        return Verdict(
            "right",
            "Right.",
            remarks=remarks,
            about=about,
            reading=reading,
            value=own,
            radius=reading.radius,
        )
    mistake = value_mistake(
        problem,
        unknown,
        reading,
        given,
        value,
        tuple(right.value for right in possible),
        lambda other: best_level(problem, other, possible) is not None,
    )
    return Verdict(
        "wrong",
        mistake.text,
        (mistake,),
        about=about,
        reading=reading,
        value=own,
        radius=reading.radius,
    )


def largest_load(problem: Problem) -> float:
    """The size of the largest load: what a residue of rounding is measured against."""
    return max((math.hypot(*load.vector) for load in problem.loads), default=0.0)


def replace_sign(value: float, sign: float) -> float:
    """The value under the student's own sense; never minus zero."""
    return sign * value + 0.0


def _undecided(about: Value, reading: ValueReading, text: str) -> Verdict:
    return Verdict("undecided", text, about=about, reading=reading)


def _rounded() -> Remark:
    return Remark(
        "rounding", "Right, though rounded hard; one more figure keeps later lines closed."
    )


def best_level(problem: Problem, value: float, possible: list[Possible]) -> str | None:
    """ "silent", "remark" or None: how near `value` is to any right value."""
    tolerance = problem.tolerance
    for level, share in (("silent", tolerance.silent), ("remark", tolerance.remark)):
        for right in possible:
            slack = right.carried + tolerance.silent * right.parts + share * abs(right.value)
            if abs(value - right.value) <= slack + 1e-9 * (1.0 + right.parts):
                return level
    return None
