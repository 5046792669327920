"""How is a check told: as lines that an editor jumps to, as JSON, and on the way as a bar?"""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from typing import TextIO

from tutor.check.files import FilesChecked
from tutor.model import Defect

FORM = 1
WIDTH = 30
FEW = 25


def as_text(found: Sequence[FilesChecked]) -> Iterator[str]:
    """Each defect as file:line: what is wrong; the cure, then a closing count."""
    for each in found:
        yield from map(str, each.defects)
    problems = sum(each.problems for each in found)
    files = "1 problem" if problems == 1 else f"{problems} problems"
    sound = all(each.sound for each in found)
    says = "all can be used." if sound else "what is named above has to be put right."
    yield f"{files} checked: {says}"


def as_json(found: Sequence[FilesChecked]) -> str:
    """The same for a program; `form` is raised when a name in it changes its meaning."""
    content = {
        "form": FORM,
        "problems": sum(each.problems for each in found),
        "sound": all(each.sound for each in found),
        "defects": [_entry(defect) for each in found for defect in each.defects],
    }
    return json.dumps(content, indent=2, ensure_ascii=False)


def _entry(defect: Defect) -> dict[str, str | int]:
    entry: dict[str, str | int] = {
        "file": defect.file,
        "line": defect.line,
        "severity": defect.severity,
        "message": defect.message,
        "cure": defect.cure,
    }
    return entry | ({"code": defect.code} if defect.code else {})


class Bar:
    """A bar on a terminal that says how far something long is; nothing where there is no terminal, or
    where there are fewer than `fewest`. `what` stands behind the numbers."""

    def __init__(self, stream: TextIO, what: str = "", fewest: int = FEW) -> None:
        self._stream = stream
        self._what = f" {what}" if what else ""
        self._fewest = fewest
        self._drawn = -1

    def __call__(self, done: int, of: int) -> None:
        """`done` of `of` are done."""
        if of < self._fewest or not self._stream.isatty():
            return
        filled = WIDTH * done // of
        if filled != self._drawn:
            self._drawn = filled
            bar = "#" * filled + "." * (WIDTH - filled)
            self._stream.write(f"\r[{bar}] {done} of {of}{self._what}")
            self._stream.flush()

    def clear(self) -> None:
        """Take the bar away again."""
        if self._drawn >= 0:
            self._stream.write("\r" + " " * (WIDTH + 24 + len(self._what)) + "\r")
            self._stream.flush()
            self._drawn = -1
