"""How many? A row of small fields for whole numbers, one for each thing to count."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from textual import events
from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.content import Content
from textual.message import Message
from textual.widgets import Input, Static

from tutor.screens.clean import one_line
from tutor.screens.widgets.choices import OneOption
from tutor.screens.widgets.line_input import pass_on_alt


class Count(Input):
    """One field. A letter is no part of a number: it goes on, to the line."""

    passes_letters_on = True

    async def _on_key(self, event: events.Key) -> None:
        pass_on_alt(event)
        if event.is_printable and (event.character or "").isalpha():
            event.prevent_default()


class Counts(Horizontal):
    """Fields side by side; enter goes to the next empty one, and answers when none is left. Where all
    are empty, it is `Blank`.

    Numbers for all of them, typed into one, are shared out.
    """

    @dataclass
    class Counted(Message):
        """All fields hold whole numbers: by key."""

        numbers: dict[str, int]

    class Blank(Message):
        """Enter was pressed with nothing in any field."""

    @dataclass
    class Said(Message):
        """What is wrong with what stands in a field."""

        text: str

    def __init__(self, fields: Sequence[OneOption], *, id: str | None = None) -> None:
        super().__init__(id=id)
        self.fields = tuple(fields)
        self.off: tuple[str, ...] = ()

    def compose(self) -> ComposeResult:
        for field in self.fields:
            yield Static(Content(f"{one_line(field.words)} ="), classes="count-name")
            yield Count(compact=True, max_length=14, name=field.key, classes="count")

    def start(self) -> None:
        """Put the cursor into the first field that is not filled in, or is to be counted again."""
        inputs = list(self.query(Input))
        unfilled = (i for i in inputs if not i.value.strip())
        wanted = next(unfilled, None) or next((i for i in inputs if i.name in self.off), None)
        if inputs:
            field = wanted or inputs[0]
            field.focus()
            field.select_all()

    def again(self, off: Sequence[str]) -> None:
        """To the first field that is to be counted again, all of it selected, so that typing
        replaces it."""
        self.off = tuple(off)
        self.start()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        inputs = list(self.query(Input))
        parts = event.input.value.replace(",", " ").split()
        if len(parts) == len(inputs) and all(map(is_count, parts)):
            for field, part in zip(inputs, parts, strict=True):
                field.value = part
        filled = [field for field in (event.input, *inputs) if field.value.strip()]
        wrong = next((field for field in filled if not is_count(field.value.strip())), None)
        if wrong is not None:
            wrong.focus()
            read = one_line(wrong.value)
            said = f"“{read}” was read for {wrong.name}; write a whole number, like 7."
            self.post_message(self.Said(said))
            return
        if not filled:
            self.post_message(self.Blank())
            return
        empty = next((field for field in inputs if not field.value.strip()), None)
        if empty is not None:
            empty.focus()
            return
        self.post_message(self.Counted({field.name or "": int(field.value) for field in inputs}))

    def on_input_changed(self, event: Input.Changed) -> None:
        event.stop()


def is_count(text: str) -> bool:
    """Whether a text is a whole number in plain digits."""
    return text.isascii() and text.isdigit()
