"""What stands in a row of a homework's table, what does typing into it do, and what was changed?"""

from __future__ import annotations

from dataclasses import replace

from tutor.homework.page import Written
from tutor.homework.paper import Paper
from tutor.homework.typed import write_line, write_row
from tutor.model import Problem


def row_name(problem: Problem, place: int) -> str:
    """The name of the row at `place`: an unknown, or a line by its number."""
    names = problem.unknowns
    return names[place] if place < len(names) else f"line {place - len(names) + 1}"


def standing_at(problem: Problem, paper: Paper, place: int) -> str:
    """The text that stands in the row at `place`."""
    if place < len(problem.unknowns):
        return paper.values.get(problem.unknowns[place], "")
    return paper.lines[place - len(problem.unknowns)][1]


def entered(problem: Problem, paper: Paper, place: int, text: str) -> Written:
    """The paper with what was typed: into the row at `place`, unless it says what it is of."""
    if place >= len(problem.unknowns):
        return _line_again(problem, paper, place - len(problem.unknowns), text)
    name = problem.unknowns[place]
    if not text or not text[:1].isalpha():
        return write_row(problem, paper, name, text)
    named = write_line(problem, paper, text)
    if not named.refused:
        return named
    into = write_row(problem, paper, name, text)
    return named if into.refused else into


def _line_again(problem: Problem, paper: Paper, index: int, text: str) -> Written:
    """The paper with one line written anew, or struck out where nothing is typed."""
    without = paper.without_line(index)
    if not text:
        return Written(without, (f"line {index + 1} struck out",))
    again = write_line(problem, without, text)
    return Written(paper, (), again.refused) if again.refused else again


def on_top(paper: Paper, pasted: Paper) -> Paper:
    """The paper with all that was pasted written over it."""
    for name, text in pasted.values.items():
        paper = paper.with_value(name, text, pasted.found_at.get(name))
    for about, text in pasted.lines:
        paper = paper.with_line(about, text)
    for name, sense in pasted.senses.items():
        paper = paper.with_sense(name, sense)
    paper = paper.with_letters(pasted.letters)
    return replace(paper, order=pasted.order or paper.order)


def changes(problem: Problem, now: Paper, then: Paper) -> set[str | int]:
    """The names of values and the indices of lines that differ between two papers."""
    found: set[str | int] = {
        name for name in problem.unknowns if now.values.get(name) != then.values.get(name)
    }
    if now.lines != then.lines:
        found |= set(range(len(now.lines)))
    if (now.senses, now.order) != (then.senses, then.order):
        found |= set(now.values)
    return found
