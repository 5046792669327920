"""What is the student told about the keeping of a lesson? One plain sentence a case, with its cure."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from tutor.records import disk
from tutor.records.contents import VERSION, Contents

LESSON = "lesson"
CHANGED = "another program changed or removed its file"
FULL = f"its file has reached {disk.MAX_BYTES // (1024 * 1024)} MB"


def in_use(what: str = LESSON) -> str:
    """The sentence for what another program has open."""
    return (
        f"This {what} is already open in another program. "
        "Here you can read it, but what you do is not saved."
    )


def unusable(contents: Contents, path: Path, what: str = LESSON) -> str:
    """Why nothing may be added to a file that can be opened, or an empty text."""
    name = disk.path_shown(path.name)
    if contents.header is None:
        return f"There is no whole {what} in {name}. The file is left as it is; nothing is saved to it."
    if contents.header.version > VERSION:
        return (
            f"{name} was written by a later version of pinjoint. "
            "Its file is left as it is; what you do is not saved."
        )
    return ""


def not_saved(why: str, path: Path | None, what: str = LESSON) -> str:
    """The one sentence for a lesson that cannot be kept, with the cure."""
    place = f" ({disk.path_shown(path)})" if path else ""
    return (
        f"This {what} is not being saved from here on: {why}{place}. You can go on with it. "
        f"To keep your next {what}, free some space or choose another folder with --keep."
    )


def cannot_read(path: Path, error: OSError | ValueError) -> str:
    """The sentence for a file that cannot be opened or read at all."""
    why = disk.why_not(error) if isinstance(error, OSError) else "its name cannot be used"
    return (
        f"{disk.path_shown(path.name)} cannot be read: {why}. The file is left as it is; "
        "nothing is saved to it."
    )


def torn(side: Path, what: str = LESSON) -> str:
    """The notice for a last line that was not written to its end."""
    return (
        f"The last entry of this {what} was only half written when the program stopped. "
        f"It was left out; its bytes are kept in {disk.path_shown(side.name)}."
    )


def mended(contents: Contents, side: Path, what: str = LESSON) -> str:
    """The notice for a file that was damaged elsewhere and put right."""
    count = len(contents.lines)
    kept = "1 whole entry was" if count == 1 else f"{count} whole entries were"
    return (
        f"The file of this {what} was damaged: {faults_in_short(contents.faults)}. "
        f"{kept} carried over; the damaged file is kept as {disk.path_shown(side.name)}."
    )


def damage(faults: Sequence[str], what: str = LESSON) -> list[str]:
    """The notice for damage that was left as it is, if there is any."""
    if not faults:
        return []
    return [
        f"The file of this {what} is damaged: {faults_in_short(faults)}. Its whole entries are read."
    ]


def kept_again(what: str) -> str:
    """The notice for a disk that takes what it refused before."""
    return f"This {what} is kept again, with everything that is in it now."


def nothing_whole(what: str, side: Path) -> str:
    """The notice for a file that held nothing that can be read."""
    return f"The file of this {what} was damaged and held nothing whole; it is kept as {disk.path_shown(side.name)}."


def damaged_text(what: str, path: Path, lost: int) -> str:
    """The notice for a text file of an earlier version with lines that are no text."""
    lines = "1 line" if lost == 1 else f"{lost} lines"
    return (
        f"{lines} of this {what} could not be read; the others are here. The old file stays as it "
        f"is: {disk.path_shown(path.name)}."
    )


def faults_in_short(faults: Sequence[str], most: int = 3) -> str:
    """The first few faults in one phrase."""
    more = len(faults) - most
    return "; ".join([*faults[:most], *([f"and {more} more"] if more > 0 else [])])
