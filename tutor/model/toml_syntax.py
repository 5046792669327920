"""Why can a statement not be read as TOML, and how should it be written?"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from tutor.model.toml_lines import TomlStatement, TomlToken
from tutor.text import shown

NUMBER = re.compile(
    r"[+-]?(?:0|[1-9](?:_?\d)*)(?:\.\d(?:_?\d)*)?(?:[eE][+-]?\d+)?|0[xob][0-9A-Fa-f_]+"
)
WORDS = re.compile(r"true|false|[+-]?(?:nan|inf)|\d{4}-\d\d-\d\d\S*|\d\d:\d\d:\d\S*")
SUM = re.compile(r"[-+\w.*/^()]*\d[-+\w.*/^()]*")
PAIRS = {"[": "]", "{": "}"}
SHAPE = 'a line is a heading like [joints], or a name, = and a value like title = "Lamp arm"'


class TomlFault(NamedTuple):
    """What is wrong with a statement, and the cure."""

    line: int
    message: str
    cure: str


def fault(statement: TomlStatement, reason: str) -> TomlFault:
    """What is wrong with a statement that the standard reader refused for `reason`."""
    if statement.bottomless:
        name = shown(statement.text)
        return TomlFault(statement.line, f"{name} is a name with too many dots", SHAPE)
    if statement.brackets:
        return _heading(statement)
    if not any(token.kind == "equals" for token in statement.tokens):
        return _no_equals(statement)
    if statement.keys is None:
        name = shown(statement.text.split("=")[0].strip())
        cure = "use letters and digits only, or put the name in quotes"
        return TomlFault(statement.line, f"{name} cannot be a name", cure)
    for found in _in_value(statement):
        return found
    plain = re.sub(r"\s*\(at .*\)$", "", reason)
    return TomlFault(statement.line, f"{shown(statement.text)} cannot be read: {plain}", SHAPE)


def _heading(statement: TomlStatement) -> TomlFault:
    name = ".".join(statement.keys) if statement.keys else "joints"
    heading = "[[loads]]" if name == "loads" else f"[{shown(name)[1:-1]}]"
    cure = f"write {heading} alone on its line"
    return TomlFault(statement.line, f"{shown(statement.text)} is not a table heading", cure)


def _no_equals(statement: TomlStatement) -> TomlFault:
    read = shown(statement.text)
    if ":" in statement.text:
        return TomlFault(statement.line, f"{read} has a colon where = belongs", SHAPE)
    return TomlFault(statement.line, f"{read} has no =", f"{SHAPE}; a remark starts with #")


def _in_value(statement: TomlStatement) -> Iterator[TomlFault]:
    """The defects of a value in reading order."""
    open_: list[TomlToken] = []
    previous: TomlToken | None = None
    name = shown(".".join(statement.keys or ()))[1:-1]
    for token in statement.value:
        if token.kind in ("space", "comment", "newline"):
            continue
        yield from _torn(token)
        yield from _word(token)
        if token.kind == "equals" and (not open_ or open_[-1].text == "["):
            cure = "write each name and its value on a line of its own"
            yield TomlFault(token.line, f"{name} has a second = in its value", cure)
        starts = token.kind in ("word", "short", "string", "open")
        if (
            starts
            and previous is not None
            and previous.kind in ("word", "short", "string", "close")
        ):
            yield _side_by_side(previous, token, bool(open_))
        if token.kind == "open":
            open_.append(token)
        elif token.kind == "close":
            if not open_ or PAIRS[open_[-1].text] != token.text:
                cure = f"delete it, or open it before with {_opener(token.text)}"
                yield TomlFault(token.line, f"{name} has a {token.text} that closes nothing", cure)
                return
            open_.pop()
        previous = token
    if open_:
        bracket = open_[-1]
        message = f"the {bracket.text} of {name} is never closed"
        yield TomlFault(bracket.line, message, f"write {PAIRS[bracket.text]} where it ends")
    if previous is None:
        yield TomlFault(statement.line, f"{name} has no value", f"write a value after {name} =")


def _opener(close: str) -> str:
    return next(opening for opening, closing in PAIRS.items() if closing == close)


def _side_by_side(left: TomlToken, right: TomlToken, inside: bool) -> TomlFault:
    cure = "write a comma between them" if inside else "write one value to a line"
    if left.kind == "close" or right.kind == "open":
        return TomlFault(
            right.line, f"nothing parts {shown(left.text)} and {shown(right.text)}", cure
        )
    read = f"{_bare(left)} and {_bare(right)} stand side by side"
    return TomlFault(right.line, read, cure)


def _bare(token: TomlToken) -> str:
    return shown(token.text) if token.kind == "word" else shown(token.text.strip("\"'"))


def _torn(token: TomlToken) -> Iterator[TomlFault]:
    if token.kind == "torn":
        message = f"the quote before {shown(token.text[1:])} is never closed"
        yield TomlFault(token.line, message, f"write {token.text[0]} where the text ends")
    if token.kind == "endless":
        message = "the text that begins here with three quotes is never closed"
        yield TomlFault(token.line, message, f"write {token.text[:3]} where the text ends")


def _word(token: TomlToken) -> Iterator[TomlFault]:
    """The defect of a bare word that is no TOML value."""
    word = token.text
    if token.kind != "word" or NUMBER.fullmatch(word) or WORDS.fullmatch(word):
        return
    read = shown(word)
    if word.lower() in ("true", "false"):
        yield TomlFault(token.line, f"{read} is no value", f"write {word.lower()} in small letters")
    elif re.fullmatch(r"[+-]?\.\d+|[+-]?\d+\.", word):
        whole = re.sub(r"^([+-]?)\.", r"\g<1>0.", word)
        whole = whole + "0" if whole.endswith(".") else whole
        cure = f"write digits on both sides of the point: {whole}"
        yield TomlFault(token.line, f"the number {read} is not complete", cure)
    elif re.fullmatch(r"[+-]?0\d+(?:\.\d+)?", word):
        trimmed = re.sub(r"^([+-]?)0+(?=\d)", r"\g<1>", word)
        yield TomlFault(token.line, f"the number {read} begins with a nought", f"write {trimmed}")
    elif re.fullmatch(r"[\"'“”„«»‘’].*|.*[“”„«»‘’]", word):
        yield TomlFault(
            token.line, f"{read} is not in straight quotes", 'write straight quotes, "…"'
        )
    elif match := re.fullmatch(r"([+-]?\d+(?:\.\d+)?)[A-Za-z°%]+", word):
        cure = f"write the number alone, {match[1]}; units stand in force and length"
        yield TomlFault(token.line, f"{read} is not a number", cure)
    elif SUM.fullmatch(word):
        cure = f'put an exact number in quotes: "{word}"' if len(word) < 40 else "put it in quotes"
        yield TomlFault(token.line, f"{read} is not in quotes", cure)
    else:
        cure = f"put it in quotes: {read}" if len(word) < 40 else "put a text in quotes"
        yield TomlFault(token.line, f"{read} is neither a number nor a text in quotes", cure)
