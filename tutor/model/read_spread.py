"""Which loads does a file spread along members, and what is wrong with them? As in `read_parts`."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, get_args

from tutor.model.amounts import kind_of
from tutor.model.defect import Findings, KeyPath, choose_from
from tutor.model.parts import AXES, Joint, Load, Member, PushDirection
from tutor.model.read_loads import leaves_something, size_of
from tutor.model.read_parts import ends_of
from tutor.model.spread import Per, Spread, measure_along
from tutor.model.toml_read import UNREAD
from tutor.notation import Exact
from tutor.text import FEW, listed, shown

SPREAD_KEYS = ("on", *AXES, "total", "way", "per")
MOST_SPREADS = 200
ON = 'write on = ["AB", "BC"] with the members it lies on'
SIZE = "write a force for each unit of length, like down = 2, or total = 12 for all of it"
PER: tuple[Per, ...] = get_args(Per)
WAYS: tuple[PushDirection, ...] = get_args(PushDirection)
Placed = tuple[int, Member]


def spreads(
    notes: Findings,
    entries: Sequence[Any],
    joints: Iterable[str],
    members: Sequence[Placed],
    whole: bool,
    placed: Iterable[Joint],
) -> tuple[Spread, ...]:
    """The spread loads in the order of the file.

    `joints` are named as in the file and `members` those that were read; `whole` says that there are
    no others. `placed` are the joints whose places were read.
    """
    if len(entries) > MOST_SPREADS:
        message = f"there are {len(entries)} spread loads, more than {MOST_SPREADS}"
        notes.error(("spread",), message, "name all members with the same load in one of them")
        return ()
    at = {joint.name: joint for joint in placed}
    read = []
    for place, entry in enumerate(entries):
        path = ("spread", place)
        if not isinstance(entry, dict):
            cure = 'begin each with [[spread]], or write { on = ["AB"], down = 2 }'
            notes.error(path, f"a spread load is {kind_of(entry)}", cure)
            continue
        for key in [key for key in entry if key not in SPREAD_KEYS]:
            cure = choose_from(key, SPREAD_KEYS, "the keys of a spread load are")
            notes.error((*path, key), f"a spread load has the unknown key {shown(key)}", cure)
        on = _on(notes, path, entry, joints, members, whole)
        spread = _spread(notes, path, entry, tuple(member.name for member in on))
        if spread is not None and on and _has_length(notes, path, spread, on, at):
            read.append(spread)
    return tuple(read)


def _on(
    notes: Findings,
    path: KeyPath,
    entry: Mapping[str, Any],
    joints: Iterable[str],
    members: Sequence[Placed],
    whole: bool,
) -> list[Member]:
    """The members that a spread load lies on; none where one of them is not known."""
    written, here = entry.get("on", UNREAD), (*path, "on")
    if "on" not in entry:
        notes.error(path, "a spread load is on no member", ON)
        return []
    if not isinstance(written, list) or not written:
        if written is not UNREAD:
            read = "empty" if written == [] else f"{kind_of(written)}, not a list"
            notes.error(here, f"on of a spread load is {read}", ON)
        return []
    known = {frozenset((m.start, m.end)): m for _, m in members}
    names = dict.fromkeys(joints)
    found: list[Member] = []
    for place, text in enumerate(written):
        ends = ends_of(notes, (*here, place), text, names, whole)
        if ends is None:
            continue
        member = known.get(frozenset(ends))
        if member is None and whole:
            message = f"a spread load is on {shown(text)}, and there is no such member"
            cure = choose_from(str(text), [m.name for _, m in members], "the members are")
            notes.error((*here, place), message, cure)
        elif member in found:
            message = f"a spread load names member {shown(text)} twice"
            notes.error((*here, place), message, "name it once; a load twice as large is a size")
        elif member is not None:
            found.append(member)
    return found if len(found) == len(written) else []


def _spread(
    notes: Findings, path: KeyPath, entry: Mapping[str, Any], on: tuple[str, ...]
) -> Spread | None:
    where = f" on {listed(on, FEW)}" if on else ""
    per = _one_of(notes, path, entry, "per", PER, "length", where)
    ways = sorted((way for way in WAYS if way in entry), key=list(entry).index)
    if "total" in entry:
        if ways:
            message = f"the spread load{where} has a total and also {listed(ways, FEW)}"
            cure = f'write either the total, with way = "{ways[0]}", or the size for each length'
            notes.error((*path, "total"), message, cure)
            return None
        way = _one_of(notes, path, entry, "way", WAYS, "down", where)
        what = f"the total of the spread load{where}"
        size = size_of(notes, (*path, "total"), entry["total"], what, "")
        if size is None or way is None or per is None:
            return None
        return Spread(on, ((way, size),), per, total=True)  # type: ignore[arg-type]
    if "way" in entry:
        message = f"the spread load{where} has a way but no total"
        notes.error((*path, "way"), message, "write down = 2 for a size, or total = 12 beside it")
        return None
    if not ways:
        notes.error(path, f"the spread load{where} has no size", SIZE)
        return None
    return _pushes(notes, path, entry, ways, on, per)


def _pushes(
    notes: Findings,
    path: KeyPath,
    entry: Mapping[str, Any],
    ways: Sequence[PushDirection],
    on: tuple[str, ...],
    per: str | None,
) -> Spread | None:
    """A load given by its size for each unit of length."""
    where = f" on {listed(on, FEW)}" if on else ""
    read: list[tuple[PushDirection, Exact]] = []
    for way in ways:
        what = f"the push {way} of the spread load{where}"
        size = size_of(notes, (*path, way), entry[way], what, way)
        if size is not None:
            read.append((way, size))
    if len(read) != len(ways) or per is None:
        return None
    if not leaves_something(notes, path, Load("", tuple(read)), where, on):
        return None
    return Spread(on, tuple(read), per)  # type: ignore[arg-type]


def _one_of(
    notes: Findings,
    path: KeyPath,
    entry: Mapping[str, Any],
    key: str,
    known: Sequence[str],
    usual: str,
    where: str,
) -> str | None:
    """The word under `key`, the usual one where it is not there; None where it is none of them."""
    word = entry.get(key, usual)
    if word in known:
        return str(word)
    if word is not UNREAD:
        read = shown(word) if isinstance(word, str) else kind_of(word)
        cure = f"write {key} = {' or '.join(shown(each) for each in known)}"
        notes.error((*path, key), f"the {key} of the spread load{where} is {read}", cure)
    return None


def _has_length(
    notes: Findings,
    path: KeyPath,
    spread: Spread,
    on: Sequence[Member],
    at: Mapping[str, Joint],
) -> bool:
    """Whether every member has some of the load: one along the push has no span across it."""
    for way, _ in spread.pushes:
        for member in on:
            if member.start not in at or member.end not in at or spread.per == "length":
                continue
            if measure_along(at, member, spread.per, way).value == 0.0:
                message = f"member {member.name} has no span across a load {way}"
                cure = 'write per = "length", or take the member out of on'
                notes.error((*path, "on"), message, cure)
                return False
    return True
