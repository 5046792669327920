"""What is said back? Each sentence with its mark and word, the whole of it within reach."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from tutor.lesson import Say
from tutor.screens.clean import clean
from tutor.screens.marks import MARKS
from tutor.screens.themes import BADGES

SAID_BY_BADGE = "Right: "


class ReplyPane(VerticalScroll, can_focus=False):
    """The last answer. Page up and page down scroll it while a line is typed."""

    def compose(self) -> ComposeResult:
        yield Static(id="said")

    def show(self, said: Sequence[Say], ascii_only: bool) -> None:
        """Show these sentences from the first on."""
        rows = Content("\n").join(said_row(say, ascii_only) for say in said)
        self.query_one("#said", Static).update(rows)
        self.scroll_home(animate=False)


def said_row(say: Say, ascii_only: bool) -> Content:
    """One sentence behind its mark and word."""
    mark = MARKS.get(say.tone, MARKS["note"])
    badge = Content.styled(f" {mark.shown(ascii_only)} ", BADGES[mark.badge])
    text = clean(say.text)
    if say.tone == "right" and text.startswith(SAID_BY_BADGE):
        text = text.removeprefix(SAID_BY_BADGE)
    return badge + Content(f" {text}")
