"""What is the row at hand about? Its words, which can be read on, and its picture below them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.containers import Vertical, VerticalScroll
from textual.content import Content
from textual.widgets import Static

from tutor.screens.entry import ProblemRow
from tutor.screens.rows import about

if TYPE_CHECKING:
    from tutor.screens.widgets.figure_pane import FigurePane


class DetailPane(Vertical):
    """What stands beside the list; the pane of the picture is there from the first picture on."""

    preview: FigurePane | None = None

    def compose(self) -> ComposeResult:
        with VerticalScroll(id="detail", can_focus=False):
            yield Static(id="about")

    def show(self, entry: ProblemRow, glyphs: str, *, drawn: bool) -> None:
        """What there is to say of a row, from its beginning, and its picture where it is to be `drawn`."""
        self.say(about(entry))
        figure = None
        if entry.problem is not None and drawn:
            from tutor.figure import truss_figure  # only where there is room for a picture

            figure = truss_figure(entry.problem)
            if self.preview is None:
                from tutor.screens.widgets.figure_pane import FigurePane

                self.preview = FigurePane(id="preview")
                self.mount(self.preview)
        if self.preview is not None:
            title = "" if entry.problem is None else "The truss"
            self.preview.show(title, figure, glyphs)

    def say(self, text: Content) -> None:
        """Other words, from their beginning; the same ones stay where they have been read to."""
        words = self.query_one("#about", Static)
        if words.content != text:
            words.update(text)
            self.query_one("#detail", VerticalScroll).scroll_home(animate=False)

    def read_on(self) -> None:
        """The next rows of the words; from the end to the beginning."""
        detail = self.query_one("#detail", VerticalScroll)
        if detail.scroll_offset.y >= detail.max_scroll_y:
            detail.scroll_home(animate=False)
        else:
            step = max(1, detail.scrollable_content_region.height - 1)
            detail.scroll_relative(y=step, animate=False)
