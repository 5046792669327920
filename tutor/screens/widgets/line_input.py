"""What is typed? One line, with its history, its marked mistake, and nothing in it nobody typed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from rich.cells import cell_len
from rich.highlighter import Highlighter
from rich.text import Text
from textual import events
from textual.binding import Binding, BindingType
from textual.message import Message
from textual.widgets import Input

from tutor.screens.clean import typed, without_remnants

LONGEST = 4000
REMNANTS = (
    "Left out: codes that the terminal sent for the mouse or the keyboard, which nobody typed."
)


def pass_on_alt(event: events.Key) -> None:
    """A letter with alt is no text: it goes on to the screen, as escape and a letter do."""
    if event.key.startswith("alt+"):
        event.prevent_default()


class Marked(Highlighter):
    """Shows one stretch of the line, the mistake, underlined and bold."""

    def __init__(self) -> None:
        self.span: tuple[int, int] | None = None

    def highlight(self, text: Text) -> None:
        if self.span is not None:
            text.stylize("bold underline", *self.span)


class LineInput(Input):
    """One line of text. Enter posts `Entered`; the text stays until `taken` is called."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("up", "history(-1)", show=False, id="line.earlier"),
        Binding("down", "history(1)", show=False, id="line.later"),
    ]

    @dataclass
    class Entered(Message):
        """The line was entered as `text`."""

        text: str

    @dataclass
    class Marks(Message):
        """The marked stretch moved or went: its first cell and its width in view, or None."""

        cells: tuple[int, int] | None

    @dataclass
    class Said(Message):
        """Something about the typing itself."""

        text: str

    def __init__(self, *, id: str | None = None) -> None:
        self._marked = Marked()
        super().__init__(
            id=id, compact=True, select_on_focus=False, max_length=LONGEST, highlighter=self._marked
        )
        self.past: list[str] = []
        self._place = 0
        self._draft = ""

    def taken(self) -> None:
        """The line was right: it is cleared for the next one."""
        self.value = ""

    def mark(self, span: tuple[int, int] | None) -> None:
        """Mark the characters from `span[0]` up to `span[1]`; at least one; None for nothing."""
        if span is not None:
            start = max(0, min(span[0], len(self.value)))
            span = (start, max(start + 1, min(span[1], len(self.value) + 1)))
        self._marked.span = span
        self.refresh()
        self._tell()

    def _tell(self) -> None:
        span = self._marked.span
        if span is None:
            self.post_message(self.Marks(None))
            return
        before = cell_len(self.value[: span[0]]) - round(self.scroll_offset.x)
        wide = max(1, cell_len(self.value[span[0] : span[1]]))
        first, last = max(0, before), min(before + wide, self.size.width)
        self.post_message(self.Marks((first, last - first) if last > first else None))

    def watch_scroll_x(self, old_value: float, new_value: float) -> None:
        super().watch_scroll_x(old_value, new_value)
        if self._marked.span is not None:
            self._tell()

    def on_input_changed(self, event: Input.Changed) -> None:
        """A changed line is no longer the one that was marked."""
        event.stop()
        if self._marked.span is not None:
            self.mark(None)

    async def _on_key(self, event: events.Key) -> None:
        pass_on_alt(event)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        text = self.value
        kept = without_remnants(text)
        if kept != text:
            self.value = kept
            self.post_message(self.Said(REMNANTS))
            return
        if not text.strip():
            return
        if not self.past or self.past[-1] != text:
            self.past.append(text)
        self._place = len(self.past)
        self.post_message(self.Entered(text))

    def recall(self, lines: Sequence[str]) -> None:
        """Begin with these lines as the history, the oldest first."""
        self.past = [typed(line)[0] for line in lines]
        self._place = len(self.past)

    def action_history(self, step: int) -> None:
        """The line before or after in the history; the one being typed is not lost."""
        place = self._place + step
        if not 0 <= place <= len(self.past):
            return
        if self._place == len(self.past):
            self._draft = self.value
        self._place = place
        self.value = self._draft if place == len(self.past) else self.past[place]
        self.cursor_position = len(self.value)

    def _on_paste(self, event: events.Paste) -> None:
        """Only characters come in from a paste; a second line is told of, not swallowed."""
        lines = [line for line in event.text.splitlines() if line.strip()]
        event.stop()
        event.prevent_default()
        if not lines:
            return
        kept, dropped = typed(without_remnants(lines[0]))
        self.replace(kept, *self.selection)
        if dropped:
            self.post_message(self.Said(f"Left out of the paste: {dropped}."))
        if len(lines) > 1:
            self.post_message(
                self.Said("Only the first line of the paste was put in; enter one line at a time.")
            )
