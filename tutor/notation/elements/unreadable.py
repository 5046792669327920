"""What is said about text that cannot be read, and where does it point?

`COMPLAINTS` is the one table: each entry has the sentence, the cure and broken inputs that earn it.
The tests read every example and compare; the notation reference for students lists them too.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from tutor.notation.elements.characters import blank, columns, hidden, shown
from tutor.notation.elements.complaints import COMPLAINTS
from tutor.notation.elements.tree import Span
from tutor.text import raised

_CARET_WINDOW = 72


@dataclass(frozen=True)
class Unreadable:
    """Why a text cannot be read. It is returned, never raised.

    `code` is stable; `column` counts from 1 in `text`, the text as typed; `length` is how many
    characters are meant (0 at the end of the text); `found` is what stands there, fit to print;
    `says` is what is wrong, `cure` what would be right, and `placed` whether that is told with the
    place. `message` is all of it in one sentence. None of these holds a control character.
    """

    code: str
    text: str
    column: int
    length: int
    found: str
    says: str
    cure: str
    placed: bool

    @property
    def wrong(self) -> str:
        """Where it is and what is wrong, as a sentence begins."""
        return raised(f"At column {self.column}, {self.says}" if self.placed else self.says)

    @property
    def message(self) -> str:
        """The complaint in one sentence."""
        return f"{self.wrong}; {self.cure}."

    @property
    def without_place(self) -> str:
        """The complaint in one sentence that does not say where."""
        return raised(f"{self.says}; {self.cure}.")

    def caret(self) -> str:
        """The text, control characters made visible, with carets below what is meant."""
        first = max(0, min(self.column - 1 - _CARET_WINDOW // 2, len(self.text) - _CARET_WINDOW))
        line = self.text[first : first + _CARET_WINDOW]
        line = "".join(" " if blank(char) else "␚" if hidden(char) else char for char in line)
        start = self.column - 1 - first
        marked = line[start : start + self.length]
        return f"{line}\n{' ' * columns(line[:start])}{'^' * max(1, columns(marked))}"


class Broken(Exception):  # noqa: N818 - never leaves this package: it becomes an Unreadable
    """Reading stops: complaint `key` about the text from `start` to `end`.

    A word that is a place is quoted as it was typed there.
    """

    def __init__(self, key: str, start: int, end: int, **words: Any) -> None:
        super().__init__(key)
        self.key, self.start, self.end, self.words = key, start, end, words

    def moved(self, by: int) -> Broken:
        """The same complaint, `by` columns further on."""
        return self.placed(lambda span: Span(span.start + by, span.end + by))

    def placed(self, place: Callable[[Span], Span]) -> Broken:
        """The same complaint about the text that each of its places stands for."""
        span = place(Span(self.start, self.end))
        words = {
            word: place(said) if isinstance(said, Span) else said
            for word, said in self.words.items()
        }
        return Broken(self.key, span.start, span.end, **words)

    def about(self, text: str) -> Unreadable:
        """The complaint as a student reads it, about `text` as typed."""
        complaint = COMPLAINTS[self.key]
        start, end = min(self.start, len(text)), min(self.end, len(text))
        found = shown(text[start:end])
        words = {"found": found} | {
            word: shown(said, 160) if isinstance(said, str) else said
            for word, said in self._words_in(text)
        }
        says, cure = complaint.says.format(**words), complaint.cure.format(**words)
        code = self.key.partition("/")[0]
        return Unreadable(code, text, start + 1, end - start, found, says, cure, complaint.placed)

    def _words_in(self, text: str) -> Iterator[tuple[str, Any]]:
        for word, said in self.words.items():
            yield word, text[said.start : said.end].strip() if isinstance(said, Span) else said
