"""Which row of the list is at hand? Row by row, page by page, from set to set, and by letters of its title."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import ClassVar

from textual import events
from textual.binding import Binding, BindingType
from textual.message import Message
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from tutor.screens.entry import ProblemRow
from tutor.screens.rows import Row

MOST_SOUGHT = 60
"""So many characters of a title are looked for."""


def _files(entries: Sequence[ProblemRow | None]) -> list[Path | None]:
    """The files that rows are of, by which they are known again."""
    return [None if entry is None else entry.path for entry in entries]


class ProblemList(OptionList):
    """Rows under headings that cannot be chosen. Left and right go from heading to heading.

    Letters do nothing but find a title, so that a word typed here opens nothing.
    """

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("left", "set(-1)", show=False, id="list.set-before"),
        Binding("right", "set(1)", show=False, id="list.set-after"),
        Binding("space", "read_on", show=False, id="list.read-on"),
    ]

    entries: tuple[ProblemRow | None, ...] = ()
    """What each row is of; None for headings."""
    put_at: int | None = None
    """The row that the program put at hand; another one at hand was chosen by the student."""

    sought: str = ""
    """The letters typed so far to find a title."""

    class ReadOn(Message):
        """More of what is told of the row at hand is wanted."""

    class Sought(Message):
        """A title with this in it was looked for; what was `found`, None where there is none."""

        def __init__(self, text: str, found: ProblemRow | None) -> None:
            super().__init__()
            self.text, self.found = text, found

    @property
    def chosen_by_hand(self) -> bool:
        """Whether the student chose the row at hand."""
        return self.highlighted != self.put_at

    def put(self, row: int | None) -> None:
        """Put a row at hand, or leave it with the one that is, for as long as the student chooses none."""
        if row is not None:
            self.highlighted = row
        self.put_at = self.highlighted

    @property
    def at_hand(self) -> ProblemRow | None:
        """What the row at hand is of."""
        return self.entry(self.highlighted or 0)

    def entry(self, row: int) -> ProblemRow | None:
        """What a row is of; None for a heading."""
        return self.entries[row] if 0 <= row < len(self.entries) else None

    def show_rows(self, rows: Sequence[Row], at: Path | None = None) -> None:
        """Let the rows say something else, each in its place. Where they are others than before, the one
        of the file `at`, or the one that was at hand, stays at hand; else it is the first."""
        entries = tuple(entry for _, entry in rows)
        if self.entries and _files(self.entries) == _files(entries):
            for row, (said, _) in enumerate(rows):
                self.replace_option_prompt_at_index(row, said)
            self.entries = entries
            return
        chosen, here = self.chosen_by_hand, self.at_hand
        at = here.path if at is None and here is not None else at
        self.entries = entries
        self.clear_options()
        self.add_options([Option(said, disabled=entry is None) for said, entry in rows])
        first = next((row for row, entry in enumerate(entries) if entry), None)
        places = (row for row, entry in enumerate(entries) if entry and at and entry.path == at)
        self.put(next(places, first))
        if chosen:
            self.put_at = None

    def action_set(self, step: int) -> None:
        """To the first problem of the set before or after; from within a set first to its own."""
        firsts = [
            i
            for i in range(1, self.option_count)
            if self.get_option_at_index(i - 1).disabled and not self.get_option_at_index(i).disabled
        ]
        here = self.highlighted or 0
        ways = [i for i in firsts if (i - here) * step > 0]
        if ways:
            self.highlighted = ways[0] if step > 0 else ways[-1]
            heading = self.highlighted - 1
            self.call_after_refresh(self._show_from, heading)

    def _show_from(self, row: int) -> None:
        """Show the heading as the first row, as far as the list goes."""
        self.scroll_to(y=row, animate=False)

    def action_read_on(self) -> None:
        self.post_message(self.ReadOn())

    def on_key(self, event: events.Key) -> None:
        """A letter or a figure goes on with what is sought, or begins it; any other key ends that."""
        character = event.character or ""
        if event.key == "backspace" and self.sought:
            self.seek(self.sought[:-1])
        elif event.is_printable and (character.isalnum() or (self.sought and character != "?")):
            self.seek(self.sought + character)
        else:
            self.sought = ""
            return
        event.stop()
        event.prevent_default()

    def seek(self, text: str) -> None:
        """To the first title that begins with this, else to one with a word that does, else to one
        with this in it; nowhere where there is none. A set leads to its first problem."""
        self.sought = text = text[:MOST_SOUGHT]
        row = next(self._with(text), None) if text else self.highlighted
        if row is not None:
            self.highlighted = row
        self.post_message(self.Sought(text, None if row is None else self.entry(row)))

    def _with(self, text: str) -> Iterator[int]:
        """The rows whose title, or whose set's, has this in it; those first that begin with it."""
        titles = [
            (row + 1, self._heading(row)) if entry is None else (row, entry.title)
            for row, entry in enumerate(self.entries)
        ]
        said = text.casefold()
        told = [(row, title.casefold()) for row, title in titles if self.entry(row) is not None]
        yield from (row for row, title in told if title.startswith(said))
        yield from (row for row, title in told if f" {said}" in title)
        yield from (row for row, title in told if said in title)

    def _heading(self, row: int) -> str:
        """What stands in a row, as plain text."""
        return str(self.get_option_at_index(row).prompt)

    def on_blur(self) -> None:
        self.sought = ""
