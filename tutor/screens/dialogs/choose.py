"""Which one? A short question with a few answers, over whatever was on the screen."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical, VerticalScroll
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from tutor.screens.clean import one_line
from tutor.screens.widgets.choices import Choices, OneOption, Picked
from tutor.screens.widgets.line_input import LineInput
from tutor.text import visible

LEAVING = ("escape", "q")


class Choose(ModalScreen[str | None]):
    """The key of the answer chosen; None where the student leaves it.

    A small letter names none of the answers: it begins what is typed into the line below, if there is
    one, and leaves the question.
    """

    CSS_PATH = "dialog.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(",".join(LEAVING), "leave", show=False, id="dialog.leave"),
    ]

    def __init__(self, title: str, question: str, choices: Sequence[OneOption]) -> None:
        super().__init__()
        self.heading = one_line(title)
        self.question = visible(question)
        self.choices = tuple(choices)

    def compose(self) -> ComposeResult:
        with Vertical(id="box") as box:
            box.border_title = Content(self.heading)
            with VerticalScroll(id="question-scroll", can_focus=False):
                yield Static(Content(self.question), id="question")
            with VerticalScroll(id="choices-scroll", can_focus=False):
                yield Choices(id="dialog-choices")
            leave = Content("enter chooses, escape leaves it")
            yield Static(leave, id="dialog-keys")

    def on_mount(self) -> None:
        choices = self.query_one(Choices)
        choices.offer(self.choices)
        choices.focus()

    def on_key(self, event: events.Key) -> None:
        character, below = event.character or "", self.app.screen_stack[-2]
        line = next(iter(below.query(LineInput)), None)
        if line is not None and character.islower() and event.key not in LEAVING:
            event.stop()
            event.prevent_default()
            self.dismiss(None)
            line.focus()
            line.insert_text_at_cursor(character)

    def on_picked(self, message: Picked) -> None:
        message.stop()
        self.dismiss(message.keys[0])

    def action_leave(self) -> None:
        self.dismiss(None)
