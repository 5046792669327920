"""Which statements does a TOML text have, and which of them can be read at all?

The standard reader gives values without lines and stops at the first defect. Here the text is cut
into statements first, so every key has its line, and a text with defects is read statement by
statement: what is sound is used, what is not is reported, each with its line.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import NamedTuple

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
PLAIN = re.compile(
    r"""[^\S\n]*(?P<said>(?:[^"'\#\n]|"[^"\\\n]+")*+)(?P<rest>(?:\#[^\n]*)?)(?:\n|\Z)"""
)
SHORT = re.compile(r'"[^"\\\n]+"')
LIST = ("loads",)
DOTS = 16


class TomlToken(NamedTuple):
    """One token: its kind (a group of `TOKEN`), its text, and where it starts in the file."""

    kind: str
    text: str
    start: int
    line: int


@dataclass(frozen=True)
class TomlStatement:
    """One table heading or one entry: the text from `start` to `end`, on `line` and perhaps more."""

    source: str = field(repr=False)
    start: int
    end: int
    line: int

    @cached_property
    def text(self) -> str:
        return self.source[self.start : self.end]

    @property
    def brackets(self) -> str:
        """What a table heading begins with, "[" or "[["; "" for an entry."""
        if not self.text.startswith("["):
            return ""
        return "[[" if self.text.startswith("[[") else "["

    @cached_property
    def tokens(self) -> tuple[TomlToken, ...]:
        return tuple(tokens(self.source, self.start, self.end, self.line))

    @cached_property
    def bottomless(self) -> bool:
        """Whether a key is nested so deep that the statement is not given to the reader at all."""
        return self.text.count(".") > DOTS and _bottomless(self.tokens)

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
    def value(self) -> tuple[TomlToken, ...]:
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


def tokens(text: str, start: int = 0, end: int | None = None, line: int = 1) -> Iterator[TomlToken]:
    """All of `text` from `start` to `end` as tokens; a quote that is never closed takes its line, three
    quotes the rest. `line` is that of the first one."""
    for match in TOKEN.finditer(text, start, len(text) if end is None else end):
        kind, said = match.lastgroup or "", match[0]
        yield TomlToken(kind, said, match.start(), line)
        if kind in ("newline", "string", "endless"):
            line += said.count("\n")


def toml_statements(text: str) -> tuple[TomlStatement, ...]:
    """`text` cut into its headings and entries; blank lines and comments are left out."""
    found: list[TomlStatement] = []
    at, line = 0, 1
    while at < len(text):
        plain = PLAIN.match(text, at)
        if plain is not None and _complete(plain["said"]):
            if plain["said"]:
                found.append(TomlStatement(text, plain.start("said"), plain.end("rest"), line))
            at, line = plain.end(), line + 1
            continue
        statement, at, line = _cut(text, at, line)
        found += [statement] if statement is not None else []
    return tuple(found)


def _complete(said: str) -> bool:
    """Whether what a plain line says ends with it: all its brackets are closed, or it is a heading."""
    if said.startswith("["):
        return True
    bare = SHORT.sub("", said) if '"' in said else said
    return bare.count("[") + bare.count("{") <= bare.count("]") + bare.count("}")


def _cut(text: str, at: int, line: int) -> tuple[TomlStatement | None, int, int]:
    """The statement that begins at `at`, where the next may begin, and on which line; no statement where
    only space and a comment stand."""
    first: TomlToken | None = None
    last, depth = "", 0
    for token in tokens(text, at, None, line):
        if token.kind == "newline":
            ends = depth <= 0 or last == "torn" or (first is not None and first.text == "[")
            if ends or STARTS.match(text, token.start + 1):
                return _from(text, first, token.start), token.start + 1, token.line + 1
        elif first is None and token.kind not in ("space", "comment"):
            first = token
        depth += (token.kind == "open") - (token.kind == "close")
        last = token.kind
    return _from(text, first, len(text)), len(text), line


def _from(text: str, first: TomlToken | None, end: int) -> TomlStatement | None:
    return None if first is None else TomlStatement(text, first.start, end, first.line)


def _bottomless(found: Sequence[TomlToken]) -> bool:
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
