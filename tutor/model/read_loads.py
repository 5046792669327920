"""Which loads does a file give, and what is wrong with them? As in `read_parts`."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Set
from typing import Any

from tutor.model.amounts import kind_of
from tutor.model.defect import Findings, KeyPath, choose_from, nearest_name
from tutor.model.parts import AXES, Load
from tutor.model.read_parts import angle_at, joint_cure, number_at
from tutor.model.toml_read import UNREAD
from tutor.notation import Exact
from tutor.text import FEW, listed, shown

LOAD_KEYS = ("at", "up", "down", "left", "right", "size", "angle")
MOST_LOADS = 1500
SMALLEST_LOAD = 1e-9
OPPOSITE = {"up": "down", "down": "up", "left": "right", "right": "left", "": ""}


def loads(
    notes: Findings, entries: list[Any], known: Iterable[str], whole: bool, sure: bool
) -> tuple[Load, ...]:
    """The loads in the order of the file; `known` and `whole` as in `members`.

    `sure` says that a load has no keys but those of its entry.
    """
    if len(entries) > MOST_LOADS:
        message = f"there are {len(entries)} loads, more than {MOST_LOADS}"
        notes.error(("loads",), message, "join loads that act on one joint")
        return ()
    names = list(known)
    read = []
    for place, entry in enumerate(entries):
        path = ("loads", place)
        if not isinstance(entry, dict):
            cure = 'begin each load with [[loads]], or write { at = "C", down = 12 }'
            notes.error(path, f"a load is {kind_of(entry)}", cure)
            continue
        joint = _load_joint(notes, path, entry, names, whole)
        load = _load(notes, path, entry, joint)
        meant = _unknown_keys(notes, path, entry)
        if sure:
            _lacks(notes, path, entry.keys() | meant, f" at {joint}" if joint else "")
        if load is not None and load.joint:
            read.append(load)
    return tuple(read)


def _load_joint(
    notes: Findings, path: KeyPath, entry: Mapping[str, Any], names: list[str], whole: bool
) -> str:
    """The joint a load is at, "" where it is not known."""
    at = entry.get("at", UNREAD)
    if isinstance(at, str):
        if at in names:
            return at
        if whole:
            message = f"a load is at joint {shown(at)[1:-1]}, which is not there"
            notes.error((*path, "at"), message, joint_cure(at, names))
    elif at is not UNREAD:
        cure = 'write the joint in quotes, like at = "C"'
        notes.error((*path, "at"), f"the joint of a load is {kind_of(at)}, not a text", cure)
    return ""


def _unknown_keys(notes: Findings, path: KeyPath, entry: Mapping[str, Any]) -> set[str]:
    """Note the unknown keys of a load; the known ones that they seem to mean."""
    unknown = [key for key in entry if key not in LOAD_KEYS]
    for key in unknown:
        cure = choose_from(key, LOAD_KEYS, "the keys of a load are")
        notes.error((*path, key), f"a load has the unknown key {shown(key)}", cure)
    return {close for key in unknown if (close := nearest_name(key, LOAD_KEYS))}


def _lacks(notes: Findings, path: KeyPath, keys: Set[str], where: str) -> None:
    """Note what a load with these keys needs and does not have."""
    if "at" not in keys:
        notes.error(path, "a load has no joint", 'write at = "C" with the joint it acts on')
    if not keys.isdisjoint(AXES):
        return
    if keys.isdisjoint(("size", "angle")):
        cure = "write a push like down = 12, or size = 12 and angle = 210"
        notes.error(path, f"the load{where} has no size", cure)
    for key, lacks in (("size", "angle"), ("angle", "size")):
        if key in keys and lacks not in keys:
            cure = f"write {lacks} = … too, or a push like down = 12"
            notes.error((*path, key), f"the load{where} has {key} but no {lacks}", cure)


def _load(notes: Findings, path: KeyPath, entry: Mapping[str, Any], joint: str) -> Load | None:
    where = f" at {joint}" if joint else ""
    ways = sorted((way for way in AXES if way in entry), key=list(entry).index)
    sizes = [
        size_of(notes, (*path, w), entry[w], f"the push {w} of the load{where}", w) for w in ways
    ]
    polar = [key for key in ("size", "angle") if key in entry]
    if ways and not polar:
        pushes = tuple((w, size) for w, size in zip(ways, sizes, strict=True) if size is not None)
        load = Load(joint, pushes)
        return (
            load
            if len(pushes) == len(ways)
            and leaves_something(notes, path, load, where, (load.joint,))
            else None
        )
    if ways:
        message = f"the load{where} has {listed(ways, FEW)} and also {listed(polar, FEW)}"
        notes.error((*path, polar[0]), message, "give pushes, or a size and an angle")
    return _polar(notes, path, entry, joint, where)


def _polar(
    notes: Findings, path: KeyPath, entry: Mapping[str, Any], joint: str, where: str
) -> Load | None:
    """A load given by its size and angle."""
    size = turn = None
    if "size" in entry:
        size = size_of(notes, (*path, "size"), entry["size"], f"the size of the load{where}", "")
    if "angle" in entry:
        turn = angle_at(notes, (*path, "angle"), entry["angle"], f"the angle of the load{where}")
    return None if size is None or turn is None else Load(joint, (), size, turn)


def size_of(notes: Findings, path: KeyPath, value: Any, what: str, way: str) -> Exact | None:
    """The size of a load or push, which is positive; `way` is the push that it is, or ""."""
    size = number_at(notes, path, value, what)
    if size is None:
        return None
    if abs(size.value) < SMALLEST_LOAD:
        said = "0" if size.value == 0 else f"{size.value:.3g}, too small to be told from 0"
        notes.error(path, f"{what} is {said}, so it is no load", "give it a size, or delete it")
        return None
    if size.value < 0:
        way = OPPOSITE[way]
        cure = (
            f"write it as {way} with a positive size"
            if way
            else "write it without the sign and turn the angle by 180"
        )
        notes.error(path, f"{what} is negative, {shown(size.text)[1:-1]}", cure)
        return None
    return size


def leaves_something(
    notes: Findings, path: KeyPath, load: Load, where: str, of: tuple[str, ...]
) -> bool:
    """Whether the pushes of a load leave something over; opposite ones may cancel."""
    if all(abs(part) < 1e-9 * load.pushes[0][1].value for part in load.vector):
        message = f"the pushes of the load{where} cancel, so it is a load of size 0"
        notes.error(path, message, "delete it, or correct a push", "cancelled", of)
        return False
    return True
