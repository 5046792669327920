"""How do words leave and come in? One plain line at a time, with no control characters either way."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TextIO, TypeVar

from tutor.figure import plain
from tutor.session import note_fault

Outcome = TypeVar("Outcome")
LONGEST = 2000
FAULT = (
    "Not decided: the program failed on this line. The fault is the program's, not yours; the line "
    "does not count, and all else stands."
)
SPELLED = {
    "Σ": "sum ",
    "°": " deg",
    "·": "*",
    "×": "*",
    "÷": "/",
    "−": "-",
    "–": "-",
    "—": "-",
    "√": "sqrt",
    "²": "^2",
    "³": "^3",
    "π": "pi",
    "…": "...",
    "“": '"',
    "”": '"',
    "’": "'",
}


class TooLong(Exception):  # noqa: N818 - says what was typed, not that something failed
    """A line longer than `LONGEST` characters was typed; it was passed over to its end."""


class Voice:
    """Reads typed lines and writes spoken ones.

    Where the output cannot hold a sign (its encoding is ASCII, say), the sign is spelled out. A
    prompt is written only when a person types: in a pipe it would stand between the sentences.
    """

    def __init__(self, source: TextIO, sink: TextIO) -> None:
        self._source = source
        self._sink = sink
        self._prompt = "> " if source.isatty() else ""
        self._spell = not holds(sink, "".join(SPELLED))

    def say(self, lines: Iterable[str]) -> None:
        """Write these lines; what is not plain text in them is left out."""
        for line in lines:
            self._sink.write(self._plain(line) + "\n")
        self._sink.flush()

    def listen(self) -> str | None:
        """The next line typed, without its end; None at the end of the input. May raise TooLong."""
        if self._prompt:
            self._sink.write(self._prompt)
            self._sink.flush()
        line = self._source.readline(LONGEST + 1)
        if not line:
            return None
        if len(line) > LONGEST and not line.endswith("\n"):
            while line and not line.endswith("\n"):
                line = self._source.readline(LONGEST)
            raise TooLong
        return line.rstrip("\r\n")

    def converse(
        self, answer: Callable[[str], Outcome | None], at_end: Outcome, log: Path | None
    ) -> Outcome:
        """Answer line after line until an answer is an outcome; the end of the input is `at_end`.

        A fault of the program's own goes to `log`, and does not end the conversation.
        """
        while True:
            try:
                text = self.listen()
            except TooLong:
                self.say((f"Cannot read: a line has {LONGEST} characters at most.",))
                continue
            if text is None:
                return at_end
            try:
                outcome = answer(text)
            except (OSError, MemoryError):
                raise
            except Exception as fault:  # the outermost edge
                note_fault(log, fault)
                self.say((FAULT,))
                continue
            if outcome is not None:
                return outcome

    def _plain(self, line: str) -> str:
        line = plain(line)
        if self._spell:
            for sign, words in SPELLED.items():
                line = line.replace(sign, words)
        return line


def holds(sink: TextIO, signs: str) -> bool:
    """Whether these signs can be written to `sink`."""
    try:
        signs.encode(getattr(sink, "encoding", None) or "utf-8")
    except (UnicodeEncodeError, LookupError):
        return False
    return True
