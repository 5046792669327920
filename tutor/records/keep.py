"""Which lessons are kept, and where? Starting one, going on with one, and listing them all."""

from __future__ import annotations

import os
import re
import unicodedata
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

import platformdirs

from tutor.records.clock import Clock, utc_now

if TYPE_CHECKING:
    from tutor.records.journal import Journal
    from tutor.records.kept import Kept

SUFFIX = ".jsonl"
SLUG_LENGTH = 40
NAMES_TRIED = 8


class Keep:
    """The folder of the lessons: the user's data folder for pinjoint, or one of their choice."""

    def __init__(self, folder: Path | None = None, *, clock: Clock = utc_now) -> None:
        self.folder = data_folder() if folder is None else folder
        self._clock = clock

    def start(self, problem: str, title: str, source: str = "", content: str = "") -> Journal:
        """A journal for a new lesson on a problem (its key, its text); unsaved if it cannot be kept."""
        from tutor.records import told  # here, and below, for start-up time
        from tutor.records.contents import Header
        from tutor.records.journal import Journal

        started = self._clock()
        header = Header(problem, title, started, source, content=content)
        for _ in range(NAMES_TRIED):
            path = self.folder / journal_name(title, started)
            try:
                return Journal.start(path, header, clock=self._clock)
            except FileExistsError:
                continue
        why = told.not_saved("no free file name was found", self.folder)
        return Journal.unsaved(header, why, clock=self._clock)

    def resume(self, path: Path) -> Journal:
        """The journal of a lesson that was listed here; never raises for what the file holds."""
        from tutor.records.journal import Journal

        return Journal.resume(path, clock=self._clock)

    def now(self) -> datetime:
        """The time by the clock that lessons are kept by."""
        return self._clock()

    def lessons(self) -> tuple[Kept, ...]:
        """All lessons, the one last worked on first, those that cannot be read at the end."""
        from tutor.records import told
        from tutor.records.kept import Kept, in_their_order, look_at

        try:
            found = [look_at(path) for path in self.journals()]
        except OSError as error:
            return (Kept(self.folder, notice=told.cannot_read(self.folder, error)),)
        return in_their_order(found, self.now())

    def journals(self) -> tuple[Path, ...]:
        """The files of all lessons; none where there is no folder yet. OSError where it cannot be read."""
        try:
            with os.scandir(self.folder) as entries:
                names = sorted(entry.name for entry in entries if entry.name.endswith(SUFFIX))
        except FileNotFoundError:
            return ()
        return tuple(self.folder / name for name in names)


def data_folder() -> Path:
    """The folder that the platform provides for the data of this user's pinjoint."""
    return Path(platformdirs.user_data_dir("pinjoint", appauthor=False))


def journal_name(title: str, started: datetime) -> str:
    """A name for a new journal from its title and day: lower-case letters, figures and hyphens."""
    day = started.strftime("%Y-%m-%d")
    return f"{slug(title)}-{day}-{os.urandom(4).hex()}{SUFFIX}"


def slug(title: str) -> str:
    """The title in letters a to z and figures, joined by hyphens; `lesson` if nothing is left."""
    letters = unicodedata.normalize("NFKD", title[: 4 * SLUG_LENGTH])
    words = re.findall(r"[a-z0-9]+", letters.encode("ascii", "ignore").decode("ascii").lower())
    return "-".join(words)[:SLUG_LENGTH].strip("-") or "lesson"
