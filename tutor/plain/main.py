"""What happens from the first line to the last: choosing, walking, and leaving in any way?"""

from __future__ import annotations

import contextlib
import os
import signal
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path
from types import FrameType
from typing import TextIO

from tutor.board import Board
from tutor.check import standing_defect
from tutor.deeds.deed import Way
from tutor.homework.brought import brought
from tutor.lesson import CAUTION, Reply
from tutor.lesson.skipping import SKIPPABLE
from tutor.model import Problem, ProblemSet
from tutor.plain import telling
from tutor.plain.choices import KeptChoices
from tutor.plain.choosing import Choosing, Leaving, choose_lesson
from tutor.plain.drawing import DrawingTalk
from tutor.plain.here import Here, after_lines, next_problem, offer
from tutor.plain.homework import KEPT, Check, truss_lines
from tutor.plain.voice import Voice
from tutor.plain.walk import Walk
from tutor.records import Keep
from tutor.records.settings import GIVEN, ThisTime
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
    given: ThisTime = GIVEN,
) -> int:
    """Hold lessons on the problems of `sets` until the student leaves; returns the exit status.

    `first` is what a chosen problem opens with, "lesson" or "homework", or "draw" for one's own
    truss, which goes on from the problem file `drawing`. `given` is what holds for this time. `signs` leaves mathematical signs as they
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
                here = Here(voice, sets, KeptChoices(voice, Keep(keep), given))
                converse(here, first, drawing)
        except (KeyboardInterrupt, Stopped) as stop:
            status = 128 + (stop.number if isinstance(stop, Stopped) else signal.SIGINT)
        voice.say(("You have left pinjoint.", *(() if voice.cautioned else (CAUTION,))))
    except OSError:  # nobody listens any more, or what they listen through is full
        _let_go(sink)
        return NOBODY
    return status


def converse(here: Here, first: Way = "lesson", drawing: Path | None = None) -> None:
    """Problem after problem, until the student leaves; a lone problem is opened at once."""
    here.voice.say((WELCOME,))
    problem, way = only_problem(here.sets), first
    if problem is not None:
        here.voice.say(filter(None, (each.note for each in here.sets)))
    then: Way = "homework" if first == "homework" else "lesson"
    with contextlib.suppress(Leaving):
        while way != "out":
            if way == "draw":
                problem, way = draw(here.voice, here.keep, drawing)
                drawing = None
            elif way == "next":
                problem, way = next_problem(here), then
            elif problem is None or way == "problems":
                problem = Choosing(here.voice, here.sets, here.choices).listen()
                way = "draw" if problem is None else then
            else:
                way = OPEN[way](here, problem)


def draw(voice: Voice, keep: Keep, path: Path | None = None) -> tuple[Problem | None, Way]:
    """One's own truss, from a file where one is given, and where to go with it."""
    board = Board(keep.folder)
    drawing = DrawingTalk(voice, board, keep.folder / LOG)
    try:
        way = drawing.listen(path)
    finally:
        if board.problem.joints and not board.kept.trouble:
            voice.say((DRAWING_KEPT,))
    if way == "homework":
        voice.say(board.bring_paper(keep))
    board.close()
    return board.problem, way


def check_homework(here: Here, problem: Problem) -> Way:
    """One homework on `problem`."""
    voice, keep = here.voice, here.keep
    if cannot_be_worked(voice, problem):
        return "problems"
    voice.say(truss_lines(problem))
    book = open_workbook(problem, keep)
    check = Check(voice, book, keep.folder / LOG)
    try:
        while (way := check.listen()) == "walk":
            way = walk_first_place(here, book)
            if way != "homework":
                return way
        return way
    finally:
        if book.saved and not book.paper.blank:
            voice.say((KEPT,))
        book.kept.close()


def walk_first_place(here: Here, book: Workbook) -> Way:
    """A lesson that begins at the first wrong place of a homework, with what is right given."""
    given = brought(book.problem, book.paper, book.review)
    voice = here.voice
    begun, said = open_walk(book, given, here.keep)
    with closing(voice, begun) as session:
        voice.say(telling.reply_lines(Reply(said)))
        voice.say(("Type homework to go back to your paper.",))
        return hold(here, session)


def cannot_be_worked(voice: Voice, problem: Problem) -> bool:
    """Whether statics cannot give the forces of a problem, which is told then."""
    defect = standing_defect(problem)
    if defect is not None:
        voice.say(("This problem cannot be worked:", str(defect)))
    return defect is not None


def walk_through(here: Here, problem: Problem) -> Way:
    """One lesson on `problem`. Raises Left."""
    voice, keep = here.voice, here.keep
    if cannot_be_worked(voice, problem):
        return "problems"
    problem, kept = choose_lesson(voice, problem, keep)
    with closing(voice, open_session(problem, keep, kept.path if kept else None)) as session:
        voice.say(telling.opening_lines(session.lesson.problem))
        if session.skipped:
            voice.say((f"Note: {session.skipped} kept entries cannot be read and are left out.",))
        return hold(here, session)


def hold(here: Here, session: Session) -> Way:
    """The conversation of one lesson, and of the practice offered on its way. Raises Left."""
    voice, choices = here.voice, here.choices
    session.skippable = frozenset(filter(choices.again().skippable, SKIPPABLE))
    if session.lesson.state.step in session.skippable:
        steps = listed([step for step in SKIPPABLE if step in session.skippable])
        voice.say((SKIP.format(steps=steps),))
    voice.say(filter(None, (offer(here, session),)))
    session.remarks = choices.settings.remarks
    walk = Walk(
        voice,
        session,
        choices.done,
        choices.remarks,
        choices.guide,
        lambda: after_lines(here, session),
    )
    if choices.given.begin and not session.lesson.events:
        walk.begin(choices.given.begin)
    while (way := walk.listen()) == "practice":
        smaller = session.lesson.practice
        if smaller is not None and walk_through(here, smaller) == "out":
            return "out"
        voice.say((f"Back at: {session.lesson.problem.title}.",))
        session.remarks = choices.again().remarks
    return way


OPEN: Mapping[Way, Callable[[Here, Problem], Way]] = {
    "lesson": walk_through,
    "homework": check_homework,
}


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
