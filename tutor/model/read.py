"""Which problem does a file hold, and if none, what are all its defects?"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

from tutor.model import read_parts, read_words
from tutor.model.amounts import Wrong, amount, kind_of
from tutor.model.checks import check_drawing, check_links, check_loose
from tutor.model.defect import (
    MOST,
    Defect,
    Findings,
    KeyPath,
    ProblemError,
    choose_from,
    nearest_name,
)
from tutor.model.problem import Problem
from tutor.model.read_loads import loads
from tutor.model.read_spread import spreads
from tutor.model.read_vary import with_vary
from tutor.model.rules import Rules, Tolerance
from tutor.model.source import read_source
from tutor.model.toml_read import UNREAD, Document, read_toml
from tutor.text import shown

KEYS = (
    *("title", "story", "topics", "level", "id", "given", "truss", "force", "length"),
    *("members", "joints", "supports", "loads", "spread", "tolerance", "vary"),
)
NEEDED = {
    "title": ("title", 'write title = "…" at the top'),
    "force": ("unit of force", 'write force = "kN", or another of N, MN, lb and kip'),
    "length": ("unit of length", 'write length = "m", or another of mm, cm, in and ft'),
    "members": ("list of members", 'write members = ["AB", "BC"] above the first heading'),
    "joints": ("joint", "write [joints], then a line like A = [0, 0] for each joint"),
    "supports": ("support", 'write [supports], then a line like A = "pin" for each support'),
    "loads": ("load", 'write [[loads]], then at = "C" and down = 12'),
}
SPREAD = 'write [[spread]], then on = ["AB"] and down = 2'
CURES = {**{key: cure for key, (_, cure) in NEEDED.items()}, "spread": SPREAD}
NOT_TOLD = ""
"""The cure of what is counted only: it stands behind the defects that are told."""
LISTED = {"loads": "one load", "spread": "one spread load"}
"""The tables of which there may be several, and what one of them is."""


class ReadProblem(NamedTuple):
    """A problem, or None where a defect is an error, and all defects in line order."""

    problem: Problem | None
    defects: tuple[Defect, ...]


def load_problem(path: str | Path) -> Problem:
    """The problem in the file at `path`.

    Raises ProblemError, with every defect of the file, where it cannot be used.
    """
    problem, found = outcome(path)
    if problem is None:
        raise ProblemError(found)
    return problem


def defects(source: str | Path) -> tuple[Defect, ...]:
    """All defects, warnings too, of the file at a `Path`, or of a `str` of TOML text itself."""
    if isinstance(source, Path):
        return outcome(source).defects
    return read_text(source, "text").defects


def outcome(path: str | Path, rules: Rules | None = None) -> ReadProblem:
    """The problem in the file at `path`, worked under the rules of its set, and all defects.

    Never raises.
    """
    source = read_source(path)
    if source.text is None:
        return ReadProblem(None, source.defects)
    problem, found = read_text(source.text, source.file, Path(path), rules)
    if source.defects:
        return ReadProblem(None, tuple(sorted((*source.defects, *found), key=lambda d: d.line)))
    return ReadProblem(problem, found)


def read_text(
    text: str, file: str, source: Path | None = None, rules: Rules | None = None
) -> ReadProblem:
    """The problem in TOML text and all defects, whose `file` is as given; never raises."""
    document = read_toml(text, file)
    problem = _problem(document, source, rules or Rules())
    found = document.findings.all()
    sound = all(defect.severity == "warning" for defect in found)
    return ReadProblem(problem if sound else None, found)


def _problem(document: Document, source: Path | None, rules: Rules) -> Problem:
    """The problem of what is sound in the document; only of use if no error was noted."""
    data, notes = document.data, document.findings
    _bring_up_strays(data, notes)
    _note_keys(document)
    table, pairs = _table(data, notes, "joints"), _list(data, notes, "members")
    placed = read_parts.joints(notes, table)
    complete = document.whole("joints") and data.get("joints") is not UNREAD and bool(table)
    members = read_parts.members(notes, pairs, table, complete)
    held = read_parts.supports(notes, _table(data, notes, "supports"), table, complete)
    check_drawing(notes, placed, members)
    check_links(notes, placed, held)
    if len(members) == len(pairs) > 0:
        check_loose(notes, [joint.name for joint in placed], members)
    acting, lying = _list(data, notes, "loads"), _list(data, notes, "spread")
    borne = loads(notes, acting, table, complete, document.whole("loads"))
    spread = spreads(notes, lying, table, members, complete and len(members) == len(pairs), placed)
    problem = Problem(
        title=read_words.title(notes, data),
        force=read_words.unit(notes, data, "force", read_words.FORCES),
        length=read_words.unit(notes, data, "length", read_words.LENGTHS),
        joints=placed,
        members=tuple(member for _, member in members),
        supports=held,
        loads=borne,
        story=read_words.story(notes, data),
        topics=read_words.words(notes, data, "topics"),
        level=read_words.level(notes, data),
        id=read_words.identity(notes, data),
        given=read_words.given(notes, data),
        truss=read_words.truss(notes, data),
        tolerance=read_words.tolerance(notes, data, rules.tolerance or Tolerance()),
        source=source,
        rules=rules,
        spreads=spread if complete else (),
    )
    supports = data["supports"] if isinstance(data.get("supports"), dict) else ()
    read = ((placed, table), (members, pairs), (held, supports), (borne, acting), (spread, lying))
    whole = complete and bool(members and held) and all(len(a) == len(b) for a, b in read)
    return with_vary(notes, data, problem, whole)


def _note_keys(document: Document) -> None:
    """Note keys that are unknown, and needed ones that are not there."""
    data, notes = document.data, document.findings
    unknown = [key for key in data if key not in KEYS]
    meant = {close for key in unknown[:MOST] if (close := nearest_name(key, KEYS))}
    for place, key in enumerate(unknown):
        cure = choose_from(key, KEYS, "the keys are") if place < MOST else NOT_TOLD
        notes.error((key,), f"{shown(key)} is an unknown key", cure)
    for key, (name, cure) in NEEDED.items():
        instead = "spread" if key == "loads" else key
        if not {key, instead} & (data.keys() | meant) and document.whole():
            notes.error((key,), f"there is no {name}", cure, "lacking")


def _table(data: dict[str, Any], notes: Findings, key: str) -> dict[str, Any]:
    """The table of `key`, noting where it is none or empty."""
    value = data.get(key, UNREAD)
    if isinstance(value, dict):
        if not value:
            notes.error((key,), f"[{key}] is empty", CURES[key], "lacking")
        return value
    if value is not UNREAD:
        notes.error((key,), f"{key} is {kind_of(value)}, not a table", CURES[key])
    return {}


def _list(data: dict[str, Any], notes: Findings, key: str) -> list[Any]:
    """The list of `key`, noting where it is none or empty."""
    value = data.get(key, UNREAD)
    if isinstance(value, list):
        if not value:
            notes.error((key,), f"{key} is empty", CURES[key], "lacking")
        return value
    if key in LISTED and isinstance(value, dict):
        notes.error((key,), f"[{key}] holds {LISTED[key]} of a list", f"write [[{key}]]")
        return [value]
    if value is not UNREAD:
        notes.error((key,), f"{key} is {kind_of(value)}, not a list", CURES[key])
    return []


def _bring_up_strays(data: dict[str, Any], notes: Findings) -> None:
    """Note keys of the whole file that came to stand under a heading, and read them all the same."""
    for path, table in list(_tables(data)):
        for key, value in list(table.items()):
            if key not in KEYS or key in data or _belongs(path[0], value):
                continue
            heading = f"[[{path[0]}]]" if path[0] in LISTED else f"[{path[0]}]"
            cure = "move it up, above the first heading"
            notes.error((*path, key), f"{key} stands under {heading}", cure)
            notes.move((*path, key), (key,))
            data[key] = table.pop(key)


def _tables(data: dict[str, Any]) -> Iterator[tuple[KeyPath, dict[str, Any]]]:
    for key in ("joints", "supports", "tolerance", *LISTED):
        value = data.get(key)
        entries = enumerate(value) if isinstance(value, list) else [("", value)]
        for place, entry in entries:
            if isinstance(entry, dict):
                yield ((key, place) if isinstance(place, int) else (key,)), entry


def _belongs(table: str | int, value: Any) -> bool:
    """Whether a value may well be a joint or support that happens to have a key's name."""
    if table == "joints" and isinstance(value, list) and len(value) == 2:
        return not any(isinstance(amount(part), Wrong) for part in value)
    return table == "supports" and (value in read_parts.ALONE or isinstance(value, dict))
