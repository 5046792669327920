"""What is the student told about the keeping of a lesson? One plain sentence a case, with its cure."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from tutor.records import disk
from tutor.records.contents import VERSION, Contents

IN_USE = (
    "This lesson is already open in another program. "
    "Here you can read it, but what you do is not saved."
)
CHANGED = "another program changed or removed its file"
FULL = f"its file has reached {disk.MAX_BYTES // (1024 * 1024)} MB"


def unusable(contents: Contents, path: Path) -> str:
    """Why nothing may be added to a file that can be opened, or an empty text."""
    name = disk.shown(path.name)
    if contents.header is None:
        return f"There is no whole lesson in {name}. The file is left as it is; nothing is saved to it."
    if contents.header.version > VERSION:
        return (
            f"{name} was written by a later version of pinjoint. "
            "Its file is left as it is; what you do is not saved."
        )
    return ""


def not_saved(why: str, path: Path | None) -> str:
    """The one sentence for a lesson that cannot be kept, with the cure."""
    place = f" ({disk.shown(path)})" if path else ""
    return (
        f"This lesson is not being saved from here on: {why}{place}. You can go on with it. "
        "To keep your next lesson, free some space or choose another folder with --keep."
    )


def cannot_read(path: Path, error: OSError | ValueError) -> str:
    """The sentence for a file that cannot be opened or read at all."""
    why = disk.reason(error) if isinstance(error, OSError) else "its name cannot be used"
    return (
        f"{disk.shown(path.name)} cannot be read: {why}. The file is left as it is; "
        "nothing is saved to it."
    )


def torn(side: Path) -> str:
    """The notice for a last line that was not written to its end."""
    return (
        "The last entry of this lesson was only half written when the program stopped. "
        f"It was left out; its bytes are kept in {disk.shown(side.name)}."
    )


def mended(contents: Contents, side: Path) -> str:
    """The notice for a file that was damaged elsewhere and put right."""
    count = len(contents.lines)
    kept = "1 whole entry was" if count == 1 else f"{count} whole entries were"
    return (
        f"The file of this lesson was damaged: {in_short(contents.faults)}. "
        f"{kept} carried over; the damaged file is kept as {disk.shown(side.name)}."
    )


def damage(faults: Sequence[str]) -> list[str]:
    """The notice for damage that was left as it is, if there is any."""
    if not faults:
        return []
    return [f"The file of this lesson is damaged: {in_short(faults)}. Its whole entries are read."]


def in_short(faults: Sequence[str], most: int = 3) -> str:
    """The first few faults in one phrase."""
    more = len(faults) - most
    return "; ".join([*faults[:most], *([f"and {more} more"] if more > 0 else [])])
