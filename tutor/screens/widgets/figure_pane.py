"""What does it look like? Pictures of figures in characters, or in words, as large as the pane."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, cast

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.geometry import Size
from textual.message import Message
from textual.reactive import reactive
from textual.widget import Widget

from tutor.screens.clean import one_line

if TYPE_CHECKING:
    from tutor.figure import Figure, Glyphs, Role

STYLES: Mapping[Role, str] = {
    "member": "$ink",
    "member-tension": "bold $tension",
    "member-compression": "bold $compression",
    "member-zero": "$nothing",
    "joint": "bold $ink",
    "support": "$quiet",
    "load": "bold $load",
    "reaction": "$reaction",
    "unknown": "$unknown",
    "dimension": "$quiet",
    "slope": "$quiet",
    "turning": "$quiet",
    "moment-point": "bold $lit",
    "line-of-action": "$quiet",
    "moment-arm": "bold $lit",
    "note": "$ink",
    "highlight": "bold $lit",
}
SMALLEST = (12, 4)


class Drawing(Widget):
    """One figure in the size it is given; in words where the glyphs are words or room is short."""

    figure: reactive[Figure | None] = reactive(None)
    glyphs: reactive[str] = reactive("braille", layout=True)

    def show(self, figure: Figure | None, glyphs: str) -> None:
        """Show this figure with these characters."""
        changed = figure != self.figure
        self.figure, self.glyphs = figure, glyphs
        if changed and glyphs == "words":
            self.refresh(layout=True)
        self.set_class(glyphs == "words", "-words")

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        if self.glyphs != "words":
            return container.height
        return super().get_content_height(container, viewport, width)

    def render(self) -> Content:
        if self.figure is None:
            return Content("")
        wide, high = self.size.width, self.size.height
        if self.glyphs == "words":
            from tutor.figure import to_words  # only where there is a picture

            return Content("\n").join(Content(s) for s in to_words(self.figure))
        if wide < SMALLEST[0] or high < SMALLEST[1]:
            return Content("(no room to draw)"[:wide])
        return cells_content(self.figure, wide, high, cast("Glyphs", self.glyphs))


def cells_content(figure: Figure, columns: int, rows: int, glyphs: Glyphs) -> Content:
    """A figure as styled text of `rows` lines."""
    from tutor.figure import to_cells  # only where there is a picture

    lines = []
    for runs in to_cells(figure, columns, rows, glyphs).runs:
        lines.append(Content.assemble(*((text, STYLES.get(role, "")) for text, role in runs)))
    return Content("\n").join(lines)


class FigurePane(VerticalScroll, can_focus=False):
    """One drawing, or two side by side where there is room, under their titles."""

    shown: tuple[str, Figure] | None = None

    class Enlarged(Message):
        """The picture was clicked: it is wanted larger."""

        def __init__(self, picture: tuple[str, Figure]) -> None:
            super().__init__()
            self.picture = picture

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self.drawing = Drawing(id="drawing")

    def compose(self) -> ComposeResult:
        yield self.drawing

    def on_click(self) -> None:
        if self.shown is not None:
            self.post_message(self.Enlarged(self.shown))

    def show(self, title: str, figure: Figure | None, glyphs: str) -> None:
        """Show one figure under its title."""
        self.border_title = Content(one_line(title))
        self.shown = None if figure is None else (title, figure)
        self.drawing.show(figure, glyphs)
        self.can_focus = glyphs == "words"


def titled(pictures: Sequence[tuple[str, Figure]], place: int) -> tuple[str, Figure]:
    """The picture at `place`, going round, with how many there are and the key that enlarges it."""
    title, figure = pictures[place % len(pictures)]
    counted = f"{place % len(pictures) + 1} of {len(pictures)}, " if len(pictures) > 1 else ""
    return f"{title} ({counted}v: large)", figure
