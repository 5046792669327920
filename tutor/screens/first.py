"""What is there at once, while the problems are still being read? As little as can be drawn."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

TITLE = "pinjoint: trusses by the method of joints"
READING = "Reading the problem sets…"


class FirstScreen(Screen[None]):
    """One row that says what the program is doing."""

    def compose(self) -> ComposeResult:
        yield Static(Content(f" {TITLE}\n\n {READING}"), id="first")

    def say(self, text: str) -> None:
        """Say something else instead."""
        self.query_one("#first", Static).update(Content(f" {TITLE}\n\n {text}"))
