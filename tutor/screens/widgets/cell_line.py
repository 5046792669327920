"""What is typed into the row at hand? A line whose up and down go to the rows beside it."""

from __future__ import annotations

from dataclasses import dataclass

from textual.message import Message
from textual.widgets import Input
from textual.widgets.input import Selection

from tutor.screens.typed_text import without_remnants
from tutor.screens.widgets.line_input import REMNANTS, LineInput
from tutor.screens.widgets.paste_line import PasteLine


class CellLine(PasteLine):
    """Enter posts `Entered`, for a blank line too; up and down post `Moved`."""

    @dataclass
    class Moved(Message):
        """To another row: so many further."""

        step: int

    def stand(self, text: str) -> None:
        """What stands in the row, all of it selected, so that typing replaces it."""
        self.value = text
        self.selection = Selection(0, len(text))

    def action_history(self, step: int) -> None:
        self.post_message(self.Moved(step))

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        event.prevent_default()
        kept = without_remnants(self.value)
        if kept != self.value:
            self.value = kept
            self.post_message(self.Said(REMNANTS))
            return
        self.post_message(LineInput.Entered(kept))
