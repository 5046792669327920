"""What becomes of several lines pasted at once? Each is taken in its turn, and every answer stays."""

from __future__ import annotations

from collections import deque
from collections.abc import Sequence
from typing import TYPE_CHECKING

from tutor.judge import judge_of
from tutor.lesson import Say

if TYPE_CHECKING:
    from tutor.screens.walk import WalkScreen

MOST = 50


class Pasting:
    """The pasted lines that are still to be taken; `under_way` while one is being taken."""

    def __init__(self, walk: WalkScreen) -> None:
        self._walk = walk
        self._waiting: deque[str] = deque()
        self._last = ""
        self.under_way = False

    def take(self, lines: Sequence[str], said: str = "", open_end: bool = False) -> None:
        """Take these lines, one in each round of the loop, so that the screen is never held up.

        With an `open_end` the last one is only put into the line, behind the answers to the others.
        A line that a page broke in two is one. What is `said` of the paste as a whole comes before the answers.
        """
        too_many = f"Only the first {MOST} lines were taken." if len(lines) > MOST else ""
        self._walk.said = [Say("note", text) for text in (said, too_many) if text]
        from tutor.homework.broken_lines import mended  # only where something is pasted

        desk = judge_of(self._walk.session.lesson.problem)
        self._waiting.extend(line for line in mended(desk, lines[:MOST]) if line.strip())
        self._last = self._waiting.pop() if open_end and len(lines) <= MOST else ""
        self._walk.call_later(self._next)

    def _next(self) -> None:
        """The next line; a line that has led to another screen is the last."""
        if not self._walk.is_current:
            self._waiting.clear()
        if not self._waiting:
            self._leave_the_last()
            return
        text = self._waiting.popleft()
        self._walk.said.append(Say("note", text))
        self.under_way = True
        try:
            self._walk.take_line(text)
        finally:
            self.under_way = False
        self._walk.call_later(self._next)

    def _leave_the_last(self) -> None:
        """Put the last line where it is typed, to be changed or entered, where it can be typed at all."""
        last, self._last = self._last, ""
        if last and self._walk.is_current:
            self._walk.line.begin(last)
