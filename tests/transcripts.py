"""What the program says when a script is typed into its plain mode, as one transcript.

A line typed stands behind "> ". In an excerpt, "…" alone stands for any lines, and at the end of a
line for the rest of it.
"""

from __future__ import annotations

import io
from collections.abc import Sequence
from pathlib import Path

from tutor.model import Problem, ProblemSet
from tutor.plain import run

GAP = "…"


class Typist(io.StringIO):
    """Input that writes what is typed into the output, where it is read."""

    def __init__(self, lines: Sequence[str], sink: io.StringIO) -> None:
        super().__init__("".join(f"{line}\n" for line in lines))
        self.sink = sink

    def readline(self, size: int | None = -1, /) -> str:
        line = super().readline(-1 if size is None else size)
        if line:
            self.sink.write(f"> {line}")
        return line


def transcript(problem: Problem, lines: Sequence[str], keep: Path) -> list[str]:
    """All that is said and typed in a lesson on `problem`, line by line."""
    sink = io.StringIO()
    assert (
        run((ProblemSet("Test", (problem,)),), keep=keep, source=Typist(lines, sink), sink=sink)
        == 0
    )
    return sink.getvalue().splitlines()


def first_unlike(excerpt: Sequence[str], said: Sequence[str]) -> str | None:
    """The first line of an excerpt that does not stand where the excerpt has it, or None."""
    at, loose = 0, True
    for line in excerpt:
        if line == GAP:
            loose = True
            continue
        here = [n for n in range(at, len(said)) if like(line, said[n])]
        if not here or (here[0] != at and not loose):
            return f"{line!r}, where it says {said[at]!r}" if at < len(said) else line
        at, loose = here[0] + 1, False
    return None


def like(line: str, said: str) -> bool:
    return said.startswith(line[:-1]) if line.endswith(GAP) else said == line
