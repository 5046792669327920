"""What is said back? Each sentence with its mark and word, the whole of it within reach."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.geometry import Size
from textual.widgets import Static

from tutor.judge.verdict import OPENING
from tutor.lesson import Say
from tutor.screens.marks import MARKS
from tutor.screens.themes import BADGES
from tutor.text import so_many, visible

MORE = "{} below: page down"
ABOVE = "the end; what stands above: page up"
LEAST_ROWS = 3
"""With fewer rows all are needed for what was said."""


class ReplyPane(VerticalScroll, can_focus=False):
    """The last answer. Page up and page down scroll it while a line is typed; a row below says so where
    it does not fit."""

    def compose(self) -> ComposeResult:
        yield Static(id="said")
        yield Static(id="more-said")

    def show(self, said: Sequence[Say], ascii_only: bool, newest: int = 0) -> None:
        """Show these sentences, so far up that the one at `newest` and what follows it is seen."""
        rows = [said_row(say, ascii_only) for say in said]
        self.query_one("#said", Static).update(Content("\n").join(rows))
        self.call_after_refresh(self._up_to, rows[:newest])

    def _up_to(self, older: Sequence[Content]) -> None:
        wide = max(1, self.scrollable_content_region.width)
        above = sum(len(row.wrap(wide)) for row in older)
        self.scroll_to(y=above, animate=False)

    def watch_scroll_y(self, old_value: float, new_value: float) -> None:
        super().watch_scroll_y(old_value, new_value)
        self._tell_of_more()

    def watch_virtual_size(self, size: Size) -> None:
        self.call_after_refresh(self._tell_of_more)

    def on_resize(self) -> None:
        self.call_after_refresh(self._tell_of_more)

    def read_on(self, step: int) -> None:
        """A page further (1) or back (-1), so that no row is passed over."""
        told = self.query_one("#more-said").display
        page = max(1, self.size.height - told)
        self.scroll_relative(y=page * step, animate=False)

    def _tell_of_more(self) -> None:
        """Say how many rows are below those in sight, or that all others are above."""
        more = self.query_one("#more-said", Static)
        rows, height = self.query_one("#said").size.height, self.size.height
        more.display = rows > height >= LEAST_ROWS
        below = rows - round(self.scroll_y) - (height - 1)
        more.update(Content(MORE.format(so_many(below, "more row")) if below > 0 else ABOVE))


def said_row(say: Say, ascii_only: bool) -> Content:
    """One sentence behind its mark and word."""
    mark = MARKS.get(say.tone, MARKS["note"])
    badge = Content.styled(f" {mark.shown(ascii_only)} ", BADGES[mark.badge])
    text = say.rest if say.opening == OPENING else say.text
    return badge + Content(f" {visible(text)}")
