"""What is written when a drawing is saved, so that the comments of a file by hand survive?"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Sequence
from typing import Any

from tutor.model import Load, Problem, write_problem
from tutor.model.read import read_text

SCHEMA_LINE = "#:schema"
"""How the first line of a file begins that names its schema; it is no comment of the student's."""


def saved(problem: Problem, before: str | None = None) -> str:
    """TOML text that loads as `problem`; `before` is the text of the file it was opened from.

    What did not change stays as it was written, and no comment is lost: one whose line went stands
    at the head. Where the old text cannot be changed in place, the problem is written afresh under
    all its comments.
    """
    fresh = write_problem(problem)
    if before is None:
        return fresh
    edited = _edited(problem, before, fresh)
    if edited is None or read_text(edited, "text").problem != read_text(fresh, "text").problem:
        edited = fresh
    lost = Counter(_comments(before)) - Counter(_comments(edited))
    return _headed(list(lost.elements()), edited) if lost else edited


def _headed(comments: Sequence[str], text: str) -> str:
    """The text under these comments; a line that names its schema stays the first."""
    first, _, rest = text.partition("\n")
    if first.startswith(SCHEMA_LINE):
        return "\n".join([first, *comments, rest])
    return "\n".join([*comments, text])


def _edited(problem: Problem, before: str, fresh: str) -> str | None:
    """The old text with what changed put in, or None where that cannot be done."""
    import tomlkit  # here for start-up time
    from tomlkit.exceptions import TOMLKitError

    old = read_text(before, "text").problem
    if old is None:
        return None
    if old == problem:
        return before
    try:
        document, new = tomlkit.parse(before), tomlkit.parse(fresh)
        for key in ("title", "force", "length"):
            if getattr(old, key) != getattr(problem, key):
                document[key] = new[key]
        _edit_members(document["members"], new["members"])
        _edit_table(document["joints"], new["joints"])
        _edit_table(document["supports"], new["supports"])
        if old.given_loads != problem.given_loads:
            pairs = partners(old.given_loads, problem.given_loads)
            _edit_loads(document["loads"], new["loads"], pairs)
        if old.spreads != problem.spreads:
            document.pop("spread", None)
            if problem.spreads:
                document["spread"] = new["spread"]
        return str(document.as_string())
    except (TOMLKitError, KeyError, TypeError, ValueError, AttributeError, IndexError):
        return None


def _edit_members(members: Any, wanted: Any) -> None:
    """Take out what is not wanted, put in what is not there."""
    for place in range(len(members) - 1, -1, -1):
        if members[place] not in list(wanted):
            del members[place]
    there = [str(member) for member in members]
    for member in wanted:
        if member not in there:
            members.append(str(member))


def _edit_table(table: Any, wanted: Any) -> None:
    """As `_edit_members` by key; a value that says the same stays as it is written."""
    for key in [key for key in table if key not in wanted]:
        del table[key]
    for key in wanted:
        if key not in table:
            _add(table, key, wanted[key])
        elif _plain(table[key]) != _plain(wanted[key]):
            table[key] = wanted[key]


def _add(table: Any, key: str, value: Any) -> None:
    """Put a key behind the last one, above the comments that stand before the next table."""
    last = next(reversed(list(table)), None)
    if last is None or not hasattr(table.value, "_insert_after"):
        table[key] = value
    else:
        table.value._insert_after(last, key, value)


def partners(old: Sequence[Load], new: Sequence[Load]) -> list[int | None]:
    """For each of the new loads the old one that it was: the same, else one at its joint, else None."""
    found: list[int | None] = [None] * len(new)
    fits: tuple[Callable[[Load, Load], bool], ...] = (
        lambda one, other: one == other,
        lambda one, other: one.joint == other.joint,
    )
    for fit in fits:
        for place, load in enumerate(new):
            free = (i for i, was in enumerate(old) if i not in found and fit(was, load))
            if found[place] is None:
                found[place] = next(free, None)
    return found


def _edit_loads(loads: Any, wanted: Any, was: Sequence[int | None]) -> None:
    """Change each load that was there in its place, take out what is not wanted, add the rest."""
    for load, place in zip(wanted, was, strict=True):
        if place is not None:
            _edit_table(loads[place], load)
    for place in range(len(loads) - 1, -1, -1):
        if place not in was:
            del loads[place]
    for load, place in zip(wanted, was, strict=True):
        if place is None:
            load.trivia.indent = "\n"
            loads.append(load)


def _plain(value: Any) -> object:
    return value.unwrap() if hasattr(value, "unwrap") else value


def _comments(text: str) -> list[str]:
    """Every comment of a file: those of whole lines, and those behind a value."""
    found = []
    for line in text.splitlines():
        if line.lstrip().startswith("#"):
            found.append(line.strip())
        elif "#" in line:
            bare = re.sub(r'"(?:[^"\\]|\\.)*"|\'[^\']*\'', lambda m: "_" * len(m.group()), line)
            if "#" in bare:
                found.append(line[bare.index("#") :].strip())
    return [comment for comment in found if not comment.startswith(SCHEMA_LINE)]
