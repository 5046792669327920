"""What is written when a drawing is saved, so that the comments of a file by hand survive?"""

from __future__ import annotations

import re
from typing import Any

from tutor.model import Problem, write_problem
from tutor.model.read import read_text


def saved(problem: Problem, before: str | None = None) -> str:
    """TOML text that loads as `problem`; `before` is the text of the file it was opened from.

    What did not change stays as it was written, comments included. Where the old text cannot be
    changed in place, the problem is written afresh under all its comments.
    """
    fresh = write_problem(problem)
    if before is None:
        return fresh
    edited = _edited(problem, before, fresh)
    if edited is not None and read_text(edited, "text").problem == read_text(fresh, "text").problem:
        return edited
    comments = _comments(before)
    return "\n".join([*comments, "", fresh]) if comments else fresh


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
        if old.loads != problem.loads:
            document["loads"] = new["loads"]
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
        if key not in table or _plain(table[key]) != _plain(wanted[key]):
            table[key] = wanted[key]


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
    return found
