"""Do enough lines stand to give the value of an unknown?"""

from __future__ import annotations

from tutor.judge.about import equation_of
from tutor.lesson.state import State

NEARLY_NOTHING = 1e-9


def is_determined(state: State, unknown: str) -> bool:
    """Whether the standing lines, with the values already found, fix `unknown`."""
    rows = [
        {
            name: value
            for name, value in equation_of(state.problem, line.about).linear.items()
            if name is not None and (name == unknown or name not in state.result)
        }
        for line in state.lines
    ]
    return _fixes(_touching(rows, unknown), unknown)


def _touching(rows: list[dict[str, float]], unknown: str) -> list[dict[str, float]]:
    """The rows that hang together with `unknown` through shared unknowns."""
    names, chosen, rest = {unknown}, [], [row for row in rows if row]
    grown = True
    while grown:
        grown = False
        for row in list(rest):
            if names & row.keys():
                chosen.append(row)
                rest.remove(row)
                names |= row.keys()
                grown = True
    return chosen


def _fixes(rows: list[dict[str, float]], unknown: str) -> bool:
    """Gaussian elimination with `unknown` last: is a row left that holds it alone?"""
    work = [dict(row) for row in rows]
    others = sorted({name for row in work for name in row} - {unknown})
    for name in others:
        pivot = max(work, key=lambda row: abs(row.get(name, 0.0)), default=None)
        if pivot is None or abs(pivot.get(name, 0.0)) <= NEARLY_NOTHING:
            continue
        work.remove(pivot)
        for row in work:
            factor = row.pop(name, 0.0) / pivot[name]
            if factor:
                for other, value in pivot.items():
                    if other != name:
                        row[other] = row.get(other, 0.0) - factor * value
    return any(abs(row.get(unknown, 0.0)) > NEARLY_NOTHING for row in work if _only(row, unknown))


def _only(row: dict[str, float], unknown: str) -> bool:
    return all(abs(v) <= NEARLY_NOTHING for n, v in row.items() if n != unknown)
