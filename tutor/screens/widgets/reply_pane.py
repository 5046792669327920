"""What is said back? Each sentence with its mark and word, the whole of it within reach."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from tutor.lesson import Say
from tutor.screens.marks import MARKS
from tutor.screens.themes import BADGES
from tutor.text import visible

SAID_BY_BADGE = "Right: "


class ReplyPane(VerticalScroll, can_focus=False):
    """The last answer. Page up and page down scroll it while a line is typed."""

    def compose(self) -> ComposeResult:
        yield Static(id="said")

    def show(self, said: Sequence[Say], ascii_only: bool, newest: int = 0) -> None:
        """Show these sentences, so far up that the one at `newest` and what follows it is seen."""
        rows = [said_row(say, ascii_only) for say in said]
        self.query_one("#said", Static).update(Content("\n").join(rows))
        self.call_after_refresh(self._up_to, rows[:newest])

    def _up_to(self, older: Sequence[Content]) -> None:
        wide = max(1, self.scrollable_content_region.width)
        above = sum(len(row.wrap(wide)) for row in older)
        self.scroll_to(y=above, animate=False)


def said_row(say: Say, ascii_only: bool) -> Content:
    """One sentence behind its mark and word."""
    mark = MARKS.get(say.tone, MARKS["note"])
    badge = Content.styled(f" {mark.shown(ascii_only)} ", BADGES[mark.badge])
    text = visible(say.text)
    if say.tone == "right" and text.startswith(SAID_BY_BADGE):
        text = text.removeprefix(SAID_BY_BADGE)
    return badge + Content(f" {text}")
