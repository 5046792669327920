"""What is to be read? A text over whatever was on the screen, until a key leaves it."""

from __future__ import annotations

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical, VerticalScroll
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from tutor.screens.clean import one_line
from tutor.text import visible


class Told(ModalScreen[None]):
    """Something to read, until a key is pressed that leaves it."""

    CSS_PATH = "dialog.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,enter,q", "leave", show=False, id="told.leave"),
        Binding("space", "read_on", show=False, id="told.read-on"),
    ]

    def __init__(self, title: str, text: str) -> None:
        super().__init__()
        self.heading = one_line(title)
        self.text = visible(text)

    def compose(self) -> ComposeResult:
        with Vertical(id="box") as box:
            box.border_title = Content(self.heading)
            with VerticalScroll(id="told-scroll"):
                yield Static(Content(self.text), id="told")
            yield Static(Content("arrows and space scroll, escape leaves it"), id="dialog-keys")

    def on_mount(self) -> None:
        self.query_one("#told-scroll").focus()

    def action_read_on(self) -> None:
        """A page on; from the end the text is left."""
        text = self.query_one("#told-scroll", VerticalScroll)
        if text.scroll_offset.y >= text.max_scroll_y:
            self.dismiss(None)
        else:
            text.scroll_page_down(animate=False)

    def action_leave(self) -> None:
        self.dismiss(None)
