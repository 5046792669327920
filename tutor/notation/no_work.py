"""Which lines of a page are no work at all: its title, who wrote it and when, a page number, a caption?

Only lines that nobody writes work in; whatever names a member or a reaction is never one of them. What
such lines look like is common practice, no source.
"""

from __future__ import annotations

import re

from tutor.notation.elements.characters import plain
from tutor.notation.naming.names import Names
from tutor.notation.read import without_marks

MONTH = r"(?:jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)[a-z]*\.?"
DATE = (
    r"(?:\d{4}-\d{1,2}-\d{1,2}|\d{1,2}[./]\d{1,2}[./](?:\d{4}|\d\d)"
    rf"|(?:\d{{1,2}}(?:st|nd|rd|th)?\.?\s+)?{MONTH}(?:\s+\d{{1,2}}(?:st|nd|rd|th)?)?,?(?:\s+\d{{4}})?)"
)
COUNTED = (
    r"(?:home\s?work|hw|assignment|problem\s+set|problem|exercise|question|tutorial|page|sheet|week|"
    r"chapter|course|class|group|solution\s+(?:to|of)\s+(?:problem|exercise|question))"
)
SUBJECT = (
    r"(?:engineering\s+|applied\s+)?(?:statics|mechanics|physics|structures|structural\s+analysis)"
)
PROSE = r"[^\d=]*"
NO_WORK = re.compile(
    rf"{COUNTED}\s*(?:no\.?|number|\#)?\s*[:.]?\s*\d{{1,4}}(?:[.-]\d{{1,4}})?[a-z]?"
    rf"(?:\s*(?:of|/)\s*\d{{1,4}})?(?:\s*[:.,;()–-]\s*{PROSE}|\s+{PROSE})?(?:{DATE})?\)?"
    r"|(?:home\s?work|hw|assignment|solutions?)(?:\s*[:.,–-]\s*[^\d=]*)?"
    rf"|(?:\d{{1,4}}\s*of\s*\d{{1,4}})"
    rf"|(?:date|due|due\s+date|handed\s+in|submitted(?:\s+on)?)?\s*[:.]?\s*(?:on\s+)?{DATE}"
    rf"|(?:(?:{COUNTED}|[a-z]{{2,5}}\s?-?\d{{2,4}}[a-z]?)[\s:,–-]+)?{SUBJECT}(?:\s+\d{{1,4}}[a-z]?)?"
    rf"|(?:name|student|author|by|instructor|lecturer|teacher|professor|course|class|submitted\s+by)"
    rf"(?:\s+name)?\s*:{PROSE}"
    rf"|(?:student\s+)?(?:id|no\.?|number)\s*:\s*\w{{1,20}}"
    rf"|(?:given|find|required|results?|answers?|summary|calculations?|method\s+of\s+joints|"
    rf"(?:member|bar)\s+forces|members|bars|free[- ]body\s+diagrams?|equilibrium(?:\s+equations)?|"
    rf"the\s+end|end|qed)\s*[:.]?",
    re.IGNORECASE,
)
_BESIDE = re.compile(
    r"[A-Z]{2,5}\s?-?\d{2,4}[A-Z]?|\d{1,2}(?:st|nd|rd|th)\s+ed(?:ition|n)?\.?|(?:©|\(c\)|copyright)[^=]{0,60}",
    re.IGNORECASE,
)
"""What is no work beside something that is none: a course, an edition."""
_EDITION = re.compile(r"\d{1,2}(?:st|nd|rd|th)\s+ed(?:ition|n)?\b", re.IGNORECASE)
_ALONE = re.compile(r"(?:©|\(c\)|copyright) ?[12]\d{3}[^=]{0,60}", re.IGNORECASE)
_PARTED = re.compile(r"\s{2,}|\t|\s+[-–—|·]\s+|,\s+")
_PROGRAM = re.compile(
    r"\s*(?:print|disp|display|fprintf)\s*\(.*\)\s*;?\s*|\s*(?:import\s+\w[\w. ,]*|from\s+[\w.]+\s+import\s+[\w*, ]+)"
)
LONGEST = 120
"""The heads of pages are short."""
_CELLS = re.compile(r"[\t;|]|\s{2,}")
_UNIT_CELLS = ("kN", "MN", "N", "lb")
_COLUMNS = re.compile(
    r"(?:member|bar|force|reaction|support)s?"
    r"(?:[\s/,:]+\(?(?:axial|force|value|size|magnitude|sense|nature|type|state|tension|compression"
    r"|k?n|lbs?|kips?|t|c|or)\)?)+",
    re.IGNORECASE,
)
"""The names of a table's columns where only single spaces part them."""
_WORD = re.compile(r"[^\W\d_][\w{}-]*")


def is_no_work(names: Names, text: str) -> bool:
    """Whether a line as typed is the head or the foot of a page, names columns, or only runs a program."""
    if len(text) <= LONGEST and _PROGRAM.fullmatch(text) is not None:
        return True
    bare = without_marks(text)
    if (
        not bare
        or len(bare) > LONGEST
        or "=" in bare
        or names_an_unknown(names, _EDITION.sub(" ", bare))
    ):
        return False
    if NO_WORK.fullmatch(bare) is not None or _ALONE.fullmatch(bare) is not None:
        return True
    parts = [part for part in _PARTED.split(bare) if part.strip()]
    sure = [NO_WORK.fullmatch(part) is not None for part in parts]
    beside = [_BESIDE.fullmatch(part) is not None for part in parts]
    if any(sure) and all(map(max, sure, beside)):
        return True
    return _names_columns(text) or _COLUMNS.fullmatch(bare) is not None


def names_an_unknown(names: Names, text: str) -> bool:
    """Whether a member or a reaction is named; a letter alone is rather somebody's initial."""
    words = (word for word in _WORD.findall(text) if len(word) > 1)
    return any(len(names.meant(plain(word)[:80])) == 1 for word in words)


def _names_columns(row: str) -> bool:
    """Whether a row of cells holds words and no figure."""
    cells = [cell.strip(" *_") for cell in _CELLS.split(row)]
    words = [cell for cell in cells if cell]
    return (
        len(cells) > 2
        and bool(words)
        and all(
            (len(cell) > 2 or cell in _UNIT_CELLS)
            and any(map(str.isalpha, cell))
            and not any(map(str.isdigit, cell))
            for cell in words
        )
    )
