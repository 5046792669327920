"""How are the lines of a drawing or a homework kept from one time to the next?

One small text file each beside the lessons, written anew after every change.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from tutor.records.disk import make_folder, read_file, reason, replace

LARGEST = 1_000_000
FOLDER = "own"
TRUSS = "truss"


def homework_name(key: str) -> str:
    """The name under which the homework on the problem of this key is kept."""
    return f"homework-{key}"


class KeptLines:
    """The lines kept under one name in the folder of the lessons."""

    def __init__(self, folder: Path, name: str) -> None:
        self.path = folder / FOLDER / f"{name}.txt"
        self.trouble = ""

    def read(self) -> tuple[str, ...]:
        """The lines that are there; none where there is nothing that can be read."""
        try:
            text = read_file(self.path, LARGEST).decode("utf-8")
        except (OSError, ValueError):
            return ()
        return tuple(line for line in text.splitlines() if line.strip())

    def write(self, lines: Sequence[str]) -> str:
        """Keep these lines. What is to be told where they cannot be, once; else ""."""
        text = "\n".join(" ".join(line.split()) for line in lines) + "\n"
        try:
            make_folder(self.path.parent)
            replace(self.path, text.encode("utf-8", "replace"))
        except OSError as refused:
            told, self.trouble = self.trouble, reason(refused)
            return "" if told else f"What you do here is not kept: {self.trouble}."
        self.trouble = ""
        return ""
