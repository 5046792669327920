"""On which line of its file does something of a problem stand?"""

from __future__ import annotations

from functools import cached_property
from pathlib import Path

from tutor.model import Defect, Problem
from tutor.model.defect import Findings
from tutor.model.source import file_name, read_source
from tutor.model.toml_keys import lines_in


class FileLines:
    """The lines of a problem's file, read again only when one is asked for."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem

    @property
    def path(self) -> Path:
        """The problem's file; where it has none, one that is not there."""
        return self.problem.source if self.problem.source is not None else Path()

    @property
    def file(self) -> str:
        """The file's name for a message, the title where there is no file."""
        source = self.problem.source
        return file_name(source) if source is not None else self.problem.title

    def line(self, *keys: str | int) -> int:
        """The line of a key path like ("joints", "A"), or of its nearest known beginning."""
        return self._lines.line(keys) if self._lines is not None else 1

    def warning(self, code: str, keys: tuple[str | int, ...], message: str, cure: str) -> Defect:
        """A warning at a key path."""
        return Defect(self.file, self.line(*keys), message, cure, "warning", code)

    @cached_property
    def _lines(self) -> Findings | None:
        if self.problem.source is None:
            return None
        text = read_source(self.problem.source).text
        return None if text is None else Findings(self.file, lambda: lines_in(text))
