"""Which lines of a page are no work at all: its title, who wrote it and when, a page number, a caption?

Only lines that nobody writes work in; whatever holds an = sign or the name of a member or reaction
is never one of them. What such lines look like is common practice, no source.
"""

from __future__ import annotations

import re

from tutor.homework.page import Page, Written, unknown_of
from tutor.text import listed, shown

SHOWN, MOST_TOLD = 40, 20
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
WORD = re.compile(r"[^\W\d_][\w{}-]*")


def no_work(page: Page, bare: str, text: str) -> Written | None:
    """The paper as it is, where a line is none of the work; what it was is told."""
    if NO_WORK.fullmatch(bare) is None or _names_an_unknown(page, bare):
        return None
    return Written(
        page.paper, (f"{shown(bare[:SHOWN])} is not read as work",), aside=(bare[:SHOWN],)
    )


def _names_an_unknown(page: Page, bare: str) -> bool:
    """Whether a member or a reaction is named."""
    return any(unknown_of(page, word) is not None for word in WORD.findall(bare))


def told_aside(aside: tuple[str, ...]) -> tuple[str, ...]:
    """One sentence for all lines of a page that are none of the work, none where there are none."""
    return (f"not read as work: {listed(aside, MOST_TOLD)}",) if aside else ()
