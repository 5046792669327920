"""What is typed? One line, with its history, its marked mistake, and nothing in it nobody typed."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import ClassVar

from rich.cells import cell_len
from rich.highlighter import Highlighter
from rich.text import Text
from textual import events
from textual.binding import Binding, BindingType
from textual.message import Message
from textual.widgets import Input
from textual.widgets.input import Selection

from tutor.screens.typed_text import typed, without_remnants

LONGEST = 4000
MOST_SAID = 12
BEGINNINGS = frozenset("-−+(√Σ[")
"""What a line may begin with beside letters and figures."""
REMNANTS = (
    "Left out: codes that the terminal sent for the mouse or the keyboard, which nobody typed."
)


def pass_on_alt(event: events.Key) -> None:
    """A letter with alt is no text: it goes on to the screen, as escape and a letter do."""
    if event.key.startswith("alt+"):
        event.prevent_default()


def alike(texts: Sequence[str]) -> str:
    """The beginning that all texts share."""
    columns = itertools.takewhile(lambda chars: len(set(chars)) == 1, zip(*texts, strict=False))
    return "".join(chars[0] for chars in columns)


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
        Binding("tab", "complete", show=False, id="line.complete"),
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
    class Lines(Message):
        """Several lines were pasted, the first behind what stood in the line; `said` of the paste.

        `open_end` is whether the last of them was left without an end, as a line that is being typed.
        """

        lines: tuple[str, ...]
        said: str = ""
        open_end: bool = False

    class Emptied(Message):
        """What stood in the line was deleted."""

    class Blank(Message):
        """The line was entered with nothing in it."""

    @dataclass
    class Said(Message):
        """Something about the typing itself."""

        text: str

    def __init__(self, *, id: str | None = None) -> None:
        self._marked = Marked()
        super().__init__(
            id=id, compact=True, select_on_focus=False, max_length=LONGEST, highlighter=self._marked
        )
        self.cursor_blink = (
            False  # over a slow link, and for a braille display, nothing moves unasked
        )
        self.past: list[str] = []
        self._place = 0
        self._draft = ""
        self._left = ""
        self._refused = ""
        self.replaced = ""
        self.complete: Callable[[str], Sequence[str]] = lambda text: ()

    def action_complete(self) -> None:
        """Complete a word; where there is none to complete, on to the next part of the screen."""
        ways = self.complete(self.value) if self.cursor_position == len(self.value) else ()
        longer = alike(ways)
        if not ways:
            self.screen.focus_next()
        elif len(longer) > len(self.value):
            self.value = longer
            self.cursor_position = len(longer)
        elif len(ways) > 1:
            self.post_message(self.Said(f"It goes on as: {', '.join(ways[:MOST_SAID])}."))

    def taken(self) -> None:
        """The line was right: it is cleared for the next one."""
        with self.prevent(Input.Changed):
            self.value = ""
        self.mark(None)

    def refused(self) -> None:
        """What was entered stays, to be changed; a next line typed at once comes in its place."""
        self.cursor_position = len(self.value)
        self._refused = self.value
        self.replaced = ""

    def _watch_selection(self, selection: Selection) -> None:
        super()._watch_selection(selection)
        self._refused = ""

    def _make_room(self, text: str) -> None:
        """A refused line goes for one that begins right behind it; anything else changes it."""
        begins = text[:1].isalnum() or text[:1] in BEGINNINGS
        if text and begins and self._refused and self._refused == self.value:
            self.replaced = self._refused
            with self.prevent(Input.Changed):
                self.value = ""
            self.mark(None)
        self._refused = ""

    def go_on_with(self, text: str) -> None:
        """Take what was typed where the focus was elsewhere, as if it had been here."""
        self._make_room(text)
        self.focus()
        self.insert_text_at_cursor(text)

    def leave(self) -> None:
        """What stands here means nothing: it may be mended, and goes once something else is done."""
        self._left = self.value
        self.refused()

    def go_on(self) -> None:
        """Something else was done: a text that meant nothing is in the history only."""
        if self._left and self.value == self._left:
            self.taken()
        self._left = ""

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
        if not self.value:
            self.post_message(self.Emptied())

    async def _on_key(self, event: events.Key) -> None:
        pass_on_alt(event)
        self._make_room((event.character or "") if event.is_printable else "")

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        text = self.value
        kept = without_remnants(text)
        if kept != text:
            self.value = kept
            self.post_message(self.Said(REMNANTS))
            return
        if not text.strip():
            self.post_message(self.Blank())
            return
        self.remember(text)
        self.post_message(self.Entered(text))

    def remember(self, text: str) -> None:
        """The last line of the history, unless it is that already."""
        if not self.past or self.past[-1] != text:
            self.past.append(text)
        self._place = len(self.past)

    def begin(self, text: str) -> None:
        """Put this into the line, the cursor behind it."""
        if self.value != text:
            self.value = text
            self.cursor_position = len(text)
        self.focus()

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
        self.take_paste(event)

    def take_paste(self, event: events.Paste) -> None:
        """Only characters come in from a paste; several lines are entered one after the other, but for
        a last one without its end, which waits for enter."""
        lines = [line for line in event.text.splitlines() if line.strip()]
        event.stop()
        event.prevent_default()
        if not lines:
            return
        kept = [typed(without_remnants(line))[0] for line in lines]
        dropped = [typed(line)[1] for line in lines]
        self._make_room(kept[0])
        self.replace(kept[0], *self.selection)
        left_out = ", ".join(dict.fromkeys(", ".join(filter(None, dropped)).split(", ")))
        said = f"Left out of the paste: {left_out}." if left_out else ""
        if len(lines) > 1:
            first = self.value
            self.value = ""
            pasted = (first, *(line[:LONGEST] for line in kept[1:]))
            open_end = not event.text.endswith(("\n", "\r"))
            self.post_message(self.Lines(pasted, said, open_end))
        elif said:
            self.post_message(self.Said(said))
