"""Is a typed value right, as the true one or as what follows from the student's own values?"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from functools import partial

from tutor.judge.about import Value
from tutor.judge.blocks import OF_SUMS, rounded_by
from tutor.judge.follow import Possible, from_bodies, from_lines
from tutor.judge.known_values import (
    KnownValues,
    can_act,
    inclined_in_words,
    is_link,
    positive_sense,
    senses_for,
    signed,
)
from tutor.judge.same import NEAR
from tutor.judge.typed import TypedEquation
from tutor.judge.value_mistakes import value_mistake
from tutor.judge.verdict import Remark, Verdict
from tutor.judge.worked_out import UNSHOWN, WorkedOut
from tutor.model import Problem
from tutor.notation import ValueReading

NEGLIGIBLE = 0.0005


def judge_value(
    problem: Problem,
    about: Value,
    reading: ValueReading,
    own: KnownValues,
    true: float,
    lines: Sequence[TypedEquation] = (),
    radians: Callable[[], Sequence[TypedEquation]] = tuple,
    worked: WorkedOut = UNSHOWN,
) -> Verdict:
    """The verdict on one value; `true` is the exact answer in the positive sense.

    `lines` are the student's own lines that stand: what follows from them as they were typed is
    right as well. `radians` gives the same lines as a calculator in radians would take them;
    `worked` is what was typed on the way to the value.
    """
    unknown = about.unknown
    if (asked := _unclear(problem, unknown, reading, own)) is not None:
        return _undecided(about, reading, asked)
    sign = own.sign(unknown)
    value = signed(problem, unknown, reading.value, reading.letter, reading.sense, sign)
    possible = _rights(problem, unknown, own, true, lines)
    rounded = rounded_by(reading.value, reading.radius)
    level = best_level(problem, value, possible, rounded)
    verdict = _verdicts(about, reading, replace_sign(value, sign))
    if level is not None:
        remarks = (_rounded(),) if level == "remark" else ()
        return verdict("right", "Right.", remarks=remarks)

    def is_right(other: float) -> bool:
        return best_level(problem, other, possible, NEAR * abs(other)) is not None

    rights = tuple(right.value for right in possible)
    mistake = value_mistake(
        *(problem, unknown, reading, own, value, rights, is_right, lines, radians, worked)
    )
    return verdict("wrong", mistake.text, (mistake,))


def _verdicts(about: Value, reading: ValueReading, value: float) -> Callable[..., Verdict]:
    """What makes a verdict on a value that was read, with how far its figures may be off."""
    return partial(Verdict, about=about, reading=reading, value=value, radius=reading.radius)


def _rights(
    problem: Problem,
    unknown: str,
    own: KnownValues,
    true: float,
    lines: Sequence[TypedEquation],
) -> list[Possible]:
    """What is right for an unknown: what follows from the student's own, and the exact answer.

    Where a line of numbers gives the unknown alone, earlier values count as they were put into it.
    """
    settled = any(line.names == {unknown} for line in lines)
    carried = NEGLIGIBLE * largest_load(problem) if true == 0.0 else 0.0
    return [
        *from_bodies(problem, unknown, own.as_put_in if settled else own),
        *from_lines(problem, unknown, own, lines),
        Possible(true, carried, 0.0),
    ]


def _unclear(problem: Problem, unknown: str, reading: ValueReading, own: KnownValues) -> str | None:
    """What has to be asked before a value can be judged: whose it is, or which way it acts."""
    if reading.name is not None and reading.name != unknown:
        return f"This is a value of {reading.name}, and that of {unknown} is asked for."
    member = unknown in problem.member
    if reading.letter is not None and not member and not is_link(problem, unknown):
        return (
            f"T and C say what a member does; {unknown} is a reaction. Write its number, and a minus "
            "if it acts against the arrow you drew."
        )
    sign = own.sign(unknown)
    if reading.letter == "T" and reading.value < 0 < sign:
        return (
            "A minus and a T contradict each other: tension is the positive sense here. Write the "
            "size with T or C, or a signed number alone."
        )
    if reading.sense is None:
        return None
    if member:
        return f"{unknown} is a member: say T or C, not {reading.sense}."
    if not can_act(problem, unknown, reading.sense):
        one, other = senses_for(problem, unknown)
        if one == "along":
            one, other = (inclined_in_words(problem, unknown, sense) for sense in (one, other))
        return (
            f"{unknown} acts {one} or {other}, not {reading.sense}: say which, or write its number "
            "with a minus if it acts against the arrow you drew."
        )
    way = positive_sense(problem, unknown, reading.sense, sign)
    if reading.value < 0 and way != -sign:
        return (
            f"The minus and “{reading.sense}” contradict each other: write the size with the way it "
            "acts, or a signed number alone."
        )
    return None


def largest_load(problem: Problem) -> float:
    """The size of the largest load: what a residue of rounding is measured against."""
    return max((math.hypot(*load.vector) for load in problem.loads), default=0.0)


def is_nothing(problem: Problem, value: float) -> bool:
    """Whether a force is no more than what rounding leaves of the largest load."""
    return abs(value) <= NEGLIGIBLE * largest_load(problem)


def replace_sign(value: float, sign: float) -> float:
    """The value under the student's own sense; never minus zero."""
    return sign * value + 0.0


def _undecided(about: Value, reading: ValueReading, text: str) -> Verdict:
    return Verdict("undecided", text, about=about, reading=reading)


def _rounded() -> Remark:
    return Remark(
        "rounding", "Right, though rounded hard; one more figure keeps later lines closed."
    )


def best_level(
    problem: Problem, value: float, possible: Sequence[Possible], rounded: float
) -> str | None:
    """ "silent", "remark" or None: how near `value` is to any right value.

    `rounded` is how far the typed figures may have been rounded. What was added up to a right value
    counts only as far as three-figure factors leave something of it.
    """
    tolerance = problem.tolerance
    offs = [
        (abs(value - right.value) - right.carried - OF_SUMS * right.parts - 1e-9, abs(right.value))
        for right in possible
    ]
    if any(off <= tolerance.silent * size for off, size in offs):
        return "silent"
    if any(off <= min(rounded, tolerance.remark * size) for off, size in offs):
        return "remark"
    return None
