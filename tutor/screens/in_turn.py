"""How do keys that arrive in one read keep their order? Each is done with before the next is handed on.

The library puts a letter into a line at once, but lets every other key rise through all parents of
the line before it acts: of "ctrl+u, text, enter" the text would go in first and be deleted after.
A lone key is handed on as the library would do it, without waiting for anything. What is typed ahead
of a screen that was asked for waits until that stands. An enter behind an enter answers nothing that
was asked after it was pressed.
"""

from __future__ import annotations

import asyncio
from collections import deque
from collections.abc import Awaitable, Callable
from typing import Any, Protocol, runtime_checkable

from textual import events
from textual.app import App
from textual.message_pump import MessagePump
from textual.widgets import Input

ROUNDS = 3
"""A key's doings may post a message whose doings post another: so often each queue is waited for."""
ENTERS = frozenset({"enter", "ctrl+j"})
LEAVE = frozenset({"ctrl+c", "ctrl+q"})
MOVING = frozenset({"up", "down", "left", "right", "pageup", "pagedown", "home", "end"})
"""Keys that choose another row of a list."""
Typed = events.Key | events.Paste


class InTurn:
    """The keys and pastes that wait while those before them are being done; at first all do."""

    def __init__(self, app: App[Any], hand_on: Callable[[events.Event], Awaitable[None]]) -> None:
        self._app = app
        self._hand_on = hand_on
        self._waiting: deque[Typed] = deque()
        self._task: asyncio.Task[None] | None = None
        self._held = True
        self._passing = LEAVE
        self._before: Typed | None = None

    def hold(self, passing: frozenset[str] = frozenset()) -> None:
        """Let what is typed wait until `let_go`, but for the keys that leave the program, and those
        `passing`.

        A line end typed before the terminal was told to send it as enter is that all the same.
        """
        self._held = True
        self._passing = LEAVE | passing

    def let_go(self, *, forget: bool = False) -> None:
        """Hand on what waits, or `forget` it where it was typed for another screen."""
        self._held = False
        if forget:
            self._waiting.clear()
        if self._waiting and not self.busy:
            self._task = asyncio.create_task(self._go_on(None))

    @property
    def busy(self) -> bool:
        """Whether something typed is not done with yet."""
        return self._task is not None

    async def take(self, event: Typed) -> None:
        """Hand on what was typed, now or when its turn has come."""
        if self._held and not self._passes(event):
            self._waiting.append(events.Key("enter", "\r") if _is_enter(event) else event)
            return
        if self.busy:
            self._waiting.append(event)
            return
        if await self._handed(event):
            self._task = asyncio.create_task(self._go_on(event))

    async def _go_on(self, last: Typed | None) -> None:
        """Until nothing waits any more, hand on the next once the last is done with."""
        entered = False
        try:
            while True:
                if not (self._is_text(last) and self._is_text(self._next())):
                    await self._done_with()
                if not self._waiting or (self._held and not self._passes(self._next())):
                    return
                entered = entered or _is_enter(last)
                screen = self._app.screen
                if entered and isinstance(screen, TakesLines) and not self._in_a_line():
                    text = self._line_ahead()
                    if text is not None:
                        screen.take_line(text)
                        continue
                last = self._waiting.popleft()
                await self._handed(last)
        finally:
            self._task = None

    async def _handed(self, event: Typed) -> bool:
        """Hand this on, unless it was meant for the screen before, or is an enter for what was asked
        before."""
        before, self._before = self._before, event
        screen = self._app.screen
        if isinstance(screen, Lettered) and event.time < screen.shown_at:
            return False
        if _is_enter(event) and _is_enter(before) and self._came_before_the_question(event):
            return False
        await self._hand_on(event)
        return True

    def _came_before_the_question(self, event: Typed) -> bool:
        """Whether this was pressed before what is asked now was shown, and nothing was typed to it."""
        screen, focused = self._app.screen, self._app.focused
        if isinstance(focused, Input) and focused.value:
            return False
        return isinstance(screen, Asks) and event.time < screen.asked_at

    def _line_ahead(self) -> str | None:
        """The characters up to the next enter, taken off what waits; None where a key is between."""
        text = ""
        for place, event in enumerate(self._waiting):
            if _is_enter(event) and text:
                for _ in range(place + 1):
                    self._waiting.popleft()
                return text
            if not isinstance(event, events.Key) or not event.is_printable:
                return None
            text += event.character or ""
        return None

    def _passes(self, event: Typed | None) -> bool:
        return isinstance(event, events.Key) and event.key in self._passing

    def _next(self) -> Typed | None:
        return self._waiting[0] if self._waiting else None

    def _in_a_line(self) -> bool:
        return isinstance(self._app.focused, Input)

    def _is_text(self, event: Typed | None) -> bool:
        """Whether this is a character that goes straight into a line."""
        if not isinstance(event, events.Key) or not event.is_printable:
            return False
        character, focused = event.character or "", self._app.focused
        passed_on = getattr(focused, "passes_letters_on", False) and character.isalpha()
        return isinstance(focused, Input) and not passed_on

    async def _done_with(self) -> None:
        """Wait until every part that a key can reach has worked off what was posted to it."""
        for _ in range(ROUNDS):
            start = self._app.focused or self._app.screen
            for part in (*start.ancestors_with_self,):
                await _worked_off(part)


@runtime_checkable
class TakesLines(Protocol):
    """A screen that takes a line typed ahead of its question."""

    def take_line(self, text: str) -> None:
        """Do what was typed as if it had been entered now."""
        ...


@runtime_checkable
class Lettered(Protocol):
    """A screen without a line, where letters are deeds: what was typed before it stood is none for it."""

    shown_at: float


@runtime_checkable
class Asks(Protocol):
    """A screen that tells since when it asks what it asks, by the clock of events."""

    asked_at: float


def _is_enter(event: Typed | None) -> bool:
    return isinstance(event, events.Key) and event.key in ENTERS


async def _worked_off(part: MessagePump) -> None:
    """Wait until this part has done all that is in its queue now, or is gone."""
    done = asyncio.Event()
    if part.is_running and part.call_later(done.set):
        while not done.is_set() and part.is_running:
            try:
                await asyncio.wait_for(done.wait(), 0.5)
            except TimeoutError:
                continue
