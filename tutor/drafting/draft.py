"""What truss is being drawn up? A fold over steps, each of which can be taken back and done again."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import takewhile

from tutor.drafting.commands import LineRefused, read
from tutor.drafting.entries import EMPTY, Entry, Rename, Whole, fold
from tutor.drafting.telling import told
from tutor.model import Problem

Step = tuple[Entry, ...]
Mark = tuple[Step, ...]
UNDO = frozenset({"undo", "back"})
REDO = frozenset({"redo"})


@dataclass(frozen=True)
class DraftAnswer:
    """What is said to a line: whether it was taken, and where in it the trouble is.

    Of one that was not taken, `what` is that without its first word: what was read and is wrong.
    """

    taken: bool
    said: str
    span: tuple[int, int] | None = None
    what: str = ""


class Draft:
    """A truss being drawn up. The same steps give the same truss."""

    def __init__(self, steps: Iterable[Step] = (), start: Problem = EMPTY) -> None:
        self.trusses: list[Problem] = [start]
        self.steps: list[Step] = []
        self.ahead: list[Step] = []
        for step in steps:
            self._add(step)

    @property
    def problem(self) -> Problem:
        """The truss as it is now; it may lack anything."""
        return self.trusses[-1]

    def type(self, text: str) -> DraftAnswer:
        """Take a typed line, wholly or not at all; never raises."""
        word = text.strip().lower()
        if word in UNDO:
            return self.undo()
        if word in REDO:
            return self.redo()
        entries = read(self.problem, text)
        if isinstance(entries, LineRefused):
            return DraftAnswer(False, entries.sentence, entries.span, entries.what)
        return self.do(entries)

    def do(self, entries: Sequence[Entry]) -> DraftAnswer:
        """Take entries as one step."""
        before = self.problem
        self._add(tuple(entries))
        self.ahead.clear()
        return DraftAnswer(True, told(before, self.problem, entries))

    def undo(self) -> DraftAnswer:
        """Back to before the last step."""
        if not self.steps:
            return DraftAnswer(True, "There is nothing to take back.")
        step = self.steps.pop()
        self.ahead.append(step)
        after = self.trusses.pop()
        return DraftAnswer(True, _with("Taken back", told(self.problem, after, step)))

    def redo(self) -> DraftAnswer:
        """Do again what was taken back last."""
        if not self.ahead:
            return DraftAnswer(True, "Nothing was taken back that could be done again.")
        before = self.problem
        step = self.ahead.pop()
        self._add(step)
        return DraftAnswer(True, _with("Done again", told(before, self.problem, step)))

    @property
    def mark(self) -> Mark:
        """Where the drawing is now, to ask later what became of it since."""
        return tuple(self.steps)

    def renamed_since(self, mark: Mark) -> Mapping[str, str] | None:
        """What each joint renamed since `mark` is called now, by its name then.

        None where it is another truss by now: cleared, opened or drawn as a whole since, or all
        that taken back.
        """
        same = sum(
            1
            for _ in takewhile(lambda pair: pair[0] is pair[1], zip(mark, self.steps, strict=False))
        )
        back = [entry for step in mark[same:] for entry in step]
        forth = [entry for step in self.steps[same:] for entry in step]
        if any(isinstance(entry, Whole) for entry in (*back, *forth)):
            return None
        taken_back = [Rename(e.new, e.old) for e in reversed(back) if isinstance(e, Rename)]
        done = [entry for entry in forth if isinstance(entry, Rename)]
        now: dict[str, str] = {}
        for rename in (*taken_back, *done):
            then = next((old for old, new in now.items() if new == rename.old), None)
            if then is not None or rename.old not in now:  # else a joint put since
                now[then or rename.old] = rename.new
        return now

    def _add(self, step: Step) -> None:
        self.steps.append(step)
        self.trusses.append(fold(step, self.problem))


def _with(done: str, what: str) -> str:
    """What was done, and to what, where there are words for it."""
    return f"{done}: {what}" if what else f"{done}."
