"""What has the student chosen once and for all? A small file beside the lessons, replaced whole."""

from __future__ import annotations

import json
import os
from collections.abc import Callable, Mapping
from pathlib import Path
from types import MappingProxyType
from typing import Any, NamedTuple

from tutor.records import disk

FILE_NAME = "settings.json"
MAX_BYTES = 64 * 1024
MAX_WORD = 60
SKIPPABLE_AFTER = 2


class Settings(NamedTuple):
    """The student's choices; None means not chosen yet.

    `glyphs` is the set of characters that the figure is drawn with, `theme` the name of the
    colours, `remarks` whether an easier way is shown beside right lines, `done` how often each step was done
    right (by the name of the step). `guide` is whether the student is told what to do next and what
    they can do by now. `student` is the id by which an instructor knows the student.
    """

    glyphs: str | None = None
    theme: str | None = None
    remarks: bool = True
    done: Mapping[str, int] = MappingProxyType({})
    student: str | None = None
    guide: bool = True

    def done_right(self, step: str) -> Settings:
        """The same choices after one more right passage through this step."""
        return self._replace(done={**self.done, step: self.done.get(step, 0) + 1})

    def skippable(self, step: str) -> bool:
        """Whether the step was done right often enough to be skipped: twice."""
        return self.done.get(step, 0) >= SKIPPABLE_AFTER


class ThisTime(NamedTuple):
    """What is said on the command line for this time: how lessons are begun, empty for as offered, and
    whether the guide is off."""

    begin: str = ""
    no_guide: bool = False


GIVEN = ThisTime()


def read_settings(folder: Path) -> tuple[Settings, str]:
    """The choices kept in this folder, and a notice, empty if all is well; never raises.

    A choice that cannot be used falls back to its default. The broken file is then kept aside under
    another name, so that writing new choices loses nothing.
    """
    path = folder / FILE_NAME
    try:
        raw = disk.read_file(path, MAX_BYTES)
    except FileNotFoundError:
        return Settings(), ""
    except OSError as error:
        return Settings(), f"{told_of(path)} cannot be read: {disk.why_not(error)}. {DEFAULTS}"
    settings, faults = parse_settings(raw)
    if not faults:
        return settings, ""
    return settings, f"{told_of(path)}: {'; '.join(faults)}. {kept_aside(path, raw)}"


DEFAULTS = "The usual choices are used instead."


def kept_aside(path: Path, raw: bytes) -> str:
    """Move the broken file out of the way, and say where it is or why it could not be moved."""
    try:
        side = disk.keep_aside(path, raw)
        os.unlink(path)
    except OSError as error:
        return f"{DEFAULTS} The file could not be kept aside: {disk.why_not(error)}."
    return f"{DEFAULTS} The file is kept as {disk.path_shown(side.name)}."


def told_of(path: Path) -> str:
    """How a notice begins."""
    return f"Your choices in {disk.path_shown(path)}"


def write_settings(folder: Path, settings: Settings) -> str:
    """Put the choices on the disk, wholly or not at all; a notice if that failed, else empty."""
    path = folder / FILE_NAME
    chosen = {**settings._asdict(), "done": dict(settings.done)}
    if settings.student is None:
        del chosen["student"]
    text = json.dumps(chosen, indent=2) + "\n"
    try:
        disk.make_folder(folder)
        disk.replace(path, text.encode("ascii"))
    except OSError as error:
        return (
            f"{told_of(path)} could not be saved: {disk.why_not(error)}. "
            "They hold until you leave; free some space or choose another folder with --keep."
        )
    return ""


def parse_settings(raw: bytes) -> tuple[Settings, list[str]]:
    """The choices these bytes hold, and what was wrong with those that were left out."""
    try:
        found = json.loads(raw.decode("utf-8"))
    except (ValueError, RecursionError):
        return Settings(), ["this is not a JSON file"]
    if not isinstance(found, dict):
        return Settings(), ["the file should hold one JSON object"]
    settings = Settings()
    faults = []
    for name in Settings._fields:
        if name not in found:
            continue
        if USABLE[name](found[name]):
            settings = settings._replace(**{name: found[name]})
        else:
            faults.append(f"the value of {name} cannot be used, it should be {WANTED[name]}")
    return settings, faults


def is_word(value: Any) -> bool:
    """Whether this is a short printable text, or None."""
    if value is None:
        return True
    return isinstance(value, str) and 0 < len(value) <= MAX_WORD and value.isprintable()


def is_switch(value: Any) -> bool:
    """Whether this is true or false."""
    return isinstance(value, bool)


def is_counts(value: Any) -> bool:
    """Whether this maps short texts to whole numbers from 0 on."""
    return isinstance(value, dict) and all(
        is_word(step) and type(count) is int and 0 <= count < 10**9 for step, count in value.items()
    )


USABLE: Mapping[str, Callable[[Any], bool]] = {
    "glyphs": is_word,
    "theme": is_word,
    "remarks": is_switch,
    "done": is_counts,
    "student": is_word,
    "guide": is_switch,
}
WANTED = {
    "glyphs": "a short text or null",
    "theme": "a short text or null",
    "remarks": "true or false",
    "done": "whole numbers by the names of steps",
    "student": "a short text or null",
    "guide": "true or false",
}
