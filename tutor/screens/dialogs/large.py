"""What does a picture look like with the whole window to itself?"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from tutor.screens.clean import one_line
from tutor.screens.widgets.figure_pane import Drawing

if TYPE_CHECKING:
    from tutor.figure import Figure

KEYS = "escape or enter leaves it"
SEVERAL = "f, left and right: the others; escape or enter leaves it"


class Large(ModalScreen[int]):
    """Pictures, one at a time; left with the place of the one last looked at."""

    CSS_PATH = "dialog.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,enter,q,v,alt+v", "leave", show=False, id="large.leave"),
        Binding("right,f,alt+f,space", "turn(1)", show=False, id="large.next"),
        Binding("left", "turn(-1)", show=False, id="large.previous"),
    ]

    def __init__(self, pictures: Sequence[tuple[str, Figure]], place: int, glyphs: str) -> None:
        super().__init__()
        self.pictures = tuple(pictures)
        self.place = place % len(self.pictures)
        self.glyphs = glyphs

    def compose(self) -> ComposeResult:
        yield Static(id="large-title")
        with VerticalScroll(id="large-scroll", can_focus=self.glyphs == "words"):
            yield Drawing()
        yield Static(Content(SEVERAL if len(self.pictures) > 1 else KEYS), id="large-keys")

    def on_mount(self) -> None:
        self.action_turn(0)

    def action_turn(self, step: int) -> None:
        """Another of the pictures."""
        self.place = (self.place + step) % len(self.pictures)
        title, figure = self.pictures[self.place]
        many = len(self.pictures)
        counted = f" ({self.place + 1} of {many})" if many > 1 else ""
        self.query_one("#large-title", Static).update(Content(f"{one_line(title)}{counted}"))
        self.query_one(Drawing).show(figure, self.glyphs)

    def action_leave(self) -> None:
        self.dismiss(self.place)

    def on_click(self) -> None:
        self.action_leave()
