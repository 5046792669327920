"""How many lines and hints does each student need? `python tests/students/table.py` prints it.

Every student of `habits` walks every shipped problem.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator, Mapping
from pathlib import Path

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2])]

from every_problem import FORCES, problem_of
from habits import HABITS, Habit
from walker import Counts, Walker

HEAD = ("student", "lines", "values", "refused", "reason", "place", "line", "hints a problem")


def counted(habit: Habit, path: Path) -> Counts:
    """One student through one problem."""
    walker = Walker(problem_of(path), habit)
    walker.walk()
    return walker.counts


def rows(counts: Mapping[str, Mapping[str, Counts]]) -> Iterator[tuple[str, ...]]:
    """A row a student, summed over the problems."""
    for name, by_problem in counts.items():
        total = Counts()
        for each in by_problem.values():
            total.add(each)
        hints = total.hints
        each_problem = sum(hints.values()) / len(by_problem)
        cells = (total.lines, total.values, total.refused, hints[2], hints[3], hints[4])
        yield (name, *map(str, cells), f"{each_problem:.1f}")


def problem_rows(counts: Mapping[str, Mapping[str, Counts]]) -> Iterator[tuple[str, ...]]:
    """A row a problem: lines and values typed, and hints, for each student."""
    names = list(counts)
    for problem in counts[names[0]]:
        cells = (counts[name][problem] for name in names)
        yield (problem, *(f"{c.lines + c.values}/{sum(c.hints.values())}" for c in cells))


def as_text(head: tuple[str, ...], body: list[tuple[str, ...]]) -> str:
    """A table in plain characters: the first column to the left, the others to the right."""
    widths = [max(len(row[i]) for row in (head, *body)) for i in range(len(head))]
    return "\n".join(
        "  ".join(
            [
                row[0].ljust(widths[0]),
                *(c.rjust(w) for c, w in zip(row[1:], widths[1:], strict=True)),
            ]
        )
        for row in (head, *body)
    )


def told(counts: Mapping[str, Mapping[str, Counts]]) -> str:
    """Both tables."""
    by_student = as_text(HEAD, list(rows(counts)))
    by_problem = as_text(("typed/hints", *counts), list(problem_rows(counts)))
    return f"{by_student}\n\n{by_problem}"


if __name__ == "__main__":
    print(told({h.name: {p.stem: counted(h, p) for p in FORCES} for h in HABITS}))
