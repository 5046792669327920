"""Which words, units and settings does a file give around its truss, and what is wrong with them?

As in `read_parts`: each function reads one key of `data`, notes every defect with its place, and
returns what is sound, or the default.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, get_args

from tutor.model.amounts import kind_of
from tutor.model.defect import Findings, choose_from
from tutor.model.problem import Soundness
from tutor.model.read_parts import number_at
from tutor.model.rules import Tolerance
from tutor.model.toml_read import UNREAD
from tutor.text import lines, one_line, shown

FORCES = ("kN", "N", "MN", "lb", "kip")
LENGTHS = ("m", "mm", "cm", "in", "ft")
GIVEN = ("reactions",)
SOUNDNESS: tuple[Soundness, ...] = get_args(Soundness)
LONGEST_TITLE = 200
LONGEST_STORY = 20_000
LONGEST_WORD = 100
MOST_WORDS = 50
LEVELS = range(1, 7)
TOLERANCES = {
    "silent": "how far off a rounded number may be in silence",
    "remark": "how far off it may be and still be right, with a remark",
}
MOST_PERCENT = 50
Data = Mapping[str, Any]


def title(notes: Findings, data: Data) -> str:
    """The title, on one line."""
    whole = text(notes, data, "title") or ""
    read = one_line(whole[: 10 * LONGEST_TITLE])
    if "title" in data and isinstance(data["title"], str) and not read:
        notes.error(("title",), "the title is empty", "write one")
    if len(read) > LONGEST_TITLE:
        count = len(read) if len(whole) <= 10 * LONGEST_TITLE else len(whole)
        message = f"the title has {count} characters, more than {LONGEST_TITLE}"
        notes.error(("title",), message, "tell the rest in story")
    return read


def story(notes: Findings, data: Data) -> str:
    """The story, its line breaks kept."""
    read = text(notes, data, "story") or ""
    if len(read) > LONGEST_STORY:
        message = f"the story has {len(read)} characters, more than {LONGEST_STORY}"
        notes.error(("story",), message, "tell it shorter")
        return ""
    return lines(read)


def identity(notes: Findings, data: Data) -> str:
    """The id, on one line."""
    read = text(notes, data, "id") or ""
    if len(read) > LONGEST_WORD:
        message = f"the id has {len(read)} characters, more than {LONGEST_WORD}"
        notes.error(("id",), message, "give it a shorter one")
        return ""
    return one_line(read)


def text(notes: Findings, data: Data, key: str) -> str | None:
    """The text of `key`, None where there is none."""
    value = data.get(key, UNREAD)
    if isinstance(value, str):
        return value
    if value is not UNREAD:
        notes.error(
            (key,), f"{key} is {kind_of(value)}, not a text", f'write {key} = "…" in quotes'
        )
    return None


def unit(notes: Findings, data: Data, key: str, known: Sequence[str]) -> str:
    """The unit of `key`, "" where it is not known."""
    name = text(notes, data, key)
    if name is None or name in known:
        return name or ""
    message = f"{shown(name)} is no unit of {key} here"
    notes.error((key,), message, choose_from(name, known, "the units are"))
    return ""


def words(notes: Findings, data: Data, key: str) -> tuple[str, ...]:
    """A list of texts, each on one line and kept once."""
    value = data.get(key, UNREAD)
    if value is UNREAD:
        return ()
    cure = (
        f'write a list of texts, like {key} = ["{"reactions" if key == "given" else "cantilever"}"]'
    )
    if not isinstance(value, list):
        notes.error((key,), f"{key} is {kind_of(value)}, not a list", cure)
        return ()
    if len(value) > MOST_WORDS:
        message = f"{key} has {len(value)} texts, more than {MOST_WORDS}"
        notes.error((key,), message, "keep the most telling ones")
        return ()
    read = []
    for place, word in enumerate(value):
        if isinstance(word, str) and len(word) > LONGEST_WORD:
            message = f"{key} holds a text of {len(word)} characters, more than {LONGEST_WORD}"
            notes.error((key, place), message, "say it shorter")
        elif not isinstance(word, str):
            notes.error((key, place), f"{key} holds {kind_of(word)}, not only texts", cure)
        elif not one_line(word):
            notes.error((key, place), f"{key} holds an empty text", "delete it")
        else:
            read.append(one_line(word))
    return tuple(dict.fromkeys(read))


def given(notes: Findings, data: Data) -> tuple[str, ...]:
    """What the student is told at the start."""
    read = words(notes, data, "given")
    for word in read:
        if word not in GIVEN:
            cure = choose_from(word, GIVEN, "what can be given is")
            notes.error(("given",), f"{shown(word)} cannot be given", cure)
    return read


def truss(notes: Findings, data: Data) -> Soundness | None:
    """What the student has to find out of the truss before anything else."""
    name = text(notes, data, "truss")
    if name is None:
        return None
    for known in SOUNDNESS:
        if name == known:
            return known
    message = f"{shown(name)} is nothing that a truss is called here"
    notes.error(("truss",), message, choose_from(name, SOUNDNESS, "it is one of"))
    return None


def level(notes: Findings, data: Data) -> int | None:
    """How hard the problem is, from 1 to 6."""
    value = data.get("level", UNREAD)
    if value is UNREAD:
        return None
    if isinstance(value, int) and not isinstance(value, bool) and value in LEVELS:
        return value
    if isinstance(value, int) and not isinstance(value, bool):
        read = str(value) if abs(value) < 10**12 else "a very large number"
    else:
        read = kind_of(value)
    notes.error(("level",), f"level is {read}", "write a whole number from 1 to 6")
    return None


def tolerance(notes: Findings, data: Data, otherwise: Tolerance) -> Tolerance:
    """The two tolerances; the file gives them in percent. `otherwise` where it gives none."""
    value = data.get("tolerance", UNREAD)
    if value is UNREAD:
        return otherwise
    keys = tuple(TOLERANCES)
    cure = "write [tolerance], then silent = 0.5 and remark = 2, in percent"
    if not isinstance(value, dict):
        notes.error(("tolerance",), f"tolerance is {kind_of(value)}", cure)
        return Tolerance()
    for key in value:
        if key not in keys:
            message = f"tolerance has the unknown key {shown(key)}"
            notes.error(("tolerance", key), message, choose_from(key, keys, "the keys here are"))
    read = Tolerance(**{key: _percent(notes, value, key) for key in keys})
    if read.silent > read.remark:
        message = f"silent, {read.silent * 100:g} %, is more than remark, {read.remark * 100:g} %"
        notes.error(("tolerance",), message, "give both, the smaller one to silent")
    return read


def _percent(notes: Findings, table: Mapping[str, Any], key: str) -> float:
    default = float(getattr(Tolerance(), key))
    if key not in table:
        return default
    path = ("tolerance", key)
    read = number_at(notes, path, table[key], key)
    if read is None:
        return default
    if not 0 <= read.value <= MOST_PERCENT:
        cure = f"write percent from 0 to {MOST_PERCENT}"
        notes.error(path, f"{key} is {shown(read.text)[1:-1]} percent", cure)
        return default
    return float(read.fraction / 100) if read.fraction is not None else read.value / 100
