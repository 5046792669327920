"""What is typed or pasted beside a drawing or a table? A line that tells of every change."""

from __future__ import annotations

from dataclasses import dataclass

from textual import events
from textual.message import Message
from textual.widgets import Input

from tutor.screens.typed_text import typed, without_remnants
from tutor.screens.widgets.line_input import LineInput


class PasteLine(LineInput):
    """A line that posts what stands in it, and several pasted lines at once."""

    @dataclass
    class Typing(Message):
        """The line now reads `text`."""

        text: str

    @dataclass
    class Pasted(Message):
        """Several lines were pasted; nothing of them is in the line."""

        lines: tuple[str, ...]

    def on_input_changed(self, event: Input.Changed) -> None:
        self.post_message(self.Typing(self.value))

    def _on_paste(self, event: events.Paste) -> None:
        lines = [line for line in event.text.splitlines() if line.strip()]
        if len(lines) < 2 and "\t" not in event.text:
            return
        event.stop()
        event.prevent_default()
        kept = tuple(clean_row(line) for line in lines)
        self.post_message(self.Pasted(kept))


def clean_row(line: str) -> str:
    """A pasted row without control characters; its tabs part columns and stay."""
    return "\t".join(typed(without_remnants(cell))[0] for cell in line.split("\t"))
