"""What was entered, a row each, and how each entry stands after a check?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from rich.cells import cell_len, set_cell_size
from textual import events
from textual.containers import VerticalScroll
from textual.content import Content
from textual.geometry import Region, Size
from textual.message import Message
from textual.reactive import reactive
from textual.widget import Widget

from tutor.screens.clean import one_line

LEAST_VALUE = 8


@dataclass(frozen=True)
class EntryRow:
    """One row: its name, what was written, and the word and badge of its state ("" for none)."""

    name: str
    text: str
    state: str = ""
    badge: str = ""


class EntryTable(Widget):
    """The rows; the one being written is marked by a pointer. A click goes to a row."""

    @dataclass
    class Went(Message):
        """A row was clicked: its place."""

        place: int

    rows: reactive[tuple[EntryRow, ...]] = reactive((), layout=True)
    cursor: reactive[int] = reactive(0)
    pointer: reactive[str] = reactive("›")

    def show(self, rows: Sequence[EntryRow], cursor: int) -> None:
        """Show these rows with the pointer at `cursor`, which is scrolled into view."""
        self.rows, self.cursor = tuple(rows), cursor
        self.call_after_refresh(self.reveal)

    def reveal(self) -> None:
        """Scroll so that the row being written is in view, and the one after it."""
        if isinstance(self.parent, VerticalScroll):
            self.parent.scroll_to_region(
                Region(0, max(0, self.cursor - 1), 1, 3), animate=False, force=True
            )

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return max(1, len(self.rows))

    def render(self) -> Content:
        names = max((cell_len(one_line(row.name)) for row in self.rows), default=0)
        states = max((cell_len(one_line(row.state)) for row in self.rows), default=0)
        value = max(LEAST_VALUE, self.size.width - names - states - 6)
        return Content("\n").join(
            self._row(row, place == self.cursor, names, value)
            for place, row in enumerate(self.rows)
        )

    def _row(self, row: EntryRow, here: bool, names: int, value: int) -> Content:
        pointer = f"{self.pointer} " if here else "  "
        written = one_line(row.text)
        if cell_len(written) > value:
            written = set_cell_size(written, value - 1) + "…"
        return Content.assemble(
            (pointer, "bold $strong"),
            (set_cell_size(one_line(row.name), names), "bold" if here else ""),
            "  ",
            set_cell_size(written, value),
            "  " if row.state else "",
            (one_line(row.state), row.badge),
        )

    def on_click(self, event: events.Click) -> None:
        event.stop()
        place = event.y - self.gutter.top
        if 0 <= place < len(self.rows):
            self.post_message(self.Went(place))
