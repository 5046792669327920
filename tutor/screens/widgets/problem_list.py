"""Which row of the list is at hand? Row by row, page by page, and from set to set."""

from __future__ import annotations

from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.message import Message
from textual.widgets import OptionList


class ProblemList(OptionList):
    """Rows under headings that cannot be chosen. Left and right go from heading to heading."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("left", "set(-1)", show=False, id="list.set-before"),
        Binding("right", "set(1)", show=False, id="list.set-after"),
        Binding("space", "read_on", show=False, id="list.read-on"),
    ]

    class ReadOn(Message):
        """More of what is told of the row at hand is wanted."""

    def action_set(self, step: int) -> None:
        """To the first problem of the set before or after; from within a set first to its own."""
        firsts = [
            i
            for i in range(1, self.option_count)
            if self.get_option_at_index(i - 1).disabled and not self.get_option_at_index(i).disabled
        ]
        here = self.highlighted or 0
        ways = [i for i in firsts if (i - here) * step > 0]
        if ways:
            self.highlighted = ways[0] if step > 0 else ways[-1]
            heading = self.highlighted - 1
            self.call_after_refresh(self._show_from, heading)

    def _show_from(self, row: int) -> None:
        """Show the heading as the first row, as far as the list goes."""
        self.scroll_to(y=row, animate=False)

    def action_read_on(self) -> None:
        self.post_message(self.ReadOn())
