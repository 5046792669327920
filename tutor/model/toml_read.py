"""What does a TOML text hold, even where parts of it cannot be read?"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from typing import Any

from tutor.model.defect import Findings, KeyPath
from tutor.model.toml_keys import Tables, key_lines
from tutor.model.toml_lines import DOTS, TomlStatement, toml_statements
from tutor.model.toml_syntax import fault
from tutor.text import shown

BADLY = 50
EVERYWHERE = "*"
MOST_PARTS = 50_000
MARKS = "[]{},="
HEADING = re.compile(r"\[\s*[A-Za-z_]\w*\s*\]")
Refused = (ValueError, RecursionError)


@dataclass(frozen=True)
class Decimals:
    """A number with a decimal point or exponent, kept as it was written."""

    text: str


class Unread:
    """Stands for a value that is there but could not be read; its defect is already noted."""


UNREAD = Unread()


@dataclass(frozen=True)
class Document:
    """The values of a TOML text, where each stands, and what is wrong with its form.

    `lost` names the tables ("" for the top of the file) in which something could not be read at
    all, so that a key that is not in `data` may still stand in the text.
    """

    data: dict[str, Any]
    findings: Findings
    lost: frozenset[str] = frozenset()

    def whole(self, table: str = "") -> bool:
        """Whether every key of a table (the top of the file by default) is known."""
        return table not in self.lost and EVERYWHERE not in self.lost


def read_toml(text: str, file: str) -> Document:
    """Read `text`; never raises. Form defects are in the document's findings.

    A text with more words, brackets, commas and equals signs than any problem needs is not read at all:
    each of them costs time and memory.
    """
    count = len(text.split()) + sum(map(text.count, MARKS))
    if count > MOST_PARTS:
        return _too_many(file, count)
    plain = text.replace("\r\n", "\n")
    reason = "a name has too many dots"
    if max(map(_dots, plain.split("\n"))) <= DOTS:
        try:
            data = tomllib.loads(text, parse_float=Decimals)
        except Refused as refused:
            reason = str(refused)
        else:
            return Document(data, Findings(file, lambda: key_lines(toml_statements(plain))))
    found = toml_statements(plain)
    findings = Findings(file, lambda: key_lines(found))
    if not any(statement.bottomless for statement in found):
        try:
            return Document(tomllib.loads(text, parse_float=Decimals), findings)
        except Refused as refused:
            reason = str(refused)
    salvage = _Salvage(findings)
    for place, statement in enumerate(found):
        if salvage.unreadable == BADLY:
            salvage.give_up(found[place:])
            break
        salvage.add(statement)
    salvage.close(reason)
    return Document(salvage.data, findings, frozenset(salvage.lost))


def _too_many(file: str, count: int) -> Document:
    findings = Findings(file, dict)
    message = f"the file has {count} words, brackets, commas and =, more than {MOST_PARTS}"
    findings.at(1, message, "a problem file is a short text; is it another?")
    return Document({}, findings, frozenset({EVERYWHERE}))


def _dots(line: str) -> int:
    return line.count(".")


class _Salvage:
    """Reads statement by statement; `data` is what could be read."""

    def __init__(self, findings: Findings) -> None:
        self.data: dict[str, Any] = {}
        self.lost: set[str] = set()
        self._findings = findings
        self._tables = Tables()
        self._target: dict[str, Any] | None = self.data
        self._first: dict[KeyPath, int] = {}
        self.unreadable = 0
        self._noted = False

    def add(self, statement: TomlStatement) -> None:
        value = _value_of(statement)
        if isinstance(value, str):
            self._refuse(statement, value)
        if statement.tokens[-1].kind == "endless":
            self.lost.add(EVERYWHERE)
        if statement.brackets:
            self._enter(statement)
        elif statement.value == () and HEADING.search(statement.text):
            self._target = None
            self.lost.add(EVERYWHERE)
        elif statement.keys is None:
            self.lost.add(str(self._tables.current[0]) if self._tables.current else "")
        elif self._target is not None:
            self._set(statement, UNREAD if isinstance(value, str) else value[0])

    def give_up(self, rest: tuple[TomlStatement, ...]) -> None:
        """Note that the rest is not read, since so much before it could not be."""
        self.lost.add(EVERYWHERE)
        message = f"{BADLY} lines before this one cannot be read, and the rest is not looked at"
        self._findings.at(
            rest[0].line, message, "cure those first; is this a problem file in TOML?"
        )

    def close(self, reason: str) -> None:
        """Note why the whole was refused where no statement alone is to blame."""
        if not self._noted:
            self.lost.add(EVERYWHERE)
            cure = "write every name once, under one heading"
            self._findings.at(1, f"the file is not TOML: {reason}", cure)

    def _refuse(self, statement: TomlStatement, reason: str) -> None:
        self.unreadable += 1
        wrong = fault(statement, reason)
        self._noted = True
        self._findings.at(wrong.line, wrong.message, wrong.cure)

    def _enter(self, statement: TomlStatement) -> None:
        self._target = None
        if statement.keys is None:
            self.lost.add(EVERYWHERE)
            return
        again = statement.opens_list
        path = self._tables.enter(statement.keys, again)
        if not again and path in self._first:
            name = shown(".".join(statement.keys))[1:-1]
            self._twice(
                statement, f"[{name}] stands twice", path, f"join the two under one [{name}]"
            )
        elif again and statement.brackets == "[":
            self._note(statement, "[loads] holds one load of a list", "write [[loads]]")
        self._first.setdefault(path, statement.line)
        self._target = self._table(path)

    def _table(self, path: KeyPath) -> dict[str, Any] | None:
        """The table at `path`, made where it is not there yet; None where something else is."""
        here: Any = self.data
        for step, following in zip(path, (*path[1:], ""), strict=True):
            if isinstance(step, int):
                if not isinstance(here, list) or step > len(here):
                    return None
                if step == len(here):
                    here.append({})
                here = here[step]
            elif isinstance(here, dict):
                here = here.setdefault(step, [] if isinstance(following, int) else {})
            else:
                return None
        return here if isinstance(here, dict) else None

    def _set(self, statement: TomlStatement, value: Any) -> None:
        assert statement.keys is not None
        assert self._target is not None
        path = (*self._tables.current, *statement.keys)
        if path in self._first:
            self._twice(statement, *_twice_words(path))
            return
        self._first[path] = statement.line
        table: Any = self._target
        for key in statement.keys[:-1]:
            table = table.setdefault(key, {}) if isinstance(table, dict) else None
        if not isinstance(table, dict) or statement.keys[-1] in table:
            name = shown(".".join(statement.keys))[1:-1]
            self._note(statement, f"{name} has a value twice", "keep one of them")
            return
        table[statement.keys[-1]] = value

    def _twice(self, statement: TomlStatement, message: str, path: KeyPath, cure: str) -> None:
        self._note(statement, f"{message}, first on line {self._first[path]}", cure)

    def _note(self, statement: TomlStatement, message: str, cure: str) -> None:
        self._noted = True
        self._findings.at(statement.line, message, cure)


def _value_of(statement: TomlStatement) -> list[Any] | str:
    """The statement's value in a list of one (empty for a heading), or why it is refused."""
    if statement.bottomless:
        return "a name has too many dots"
    try:
        read: Any = tomllib.loads(statement.text, parse_float=Decimals)
    except Refused as refused:
        return str(refused)
    if statement.brackets:
        return []
    for key in statement.keys or ():
        read = read[key]
    return [read]


def _twice_words(path: KeyPath) -> tuple[str, KeyPath, str]:
    """Message, path and cure for an entry that stands twice."""
    name = shown(str(path[-1]))[1:-1]
    if path[:-1] == ("joints",):
        return f"joint {name} is named twice", path, "give one of them another name"
    if path[:-1] == ("supports",):
        return f"joint {name} has two supports", path, "keep one; a pin holds both ways"
    if path[0] == "loads":
        return f"the load has {name} twice", path, "keep one, or begin another load with [[loads]]"
    return f"{name} stands twice", path, "keep one of them"
