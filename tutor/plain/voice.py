"""How do words leave and come in? One plain line at a time, with no control characters either way."""

from __future__ import annotations

import os
import sys
import textwrap
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TextIO, TypeVar

from tutor.figure import plain
from tutor.model.caution import CAUTION, SHORT_CAUTION
from tutor.plain.spelling import spelled, typed_as_heard
from tutor.session import note_fault

Outcome = TypeVar("Outcome")
LONGEST = 2000
NARROWEST = 20
"""On a narrower terminal no line is broken."""
MOST_LINES = 500
"""So many typed lines can be fetched back."""
FAULT = (
    "Not decided: the program failed on this line. The fault is the program's, not yours; the line "
    "does not count, and all else stands."
)


class TooLong(Exception):  # noqa: N818 - says what was typed, not that something failed
    """A line longer than `LONGEST` characters was typed; it was passed over to its end."""


def _columns(sink: TextIO) -> int:
    """How wide the terminal is; 0 where there is none, and no line is broken."""
    try:
        return os.get_terminal_size(sink.fileno()).columns if sink.isatty() else 0
    except (OSError, ValueError):
        return 0


def _broken(line: str, columns: int) -> str:
    if columns <= NARROWEST or len(line) <= columns:
        return line
    return textwrap.fill(line, columns, break_on_hyphens=False)


class Voice:
    """Reads typed lines and writes spoken ones.

    Every sign is said in letters, so that any voice and any terminal can tell it; with `signs` only
    what the encoding of the output cannot hold. A prompt is written only when a person types: in a
    pipe it would stand between the sentences. On a terminal a line can be edited and an earlier one
    fetched back.
    """

    def __init__(self, source: TextIO, sink: TextIO, *, signs: bool = False) -> None:
        self._source = source
        self._sink = sink
        self._prompt = "> " if source.isatty() else ""
        self._signs = signs
        self._edited = bool(self._prompt) and _editing(source, sink)
        self._noted: set[str] = set()
        self.cautioned = False
        """Whether the student has heard what this is not for."""

    def say(self, lines: Iterable[str]) -> None:
        """Write these lines, on a terminal broken between words; what is not plain text is left out.

        What this is not for is said in full once, and in short with every later result.
        """
        columns = _columns(self._sink)
        for line in lines:
            if line == CAUTION:
                line = SHORT_CAUTION if self.cautioned else CAUTION
                self.cautioned = True
            self._sink.write(_broken(self._plain(line), columns) + "\n")
        self._sink.flush()

    def note(self, notices: Iterable[str]) -> None:
        """Say what there is to know, each thing once however often it is found."""
        fresh = [each for each in dict.fromkeys(notices) if each not in self._noted]
        self._noted.update(fresh)
        self.say(f"Note: {each}" for each in fresh)

    def listen(self) -> str | None:
        """The next line typed, without its end; None at the end of the input. May raise TooLong."""
        line = self._edited_line() if self._edited else self._read_line()
        return None if line is None else typed_as_heard(line)

    def _read_line(self) -> str | None:
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

    def _edited_line(self) -> str | None:
        """A line typed on a terminal, edited before it is sent; None at the end of the input."""
        try:
            line = input(self._prompt)
        except EOFError:
            self._sink.write("\n")
            return None
        if len(line) > LONGEST:
            raise TooLong
        return line

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
        return line if self._signs and holds(self._sink, line) else spelled(line)


def holds(sink: TextIO, signs: str) -> bool:
    """Whether these signs can be written to `sink`."""
    try:
        signs.encode(getattr(sink, "encoding", None) or "utf-8")
    except (UnicodeEncodeError, LookupError):
        return False
    return True


def _editing(source: TextIO, sink: TextIO) -> bool:
    """Whether typed lines can be edited here: on the terminal of this process, where it can do so."""
    if source is not sys.stdin or sink is not sys.stdout or not sink.isatty():
        return False
    try:
        import readline  # here: only a terminal needs it, and it changes how input is read
    except ImportError:  # there is none on Windows, whose terminal edits lines by itself
        return False
    readline.set_history_length(MOST_LINES)
    return True
