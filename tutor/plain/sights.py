"""What is said when something is to be shown? Each sight as lines."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from tutor.deeds.deed import Show, Sight
from tutor.deeds.words import COMMANDS
from tutor.figure import moment_figure, to_words
from tutor.judge import M
from tutor.lesson import Lesson
from tutor.plain import telling


def sight(lesson: Lesson, show: Show) -> Iterable[str]:
    """The lines that say what `show` asks for."""
    return SIGHTS[show.what](lesson, show.of)


def _figure(lesson: Lesson, joint: str) -> Iterable[str]:
    return telling.joint_lines(lesson.state, joint) if joint else telling.figure_lines(lesson.state)


def _arm(lesson: Lesson, force: str) -> Iterable[str]:
    about = lesson.state.about
    if not force or not isinstance(about, M):
        return telling.pointed_lines(lesson.state)
    return to_words(moment_figure(lesson.problem, force, about.at))[-1:]


def _help(lesson: Lesson, word: str) -> Iterable[str]:
    yield (
        "Type a line as you would write it, like F_AB*3/5 + F_AC - 12 = 0, or a value, like "
        "AB = 7.5 C. Moments are M, sums of forces Fx and Fy."
    )
    yield from (f"{each.typed}: {each.does}" for each in COMMANDS)


def _last(lesson: Lesson, of: str) -> Iterable[str]:
    """The last verdict and hint stay with the conversation; before the first there is nothing."""
    return ("Nothing was answered yet.",)


SIGHTS: Mapping[Sight, Callable[[Lesson, str], Iterable[str]]] = {
    "question": lambda lesson, of: telling.ask_lines(lesson.ask),
    "last": _last,
    "where": lambda lesson, of: telling.where_lines(lesson.state),
    "figure": _figure,
    "large": _figure,
    "truss": lambda lesson, of: telling.opening_lines(lesson.problem),
    "arm": _arm,
    "lines": lambda lesson, of: telling.line_lines(lesson.state),
    "results": lambda lesson, of: telling.result_lines(lesson.state),
    "joints": lambda lesson, of: telling.count_lines(lesson.state),
    "table": lambda lesson, of: telling.table_lines(lesson),
    "help": _help,
}
