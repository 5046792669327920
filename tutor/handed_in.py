"""What does a file of work show? Its report on standard output, what could not be read beside it.

What was wrong in a file is kept beside the lessons, so that after mending it is told which entries still
rest on the old values.
"""

from __future__ import annotations

import sys
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from tutor.figure import to_words, truss_figure
from tutor.homework import Review, markdown, read_paper, review
from tutor.homework.aside import told_aside
from tutor.homework.report import BesideCheck
from tutor.homework.whole_page import MOST_CHARACTERS
from tutor.homework.words import summary
from tutor.model import Problem, ProblemError, load_problem
from tutor.model.source import file_name, read_source
from tutor.records import Keep
from tutor.workbook import Workbook, open_file_of_work

STANDARD_INPUT = "-"


def check_work(path: Path, work: str, keep: Keep) -> int:
    """Print the report of the work in a file on the truss at `path`; the exit status.

    0 if all that could be checked is right and everything could be read, 1 if not, 2 if a file
    cannot be used.
    """
    try:
        problem = load_problem(path)
    except ProblemError as refused:
        print(refused, file=sys.stderr)
        return 2
    text = _text(work)
    if text is None:
        return 2
    if work == STANDARD_INPUT:
        result, told, beside = reviewed(problem, text, "standard input")
    else:
        book = open_file_of_work(problem, Path(work), keep)
        result, told, beside = reviewed(problem, text, file_name(work), book)
        told = (*told, *book.news())
    for line in told:
        print(line, file=sys.stderr)
    print(markdown(problem, result, datetime.now().astimezone(), beside), end="")
    return 0 if result.right and not result.refused else 1


def reviewed(
    problem: Problem, text: str, file: str, book: Workbook | None = None
) -> tuple[Review, tuple[str, ...], BesideCheck]:
    """The review of typed work, of each line that could not be read where and why, and the truss.

    `book` holds what was wrong when the file was checked before, and learns what is wrong now.
    """
    written = read_paper(problem, text)
    before = None if book is None else book.before_of(written.paper)
    result = review(problem, written.paper.work(problem), before)
    result = replace(result, said=summary(result, written.numbers))
    if book is not None:
        book.note_check(written.paper, result)
    told = (
        *(f"{file}:{r.line}: {r.message}" for r in written.refused),
        *(f"{file}:{each.line}: {each.said}." for each in written.twice),
        *(f"{file}: {said}." for said in told_aside(written.aside)),
    )
    beside = BesideCheck(
        to_words(truss_figure(problem))[1:],
        lines=[about for about, _ in written.paper.lines],
        numbers=written.numbers,
        notes=[each.text for each in written.twice],
        aside=told_aside(written.aside),
    )
    return replace(result, refused=(*written.refused, *result.refused)), told, beside


def _text(work: str) -> str | None:
    """The text of the work; None, after saying why, where there is none."""
    if work == STANDARD_INPUT:
        return sys.stdin.read(MOST_CHARACTERS + 1)
    source = read_source(work)
    for defect in source.defects:
        print(defect, file=sys.stderr)
    return None if source.defects else source.text
