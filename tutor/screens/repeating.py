"""Which deed does enter do once more, on an empty line or where nothing is marked or counted?"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from tutor.lesson import Reply, Say
from tutor.lesson.reply import TYPED
from tutor.screens import walk_deeds

if TYPE_CHECKING:
    from tutor.screens.walk import WalkScreen

AGAIN = {
    "show": "Press enter to watch the next one.",
    "guess": "Press enter to have it written.",
    "hint": "Press enter on the empty line for the next hint.",
}
DOES = {"show": "show", "guess": "show", "hint": "hint"}
"""What enter does after each; what was guessed is written."""
NOTHING_MARKED = "Mark what holds here with space or its number, then press enter."


class Repeating:
    """Remembers whether the last thing done is one that enter goes on with."""

    def __init__(self) -> None:
        self.deed = ""
        self._told: set[str] = set()

    def after(
        self, walk: WalkScreen, kind: str, data: Mapping[str, object], reply: Reply
    ) -> list[Say]:
        """Remember what was done; what there is to say of doing it again, the first time."""
        ready = reply.accepted and not data and walk.ask.kind != "table"
        if kind == "guess":
            ready = walk.ask.kind != "table"
        if kind == "hint":
            empty = not walk.line.value and not walk.unmended  # what is to be mended comes back
            ready = ready and walk.ask.kind in TYPED and empty
        self.deed = kind if ready and kind in AGAIN else ""
        if not self.deed or self.deed in self._told:
            return []
        self._told.add(self.deed)
        return [Say("note", AGAIN[self.deed])]

    def once_more(self, walk: WalkScreen) -> bool:
        """Do it once more; whether there was such a deed."""
        if self.deed:
            walk_deeds.DO[DOES[self.deed]](walk)
        return bool(self.deed)
