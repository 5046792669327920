"""What is chosen beside a line that can be typed? A number may be of an option, or begin the line."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from textual import events
from textual.message import Message

from tutor.screens.widgets.choices import PARTING, Choices, OneOption

OF_A_LINE = frozenset("/.(*^=·×÷√")
"""Behind a number these are of a line, as a capital letter is."""


class ChoicesByLine(Choices):
    """Options above a line. Where one is chosen, a number goes into the line and enter takes it there;
    where several are, numbers mark them until something behind them shows that they began a line.

    Where they were gone to on purpose, from a line that is asked for, a number chooses `at_once`.
    """

    @dataclass
    class Begun(Message):
        """This text begins a line."""

        text: str

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(letters=False, id=id)
        self.at_once = False
        self._numbers = ""
        self._unmarked: frozenset[str] = frozenset()

    def offer(
        self, choices: Sequence[OneOption], *, several: bool = False, again: bool = False
    ) -> None:
        """Show these options; what was typed for others is forgotten."""
        super().offer(choices, several=several, again=again)
        self._numbers = ""

    def on_blur(self) -> None:
        self._numbers = ""

    def on_key(self, event: events.Key) -> None:
        """Take what begins a line to it; the rest is done as among any options."""
        character = (event.character or "") if event.is_printable else ""
        figure = character.isascii() and character.isdecimal()
        if self.several and self._numbers and (character in OF_A_LINE or character.isupper()):
            self.marked = self._unmarked
            self.forget_numbers()
        elif not figure or self.several or self.at_once:
            self._remember(character, figure)
            return
        event.stop()
        event.prevent_default()
        self.post_message(self.Begun(self._numbers + character))
        self._numbers = ""

    def _remember(self, character: str, figure: bool) -> None:
        """Keep the numbers that are being typed, and what was marked before them."""
        if (figure and self.several) or (
            self._numbers and character and (character in PARTING or character == " ")
        ):
            self._unmarked = self._unmarked if self._numbers else self.marked
            self._numbers += character
        else:
            self._numbers = ""
