"""What does a whole page of typed lines put on the paper, and which of its lines are none of the work?"""

from __future__ import annotations

from dataclasses import replace

from tutor.homework.broken_lines import mended
from tutor.homework.marks import listed_with_dashes
from tutor.homework.page import EnteredTwice, Written
from tutor.homework.paper import Paper
from tutor.homework.table import BYTE_ORDER_MARK, decimal_sign, usual_sign
from tutor.homework.typed import write_line
from tutor.homework.work import LeftOut
from tutor.judge import judge_of
from tutor.model import Problem

MOST_LINES = 2_000
MOST_CHARACTERS = 200_000


def read_paper(problem: Problem, text: str) -> Written:
    """The paper that a whole file of typed lines makes; what is refused names its line.

    A heading of a table's columns, before anything was written down, is passed over.
    """
    paper, refused = Paper(), []
    numbers: list[int] = []
    twice: list[EnteredTwice] = []
    aside: list[str] = []
    if len(text) > MOST_CHARACTERS or text.count("\n") > MOST_LINES:
        message = f"A file of work has {MOST_LINES} lines at most; is it another file?"
        return Written(paper, (), (LeftOut("line 1", "", message, line=1),))
    sign = decimal_sign(text) or usual_sign(problem)
    lines = listed_with_dashes(text.removeprefix(BYTE_ORDER_MARK).splitlines())
    lines = mended(judge_of(problem), lines)
    for number, line in enumerate(lines, start=1):
        written = write_line(problem, paper, line, sign)
        twice += _changed(number, paper, written.paper)
        aside += (f"line {number} ({said})" for said in written.aside)
        begun = paper != Paper()
        struck = [i for i, had in enumerate(paper.lines) if had not in written.paper.lines][:1]
        numbers = [n for i, n in enumerate(numbers) if i not in struck]
        paper = written.paper
        numbers += [number] * (len(paper.lines) - len(numbers))
        if begun or any(char.isdigit() for char in line):
            refused += [replace(r, name=f"line {number}", line=number) for r in written.refused]
    return Written(paper, (), tuple(refused), tuple(numbers), tuple(aside), tuple(twice))


def _changed(number: int, before: Paper, after: Paper) -> list[EnteredTwice]:
    """Which values of a file a line of it puts others in the place of."""
    pairs = ((name, before.values.get(name), text) for name, text in after.values.items())
    return [
        EnteredTwice(number, f"{name} = {text}, in the place of {old} above")
        for name, old, text in pairs
        if old is not None and old != text
    ]
