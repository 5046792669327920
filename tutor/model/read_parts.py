"""Which joints, members and supports does a file give, and what is wrong with them?

Each function reads one key of the file, notes every defect with its place, and returns what is
sound. Keys whose value could not be read at all are left out in silence: that is noted already.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any

from tutor.model.amounts import Wrong, amount, kind_of
from tutor.model.defect import Findings, KeyPath, choose_from, nearest_name
from tutor.model.parts import Joint, Member, Support
from tutor.model.support_kind import SupportKind
from tutor.model.supports import SUPPORTS
from tutor.model.toml_read import UNREAD
from tutor.notation import Exact
from tutor.text import FEW, listed, shown

MOST_JOINTS = 500
MOST_MEMBERS = 1500
DEGREES = re.compile(r"\s*([-+]?\d+(?:\.\d+)?)\s*(?:°|º|deg|degrees)\s*")
NAME = re.compile(r"[A-Za-z][A-Za-z0-9]{0,7}")
NAMES = "a name is a letter and up to 7 more letters or digits, like A or U1"
ALONE = tuple(kind.name for kind in SUPPORTS.values() if kind.alone)
WITH_MORE = {kind.name: kind for kind in SUPPORTS.values() if kind.takes != "nothing"}
_FORMS = [*(f'"{name}"' for name in ALONE), *(kind.form for kind in WITH_MORE.values())]
SUPPORT_FORMS = f"write {', '.join(_FORMS[:-1])} or {_FORMS[-1]}"


def number_at(notes: Findings, path: KeyPath, value: Any, what: str) -> Exact | None:
    """The number at `path`; `what` names it in a message."""
    if value is UNREAD:
        return None
    read = amount(value)
    if isinstance(read, Wrong):
        notes.error(path, f"{what} {read.message}", read.cure)
        return None
    return read


def point(notes: Findings, path: KeyPath, value: Any, what: str) -> tuple[Exact, Exact] | None:
    """A place [x, y]."""
    if value is UNREAD:
        return None
    if not isinstance(value, list) or len(value) != 2:
        read = f"a list of {len(value)}" if isinstance(value, list) else kind_of(value)
        notes.error(path, f"{what} is {read}, not a place", "write x and y like [4, 0]")
        return None
    x = number_at(notes, (*path, 0), value[0], f"the x of {what}")
    y = number_at(notes, (*path, 1), value[1], f"the y of {what}")
    return None if x is None or y is None else (x, y)


def angle_at(notes: Findings, path: KeyPath, value: Any, what: str) -> Exact | None:
    """A direction in degrees."""
    if isinstance(value, str) and (plain := DEGREES.fullmatch(value)) is not None:
        cure = f"write the degrees as a number alone: {plain[1]}"
        notes.error(path, f"{what} is {shown(value)}, with a unit", cure)
        return None
    degrees = number_at(notes, path, value, what)
    if degrees is not None and abs(degrees.value) > 360:
        cure = "write degrees from +x, counter-clockwise, from -360 to 360"
        notes.error(path, f"{what} is {shown(degrees.text)[1:-1]} degrees", cure)
        return None
    return degrees


def joints(notes: Findings, table: Mapping[str, Any]) -> tuple[Joint, ...]:
    """The joints of [joints] in the order of the file."""
    if len(table) > MOST_JOINTS:
        message = f"there are {len(table)} joints, more than {MOST_JOINTS}"
        notes.error(("joints",), message, "split the problem")
        return ()
    read = []
    for name, value in table.items():
        path = ("joints", name)
        if NAME.fullmatch(name) is None:
            notes.error(path, f"{shown(name)} cannot name a joint", NAMES)
        at = point(notes, path, value, f"joint {shown(name)[1:-1]}")
        if at is not None and NAME.fullmatch(name) is not None:
            read.append(Joint(name, *at))
    return tuple(read)


def members(
    notes: Findings, entries: list[Any], known: Iterable[str], whole: bool
) -> tuple[tuple[int, Member], ...]:
    """The members, each with its place in the list.

    `known` holds the names of all joints; `whole` says that no others may be in the file.
    """
    if len(entries) > MOST_MEMBERS:
        message = f"there are {len(entries)} members, more than {MOST_MEMBERS}"
        notes.error(("members",), message, "split the problem")
        return ()
    names = dict.fromkeys(known)
    read: list[tuple[int, Member]] = []
    first: dict[frozenset[str], tuple[int, str]] = {}
    for place, text in enumerate(entries):
        path = ("members", place)
        ends = ends_of(notes, path, text, names, whole)
        if ends is None:
            continue
        if ends[0] == ends[1]:
            message = (
                f"member {shown(text)} begins and ends at joint {ends[0]}, so it has no length"
            )
            notes.error(path, message, "name two different joints")
        elif (pair := frozenset(ends)) in first:
            before, written = first[pair]
            there = f"{shown(written)} on line {notes.line(('members', before))}"
            message = f"member {shown(text)} is already there as {there}"
            notes.error(path, message, "delete one of the two")
        else:
            name = member_name(*ends)
            first[pair] = place, text
            read.append((place, Member(name, *ends)))
    return tuple(read)


def member_name(start: str, end: str) -> str:
    """The one name of the member between two joints: "AB", or "U1-L2" for longer names."""
    return start + end if len(start) == len(end) == 1 else f"{start}-{end}"


def ends_of(
    notes: Findings, path: KeyPath, text: Any, names: Mapping[str, None], whole: bool
) -> tuple[str, str] | None:
    """The two joints of one member's text."""
    if not isinstance(text, str):
        cure = 'write a member as its two joints in quotes, like "AB" or "U1-L2"'
        notes.error(path, f"a member is {kind_of(text)}, not a text", cure)
        return None
    plain = re.sub(r"\s*[-‐‑–−]\s*", "-", text.strip())
    pairs = _splits(plain, names)
    if len(pairs) == 1:
        return pairs[0]
    if pairs:
        read = " or ".join(f'"{one}-{other}"' for one, other in pairs)
        message = f"member {shown(text)} can be read in two ways"
        notes.error(path, message, f"write {read}")
    elif whole:
        _no_ends(notes, path, text, plain, names)
    return None


def _splits(plain: str, names: Mapping[str, None]) -> list[tuple[str, str]]:
    """All ways to read `plain` as two joint names."""
    if "-" in plain:
        one, _, other = plain.partition("-")
        return [(one, other)] if one in names and other in names else []
    halves = ((plain[:cut], plain[cut:]) for cut in range(1, min(len(plain), 9)))
    return [(one, other) for one, other in halves if one in names and other in names]


def _no_ends(
    notes: Findings, path: KeyPath, text: str, plain: str, names: Mapping[str, None]
) -> None:
    """Say which joint a member goes to that is not there."""
    halves = plain.split("-") if "-" in plain or len(plain) != 2 else list(plain)
    if len(halves) != 2 or not all(halves):
        cure = f'name two joints like "AB" or "U1-L2"; the joints are {listed(names, FEW)}'
        notes.error(path, f"member {shown(text)} does not name two joints", cure)
        return
    missing = [half for half in dict.fromkeys(halves) if half not in names]
    lost = " and ".join(shown(half)[1:-1] for half in missing)
    many = ("joints", "which are") if len(missing) == 2 else ("joint", "which is")
    message = f"member {shown(text)} goes to {many[0]} {lost}, {many[1]} not there"
    notes.error(path, message, joint_cure(missing[0], names))


def joint_cure(name: str, names: Iterable[str]) -> str:
    """The cure for a joint that is not there."""
    return choose_from(name, names, "the joints are") + "; or add it under [joints]"


def supports(
    notes: Findings, table: Mapping[str, Any], known: Mapping[str, Any], whole: bool
) -> tuple[Support, ...]:
    """The supports of [supports] in the order of the file; `known` as in `members`."""
    read = []
    for name, value in table.items():
        path = ("supports", name)
        if name not in known and whole:
            message = f"a support is at joint {shown(name)[1:-1]}, which is not there"
            notes.error(path, message, joint_cure(name, known))
        support = _support(notes, path, name, value)
        if support is not None and name in known:
            read.append(support)
    return tuple(read)


def _support(notes: Findings, path: KeyPath, name: str, value: Any) -> Support | None:
    what = f"the support at {shown(name)[1:-1]}"
    if value is UNREAD:
        return None
    if isinstance(value, str):
        if value in ALONE:
            return Support(name, value)
        close = nearest_name(value, SUPPORTS)
        cure = f"did you mean {shown(close)}? {SUPPORT_FORMS}" if close else SUPPORT_FORMS
        if value in WITH_MORE:
            cure = _with_more(WITH_MORE[value])
        notes.error(path, f"{what} is {shown(value)}", cure)
        return None
    if isinstance(value, list) and len(value) > 1:
        notes.error(path, f"{what} is a list, but a joint has one support", SUPPORT_FORMS)
        return None
    if not isinstance(value, dict):
        notes.error(path, f"{what} is {kind_of(value)}", SUPPORT_FORMS)
        return None
    return _support_table(notes, path, name, value, what)


def _with_more(kind: SupportKind) -> str:
    if kind.takes == "point":
        return f"write {{ {kind.name} = [x, y] }} with the fixed point of the {kind.name}"
    return f"write {kind.form} with the angle of its push from +x"


def _support_table(
    notes: Findings, path: KeyPath, name: str, table: Mapping[str, Any], what: str
) -> Support | None:
    for key in table:
        if key not in WITH_MORE:
            cure = choose_from(key, tuple(WITH_MORE), "the keys here are")
            cure = f'write "{key}" in quotes alone' if key in ALONE else cure
            notes.error((*path, key), f"{what} has the unknown key {shown(key)}", cure)
    known = [kind for kind in WITH_MORE.values() if kind.name in table]
    if len(known) > 1:
        two = " and ".join(f"a {kind.name}" for kind in known[:2])
        notes.error(path, f"joint {name} has two supports, {two}", "keep one of them")
        return None
    for kind in known:
        here, value = (*path, kind.name), table[kind.name]
        if kind.takes == "angle":
            push = angle_at(notes, here, value, f"the direction of {what}")
            return None if push is None else Support(name, kind.name, angle=push)
        at = point(notes, here, value, f"the fixed point of {what}")
        return None if at is None else Support(name, kind.name, anchor=at)
    if not table:
        notes.error(path, f"{what} is an empty table", SUPPORT_FORMS)
    return None
