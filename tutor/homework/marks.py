"""What on a line of a page is no work: a bullet, a dash, a remark, a title, a word that leads on?"""

from __future__ import annotations

import re
from collections.abc import Sequence

from tutor.homework.page import Page, Written, unknown_of
from tutor.homework.table import cells_apart, without_formulas
from tutor.notation import without_marks
from tutor.notation.elements.characters import plain
from tutor.notation.places import place_named

LONGEST = 500
CONNECTIVE = re.compile(
    r"^(?:(?:∴|⇒|→|=>|->|so|hence|thus|therefore)[ ,:]+|[∴⇒]\s*)(?=\S)", re.IGNORECASE
)
DASHED = re.compile(r"-\s+([^\W\d_][\w{}]*)\s*=\s*[-+]?[\d.][^=]*$")
BULLET = re.compile(r"^\s*[-–—]\s+(?=[^\W\d_]|[*<$\\])")
TITLE = re.compile(r"\s*#{1,6}\s+(.*)")


def without_remark(page: Page, text: str) -> str:
    """The text before a remark, and of a spreadsheet's row what its formulas come to.

    A title that names a place, "## Joint C", is no remark.
    """
    title = TITLE.match(text)
    if title is not None and place_named(page.desk.names, title[1]) is not None:
        return text
    return without_formulas(cells_apart(text.partition("#")[0]))


def bared(text: str) -> str:
    """The text in plain characters, without what only marks it or leads to it."""
    bare = without_marks(text) if len(text) <= LONGEST else plain(text).strip()
    return CONNECTIVE.sub("", bare)


def dashed(page: Page, bare: str, text: str) -> Written | None:
    """A dash in front of a name: a bullet or a minus, which only who wrote it knows."""
    found = DASHED.match(bare)
    if found is None or unknown_of(page, found[1]) is None:
        return None
    name = found[1]
    return page.refuse(
        text, f"Is the dash a minus? Write {name} = -… if it is, and leave it out if it is none."
    )


def listed_with_dashes(lines: Sequence[str]) -> list[str]:
    """The lines without the dashes that set them apart, where several have one."""
    if sum(BULLET.match(line) is not None for line in lines) < 2:
        return list(lines)
    return [BULLET.sub("", line) for line in lines]
