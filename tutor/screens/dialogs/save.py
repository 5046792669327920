"""Into which file? A path to write, asked about where something stands there already."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Button, Input, Static

from tutor.screens.clean import one_line
from tutor.truss_file import Saved, save_text

Write = Callable[[str, bool], Saved]
"""Writes into the file named, with True over what is there; says what came of it."""


class SaveDialog(ModalScreen[str | None]):
    """Writes a text, or what `Write` writes, and gives its path; None where the student leaves it.

    Nothing is written over unasked: what is there already is told, the name stays for mending, and
    a button of its own writes over it.
    """

    CSS_PATH = "dialog.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", show=False, id="save.leave"),
    ]

    def __init__(
        self, text: str | Write, suggested: str, heading: str = "Save as Markdown"
    ) -> None:
        super().__init__()
        self.heading = one_line(heading)
        self.write: Write = text if callable(text) else partial(save_text, text)
        self.suggested = one_line(suggested)

    def compose(self) -> ComposeResult:
        with Vertical(id="box") as box:
            box.border_title = Content(self.heading)
            yield Static(Content("File name, or a whole path:"))
            yield Input(self.suggested, id="path", compact=True, select_on_focus=False)
            yield Static(Content(""), id="complaint")
            with Horizontal(id="buttons"):
                yield Button(Content("Save"), id="do-save", compact=True)
                yield Button(Content("Leave it"), id="leave", compact=True)
                yield Button(Content("Write over it"), id="over", compact=True)
            yield Static(Content("enter saves, escape leaves it"), id="dialog-keys")

    def on_mount(self) -> None:
        self.query_one("#over", Button).display = False
        self.query_one(Input).focus()

    def on_input_changed(self, event: Input.Changed) -> None:
        event.stop()
        self.query_one("#over", Button).display = False

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        self._save()

    def on_button_pressed(self, event: Button.Pressed) -> None:
        event.stop()
        if event.button.id == "leave":
            self.dismiss(None)
        else:
            self._save(over=event.button.id == "over")

    def _save(self, over: bool = False) -> None:
        name = self.query_one(Input).value.strip()
        if not name:
            self._complain("A file name is wanted, like lamp-arm.md.")
            return
        outcome = self.write(name, over)
        if outcome.path is not None:
            self.dismiss(str(outcome.path))
            return
        self.query_one("#over", Button).display = outcome.over is not None
        self._complain(outcome.said)

    def _complain(self, text: str) -> None:
        self.query_one("#complaint", Static).update(Content(one_line(text)))
        self.query_one(Input).focus()

    def action_leave(self) -> None:
        self.dismiss(None)
