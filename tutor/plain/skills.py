"""What does `pinjoint skills` print or write? The page that tells a student what they can do now."""

from __future__ import annotations

import sys
from pathlib import Path

from tutor.plain.voice import Voice
from tutor.progress.attained import attained_of
from tutor.progress.kept import Summaries
from tutor.progress.page import as_markdown, page_lines
from tutor.records import Keep
from tutor.truss_file import save_text


def tell_skills(keep: Path | None, to: Path | None, over: bool, signs: bool) -> int:
    """Print the page, or write it to a file; 0, or 2 after saying why it could not be written."""
    attained = attained_of(Summaries(Keep(keep)))
    if to is None:
        Voice(sys.stdin, sys.stdout, signs=signs or sys.stdout.isatty()).say(page_lines(attained))
        return 0
    saved = save_text(as_markdown(attained), str(to), over)
    print(saved.said if saved.path is None else f"Written: {saved.path}.", file=sys.stderr)
    return 2 if saved.path is None else 0
