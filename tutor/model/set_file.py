"""What does the set.toml of a folder say: title, order, and how the set is to be worked?

In a folder of sets it says in which order they come, and nothing else.
"""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from graphlib import CycleError, TopologicalSorter
from pathlib import Path
from typing import Any, Literal, NamedTuple

from tutor.model import read_words
from tutor.model.amounts import kind_of
from tutor.model.defect import Defect, Findings, choose_from
from tutor.model.rules import HINTS, MODES, Rules, Tolerance
from tutor.model.source import read_source
from tutor.model.toml_read import UNREAD, read_toml
from tutor.text import one_line, shown

SET_FILE = "set.toml"
KEYS = ("title", "order", "id", "hints", "attempts", "mode", "tolerance", "after", "due")
MOST_ATTEMPTS = 99


class SetFile(NamedTuple):
    """Title, files in order, rules and defects; defaults where there is no set.toml."""

    title: str
    order: tuple[Path, ...]
    rules: Rules
    defects: tuple[Defect, ...] = ()


def read_set_file(folder: Path, title: str, files: tuple[Path, ...]) -> SetFile:
    """What the set.toml of `folder` says of its problem `files`; never raises.

    `title` is that of a folder without one.
    """
    if not os.path.lexists(folder / SET_FILE):
        return SetFile(title, files, Rules())
    source = read_source(folder / SET_FILE)
    if source.text is None:
        return SetFile(title, files, Rules(), source.defects)
    document = read_toml(source.text, source.file)
    data, notes = document.data, document.findings
    for key in data:
        if key not in KEYS:
            notes.error(
                (key,), f"{shown(key)} is an unknown key", choose_from(key, KEYS, "the keys are")
            )
    given = data.get("title", UNREAD)
    if isinstance(given, str) and one_line(given):
        title = one_line(given)
    elif given is not UNREAD or document.whole():
        read = "there is no title" if given is UNREAD else "the title is not a text with words"
        notes.error(("title",), read, 'write title = "…"')
    order = _ordered(notes, data.get("order", UNREAD), files, "file")
    rules = _rules(notes, data, [file.stem for file in files])
    found = tuple(sorted((*source.defects, *notes.all()), key=lambda d: d.line))
    return SetFile(title, order, rules, found)


def read_order_of_sets(
    folder: Path, below: tuple[Path, ...]
) -> tuple[tuple[Path, ...], tuple[Defect, ...]]:
    """The folders `below` as the set.toml of `folder` orders them, and its defects; never raises."""
    if not os.path.lexists(folder / SET_FILE):
        return below, ()
    source = read_source(folder / SET_FILE)
    if source.text is None:
        return below, source.defects
    document = read_toml(source.text, source.file)
    data, notes = document.data, document.findings
    for key in data:
        if key in KEYS and key != "order":
            message = f"{shown(key)} says nothing in a folder of sets"
            notes.error((key,), message, "write it into the set.toml of each set")
        elif key not in KEYS:
            notes.error((key,), f"{shown(key)} is an unknown key", "the key here is order")
    order = _ordered(notes, data.get("order", UNREAD), below, "folder")
    return order, tuple(sorted((*source.defects, *notes.all()), key=lambda d: d.line))


def _rules(notes: Findings, data: Mapping[str, Any], stems: Sequence[str]) -> Rules:
    sets_tolerance = "tolerance" in data
    return Rules(
        hints=_one_of(notes, data, "hints", HINTS),
        attempts=_attempts(notes, data.get("attempts", UNREAD)),
        mode=_one_of(notes, data, "mode", MODES),
        tolerance=read_words.tolerance(notes, data, Tolerance()) if sets_tolerance else None,
        after=_after(notes, data.get("after", UNREAD), stems),
        due=_due(notes, data.get("due", UNREAD)),
        id=read_words.identity(notes, data),
    )


def _one_of(notes: Findings, data: Mapping[str, Any], key: str, known: Sequence[Any]) -> Any:
    """The word of `key`, the first of `known` where there is none or another."""
    word = read_words.text(notes, data, key)
    if word is None or word in known:
        return word or known[0]
    cure = choose_from(word, known, f"{key} may be")
    notes.error((key,), f"{key} is {shown(word)}", cure)
    return known[0]


def _attempts(notes: Findings, value: Any) -> int | None:
    if value is UNREAD:
        return None
    whole = isinstance(value, int) and not isinstance(value, bool)
    if whole and 1 <= value <= MOST_ATTEMPTS:
        return int(value)
    read = str(value) if whole and abs(value) < 10**6 else kind_of(value)
    cure = f"write a whole number from 1 to {MOST_ATTEMPTS}, or leave it out for no limit"
    notes.error(("attempts",), f"attempts is {read}", cure)
    return None


def _due(notes: Findings, value: Any) -> date | None:
    if value is UNREAD:
        return None
    if isinstance(value, datetime):
        return value.date()
    if isinstance(value, date):
        return value
    cure = "write a date without quotes, like due = 2026-12-01"
    notes.error(("due",), f"due is {kind_of(value)}, not a date", cure)
    return None


def _after(notes: Findings, value: Any, stems: Sequence[str]) -> Mapping[str, tuple[str, ...]]:
    """What comes before each problem; names that are not there and circles are defects."""
    cure = 'write [after], then a line like gangway = ["lamp-arm"] for each problem that must wait'
    if value is UNREAD:
        return {}
    if not isinstance(value, dict):
        notes.error(("after",), f"after is {kind_of(value)}, not a table", cure)
        return {}
    read: dict[str, tuple[str, ...]] = {}
    for name, before in value.items():
        named = _stem(notes, ("after", name), name, stems)
        if not isinstance(before, list):
            notes.error(("after", name), f"{shown(name)} is {kind_of(before)}, not a list", cure)
        elif named is not None:
            found = (
                _stem(notes, ("after", name), each, stems) for each in before if each is not UNREAD
            )
            read[named] = tuple(dict.fromkeys(each for each in found if each is not None))
    if circle := _circle(read):
        way = ", which comes after ".join(circle)
        message = f"{circle[0]} would have to come after itself: {way}"
        notes.error(("after", circle[0]), message, "let one of them come first")
        return {}
    return read


def _stem(
    notes: Findings, path: tuple[str | int, ...], name: Any, stems: Iterable[str]
) -> str | None:
    """The problem that `after` means by a name."""
    known = list(stems)
    if not isinstance(name, str):
        notes.error(path, f"after holds {kind_of(name)}, not only texts", "write file names")
        return None
    stem = name.removesuffix(".toml")
    if stem in known:
        return stem
    cure = choose_from(stem, known, "the files are")
    notes.error(path, f"after names {shown(name)}, which is not there", cure)
    return None


def _circle(after: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    """A way from a problem back to itself, e.g. ("a", "b", "a"); empty where there is none."""
    try:
        TopologicalSorter(after).prepare()
    except CycleError as found:
        return tuple(reversed(found.args[1]))
    return ()


def _ordered(
    notes: Findings, names: Any, files: tuple[Path, ...], what: Literal["file", "folder"]
) -> tuple[Path, ...]:
    """The files, or folders, as `order` names them, then those it leaves out, which is a defect."""
    if names is UNREAD:
        return files
    if not isinstance(names, list):
        cure = f'write a list of {what} names, like order = ["lamp-arm", "gangway"]'
        notes.error(("order",), f"order is {kind_of(names)}, not a list", cure)
        return files
    known = {file.stem if what == "file" else file.name: file for file in files}
    chosen: dict[str, Path] = {}
    for place, name in enumerate(names):
        if not isinstance(name, str):
            cure = f"write {what} names in quotes"
            notes.error(("order", place), f"order holds {kind_of(name)}, not only texts", cure)
            continue
        stem = name.removesuffix(".toml") if what == "file" else name
        if stem not in known:
            cure = choose_from(stem, known, f"the {what}s are")
            notes.error(("order", place), f"order names {shown(name)}, which is not there", cure)
        elif stem in chosen:
            notes.error(("order", place), f"order names {shown(name)} twice", "name it once")
        else:
            chosen[stem] = known[stem]
    left = [name for name in known if name not in chosen]
    for name in left:
        message = f"order leaves out {shown(name)}"
        notes.error(("order",), message, f"add it, or move the {what} to another folder")
    return (*chosen.values(), *(known[name] for name in left))
