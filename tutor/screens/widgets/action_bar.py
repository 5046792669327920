"""What can be done next? The deeds in reach with their letters, for keyboard and mouse."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from textual import events
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.geometry import Size
from textual.message import Message
from textual.reactive import reactive
from textual.widget import Widget

from tutor.screens.clean import one_line
from tutor.screens.deeds import Deed
from tutor.screens.widgets.flow import Rows, at, beside, flow


@dataclass
class Asked(Message):
    """A deed was asked for on the bar: its id."""

    deed: str


class ActionBar(Widget, can_focus=True):
    """The deeds in a row, or more where they do not fit; letters act while no text is typed."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("left", "move(-1)", show=False, id="bar.previous"),
        Binding("right", "move(1)", show=False, id="bar.next"),
        Binding("up", "rise(-1)", show=False, id="bar.above"),
        Binding("down", "rise(1)", show=False, id="bar.below"),
        Binding("enter,space", "ask", show=False, id="bar.ask"),
    ]

    deeds: reactive[tuple[Deed, ...]] = reactive((), layout=True)
    cursor: reactive[int] = reactive(0)
    typing: reactive[bool] = reactive(False, layout=True)

    def offer(self, deeds: Sequence[Deed], typing: bool) -> None:
        """Show these deeds; `typing` says that letters now go into a line, so that escape leads."""
        self.deeds = tuple(deeds)
        self.typing = typing
        self.cursor = min(self.cursor, max(0, len(deeds) - 1))

    def _rows(self, width: int) -> Rows:
        lead = ["Esc, then"] if self.typing else ["Keys:"]
        return flow(
            [*lead, *(one_line(f"{deed.letter} {deed.label}") for deed in self.deeds)], width, gap=2
        )

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return len(self._rows(width))

    def get_content_width(self, container: Size, viewport: Size) -> int:
        return container.width

    def render(self) -> Content:
        lines = []
        for row in self._rows(self.size.width):
            parts: list[Content | tuple[str, str] | str] = []
            x = 0
            for piece in row:
                parts.append(" " * (piece.x - x))
                parts += self._styled(piece.item - 1, piece.text)
                x = piece.x + piece.wide
            lines.append(Content.assemble(*parts))
        return Content("\n").join(lines)

    def _styled(self, index: int, text: str) -> list[tuple[str, str]]:
        if index < 0:
            return [(text, "$quiet")]
        if index == self.cursor and self.has_focus:
            return [(text, "bold reverse")]
        return [(text[:1], "bold underline $strong"), (text[1:], "")]

    def on_focus(self) -> None:
        self.refresh()

    def on_blur(self) -> None:
        self.refresh()

    def action_move(self, step: int) -> None:
        if self.deeds:
            self.cursor = (self.cursor + step) % len(self.deeds)

    def action_rise(self, step: int) -> None:
        self.cursor = max(0, beside(self._rows(self.size.width), self.cursor + 1, step) - 1)

    def action_ask(self) -> None:
        if self.deeds:
            self.post_message(Asked(self.deeds[self.cursor].id))

    def on_click(self, event: events.Click) -> None:
        event.stop()
        rows = self._rows(self.size.width)
        index = at(rows, event.x - self.gutter.left, event.y - self.gutter.top)
        if index is not None and index > 0:
            self.post_message(Asked(self.deeds[index - 1].id))
