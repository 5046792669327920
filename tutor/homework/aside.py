"""Which lines of a page are no work at all: its title, who wrote it and when, a page number, a caption?

`notation/no_work.py` knows them.
"""

from __future__ import annotations

from tutor.homework.page import Page, Written
from tutor.notation.no_work import is_no_work
from tutor.text import listed, shown

SHOWN, MOST_TOLD = 40, 20


def no_work(page: Page, bare: str, text: str) -> Written | None:
    """The paper as it is, where a line is none of the work; what it was is told."""
    if not is_no_work(page.desk.names, text):
        return None
    return Written(
        page.paper, (f"{shown(bare[:SHOWN])} is not read as work",), aside=(bare[:SHOWN],)
    )


def told_aside(aside: tuple[str, ...]) -> tuple[str, ...]:
    """One sentence for all lines of a page that are none of the work, none where there are none."""
    return (f"not read as work: {listed(aside, MOST_TOLD)}",) if aside else ()
