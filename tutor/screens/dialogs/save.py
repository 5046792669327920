"""Into which file? A path to write, asked again where something stands there already."""

from __future__ import annotations

from pathlib import Path
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Button, Input, Static

from tutor.records.disk import reason, write_new
from tutor.screens.clean import one_line


class Save(ModalScreen[str | None]):
    """Writes `text` to a new file and gives its path; None where the student leaves it.

    Nothing is ever overwritten: a name that is taken is said to be so and stays for mending.
    """

    CSS_PATH = "dialog.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", show=False, id="save.leave"),
    ]

    def __init__(self, text: str, suggested: str, heading: str = "Save as Markdown") -> None:
        super().__init__()
        self.heading = one_line(heading)
        self.text = text
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
            yield Static(Content("enter saves, escape leaves it"), id="dialog-keys")

    def on_mount(self) -> None:
        self.query_one(Input).focus()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        self._save()

    def on_button_pressed(self, event: Button.Pressed) -> None:
        event.stop()
        if event.button.id == "do-save":
            self._save()
        else:
            self.dismiss(None)

    def _save(self) -> None:
        name = self.query_one(Input).value.strip()
        if not name:
            self._complain("A file name is wanted, like lamp-arm.md.")
            return
        try:
            path = Path(name).expanduser().absolute()
            write_new(path, self.text.encode("utf-8"))
        except FileExistsError:
            self._complain(
                "There is such a file already, and it stays as it is: choose another name."
            )
        except OSError as refused:
            self._complain(f"It could not be written: {reason(refused)}.")
        except (ValueError, RuntimeError):
            self._complain("This name cannot be used for a file.")
        else:
            self.dismiss(str(path))

    def _complain(self, text: str) -> None:
        self.query_one("#complaint", Static).update(Content(one_line(text)))
        self.query_one(Input).focus()

    def action_leave(self) -> None:
        self.dismiss(None)
