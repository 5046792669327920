"""What can be done next? The deeds in reach with their letters, for keyboard and mouse."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, ClassVar

from textual import events
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.geometry import Size
from textual.message import Message
from textual.reactive import reactive
from textual.widget import Widget

from tutor.screens.clean import one_line
from tutor.screens.deeds import Deed
from tutor.screens.widgets.flow import FlowPart, Rows, at, beside, evenly, flow

if TYPE_CHECKING:
    from tutor.screens.widgets.problem_list import ProblemList


class DeedAsked(Message):
    """A deed was asked for on the bar: its id."""

    def __init__(self, deed: str) -> None:
        super().__init__()
        self.deed = deed


LEADS = ("Esc, then", "Keys:")
GAP = 2


@lru_cache(64)
def laid_out(lead: str, begin: int, deeds: tuple[Deed, ...], width: int) -> Rows:
    """The lead, and beside it from `begin` on the deeds, in rows as even as can be; below it too where
    that saves one."""
    texts = [one_line(f"{deed.letter} {deed.label}") for deed in deeds]
    rows = tuple(
        tuple(piece._replace(item=piece.item + 1, x=piece.x + begin) for piece in row)
        for row in evenly(texts, max(1, width - begin), GAP)
    )
    first = FlowPart(0, 0, len(lead), lead)
    rows = ((first, *rows[0]), *rows[1:]) if rows else ((first,),)
    unhung = flow([lead.ljust(begin - GAP), *texts], width, GAP)
    return unhung if len(unhung) < len(rows) else rows


class ActionBar(Widget, can_focus=True):
    """The deeds in a row, or more where they do not fit.

    With the focus, the letter of a deed does it, and so does enter once an arrow has chosen one.
    Until then nothing is chosen: enter leads back to the line, and so does any other character,
    which goes into the line with it.
    """

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("left", "move(-1)", show=False, id="bar.previous"),
        Binding("right", "move(1)", show=False, id="bar.next"),
        Binding("up", "rise(-1)", show=False, id="bar.above"),
        Binding("down", "rise(1)", show=False, id="bar.below"),
        Binding("enter,space", "ask", show=False, id="bar.ask"),
    ]

    deeds: reactive[tuple[Deed, ...]] = reactive((), layout=True)
    cursor: reactive[int | None] = reactive(None)
    reserved: reactive[tuple[Deed, ...]] = reactive((), layout=True)
    typing: reactive[bool] = reactive(False, layout=True)
    beside_a_line: reactive[bool] = reactive(False, layout=True)
    unseen: tuple[Deed, ...] = ()
    list_above: ProblemList | None = None
    """A list that up and down lead back to, and move in; letters that do nothing here are sought there."""

    def offer(self, deeds: Sequence[Deed], typing: bool, reserved: Sequence[Deed] = ()) -> None:
        """Show these deeds; `typing` says that letters now go into a line, so that escape leads.

        The bar keeps as many rows as the `reserved` deeds need, so that it moves nothing above it.
        """
        shown = tuple(deed for deed in deeds if not deed.off_bar)
        if shown != self.deeds:
            self.cursor = None
        self.deeds = shown
        self.unseen = tuple(deed for deed in deeds if deed.off_bar)
        self.reserved = tuple(deed for deed in reserved if not deed.off_bar)
        self.typing = typing
        self.beside_a_line = self.beside_a_line or typing or bool(reserved)

    def _rows(self, width: int, deeds: tuple[Deed, ...] | None = None) -> Rows:
        """The lead, and beside it the deeds."""
        lead = LEADS[0] if self.typing else LEADS[1]
        begin = len(LEADS[0] if self.beside_a_line else lead) + GAP
        return laid_out(lead, begin, self.deeds if deeds is None else deeds, width)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return max(len(self._rows(width)), len(self._rows(width, self.reserved)))

    def get_content_width(self, container: Size, viewport: Size) -> int:
        return container.width

    def render(self) -> Content:
        lines = []
        for row in self._rows(self.size.width):
            parts: list[Content | tuple[str, str] | str] = []
            x = 0
            for piece in row:
                parts.append(" " * (piece.x - x))
                parts += self._styled(piece.item - 1, piece.text)
                x = piece.x + piece.wide
            lines.append(Content.assemble(*parts))
        return Content("\n").join(lines)

    def _styled(self, index: int, text: str) -> list[tuple[str, str]]:
        if index < 0:
            return [(text, "$quiet")]
        if index == self.cursor and self.has_focus:
            return [(text, "bold reverse")]
        return [(text[:1], "bold underline $strong"), (text[1:], "")]

    def on_focus(self) -> None:
        self.cursor = None
        self.refresh()

    def on_blur(self) -> None:
        self.refresh()

    def action_move(self, step: int) -> None:
        if not self.deeds:
            return
        if self.cursor is None:
            self.cursor = 0 if step > 0 else len(self.deeds) - 1
        else:
            self.cursor = (self.cursor + step) % len(self.deeds)

    def action_rise(self, step: int) -> None:
        above = self.list_above
        if above is not None:
            above.focus()
            (above.action_cursor_down if step > 0 else above.action_cursor_up)()
        elif self.cursor is None:
            self.action_move(step)
        else:
            rows = self._rows(self.size.width)
            self.cursor = max(0, beside(rows, self.cursor + 1, step) - 1)

    def action_ask(self) -> None:
        if self.cursor is None:
            self._to_line("")
        elif self.cursor < len(self.deeds):
            self.post_message(DeedAsked(self.deeds[self.cursor].id))

    def on_key(self, event: events.Key) -> None:
        """The letter of a deed does it; another character goes back to the line with itself."""
        if not event.is_printable or (event.key == "space" and self.cursor is not None):
            return
        event.stop()
        event.prevent_default()
        known = (*self.deeds, *self.unseen)
        meant = [deed.id for deed in known if deed.letter == event.character]
        if meant:
            self.post_message(DeedAsked(meant[0]))
        else:
            self._to_line(event.character or "")

    def _to_line(self, text: str) -> None:
        """Go back to the list, or to the line being typed, where the screen has one, with this text."""
        if self.list_above is not None:
            self.list_above.focus()
            if text.strip():
                self.list_above.seek(text)
            return
        from tutor.screens.widgets.line_input import LineInput  # here for start-up time

        for line in self.screen.query(LineInput):
            if line.is_on_screen:
                line.go_on_with(text)
                return

    def on_click(self, event: events.Click) -> None:
        event.stop()
        rows = self._rows(self.size.width)
        index = at(rows, event.x - self.gutter.left, event.y - self.gutter.top)
        if index is not None and index > 0:
            self.post_message(DeedAsked(self.deeds[index - 1].id))
