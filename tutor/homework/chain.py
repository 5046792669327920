"""Which values follow from which, body by body?

A value follows at a body where one equation gives it from values already there, and that equation
holds with the student's numbers. Nothing is said of an order: whatever could have been worked out
next is.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable

from tutor.homework.sheet import Bodies, Sheet
from tutor.homework.vectors import Vector

Found = dict[str, tuple[str, Vector]]


def follow(
    bodies: Bodies,
    targets: Iterable[str],
    known: set[str],
    without: Iterable[str] = (),
    blank: Collection[str] = (),
    start: Collection[str] | None = None,
    partly: bool = False,
) -> Found:
    """Which of the `targets` follow from what is `known`, and at which body by which equation.

    `known` grows by what is found. The bodies in `without` are not used. What is `blank` may have been
    any number: only an equation without it gives anything. Where `start` is given, only its bodies and those that
    come to know something new are looked at. `partly` takes bodies with blanks by equations without
    these. The result is in an order in which the values could have been found.
    """
    left = set(targets) - known
    barred = set(without)
    found: Found = {}
    waiting = dict.fromkeys(bodies if start is None else (name for name in bodies if name in start))
    while waiting and left:
        name = next(iter(waiting))
        del waiting[name]
        sheet = bodies[name]
        if name in barred or (sheet.missing and not partly):
            continue
        for unknown, equation in _given_by(sheet, known, left, blank):
            found[unknown] = (name, equation)
            known.add(unknown)
            left.discard(unknown)
            waiting.update(dict.fromkeys(bodies.at[unknown]))
    return found


def _given_by(
    sheet: Sheet, known: set[str], left: set[str], blank: Collection[str]
) -> list[tuple[str, Vector]]:
    """The values that one body gives now, each with the equation that gives it."""
    if left.isdisjoint(sheet.part):
        return []
    open_names = tuple([name for name in sheet.part if name not in known])
    dark = [name for name in sheet.part if name in blank and name in known] if blank else []
    others = (*open_names, *dark)
    giving = (
        {name: sheet.equations(name, others) for name in open_names if name in left}
        if dark
        else sheet.solved_for(open_names)
    )
    found = []
    for name, equations in giving.items():
        equation = next(filter(sheet.holds, equations), None) if name in left else None
        if equation is not None:
            found.append((name, equation))
    return found


def within_reach(bodies: Bodies, names: Collection[str]) -> bool:
    """Whether bodies that have all their values could have given every one of the names, in some order."""
    left = [sheet for sheet in bodies.values() if not sheet.missing]
    known: set[str] = set()
    while left:
        ready = [s for s in left if len(known.intersection(s.part)) >= len(s.part) - s.size]
        if not ready:
            break
        for sheet in ready:
            known.update(sheet.part)
        left = [sheet for sheet in left if sheet not in ready]
    return known.issuperset(names)
