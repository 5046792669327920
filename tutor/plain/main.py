"""What happens from the first line to the last: choosing, walking, and leaving in any way?"""

from __future__ import annotations

import contextlib
import os
import signal
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from types import FrameType
from typing import TextIO

from tutor.board import Board
from tutor.check import standing_defect
from tutor.deeds.board import invitation
from tutor.deeds.deed import Way
from tutor.homework.brought import brought
from tutor.lesson import CAUTION, Reply
from tutor.lesson.steps.skipping import SKIPPABLE
from tutor.model import Problem, ProblemSet
from tutor.plain import telling
from tutor.plain.choosing import Left, choose_lesson, choose_problem
from tutor.plain.drawing import Drawing
from tutor.plain.homework import KEPT, Check, truss_lines
from tutor.plain.voice import Voice
from tutor.plain.walk import Walk
from tutor.records import Keep, Settings, read_settings, write_settings
from tutor.session import LOG, Session, open_session
from tutor.text import listed
from tutor.workbook import Workbook, open_walk, open_workbook

DRAWING_KEPT = "What you drew is kept, and comes up again when you draw."
WELCOME = "pinjoint, line by line. Type help to hear what can be typed, leave to end."
STOPPING = ("SIGTERM", "SIGHUP")
SKIP = "You have done {steps} right twice; type skip to pass over it."
NOBODY = 128 + 13  # as if ended by SIGPIPE


class Stopped(BaseException):
    """A signal asks the program to end; not an Exception, so that nothing on the way takes it."""

    def __init__(self, number: int) -> None:
        super().__init__(number)
        self.number = number


def run(
    sets: Sequence[ProblemSet],
    *,
    keep: Path | None = None,
    source: TextIO | None = None,
    sink: TextIO | None = None,
    first: Way = "lesson",
    drawing: Path | None = None,
    signs: bool = False,
) -> int:
    """Hold lessons on the problems of `sets` until the student leaves; returns the exit status.

    `first` is what a chosen problem opens with, "lesson" or "homework", or "draw" for one's own
    truss, which goes on from the problem file `drawing`. `signs` leaves mathematical signs as they
    are; else they are said in words. All is kept in `keep`, or in the user's
    data folder. 0 after leaving or at the end of the input, 128 and the number of the signal
    (Ctrl+C included) when stopped by one.
    """
    sink = sink or sys.stdout
    voice = Voice(source or _readable(sys.stdin), sink, signs=signs)
    status = 0
    try:
        try:
            with stopped_by_signals():
                converse(voice, sets, Keep(keep), first, drawing)
        except (KeyboardInterrupt, Stopped) as stop:
            status = 128 + (stop.number if isinstance(stop, Stopped) else signal.SIGINT)
        voice.say(("You have left pinjoint.", CAUTION))
    except OSError:  # nobody listens any more, or what they listen through is full
        _let_go(sink)
        return NOBODY
    return status


def converse(
    voice: Voice,
    sets: Sequence[ProblemSet],
    keep: Keep,
    first: Way = "lesson",
    drawing: Path | None = None,
) -> None:
    """Problem after problem, until the student leaves; a lone problem is opened at once."""
    voice.say((WELCOME,))
    problem, way = only_problem(sets), first
    then: Way = "homework" if first == "homework" else "lesson"
    with contextlib.suppress(Left):
        while way != "out":
            if way == "draw":
                problem, way = draw(voice, keep, drawing)
                drawing = None
            elif problem is None or way == "problems":
                problem = choose_problem(voice, sets, keep)
                way = "draw" if problem is None else then
            else:
                way = OPEN[way](voice, problem, keep)


def draw(voice: Voice, keep: Keep, path: Path | None = None) -> tuple[Problem | None, Way]:
    """One's own truss, from a file where one is given, and where to go with it."""
    board = Board(keep.folder)
    drawing = Drawing(voice, board, keep.folder / LOG)
    try:
        way = drawing.listen(path)
    finally:
        if board.problem.joints and not board.kept.trouble:
            voice.say((DRAWING_KEPT,))
    if way == "homework":
        voice.say(board.bring_paper(keep))
    board.close()
    return board.problem, way


def check_homework(voice: Voice, problem: Problem, keep: Keep) -> Way:
    """One homework on `problem`."""
    if cannot_be_worked(voice, problem):
        return "problems"
    voice.say(truss_lines(problem))
    book = open_workbook(problem, keep)
    check = Check(voice, book, keep.folder / LOG)
    try:
        while (way := check.listen()) == "walk":
            way = walk_first_place(voice, book, keep)
            if way != "homework":
                return way
        return way
    finally:
        if book.saved and not book.paper.blank:
            voice.say((KEPT,))
        book.kept.close()


def walk_first_place(voice: Voice, book: Workbook, keep: Keep) -> Way:
    """A lesson that begins at the first wrong place of a homework, with what is right given."""
    given = brought(book.problem, book.paper, book.review)
    begun, said = open_walk(book, given, keep)
    with closing(voice, begun) as session:
        voice.say(telling.reply_lines(Reply(said)))
        voice.say(("Type homework to go back to your paper.",))
        return hold(voice, session, keep)


def cannot_be_worked(voice: Voice, problem: Problem) -> bool:
    """Whether statics cannot give the forces of a problem, which is told then."""
    defect = standing_defect(problem)
    if defect is not None:
        voice.say(("This problem cannot be worked:", str(defect)))
    return defect is not None


def walk_through(voice: Voice, problem: Problem, keep: Keep) -> Way:
    """One lesson on `problem`. Raises Left."""
    if cannot_be_worked(voice, problem):
        return "problems"
    kept = choose_lesson(voice, problem, keep)
    with closing(voice, open_session(problem, keep, kept.path if kept else None)) as session:
        voice.say(telling.opening_lines(session.lesson.problem))
        if session.skipped:
            voice.say((f"Note: {session.skipped} kept entries cannot be read and are left out.",))
        return hold(voice, session, keep)


def hold(voice: Voice, session: Session, keep: Keep) -> Way:
    """The conversation of one lesson, and of the practice offered on its way. Raises Left."""
    choices = Choices(voice, keep.folder)
    session.skippable = frozenset(filter(choices.settings.skippable, SKIPPABLE))
    if session.lesson.state.step in session.skippable:
        steps = listed([step for step in SKIPPABLE if step in session.skippable])
        voice.say((SKIP.format(steps=steps),))
    voice.say(filter(None, (invitation(session.lesson, choices.settings.done),)))
    session.remarks = choices.settings.remarks
    walk = Walk(voice, session, choices.done, choices.remarks)
    while (way := walk.listen()) == "practice":
        smaller = session.lesson.practice
        if smaller is not None and walk_through(voice, smaller, keep) == "out":
            return "out"
        voice.say((f"Back at: {session.lesson.problem.title}.",))
        session.remarks = choices.again().remarks
    return way


OPEN: Mapping[Way, Callable[[Voice, Problem, Keep], Way]] = {
    "lesson": walk_through,
    "homework": check_homework,
}


class Choices:
    """What the student has chosen and done before, read once and put down at each change."""

    def __init__(self, voice: Voice, folder: Path) -> None:
        self._voice = voice
        self._folder = folder
        self.settings, notice = read_settings(folder)
        self._say(notice)

    def done(self, step: str) -> None:
        """One more passage through a step."""
        self.settings = self.settings.done_right(step)
        self._say(write_settings(self._folder, self.settings))

    def remarks(self, on: bool) -> None:
        """Whether remarks on an easier way are wanted."""
        self.settings = replace(self.settings, remarks=on)
        self._say(write_settings(self._folder, self.settings))

    def again(self) -> Settings:
        """The choices as they are now, after another lesson may have changed them."""
        self.settings, notice = read_settings(self._folder)
        self._say(notice)
        return self.settings

    def _say(self, notice: str) -> None:
        if notice:
            self._voice.say((f"Note: {notice}",))


@contextlib.contextmanager
def closing(voice: Voice, session: Session) -> Iterator[Session]:
    """A session that is let go of in the end, however it ends, with a word on what is kept."""
    try:
        yield session
    finally:
        session.close()
        if session.gone:
            voice.say((session.gone,))
        elif session.journal.saved:
            voice.say(("All you did here is kept; pinjoint offers to go on from it.",))


def only_problem(sets: Sequence[ProblemSet]) -> Problem | None:
    """The problem to open at once: where there is one, and nothing broken to tell of."""
    problems = [problem for each in sets for problem in each.problems]
    broken = any(each.broken for each in sets)
    return problems[0] if len(problems) == 1 and not broken else None


@contextlib.contextmanager
def stopped_by_signals() -> Iterator[None]:
    """Within it, the signals that ask a program to end raise Stopped, unless they are ignored."""

    def stop(number: int, frame: FrameType | None) -> None:
        raise Stopped(number)

    before = {}
    for name in STOPPING:
        number = getattr(signal, name, None)
        with contextlib.suppress(ValueError):  # not the main thread: signals are another's affair
            if number is not None and signal.getsignal(number) != signal.SIG_IGN:
                before[number] = signal.signal(number, stop)
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


def _readable(stream: TextIO) -> TextIO:
    """Standard input; bytes that are no text in its encoding become marks, not errors."""
    reconfigure = getattr(stream, "reconfigure", None)
    if reconfigure is not None:
        reconfigure(errors="replace")
    return stream


def _let_go(stream: TextIO) -> None:
    """Point a closed pipe at nothing, so that the interpreter has nothing to complain of at exit."""
    with contextlib.suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
