"""What is asked, in a sentence? Where nothing is any more, what comes next."""

from __future__ import annotations

from textual.content import Content

from tutor.lesson import Ask
from tutor.screens.clean import one_line
from tutor.screens.onward import Onward
from tutor.text import visible


def asked(ask: Ask, ahead: Onward | None) -> Content:
    """The question behind its title; at the table also what is `ahead`."""
    said = ask.question
    if ask.kind == "table" and ahead is not None:
        said = f"{said} {ahead.said}"
    return Content.assemble((one_line(ask.title), "bold $strong"), "  ", visible(said))
