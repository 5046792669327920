"""What does a student keep on paper of a lesson? A report in Markdown."""

from __future__ import annotations

from datetime import UTC, datetime

from tutor.judge import in_words
from tutor.judge.called import counted
from tutor.lesson import CAUTION, Lesson, Table
from tutor.lesson.steps.table import hints_in_words, largest_in_words, time_in_words
from tutor.text import in_code, in_markdown


def markdown(lesson: Lesson) -> str:
    """The lesson so far: forces with T or C, the lines that stand, mistakes by kind, hints, time.

    Forces are in the problem's unit, tension positive. It holds only values the student found or
    was given.
    """
    state, table = lesson.state, lesson.table
    problem = lesson.problem
    began = datetime.fromtimestamp(state.started or 0.0, UTC)
    parts = [f"# {in_markdown(problem.title)}", ""]
    if problem.story:
        parts += [in_markdown(problem.story), ""]
    parts += [f"Begun {began:%Y-%m-%d %H:%M} UTC; {_progress(lesson)}.", ""]
    parts += _reactions(lesson) + _forces(table) + _lines(lesson) + _way(table)
    parts += [f"*{CAUTION}*", ""]
    return "\n".join(parts)


def _progress(lesson: Lesson) -> str:
    if lesson.done:
        return "finished, and the truss closes"
    found, all_of = len(lesson.state.results), len(lesson.problem.unknowns)
    return f"{found} of {all_of} forces found so far"


def _reactions(lesson: Lesson) -> list[str]:
    state, unit = lesson.state, lesson.problem.force
    found = [r for r in lesson.problem.reactions if r.name in state.result]
    if not found:
        return []
    rows = [
        f"| {r.name} | {_sense(lesson, r.name)} | {state.result[r.name].value:.5g} |" for r in found
    ]
    return [
        "## Reactions",
        "",
        f"| reaction | arrow drawn | value [{unit}] |",
        "|---|---|---:|",
        *rows,
        "",
    ]


def _sense(lesson: Lesson, name: str) -> str:
    return lesson.state.senses.get(name, "in the positive sense")


def _forces(table: Table) -> list[str]:
    if not table.rows:
        return []
    rows = [f"| {row.member} | {abs(row.force):.5g} | {row.letter} |" for row in table.rows]
    lines = [
        "## Member forces",
        "",
        f"| member | force [{table.unit}] | T or C |",
        "|---|---:|:---:|",
        *rows,
        "",
    ]
    for kind, largest in (("tension", table.tensions), ("compression", table.compressions)):
        if largest:
            lines.append(f"Largest {kind}: {largest_in_words(largest, table.unit)}.")
    return [*lines, ""]


def _lines(lesson: Lesson) -> list[str]:
    if not lesson.state.lines:
        return []
    rows = [f"- {in_words(line.about)}: {in_code(line.text)}" for line in lesson.state.lines]
    return ["## Lines", "", *rows, ""]


def _way(table: Table) -> list[str]:
    slips = "; ".join(counted(code, count) for code, count in table.mistakes) or "none"
    shown = [f"- shown at the board: {table.shown} of the steps"] if table.shown else []
    return [
        "## On the way",
        "",
        f"- mistakes: {slips}",
        f"- hints taken: {hints_in_words(table.hints)}",
        *shown,
        f"- time: {time_in_words(table.seconds)}",
        "",
    ]
