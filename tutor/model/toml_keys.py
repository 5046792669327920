"""On which line of a TOML text does each key stand?"""

from __future__ import annotations

from collections.abc import Iterator, MutableMapping
from dataclasses import dataclass

from tutor.model.defect import KeyPath
from tutor.model.toml_lines import TomlStatement, read_keys, toml_statements

DEPTH = 4


class Tables:
    """Which table the next entry falls into, as headings are read one after another."""

    def __init__(self) -> None:
        self.current: KeyPath = ()
        self._counts: dict[KeyPath, int] = {}

    def enter(self, keys: tuple[str, ...], again: bool) -> KeyPath:
        """Go to the table `keys`; `again` opens one more table of a list ("[[loads]]")."""
        path: KeyPath = ()
        for key in keys[:-1]:
            path = self._last((*path, key))
        path = (*path, keys[-1])
        if again:
            self._counts[path] = self._counts.get(path, 0) + 1
        self.current = self._last(path)
        return self.current

    def _last(self, path: KeyPath) -> KeyPath:
        count = self._counts.get(path)
        return path if count is None else (*path, count - 1)


def lines_in(text: str) -> KeyLines:
    """The line of every key path of a TOML text."""
    return key_lines(toml_statements(text.replace("\r\n", "\n")))


def key_lines(found: tuple[TomlStatement, ...]) -> KeyLines:
    """The line of every key path, list places counted from 0, as deep as problem files go."""
    return KeyLines(found)


class KeyLines(MutableMapping[KeyPath, int]):
    """The line of every key path, by the first statement that has it; what is inside a value is looked
    at when something below its path is asked for."""

    def __init__(self, found: tuple[TomlStatement, ...]) -> None:
        self._places: dict[KeyPath, tuple[int, int]] = {}
        self._closed: dict[KeyPath, list[tuple[int, TomlStatement]]] = {}
        tables = Tables()
        for place, statement in enumerate(found):
            if statement.keys is None:
                continue
            if statement.brackets:
                path = tables.enter(statement.keys, statement.opens_list)
            else:
                path = (*tables.current, *statement.keys)
            for length in range(1, len(path) + 1):
                self._places.setdefault(path[:length], (place, statement.line))
            if "=" in statement.text:
                self._closed.setdefault(path, []).append((place, statement))

    def _open(self, path: KeyPath) -> None:
        for place, statement in self._closed.pop(path, ()):
            for inner, line in _value_lines(statement, path):
                if inner not in self._places or self._places[inner][0] > place:
                    self._places[inner] = place, line

    def __getitem__(self, path: KeyPath) -> int:
        for length in range(1, len(path)):
            self._open(path[:length])
        return self._places[path][1]

    def __setitem__(self, path: KeyPath, line: int) -> None:
        self._places[path] = -1, line

    def __delitem__(self, path: KeyPath) -> None:
        del self._places[path]

    def __iter__(self) -> Iterator[KeyPath]:
        for path in list(self._closed):
            self._open(path)
        return iter(self._places)

    def __len__(self) -> int:
        return len(list(iter(self)))


@dataclass
class _Frame:
    """One bracket that is open: its path, and the place or key the next value has in it."""

    bracket: str
    path: KeyPath
    place: int = 0
    keys: KeyPath | None = None
    start: int = 0

    @property
    def next(self) -> KeyPath | None:
        if self.bracket == "[":
            return (*self.path, self.place)
        return None if self.keys is None else (*self.path, *self.keys)


def _value_lines(statement: TomlStatement, path: KeyPath) -> Iterator[tuple[KeyPath, int]]:
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
