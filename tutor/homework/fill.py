"""What must the values be that the student has left blank, if the rest was worked with them?

Only used to go on past a blank; nothing of it is ever shown.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from tutor.homework.sheet import Bodies, Sheet, renumbered
from tutor.homework.vectors import Vector, dot
from tutor.homework.work import LEAST_FIGURES, Entry, half_step
from tutor.statics.linear import inverse

SOLVABLE = 1e-3


def filled(
    bodies: Bodies,
    entries: Mapping[str, Entry],
    true: Mapping[str, float],
    without: Collection[str] = (),
) -> tuple[Bodies, dict[str, Entry]]:
    """The bodies and values with every blank that a body gives from the values beside it.

    Where several bodies give one differently, a mistake lies between them; the one nearer to what
    is true is taken, so that a blank adds no mistake of its own. The bodies `without` give nothing.
    """
    found = dict(entries)
    sheets = bodies
    while True:
        fresh: dict[str, Entry] = {}
        for sheet in sheets.values():
            if sheet.name in without:
                continue
            for name in sheet.missing:
                guess = _from_body(sheet, name)
                kept = fresh.get(name)
                if guess is not None and (
                    kept is None or abs(guess.value - true[name]) < abs(kept.value - true[name])
                ):
                    fresh[name] = guess
        if not fresh:
            return sheets, found
        found.update(fresh)
        sheets = renumbered(sheets, found)


def _from_body(sheet: Sheet, name: str) -> Entry | None:
    """The value of `name` that one body gives, with the rounding it inherits, or None."""
    if name not in sheet.memo:
        guess = None
        for n in sheet.equations(name, sheet.missing)[:1]:
            share = sheet.part[name].share(n)
            guess = _entry(name, -sheet.left(n) / share, sheet.slack(n) / abs(share))
        sheet.memo[name] = guess
    found: Entry | None = sheet.memo[name]
    return found


def of_equations(
    sheet: Sheet, names: Sequence[str], equations: Sequence[Vector]
) -> dict[str, Entry] | None:
    """The values of `names` that these equations of a body give together; None if they give none."""
    shares = [[sheet.part[name].share(n) for name in names] for n in equations]
    solved = inverse(shares, SOLVABLE)
    if solved is None:
        return None
    found = {}
    for name, weights in zip(names, solved, strict=True):
        n = tuple(dot(weights, [e[axis] for e in equations]) for axis in range(sheet.size))
        found[name] = _entry(name, -sheet.left(n), sheet.slack(n))
    return found


def _entry(name: str, value: float, slack: float) -> Entry:
    return Entry(name, value, max(slack, half_step(value, LEAST_FIGURES)), "")
