"""Is a line read as it stands, or as it was dictated?"""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from dataclasses import replace

from tutor.notation.either_name import gives_value, named_apart
from tutor.notation.elements.source import Source
from tutor.notation.elements.unreadable import Broken
from tutor.notation.letters.brought_in import brought_in
from tutor.notation.letters.left_open import without_open_sides
from tutor.notation.lines.line import Line
from tutor.notation.naming.names import Names
from tutor.notation.sentences.talked import with_told
from tutor.notation.written_out import written_down, written_out

Read = Callable[[Source], Line]


def read_or_dictated(text: str, names: Names, read: Read) -> Line:
    """The line as it stands; as it was dictated where that leaves nothing out, or no equals sign is typed.

    Where neither can be read it is said what is wrong with it in the way that was tried first. Raises Broken.
    """
    try:
        down = written_down(text, names)
    except Broken as misnamed:
        if "=" not in text:
            raise
        with suppress(Broken):
            return _spelled_out(written_out(text, names), names, read)
        raise misnamed from None
    if down is None:
        return _spelled_out(written_out(text, names), names, read)
    failed: Broken | None = None
    in_part: Line | None = None
    for source in (None, down) if "=" in text else (down, None):
        try:
            line = _spelled_out(source or written_out(text, names), names, read)
        except Broken as broken:
            failed = failed or broken
            continue
        if not line.unread and (source is down or not _sense_of_a_name(line)):
            return line
        in_part = in_part or line
    if in_part is None:
        assert failed is not None
        raise failed
    return in_part


def _sense_of_a_name(line: Line) -> bool:
    """Whether a letter right behind a name is taken for the sense of its force: the C of B C = 8 T."""
    sides = [side for step in line.steps for side in step.sides]
    return any(side.letter is not None and not side.numeric for side in sides)


def _spelled_out(source: Source, names: Names, read: Read) -> Line:
    """A line as it stands, or where that cannot be read, with the letters that it brings in spelled out."""
    try:
        return read(source)
    except Broken as broken:
        if broken.key == "ambiguous" and (apart := named_apart(source, names)):
            lines = [read(made) for made in apart]
            if len(lines) > 1 and gives_value(lines[0].steps[0]):
                raise
            return replace(lines[0], alternatives=(*lines[0].alternatives, *lines[1:]))
        spelled = source if broken.key == "letters" else brought_in(source, names)
        if spelled is source:
            if (closed := without_open_sides(source)) is None:
                raise
            return with_told(read(closed[0]), closed[1])
    return read(spelled)
