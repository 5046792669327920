"""Where is the newest hint? The hints given, which bring their end into view when they grow."""

from __future__ import annotations

from textual import events
from textual.widget import Widget
from textual.widgets import Static


class HintsPane(Static):
    """Text inside a scrolled part. Its size changes once it is laid out, and only then can its end
    be found."""

    def on_resize(self, event: events.Resize) -> None:
        scroll = self.parent
        if isinstance(scroll, Widget):
            bottom = self.virtual_region.bottom
            scroll.scroll_to(y=max(0, bottom - scroll.size.height), animate=False)
