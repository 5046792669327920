"""Where did each character of a rewritten text stand in the text as typed?"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import NamedTuple

from tutor.notation.elements.tree import Span

Replaced = Callable[[re.Match[str]], str | None]


class Rule(NamedTuple):
    """What is written for every match of a pattern, in a text that has one of the words it `needs`."""

    needs: tuple[str, ...]
    pattern: re.Pattern[str]
    made: str | Replaced


@dataclass(frozen=True)
class Source:
    """Plain `text` and, for each of its characters, the columns as typed that it stands for."""

    text: str
    starts: tuple[int, ...]
    ends: tuple[int, ...]
    size: int

    @classmethod
    def of(cls, text: str) -> Source:
        """A text whose columns are its own."""
        columns = range(len(text))
        return cls(text, tuple(columns), tuple(column + 1 for column in columns), len(text))

    def rewritten(self, pattern: re.Pattern[str], new: str | Replaced) -> Source:
        """The text with every match replaced; None from a function leaves the match as it is."""
        parts: list[str] = []
        starts: list[int] = []
        ends: list[int] = []
        at = 0
        for found in pattern.finditer(self.text):
            made = new if isinstance(new, str) else new(found)
            if made is None or found.start() < at:
                continue
            start, end = found.span()
            parts += self.text[at:start], made
            starts += self.starts[at:start]
            ends += self.ends[at:start]
            self._spread(found, made, starts, ends)
            at = end
        if not parts:
            return self
        parts.append(self.text[at:])
        starts += self.starts[at:]
        ends += self.ends[at:]
        return Source("".join(parts), tuple(starts), tuple(ends), self.size)

    def blanked(self, parts: Iterable[Span]) -> Source:
        """The text with blanks for parts of it, in the same columns."""
        chars = list(self.text)
        for part in parts:
            chars[part.start : part.end] = " " * (part.end - part.start)
        return Source("".join(chars), self.starts, self.ends, self.size)

    def by_rules(self, rules: Iterable[Rule]) -> Source:
        """The text rewritten by one rule after the other."""
        source = self
        for rule in rules:
            if any(word in source.text for word in rule.needs):
                source = source.rewritten(rule.pattern, rule.made)
        return source

    def typed(self, text: str) -> str:
        """The text as it was typed, before look-alikes were replaced, column for column of this one."""
        return "".join(text[start] if start < len(text) else " " for start in self.starts)

    def made_of(self, pieces: Iterable[Span | str]) -> Source:
        """Parts of the text, and words of our own between them that stand for the part before them."""
        text: list[str] = []
        starts: list[int] = []
        ends: list[int] = []
        before = Span(0, 0)
        for piece in pieces:
            if isinstance(piece, Span):
                text.append(self.text[piece.start : piece.end])
                starts += self.starts[piece.start : piece.end]
                ends += self.ends[piece.start : piece.end]
                before = self.span(max(piece.start, piece.end - 1), piece.end)
            else:
                text.append(piece)
                starts += [before.start] * len(piece)
                ends += [before.end] * len(piece)
        return Source("".join(text), tuple(starts), tuple(ends), self.size)

    def replaced(self, edits: Iterable[tuple[Span, str]]) -> Source:
        """The text with other words for parts of it, each of which stands for its part as a whole."""
        text: list[str] = []
        starts: list[int] = []
        ends: list[int] = []
        at = 0
        for part, made in (*edits, (Span(len(self.text), len(self.text)), "")):
            text += self.text[at : part.start], made
            place = self.place(part)
            starts += [*self.starts[at : part.start], *[place.start] * len(made)]
            ends += [*self.ends[at : part.start], *[place.end] * len(made)]
            at = part.end
        return Source("".join(text), tuple(starts), tuple(ends), self.size)

    def _spread(self, found: re.Match[str], made: str, starts: list[int], ends: list[int]) -> None:
        """Columns for the text made of a match: a character that stays keeps its own."""
        start, end = found.span()
        old, low = found.group(), 0
        for char in made:
            at = old.find(char, low)
            if at >= 0 and char not in " ":
                starts.append(self.starts[start + at])
                ends.append(self.ends[start + at])
                low = at + 1
            else:
                starts.append(self.starts[start] if start < end else self.size)
                ends.append(self.ends[end - 1] if start < end else self.size)

    def span(self, start: int, end: int) -> Span:
        """The columns as typed of what stands from `start` to `end`."""
        if start >= len(self.text):
            return Span(self.size, self.size)
        first = min(self.starts[start:end] or self.starts[start : start + 1])
        return Span(first, max(first, *self.ends[start:end]) if end > start else first)

    def place(self, span: Span) -> Span:
        """A span of this text in the text as typed."""
        return self.span(span.start, span.end)
