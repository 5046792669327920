"""Which way is the arrow drawn? One press of an arrow key draws it, enter keeps it."""

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
from tutor.screens.widgets.flow import Rows, at, flow

TOO_FLAT = 1e-9


@dataclass(frozen=True)
class ArrowWay:
    """One way an arrow may be drawn: its key, its words, its direction (x right, y up)."""

    key: str
    words: str
    x: float
    y: float

    @property
    def sign(self) -> str:
        """An arrow character, in ASCII too."""
        if abs(self.x) >= abs(self.y):
            return "->" if self.x > 0 else "<-"
        return "^" if self.y > 0 else "v"


class SensePicker(Widget, can_focus=True):
    """The ways in a row. Arrow keys draw, enter keeps, a click does both."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("left", "draw(-1, 0)", show=False, id="sense.left"),
        Binding("right", "draw(1, 0)", show=False, id="sense.right"),
        Binding("up", "draw(0, 1)", show=False, id="sense.up"),
        Binding("down", "draw(0, -1)", show=False, id="sense.down"),
        Binding("enter,space", "keep", show=False, id="sense.keep"),
    ]

    ways: reactive[tuple[ArrowWay, ...]] = reactive((), layout=True)
    drawn: reactive[str | None] = reactive(None)

    @dataclass
    class Drawn(Message):
        """The arrow is to be shown this way."""

        key: str

    @dataclass
    class Kept(Message):
        """The arrow is drawn this way."""

        key: str

    @dataclass
    class Said(Message):
        """Why a key drew nothing."""

        text: str

    def offer(self, ways: Sequence[ArrowWay]) -> None:
        """Ask for one of these ways."""
        self.ways = tuple(ways)
        self.drawn = None

    def _rows(self, width: int) -> Rows:
        texts = [
            f"{way.sign} [{one_line(way.words)}]"
            if way.key == self.drawn
            else f"{way.sign}  {one_line(way.words)} "
            for way in self.ways
        ]
        tail = "enter keeps it" if self.drawn else "draw it with an arrow key"
        return flow([*texts, f"  {tail}"], width, gap=3)

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
                chosen = piece.item < len(self.ways) and self.ways[piece.item].key == self.drawn
                quiet = piece.item >= len(self.ways)
                parts.append((piece.text, "bold" if chosen else "$quiet" if quiet else ""))
                x = piece.x + piece.wide
            lines.append(Content.assemble(*parts))
        return Content("\n").join(lines)

    def action_draw(self, x: int, y: int) -> None:
        """Draw the way that points most toward (x, y)."""
        parts = {way.key: way.x * x + way.y * y for way in self.ways}
        best = max(parts, key=lambda key: parts[key], default=None)
        if best is None or parts[best] <= TOO_FLAT:
            words = " or ".join(one_line(way.words) for way in self.ways)
            self.post_message(self.Said(f"This one acts {words}."))
            return
        self._draw(best)

    def _draw(self, key: str) -> None:
        self.drawn = key
        self.refresh(layout=True)
        self.post_message(self.Drawn(key))

    def action_keep(self) -> None:
        if self.drawn is None:
            self.post_message(self.Said("Draw the arrow first, with an arrow key."))
        else:
            self.post_message(self.Kept(self.drawn))

    def on_click(self, event: events.Click) -> None:
        event.stop()
        rows = self._rows(self.size.width)
        index = at(rows, event.x - self.gutter.left, event.y - self.gutter.top)
        if index is not None and index < len(self.ways):
            self._draw(self.ways[index].key)
            self.action_keep()
