"""Would some rule or other meet a lone wrong value, whatever it was?

Many slips in many lines are tried against one number. Each would explain the numbers near one value, the
more of them the fewer figures are written. Where all that are no less usual would explain a good part of
the numbers that might have stood there, that one of them fits shows nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from tutor.homework.account import Account, AccountDraft, put_in_words
from tutor.homework.one_line import Usual
from tutor.homework.sheet import Sheet
from tutor.homework.slips import cost_of
from tutor.judge import Value
from tutor.model import Problem

SPAN = 2.0
"""What might have been left over, as a multiple of what is; our own judgement, no source."""
GOOD_PART = 0.2
"""So large a share of the numbers met shows nothing; found by trying, no source."""
AS_USUAL = 0.01
PLAIN = cost_of("arithmetic")


def fits_by_chance(account: Account, sheet: Sheet, usual: Sequence[Usual]) -> bool:
    """Whether slips no less usual would explain a good part of the numbers that might have stood here.

    Only of a slip in a line: what a value shows by itself is one rule and not many.
    """
    if account.about is None or isinstance(account.about, Value):
        return False
    most = cost_of(account.mistake.code) + AS_USUAL
    return share_met(sheet, usual, most) > GOOD_PART


def of_the_value(problem: Problem, sheet: Sheet, name: str) -> Account:
    """That a value does not follow from those it was found from, and no more."""
    about = Value(name)
    return put_in_words(problem, sheet.name, None, AccountDraft("arithmetic", name, PLAIN, about))


def share_met(sheet: Sheet, usual: Sequence[Usual], most: float) -> float:
    """The share of the numbers about as far off that slips which cost no more than `most` explain."""
    shares = [
        _covered(_met(sheet, line, most), SPAN * abs(sheet.left(line.n)))
        for line in usual
        if not sheet.holds(line.n) and line.penalty == 0.0
    ]
    return min(sum(shares), 1.0)


def _met(sheet: Sheet, line: Usual, most: float) -> Iterator[tuple[float, float]]:
    """What each slip in a line would leave over, and how far that may be off."""
    slack = sheet.slack(line.n)
    for name, (spot, slips) in line.true.unknowns.items():
        part = sheet.part[name]
        for _, wrong, cost in slips:
            by = line.factor * (wrong - spot.true)
            if cost <= most:
                yield by * part.number, slack + abs(by) * part.radius
    for spot, slips in line.true.loads:
        for _, wrong, cost in slips:
            if cost <= most:
                yield line.factor * (wrong - spot.true), slack


def _covered(met: Iterable[tuple[float, float]], span: float) -> float:
    """The share of the numbers within `span` of nothing that lie within one of the ranges."""
    total, end = 0.0, -span
    for low, high in sorted((at - off, at + off) for at, off in met):
        low, high = max(low, end), min(high, span)
        if high > low:
            total, end = total + high - low, high
    return total / (2 * span)
