"""On which line of a TOML text does each key stand, and which statements can be read at all?

The standard reader gives values without lines and stops at the first defect. Here the text is cut
into statements first, so every key has its line, and a text with defects is read statement by
statement: what is sound is used, what is not is reported, each with its line.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from tutor.model.defect import Path

TOKEN = re.compile(
    r"""
    (?P<newline>\n)
  | (?P<space>[^\S\n]+)
  | (?P<comment>\#[^\n]*)
  | (?P<string>
        \"{3}(?:[^"\\]|\\[\s\S]|"{1,2}(?!"))*"{3,5}
      | '{3}[\s\S]*?'{3,5}
    )
  | (?P<endless>\"{3}[\s\S]*|'{3}[\s\S]*)
  | (?P<short>"(?:[^"\\\n]|\\[^\n])*"|'[^'\n]*')
  | (?P<torn>["'][^\n]*)
  | (?P<open>[\[{])
  | (?P<close>[\]}])
  | (?P<comma>,)
  | (?P<equals>=)
  | (?P<word>[^\s\[\]{},=\#"']+)
    """,
    re.VERBOSE,
)
PART = r"""(?:[A-Za-z0-9_-]+|"(?:[^"\\\n]|\\[^\n])*"|'[^'\n]*')"""
KEYS = re.compile(rf"\s*({PART}(?:[ \t]*\.[ \t]*{PART})*)[ \t]*")
STARTS = re.compile(
    r"[ \t]*(?:\[\[?[ \t]*[A-Za-z_][\w.-]*[ \t]*\]\]?[ \t]*(?:#[^\n]*)?(?:\n|$)"
    r"|[A-Za-z_][\w-]*[ \t]*=)"
)
LIST = ("loads",)
DOTS = 16
DEPTH = 4


class Token(NamedTuple):
    """One token: its kind (a group of `TOKEN`), its text, and where it starts in the file."""

    kind: str
    text: str
    start: int
    line: int


@dataclass(frozen=True)
class Statement:
    """One table heading (`brackets` is "[" or "[[") or one entry (`brackets` is "").

    `line` is the line of its first character. `bottomless` names a key nested so deep that it is
    not given to the reader at all.
    """

    line: int
    tokens: tuple[Token, ...]
    brackets: str
    bottomless: bool

    @cached_property
    def text(self) -> str:
        return "".join(token.text for token in self.tokens)

    @cached_property
    def keys(self) -> tuple[str, ...] | None:
        """The dotted key, or None where it cannot be read."""
        start = self.text.find(self.brackets) + len(self.brackets) if self.brackets else 0
        return None if self.bottomless else read_keys(self.text, start)

    @property
    def opens_list(self) -> bool:
        """Whether the heading begins one more table of a list; [loads] is read as [[loads]]."""
        return self.brackets == "[[" or (self.brackets == "[" and self.keys == LIST)

    @cached_property
    def value(self) -> tuple[Token, ...]:
        """The tokens after the equals sign; none for a heading."""
        for index, token in enumerate(self.tokens):
            if token.kind == "equals":
                return self.tokens[index + 1 :]
        return ()


def read_keys(text: str, start: int) -> tuple[str, ...] | None:
    """The dotted key that starts at `start`, or None where there is none."""
    match = KEYS.match(text, start)
    if match is None or (match.end() < len(text) and text[match.end()] not in "=]\n#"):
        return None
    return tuple(_unquoted(part) for part in re.findall(PART, match[1]))


def _unquoted(part: str) -> str:
    if part[0] == '"':
        try:
            return str(tomllib.loads(f"key = {part}")["key"])
        except tomllib.TOMLDecodeError:
            return part[1:-1]
    return part[1:-1] if part[0] == "'" else part


def tokens(text: str) -> Iterator[Token]:
    """All of `text` as tokens; a quote that is never closed takes its line, three quotes the rest."""
    line = 1
    for match in TOKEN.finditer(text):
        kind, said = match.lastgroup or "", match[0]
        yield Token(kind, said, match.start(), line)
        if kind in ("newline", "string", "endless"):
            line += said.count("\n")


def statements(text: str) -> tuple[Statement, ...]:
    """`text` cut into its headings and entries; blank lines and comments are left out."""
    found: list[Statement] = []
    current: list[Token] = []
    depth = 0
    for token in tokens(text):
        if token.kind == "newline" and (
            depth <= 0 or _ends_with_line(current) or STARTS.match(text, token.start + 1)
        ):
            found += _statement(current)
            current, depth = [], 0
            continue
        if not current and token.kind in ("newline", "space", "comment"):
            continue
        depth += (token.kind == "open") - (token.kind == "close")
        current.append(token)
    return (*found, *_statement(current))


def _ends_with_line(found: list[Token]) -> bool:
    """Whether a statement cannot go on over the line's end: a heading, or a quote left open."""
    return bool(found) and (found[0].text == "[" or found[-1].kind == "torn")


def _statement(found: list[Token]) -> list[Statement]:
    if not found:
        return []
    brackets = ""
    if found[0].text == "[":
        brackets = "[[" if len(found) > 1 and found[1].text == "[" else "["
    return [Statement(found[0].line, tuple(found), brackets, _bottomless(found))]


def _bottomless(found: Sequence[Token]) -> bool:
    """Whether a key has so many dots that reading it would take unbounded memory."""
    dots = 0
    for token in found:
        if token.kind == "word":
            dots += token.text.count(".")
        elif token.kind in ("open", "close", "comma", "equals", "newline"):
            dots = 0
        if dots > DOTS:
            return True
    return False


class Tables:
    """Which table the next entry falls into, as headings are read one after another."""

    def __init__(self) -> None:
        self.current: Path = ()
        self._counts: dict[Path, int] = {}

    def enter(self, keys: tuple[str, ...], again: bool) -> Path:
        """Go to the table `keys`; `again` opens one more table of a list ("[[loads]]")."""
        path: Path = ()
        for key in keys[:-1]:
            path = self._last((*path, key))
        path = (*path, keys[-1])
        if again:
            self._counts[path] = self._counts.get(path, 0) + 1
        self.current = self._last(path)
        return self.current

    def _last(self, path: Path) -> Path:
        count = self._counts.get(path)
        return path if count is None else (*path, count - 1)


def lines_in(text: str) -> dict[Path, int]:
    """The line of every key path of a TOML text."""
    return key_lines(statements(text.replace("\r\n", "\n")))


def key_lines(found: tuple[Statement, ...]) -> dict[Path, int]:
    """The line of every key path, list places counted from 0, as deep as problem files go."""
    places: dict[Path, int] = {}
    tables = Tables()
    for statement in found:
        if statement.keys is None:
            continue
        if statement.brackets:
            path = tables.enter(statement.keys, statement.opens_list)
        else:
            path = (*tables.current, *statement.keys)
        for length in range(1, len(path) + 1):
            places.setdefault(path[:length], statement.line)
        for inner, line in _value_lines(statement, path):
            places.setdefault(inner, line)
    return places


@dataclass
class _Frame:
    """One bracket that is open: its path, and the place or key the next value has in it."""

    bracket: str
    path: Path
    place: int = 0
    keys: Path | None = None
    start: int = 0

    @property
    def next(self) -> Path | None:
        if self.bracket == "[":
            return (*self.path, self.place)
        return None if self.keys is None else (*self.path, *self.keys)


def _value_lines(statement: Statement, path: Path) -> Iterator[tuple[Path, int]]:
    """The paths inside a statement's value, each with its line."""
    frames: list[_Frame] = []
    begin = statement.tokens[0].start
    for token in statement.value:
        top = frames[-1] if frames else None
        here = top.next if top else path
        if token.kind == "open":
            if here is not None:
                yield here, token.line
            bracket = token.text if here is not None and len(here) <= DEPTH else ""
            frames.append(_Frame(bracket, here or (), start=token.start + 1 - begin))
        elif top is None:
            continue
        elif token.kind == "close":
            frames.pop()
        elif token.kind == "comma":
            top.place, top.keys, top.start = top.place + 1, None, token.start + 1 - begin
        elif token.kind == "equals" and top.bracket == "{":
            top.keys = read_keys(statement.text, top.start)
            if top.next is not None:
                yield top.next, token.line
        elif token.kind in ("word", "short", "string") and here is not None and top.bracket == "[":
            yield here, token.line
