"""What does `[vary]` say may differ from student to student, and what is wrong with it?

As in `read_parts`: each function reads one key, notes every defect with its place, and returns what
is sound. Names of joints, members and loads are held against the problem of the same file.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Any

from tutor.model.amounts import kind_of
from tutor.model.defect import Findings, KeyPath, choose_from
from tutor.model.problem import Problem
from tutor.model.read_conditions import conditions
from tutor.model.read_loads import SMALLEST_LOAD
from tutor.model.read_parts import number_at
from tutor.model.read_varied import PLACE_PARTS, joints_named, members_named, part_fits
from tutor.model.toml_read import UNREAD
from tutor.model.vary import GAP, Of, VariedPart, Vary, exact, filled, gaps, numbers_of
from tutor.notation import Exact
from tutor.text import FEW, listed, shown

KEYS = ("loads", "spread", "joints", "scale", "mirror", "keep")
RANGE = ("from", "to", "step")
MOST_VALUES = 100
MOST_CHOICES = 50
MOST_DEGREES = 360
FORMS = "write a list like [10, 12, 15], or { from = 5, to = 20, step = 5 }"
START = "write [vary], then a line like loads = { C = { down = [10, 12, 15] } }"
GAPS = "write {left|right}, or a number of the truss like {C down}, {C y}, {span} or {height}"


def with_vary(notes: Findings, data: Mapping[str, Any], problem: Problem, whole: bool) -> Problem:
    """The problem with its `[vary]`, and with the gaps of its words filled in as it stands.

    `whole` says that all joints, members and loads of the file were read. Without `[vary]` braces
    are words like others.
    """
    table = data.get("vary", UNREAD)
    if table is UNREAD:
        return problem
    if not isinstance(table, dict):
        notes.error(("vary",), f"vary is {kind_of(table)}, not a table", START)
        return problem
    for key in table:
        if key not in KEYS:
            message = f"vary has the unknown key {shown(key)}"
            notes.error(("vary", key), message, choose_from(key, KEYS, "the keys here are"))
    choices = (
        *_choices(notes, table, "loads", problem, whole),
        *_choices(notes, table, "spread", problem, whole),
        *_choices(notes, table, "joints", problem, whole),
        *_scales(notes, table.get("scale", UNREAD)),
    )
    if len(choices) > MOST_CHOICES:
        message = f"vary has {len(choices)} numbers, more than {MOST_CHOICES}"
        notes.error(("vary",), message, 'name joints that change alike together, like "B C"')
        choices = choices[:MOST_CHOICES]
    vary = Vary(
        choices,
        _mirror(notes, table.get("mirror", UNREAD)),
        conditions(notes, table.get("keep", UNREAD), problem, whole),
        problem.title,
        problem.story,
    )
    if whole and not (vary.choices or vary.mirror) and not table.keys() - {"keep"}:
        notes.error(("vary",), "vary names nothing that varies", START)
    return with_words(replace(problem, vary=vary), notes if whole else None)


def with_words(problem: Problem, notes: Findings | None = None, mirrored: bool = False) -> Problem:
    """The problem with the gaps of its title and story filled; those that cannot be are noted."""
    vary = problem.vary
    if vary is None:
        return problem
    known = numbers_of(problem, mirrored) if GAP.search(vary.title + vary.story) else {}
    for key, text in (("title", vary.title), ("story", vary.story)):
        for gap in gaps(text):
            if "|" not in gap and " ".join(gap.split()) not in known and notes is not None:
                message = f"{key} has the gap {shown('{' + gap + '}')}, which nothing fills"
                notes.error((key,), message, GAPS)
    title, story = (filled(text, known, mirrored) for text in (vary.title, vary.story))
    if (title, story) == (problem.title, problem.story):
        return problem
    return replace(problem, title=title, story=story)


def _mirror(notes: Findings, value: Any) -> bool:
    if value is UNREAD or isinstance(value, bool):
        return value is True
    notes.error(("vary", "mirror"), f"mirror is {kind_of(value)}", "write mirror = true")
    return False


def _choices(
    notes: Findings, table: Mapping[str, Any], of: Of, problem: Problem, whole: bool
) -> list[VariedPart]:
    """The numbers that vary under `loads`, `spread` or `joints`."""
    entries = table.get(of, UNREAD)
    path: KeyPath = ("vary", of)
    if entries is UNREAD:
        return []
    if not isinstance(entries, dict):
        notes.error(path, f"{of} of vary is {kind_of(entries)}, not a table", START)
        return []
    read: list[VariedPart] = []
    for name, parts in entries.items():
        named = members_named if of == "spread" else joints_named
        joints = named(notes, (*path, name), name, problem, whole)
        if parts is UNREAD:
            continue
        if not isinstance(parts, dict):
            cure = "write which number of it varies, like C = { down = [10, 12] }"
            notes.error((*path, name), f"{shown(name)} is {kind_of(parts)}", cure)
            continue
        for part, values in parts.items():
            here = (*path, name, part)
            if part_fits(notes, here, of, joints, part, problem, whole):
                read += _choice(notes, here, VariedPart(of, joints, part, ()), values)
    return _each_once(notes, path, read)


def _scales(notes: Findings, table: Any) -> list[VariedPart]:
    """What all places are multiplied by, along x or y."""
    if table is UNREAD:
        return []
    cure = "write scale = { x = [0.75, 1, 1.5] }, or y, or both"
    if not isinstance(table, dict):
        notes.error(("vary", "scale"), f"scale is {kind_of(table)}, not a table", cure)
        return []
    read: list[VariedPart] = []
    for part, values in table.items():
        path = ("vary", "scale", part)
        if part in PLACE_PARTS:
            read += _choice(notes, path, VariedPart("scale", (), part, ()), values)
        else:
            notes.error(path, f"scale has the unknown key {shown(part)}", cure)
    return read


def _choice(notes: Findings, path: KeyPath, choice: VariedPart, values: Any) -> list[VariedPart]:
    """The choice with its values, where there are any that fit."""
    if values is UNREAD:
        return []
    if isinstance(values, dict):
        read = _range(notes, path, values)
    elif isinstance(values, list):
        found = (number_at(notes, (*path, i), each, choice.words) for i, each in enumerate(values))
        read = [each for each in found if each is not None]
        if not values:
            notes.error(path, f"the list for {choice.words} is empty", FORMS)
    else:
        notes.error(path, f"{choice.words} is {kind_of(values)}, so it does not vary", FORMS)
        return []
    if len(read) > MOST_VALUES:
        message = f"{choice.words} has {len(read)} values, more than {MOST_VALUES}"
        notes.error(path, message, "a dozen is plenty")
        return []
    fitting = tuple(each for each in dict.fromkeys(read) if _fits(notes, path, choice, each))
    return [replace(choice, values=fitting)] if fitting else []


def _fits(notes: Findings, path: KeyPath, choice: VariedPart, value: Exact) -> bool:
    """Whether a value is one that the file itself could give."""
    read = shown(value.text)[1:-1]
    if choice.part == "angle":
        if abs(value.value) <= MOST_DEGREES:
            return True
        notes.error(path, f"{choice.words} is {read} degrees", "write degrees from -360 to 360")
        return False
    if choice.of == "joints" or value.value >= SMALLEST_LOAD:
        return True
    why = (
        "so it is no load"
        if choice.of in ("loads", "spread")
        else "so nothing is left of the truss"
    )
    if value.value < 0:
        why = "negative"
    notes.error(path, f"{choice.words} is {read}, {why}", "write positive numbers")
    return False


def _range(notes: Findings, path: KeyPath, table: Mapping[str, Any]) -> list[Exact]:
    """The values of { from = 5, to = 20, step = 5 }."""
    for key in table:
        if key not in RANGE:
            cure = choose_from(key, RANGE, "the keys here are")
            notes.error((*path, key), f"a range has the unknown key {shown(key)}", cure)
    missing = [key for key in RANGE if key not in table]
    if missing:
        notes.error(path, f"the range has no {listed(missing, FEW)}", FORMS)
        return []
    read = [number_at(notes, (*path, key), table[key], f"the {key} of a range") for key in RANGE]
    if any(each is None for each in read):
        return []
    fractions = [each.fraction for each in read if each is not None]
    start, end, step = (fraction if fraction is not None else Fraction(0) for fraction in fractions)
    if None in fractions or step <= 0 or end < start:
        message = "a range goes up from its first number to its last in steps above 0"
        notes.error(path, f"{message}, and this one does not", FORMS)
        return []
    if (end - start) / step > 10 * MOST_VALUES:
        notes.error(path, f"the range holds more than {MOST_VALUES} values", "take a larger step")
        return []
    return [exact(start + step * i) for i in range(int((end - start) / step) + 1)]


def _each_once(notes: Findings, path: KeyPath, choices: list[VariedPart]) -> list[VariedPart]:
    """The choices, none of which may change a number that another one changes."""
    seen: set[tuple[str, str]] = set()
    for choice in choices:
        for joint in choice.joints:
            if (joint, choice.part) in seen:
                message = f"vary gives {choice.part} at {joint} twice"
                notes.error(path, message, "name each number in one place")
            seen.add((joint, choice.part))
    return choices
