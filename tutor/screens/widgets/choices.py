"""What is chosen? One or several of a few options, by arrows, numbers, names or the mouse."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from textual import events
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.geometry import Region, Size
from textual.message import Message
from textual.reactive import reactive
from textual.widget import Widget

from tutor.screens.clean import one_line
from tutor.screens.widgets.flow import Rows, at, beside, flow

PARTING = frozenset(",;+&")
"""What people write between the numbers of all that they choose."""


@dataclass(frozen=True)
class OneOption:
    """One option: its key, its words, and whether it is the one that stands."""

    key: str
    words: str
    standing: bool = False


@dataclass
class Picked(Message):
    """The student answered: the keys chosen, in the order of the options."""

    keys: tuple[str, ...]


class Choices(Widget, can_focus=True):
    """Options that flow over rows. With `several`, space marks and enter answers with all marked.

    The cursor is a pointer, a mark is [x], the standing option is in square brackets: nothing is
    told by colour alone. With `letters`, capital letters go to the option whose key they are.
    """

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("left", "move(-1)", show=False, id="choices.previous"),
        Binding("right", "move(1)", show=False, id="choices.next"),
        Binding("up", "rise(-1)", show=False, id="choices.above"),
        Binding("down", "rise(1)", show=False, id="choices.below"),
        Binding("home", "go(0)", show=False, id="choices.first"),
        Binding("end", "go(-1)", show=False, id="choices.last"),
        Binding("space", "mark", show=False, id="choices.mark"),
        Binding("enter", "answer", show=False, id="choices.answer"),
    ]

    choices: reactive[tuple[OneOption, ...]] = reactive((), layout=True)
    cursor: reactive[int] = reactive(0)
    marked: reactive[frozenset[str]] = reactive(frozenset())
    several: reactive[bool] = reactive(False, layout=True)

    def __init__(self, *, letters: bool = True, id: str | None = None) -> None:
        super().__init__(id=id)
        self.letters = letters
        self._numbered = False
        self._parted = False
        self._split = False
        self._row: frozenset[str] = frozenset()
        self._begun = 0
        self._typed = ""

    def offer(
        self, choices: Sequence[OneOption], *, several: bool = False, again: bool = False
    ) -> None:
        """Show these options. `again`: it is the question asked before, so that marks and cursor
        stay if its options do."""
        same = again and [c.key for c in choices] == [c.key for c in self.choices]
        self.several = several
        self.choices = tuple(choices)
        self._begun = 0
        self._end_row()
        if not same:
            standing = [i for i, choice in enumerate(choices) if choice.standing]
            self.marked = frozenset()
            self.cursor = standing[0] if standing else 0

    @property
    def rows(self) -> Rows:
        """Where each option stands at the present width."""
        return self._rows(self.size.width)

    def _rows(self, width: int) -> Rows:
        return flow([self._text(i) for i in range(len(self.choices))], width, hang=self._indent)

    @property
    def _indent(self) -> int:
        return 7 if self.several else 3

    def _text(self, index: int) -> str:
        choice = self.choices[index]
        pointer = ">" if index == self.cursor and self.has_focus else " "
        mark = ("[x] " if choice.key in self.marked else "[ ] ") if self.several else ""
        words = one_line(choice.words)
        return f"{pointer}{index + 1} {mark}" + (f"[{words}]" if choice.standing else words)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return max(1, len(self._rows(width)))

    def get_content_width(self, container: Size, viewport: Size) -> int:
        return container.width

    def render(self) -> Content:
        lines = []
        for row in self.rows:
            parts: list[Content | tuple[str, str] | str] = []
            x = 0
            for piece in row:
                parts.append(" " * (piece.x - x))
                parts.append((piece.text, self._style(piece.item)))
                x = piece.x + piece.wide
            lines.append(Content.assemble(*parts))
        return Content("\n").join(lines)

    def _style(self, index: int) -> str:
        if index == self.cursor and self.has_focus:
            return "bold reverse"
        return "bold" if self.choices[index].standing else ""

    def watch_cursor(self) -> None:
        """Keep the pointed-out option in sight where the list is scrolled."""
        for y, row in enumerate(self.rows):
            if any(piece.item == self.cursor for piece in row) and self.is_mounted:
                self.call_after_refresh(self._show_row, y)
                return

    def _show_row(self, y: int) -> None:
        if self.parent is not None and isinstance(self.parent, Widget):
            self.parent.scroll_to_region(Region(0, self.virtual_region.y + y, 1, 1), animate=False)

    def on_focus(self) -> None:
        self.refresh(layout=True)

    def on_blur(self) -> None:
        self.refresh(layout=True)

    def action_move(self, step: int) -> None:
        if self.choices:
            self.cursor = (self.cursor + step) % len(self.choices)

    def action_rise(self, step: int) -> None:
        """Up or down a row; where there is one row only, to the neighbour."""
        found = beside(self.rows, self.cursor, step)
        if found != self.cursor:
            self.cursor = found
        elif len(self.rows) <= 1:
            self.action_move(step)

    def action_go(self, index: int) -> None:
        if self.choices:
            self.cursor = index % len(self.choices)

    def action_mark(self) -> None:
        """Mark or unmark the option under the cursor; with one answer only, choose it."""
        if not self.choices:
            return
        if not self.several:
            self.action_answer()
            return
        self.marked = self.marked ^ {self.choices[self.cursor].key}

    def _tick(self) -> None:
        """What a number does: behind another and what parts them, it is one of a list, and nothing but
        that list is marked, whatever was marked before; alone, it marks or unmarks its option.
        """
        if not self.several:
            self.action_mark()
            return
        key = frozenset((self.choices[self.cursor].key,))
        self._row ^= key
        self.marked = self._row if self._split else self.marked ^ key
        self._split = False

    def forget_numbers(self) -> None:
        """What was typed so far is of no list."""
        self._begun, self._numbered, self._parted = 0, False, False
        self._end_row()

    def _end_row(self) -> None:
        """The next number begins another list."""
        self._row, self._split = frozenset(), False

    def action_answer(self) -> None:
        if not self.choices:
            return
        if self.several:
            keys = tuple(c.key for c in self.choices if c.key in self.marked)
        else:
            keys = (self.choices[self.cursor].key,)
        self.post_message(Picked(keys))

    def on_key(self, event: events.Key) -> None:
        """A number picks, and a capital letter the option of that name; several go to a longer name.

        Where a figure may begin a longer number, it only leads there until enter, space or the next
        figure. A space between two numbers only parts them: "2 4" marks these two alone, and so do
        "2,4", "2;4" and "2+4".
        """
        character = event.character or ""
        begun, self._begun = self._begun, 0
        parted, self._parted = self._parted, False
        if character.isdecimal() and character.isascii() and (character != "0" or begun):
            index = self._numbered_so_far(begun, int(character)) - 1
            if self._begun:
                event.stop()
                self.cursor = index
                return
        elif event.key == "enter" and begun and self.several:
            self._tick()
            self._end_row()
            return
        elif self._only_parts(event, begun, parted):
            event.stop()
            event.prevent_default()
            return
        elif character.isupper() and self.letters:
            event.stop()
            index = self._named(character)
            if index >= 0 and self.choices[index].key.split()[-1:] != [character]:
                self.cursor = index
                return
        else:
            self._numbered, self._typed = False, ""
            self._end_row()
            return
        event.stop()
        if 0 <= index < len(self.choices):
            self.cursor = index
            self._numbered = self.several
            self._tick()

    def _only_parts(self, event: events.Key, begun: int, parted: bool) -> bool:
        """Whether this only parts two numbers; one that was begun is marked with it."""
        if event.character in PARTING and self.several and (begun or self._numbered or parted):
            if begun:
                self._tick()
            self._numbered = self._split = True
            return True
        if event.key == "space" and (self._numbered or (begun and self.several)):
            if not self._numbered:
                self._tick()
            self._numbered, self._parted, self._split = False, True, True
            return True
        return False

    def _numbered_so_far(self, begun: int, figure: int) -> int:
        """The number that the figures typed make; it is only begun where a longer one is possible."""
        number = 10 * begun + figure
        if number > len(self.choices):
            number = figure
        self._begun = number if 0 < 10 * number <= len(self.choices) else 0
        return number

    def _named(self, character: str) -> int:
        """The option that is called as was typed so far, or begins so; -1 where there is none.

        Two joints in either order are the same member.
        """
        keys = [choice.key for choice in self.choices]
        ends = [key.split()[-1] if key.split() else "" for key in keys]
        for typed in (self._typed + character, character):
            self._typed = typed
            ways = [keys.index(typed)] if typed in keys else []
            ways += [ends.index(typed)] if typed in ends else []
            ways += [i for i, key in enumerate(keys) if key.startswith((typed, typed[::-1]))]
            if ways:
                return ways[0]
        self._typed = ""
        return -1

    def on_click(self, event: events.Click) -> None:
        event.stop()
        index = at(self.rows, event.x - self.gutter.left, event.y - self.gutter.top)
        if index is not None:
            self.cursor = index
            self.action_mark()
