"""How do a line being typed and the bar of deeds share the keys of a screen?"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from textual import events
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from tutor.screens.deeds import Deed
from tutor.screens.widgets.action_bar import ActionBar
from tutor.screens.widgets.line_input import LineInput
from tutor.text import visible


def into_the_line(event: events.Key | events.Paste, line: LineInput) -> None:
    """A character that means nothing where the focus is goes into the line, and so does a paste."""
    if isinstance(event, events.Paste):
        if line.is_on_screen:
            line.focus()
            line.take_paste(event)
        return
    character = event.character or ""
    alone = event.is_printable and not event.key.startswith("alt+")
    if alone and character.strip() and not line.has_focus and line.is_on_screen:
        event.stop()
        event.prevent_default()
        line.go_on_with(character)


def change_over(screen: Screen[Any]) -> None:
    """From the line to the bar and back."""
    bar, line = screen.query_one(ActionBar), screen.query_one(LineInput)
    (line if bar.has_focus else bar).focus()


def offer(screen: Screen[Any], deeds: Sequence[Deed]) -> None:
    """Show the deeds, with escape before their letters while these would go into the line."""
    typing = isinstance(screen.focused, LineInput)
    screen.query_one(ActionBar).offer(deeds, typing)


def answer(screen: Screen[Any], said: str, text: str) -> None:
    """Put a text into the part with the id `said`, and scroll what holds it to its beginning."""
    part = screen.query_one(f"#{said}", Static)
    part.update(Content(visible(text)))
    if part.parent is not None and hasattr(part.parent, "scroll_home"):
        part.parent.scroll_home(animate=False)
