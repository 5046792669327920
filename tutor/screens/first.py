"""What is there at once, while the problems are still being read? As little as can be drawn."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.content import Content
from textual.geometry import Size
from textual.screen import Screen
from textual.widgets import Static

TITLE = "pinjoint: trusses by the method of joints"
READING = "Reading the problem sets…"


class OpeningScreen(Screen[None]):
    """A screen that a program begins with. While a window opens, its size is told several times: until
    the first frame is out, it is laid out once for each size, not once for each time."""

    out = False

    def on_mount(self) -> None:
        self.call_after_refresh(self._note_out)

    def _note_out(self) -> None:
        self.out = True

    def _screen_resized(self, size: Size) -> None:
        if self.out or size != self._size:
            super()._screen_resized(size)


class FirstScreen(OpeningScreen):
    """One row that says what the program is doing."""

    def compose(self) -> ComposeResult:
        yield Static(Content(f" {TITLE}\n\n {READING}"), id="first")

    def say(self, text: str) -> None:
        """Say something else instead."""
        self.query_one("#first", Static).update(Content(f" {TITLE}\n\n {text}"))
