"""Which deed does enter do once more, on an empty line or where nothing is marked or counted?"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from tutor.lesson import Reply
from tutor.lesson.reply import TYPED
from tutor.screens import walk_deeds

if TYPE_CHECKING:
    from tutor.screens.walk import WalkScreen

AGAIN = {
    "show": "Press enter to watch the next one.",
    "guess": "Press enter to have it written.",
    "hint": "Press enter for the next hint.",
}
DOES = {"show": "show", "guess": "show", "hint": "hint"}
"""What enter does after each; what was guessed is written."""
NOTHING_MARKED = "Mark what holds here with space or its number, then press enter."


class Repeating:
    """Remembers whether the last thing done is one that enter goes on with."""

    def __init__(self) -> None:
        self.deed = ""

    def after(self, walk: WalkScreen, kind: str, data: Mapping[str, object], reply: Reply) -> None:
        """Remember what was done, and say in the empty line what enter does then."""
        ready = reply.accepted and not data and walk.ask.kind != "table"
        if kind == "guess":
            ready = walk.ask.kind != "table"
        if kind == "hint":
            empty = not walk.line.value and not walk.unmended  # what is to be mended comes back
            ready = ready and walk.ask.kind in TYPED and empty
        self.deed = kind if ready and kind in AGAIN else ""
        walk.line.placeholder = AGAIN.get(self.deed, "")

    def once_more(self, walk: WalkScreen) -> bool:
        """Do it once more; whether there was such a deed."""
        if self.deed:
            walk_deeds.DO[DOES[self.deed]](walk)
        return bool(self.deed)
