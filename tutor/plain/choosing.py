"""Which problem does the student take, and does an earlier lesson on it go on?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tutor.model import Problem, ProblemSet
from tutor.plain.spelling import spelled
from tutor.plain.voice import LONGEST, TooLong, Voice
from tutor.records import Keep, Kept
from tutor.records.keep import Lessons
from tutor.session import where_left
from tutor.statics import Unsolvable

LEAVING = frozenset({"leave", "quit", "exit", "bye"})
AGAIN = frozenset({"again", "list", "problems", "ask", "where"})
HELP = frozenset({"help", "?"})
LIST_HELP = (
    "Type the number of a problem, or a part of its title.",
    "list: says the problems again.",
    "draw: draws a truss of your own.",
    "leave: ends; all is kept.",
)
DRAW = frozenset({"draw", "own"})
MOST = 5
FINISHED = ", finished"
ONWARD = frozenset({"1", "go on", "go", "on", "yes"})
AFRESH = frozenset({"new", "begin", "afresh", "no"})


class Left(Exception):  # noqa: N818 - the student leaves; nothing failed
    """The student left, or the input ended."""


def choose_problem(voice: Voice, sets: Sequence[ProblemSet], keep: Keep) -> Problem | None:
    """The problem chosen from all sets, by its number or title; None to draw one. Raises Left."""
    problems = [problem for each in sets for problem in each.problems]
    if not problems:
        voice.say(list_lines(sets, Lessons(())))
        raise Left
    kept = keep.lessons()
    begun = Lessons(kept)
    voice.say(f"Note: {each.notice}" for each in kept if not each.readable)
    voice.say(list_lines(sets, begun))
    while True:
        text = heard(voice)
        chosen = _one_of(problems, text)
        if chosen is not None:
            return chosen
        if text.lower() in DRAW:
            return None
        if text.lower() in AGAIN:
            voice.say(list_lines(sets, begun))
        elif text.lower() in HELP:
            voice.say(LIST_HELP)
        else:
            voice.say(
                (f"Cannot read: type a number from 1 to {len(problems)}, a title, draw, or leave.",)
            )


def choose_lesson(voice: Voice, problem: Problem, keep: Keep) -> Kept | None:
    """The earlier lesson to go on with, or None for a new one. Raises Left."""
    earlier = Lessons(keep.lessons()).of(problem)[:MOST]
    if not earlier:
        return None
    several = len(earlier) > 1
    rows = [
        f"{_went_on(kept, bool(how.changes), several)}, {_where(how.problem, kept)}"
        for kept, how in earlier
    ]
    rows.append("begin a new lesson; the old one stays kept")
    asked = (
        f"You worked on {problem.title}{_day(earlier[0][0])}.",
        *(f"{number}. {row}" for number, row in enumerate(rows, start=1)),
    )
    voice.say(asked)
    while True:
        text = heard(voice).lower()
        if text in ONWARD:
            return earlier[0][0]
        if text in AFRESH or text == str(len(rows)):
            return None
        if text.isascii() and text.isdigit() and 0 < int(text[:6]) < len(rows):
            return earlier[int(text[:6]) - 1][0]
        if text in AGAIN | HELP:
            voice.say((*asked, "Type a number, or leave."))
            continue
        voice.say((f"Cannot read: type 1 to go on, {len(rows)} to begin a new lesson, or leave.",))


def _day(kept: Kept) -> str:
    return f" on {kept.last:%Y-%m-%d}" if kept.last is not None else ""


def _went_on(kept: Kept, changed: bool, dated: bool) -> str:
    """A kept lesson to go on with, in words; the first of them is the one last worked on."""
    then = ", on the truss as it was then" if changed else ""
    at = f" on {kept.last.astimezone():%Y-%m-%d at %H:%M}" if dated and kept.last else ""
    return f"go on where you left{at}{then}"


def _where(problem: Problem, kept: Kept) -> str:
    """Where a kept lesson stands: "at the joints", "done"; "begun" where that cannot be told."""
    try:
        return where_left(problem, kept)
    except (OSError, Unsolvable):
        return "begun"


def heard(voice: Voice) -> str:
    """The next line typed, trimmed. Raises Left at the end of the input or for a word of leaving."""
    while True:
        try:
            text = voice.listen()
        except TooLong:
            voice.say((f"Cannot read: a line has {LONGEST} characters at most.",))
            continue
        if text is None or text.strip().lower() in LEAVING:
            raise Left
        return text.strip()


def list_lines(sets: Sequence[ProblemSet], begun: Lessons) -> Iterator[str]:
    """Every set with its problems, numbered throughout, and what is wrong with broken files."""
    number = 0
    for each in sets:
        yield f"Problems: {each.title}."
        for problem in each.problems:
            number += 1
            level = f", level {problem.level}" if problem.level is not None else ""
            mark = _mark(begun, problem) or _first(begun, each.before(problem))
            yield f"{number}. {problem.title}{level}{mark}"
        for refused in each.broken.values():
            yield "A file of this set cannot be used:"
            yield from (str(defect) for defect in refused.problems)
    if number:
        yield "Type the number of a problem, draw for a truss of your own, or leave."


def _first(begun: Lessons, before: Sequence[Problem]) -> str:
    """What comes before a problem and is not finished yet."""
    titles = [each.title for each in before if _mark(begun, each) != FINISHED]
    return f", after {' and '.join(titles)}" if titles else ""


def _mark(begun: Lessons, problem: Problem) -> str:
    """How the last lesson on a problem was left, if there is one."""
    earlier = begun.of(problem)
    if not earlier:
        return ""
    kept, how = earlier[0]
    where = _where(how.problem, kept)
    return FINISHED if where == "done" else f", begun, {where}"


def _one_of(problems: Sequence[Problem], text: str) -> Problem | None:
    if text.isascii() and text.isdigit():
        number = int(text[:6])
        return problems[number - 1] if 0 < number <= len(problems) else None
    fitting = [
        problem
        for problem in problems
        if text and text.casefold() in f"{problem.title}\n{spelled(problem.title)}".casefold()
    ]
    return fitting[0] if len(fitting) == 1 else None
