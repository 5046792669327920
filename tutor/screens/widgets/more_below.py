"""Is this all? A part that scrolls, and says in its border how much is below and what shows it."""

from __future__ import annotations

from textual.containers import VerticalScroll
from textual.content import Content
from textual.geometry import Size


class MoreBelow(VerticalScroll):
    """Scrolls up and down; its border says how many rows are below those in sight, where any are."""

    def watch_scroll_y(self, old_value: float, new_value: float) -> None:
        super().watch_scroll_y(old_value, new_value)
        self._say()

    def watch_virtual_size(self, size: Size) -> None:
        self.call_after_refresh(self._say)

    def on_resize(self) -> None:
        self.call_after_refresh(self._say)

    def _say(self) -> None:
        rows = round(self.max_scroll_y - self.scroll_y)
        row = "row" if rows == 1 else "rows"
        self.border_subtitle = Content(f"{rows} more {row} below: down" if rows > 0 else "")
